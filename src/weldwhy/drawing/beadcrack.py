"""Cracks and breaks in a bead seen from above, and what edges do: undercut, overlap."""

from __future__ import annotations

from math import cos, sin

from weldwhy.drawing.beadabove import Run
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import jagged, places
from weldwhy.drawing.pane import METAL, near


def cracks(bead: Bead, run: Run) -> None:
    """Every crack that shows on the face."""
    for where in bead.cracks:
        if where in _DRAWN:
            _DRAWN[where](run)


def _centre(run: Run) -> None:
    _wandering(run, 0.06, 0.94, 0.0, 0.2)


def _wandering(run: Run, begin: float, end: float, across: float, sway: float) -> None:
    """A fine line along the run that strays a little to both sides."""
    count = 19
    points = []
    for step, (_, _, odd) in enumerate(places(count, 4)):
        along = begin + (end - begin) * step / (count - 1)
        points.append((run.x(along), run.y(along, across) + (odd * 2 - 1) * sway * run.half))
    run.pane.stroke(points, "hole", METAL)


def _crater(run: Run) -> None:
    """A star in the last pool."""
    x, y = (float(near(at)) for at in run.crater)
    reach = max(run.half * 0.95, 2.0)
    for turn, long in ((0.3, 0.7), (1.7, 0.95), (3.1, 1.6), (4.5, 0.95), (5.5, 0.8)):
        far = reach * long
        bend = turn + 0.15
        middle = (x + cos(turn) * far * 0.5, y + sin(turn) * far * 0.5)
        run.pane.stroke([(x, y), middle, (x + cos(bend) * far, y + sin(bend) * far)], "hole", METAL)


def _toe(run: Run) -> None:
    """A hair in the edge itself, in lengths that do not quite meet; never a groove."""
    for begin, end in ((0.16, 0.4), (0.47, 0.62), (0.68, 0.86)):
        points = []
        for step, off in enumerate(jagged(7, 3)):
            along = begin + (end - begin) * step / 6
            points.append((run.x(along), run.y(along, 1) + 0.5 + max(off, 0) * run.half * 0.34))
        run.pane.stroke(points, "hole", METAL)


def _across(run: Run) -> None:
    """Two cracks from plate to plate."""
    sway = max(run.half * 0.14, 0.9)
    for along in (0.3, 0.64):
        x = run.x(along)
        points = []
        for step, off in enumerate(jagged(7, 5)):
            points.append((x + off * sway, run.y(along, -1.5 + 3 * step / 6)))
        run.pane.stroke(points, "hole", METAL)


def _beside(run: Run) -> None:
    """A branching crack in the plate along the bead."""
    points = []
    for step, (_, _, odd) in enumerate(places(12, 3)):
        along = 0.08 + 0.9 * step / 11
        points.append((run.x(along), _beyond(run, along, 0.2 + 0.65 * odd)))
    run.pane.stroke(points, "hole", METAL)
    long = max(run.half * 0.8, 2.0)
    for step in (2, 5, 8):
        x, y = points[step]
        run.pane.stroke([(x, y), (x + long, y + long)], "hole", METAL)


def _beyond(run: Run, along: float, part: float) -> float:
    """A row below the bead, at a part of half its width from the edge; never off the plate."""
    edge = run.y(min(max(along, 0.1), 0.9), 1)
    return edge + 1 + min(run.half, run.pane.height - 2 - edge) * part


def _onward(run: Run) -> None:
    """An old crack that the bead was laid over, and that runs on past both its ends."""
    sway = max(run.half * 0.3, 0.9)
    for begin, end in ((0, run.x(0.04)), (run.x(0.96), run.pane.width - 1)):
        points = [
            (begin + (end - begin) * step / 4, run.middle + off * sway)
            for step, off in enumerate(jagged(5, 7))
        ]
        run.pane.stroke(points, "hole")


_DRAWN = {
    "centre": _centre, "crater": _crater, "toe": _toe, "across": _across, "beside": _beside,
    "onward": _onward,
}  # fmt: skip


def edges(bead: Bead, run: Run) -> None:
    """The groove of an undercut; the dark lip of metal that lies loose."""
    for side, across, step in (("left", -1, -1), ("right", 1, 1)):
        if bead.undercut in (side, "both"):
            _groove(run, across, step)
        if bead.overlap in (side, "both"):
            _lip(run, across, step)
        if bead.unfused in (side, "both"):
            for at in range(near(run.x(0.22)), near(run.x(0.7))):
                run.pane.dot(at, near(run.y((at - run.first) / run.length, across)), "hole", METAL)


def _lip(run: Run, across: int, step: int) -> None:
    """The bead's edge hangs over the plate: no heated zone, only its shadow."""
    for at in range(near(run.x(0.05)), near(run.x(0.95)) + 1):
        y = near(run.y((at - run.first) / run.length, across))
        run.pane.dot(at, y, "weld", METAL)
        run.pane.dot(at, y + step, "ripple", METAL)


def _groove(run: Run, across: int, step: int) -> None:
    """Bitten out of the plate, in bites of their own length, each deepest in its middle."""
    deep = max(run.half * 0.34, 1.6)
    off = 0.0 if across < 0 else 0.05
    for begin, end in ((0.05, 0.28), (0.36, 0.55), (0.63, 0.87)):
        first, last = near(run.x(begin + off)), near(run.x(end + off))
        for at in range(first, last + 1):
            part = 2 * (at - first) / max(last - first, 1) - 1
            y = near(run.y((at - run.first) / run.length, across))
            for line in range(max(near(deep * (1.1 - 0.6 * part * part)), 1)):
                run.pane.dot(at, y + step * (1 + line), "hole", METAL)


def broken(run: Run) -> None:
    """Broken across: a gap with coarse, bright grains on its rims."""
    pane, count = run.pane, 6
    wide = max(pane.width // 30, 1)
    x = run.x(0.52)
    line = jagged(count + 1, 1)
    for y in range(pane.height):
        step, part = divmod(y * count / max(pane.height, 1), 1)
        off = line[int(step)] * (1 - part) + line[int(step) + 1] * part
        left = near(x + off * pane.width * 0.05) - wide
        for at in (left - 1, left + 2 * wide + 1):
            pane.dot(at, y, "weld" if y % 3 else "ripple")
        pane.line(y, left, left + 2 * wide, "")
