"""What lies on a bead or beside it: slag, soot, rust, spatter, burnt spots, colours, specks."""

from __future__ import annotations

from weldwhy.drawing.beadabove import Run, drops
from weldwhy.drawing.beadgas import room
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import grain, places, wave
from weldwhy.drawing.pane import METAL, WELD, Pane, near

_PLATES = frozenset({"plate", "heat", "tint"})
BANDS = {
    "straw": ("heat", "heat"), "blue": ("tint", "heat"), "grey": ("ripple", "tint"),
    "black": ("slag", "tint"),
}  # fmt: skip
"""Colours of heat on the plate: beside the bead, and farther out."""


def colour(bead: Bead, run: Run) -> None:
    """Bands of colour beside the bead, and what the bead itself turned to."""
    if not bead.colour:
        return
    inner, outer = BANDS[bead.colour]
    wide = max(run.pane.height * 0.085, 1.0) * (1.6 if bead.colour == "straw" else 1.2)
    for left, right, top, bottom in run.spans():
        for reach, paint in ((2.1 * wide, outer), (wide, inner)):
            run.pane.fill(left, near(top - reach), right, top - 1, paint)
            run.pane.fill(left, bottom + 1, right, near(bottom + reach), paint)
    if bead.colour != "straw":
        _stained(bead, run)


def _stained(bead: Bead, run: Run) -> None:
    turned = {"ripple": "tint" if bead.colour == "blue" else "slag"}
    if bead.colour == "black":
        turned["weld"] = "ripple"
    for y in range(max(min(run.tops), 0), min(max(run.bottoms) + 1, run.pane.height)):
        row = run.pane.rows[y]
        row[:] = [turned.get(paint, paint) for paint in row]


def slag(bead: Bead, run: Run) -> None:
    """Slag on the face, in patches, in the toes, or shut up in two broken lines."""
    if bead.slag == "cover":
        _cover(run)
    elif bead.slag == "patches":
        for along, across, size in places(7, 2):
            x, y = run.x(0.05 + 0.9 * along), run.y(along, (across * 2 - 1) * 0.8)
            radius = run.half * (0.3 + 0.5 * size)
            run.pane.disc(x, y, radius, "slag", WELD)
            run.pane.disc(x + radius * 1.2, y, radius * 0.7, "slag", WELD)
    elif bead.slag:
        _slag_lines(bead, run)


def _cover(run: Run) -> None:
    """A crust that was chipped off one end only, and clings to the toes there."""
    for y in range(run.pane.height):
        row = run.pane.rows[y]
        part = (y - run.middle) / run.half
        rim = near(run.x(0.55 + 0.22 * part * part + 0.03 * wave(part, 2.0)))
        for x in range(run.first, min(rim, run.last) + 1):
            if row[x] in WELD:
                row[x] = "slag"
    for along, across in ((0.74, 0.1), (0.86, -0.8), (0.92, 0.75)):
        run.pane.disc(run.x(along), run.y(along, across), run.half * 0.22, "slag", WELD)


def _slag_lines(bead: Bead, run: Run) -> None:
    reach = 0.95 if bead.slag == "toes" else 0.5
    thick = max(near(run.half * 0.24), 1)
    for side in (-1, 1):
        for at in range(near(run.x(0.06)), near(run.x(0.92))):
            along = (at - run.first) / run.length
            if wave(along * 1.9, 2.0 + side) > (-0.55 if bead.slag == "toes" else 0.0):
                y = near(run.y(along, side * reach))
                for line in range(thick):
                    run.pane.dot(at, y + (line if side > 0 else -line), "slag")


def casting(pane: Pane) -> None:
    """The coarse dark grain of cast iron, wherever the plate shows."""
    for y, row in enumerate(pane.rows):
        grains = grain(y, pane.width)
        row[:] = [
            "ripple" if paint in _PLATES and part < 0.16 else paint
            for paint, part in zip(row, grains, strict=True)
        ]


def dust(bead: Bead, run: Run) -> None:
    """Soot, powder or rust, thick at the bead and thin farther out."""
    if bead.dust == "rust":
        _rust(run)
    elif bead.dust:
        soot = bead.dust == "soot"
        reach = run.half * (1.5 if soot else 1.2)
        for y in range(run.pane.height):
            off = (abs(y - run.middle) - run.half) / reach
            share = (0.4 if soot else 0.22) if off < 0 else 0.9 * (1 - off)
            _strewn(run, y, share, "slag" if soot else "hot")


def _strewn(run: Run, y: int, share: float, paint: str) -> None:
    """A part of the dots of a row painted, without a visible order."""
    if share > 0:
        row, grains = run.pane.rows[y], grain(y, run.pane.width)
        for x in range(run.first, run.last + 1):
            if grains[x] < share and row[x] in METAL:
                row[x] = paint


def _rust(run: Run) -> None:
    for along, across, size in places(15, 4):
        x, y = run.x(along), run.y(along, (across * 2 - 1) * 1.7)
        radius = run.half * (0.25 + 0.5 * size)
        run.pane.disc(x, y, radius, "heat")
        run.pane.disc(x + radius, y + radius * 0.6, radius * 0.6, "heat")
        if size > 0.4:
            run.pane.disc(x, y, run.half * 0.12, "hole")


def thrown(bead: Bead, run: Run) -> None:
    """Drops of metal on the plate; burnt spots with a tail where the arc was struck."""
    if bead.spatter:
        count = room(run.pane.width * run.pane.height, 16, 34 if bead.spatter == "much" else 10)
        for x, y, size in drops(run, count, 1):
            radius = run.half * (0.08 + 0.3 * size * size)
            if radius > 1:
                run.pane.disc(x + 0.7, y + 0.7, radius, "ripple", _PLATES)
            run.pane.disc(x, y, radius, "hot")
    if bead.strikes:
        count = 6 if bead.strikes == "much" else 4
        for step, (x, y, size) in enumerate(drops(run, count, 8)):
            radius = max(run.half * (0.35 + 0.2 * size), 1.2)
            tail = run.half * (1.1 if step % 2 else -1.1)
            run.pane.stroke([(x, y), (x + tail, y + run.half * 0.2)], "slag", _PLATES)
            run.pane.disc(x, y, radius, "slag", _PLATES)
            run.pane.disc(x, y, radius * 0.4, "hole", frozenset({"slag"}))


def specks(bead: Bead, run: Run) -> None:
    """Bits of tungsten, bright and angular; or folds and flakes of oxide, dull."""
    if bead.specks == "tungsten":
        for along, across, size in places(room(run.length * run.half, 8, 8), 6):
            x, y = run.x(0.04 + 0.92 * along), run.y(along, (across * 2 - 1) * 0.6)
            reach = run.half * (0.1 + 0.16 * size)
            run.pane.disc(x + 0.6, y + 0.6, reach, "hole", WELD)
            run.pane.stroke([(x - reach, y), (x, y - reach)], "hot", METAL)
    elif bead.specks == "oxide":
        for along, across, size in places(room(run.length * run.half, 14, 5), 9):
            side = (across * 2 - 1) * 0.7
            reach = run.half * (0.9 + 0.6 * size) / run.length
            points = []
            for turn, off in enumerate((0.0, -0.3, -0.12, 0.3, 0.1)):
                at = along + reach * (turn - 2) / 2
                points.append((run.x(at), run.y(at, side) + off * run.half))
            run.pane.stroke(points, "slag", WELD)
        _strewn_oxide(run)


def _strewn_oxide(run: Run) -> None:
    for along, across, _ in places(room(run.length * run.half, 18, 9), 3):
        run.pane.dot(near(run.x(along)), near(run.y(along, (across * 2 - 1) * 0.8)), "slag", WELD)


def restart(bead: Bead, run: Run) -> None:
    """The step where a run was taken up again, with the rim of the old crater."""
    if not bead.restart:
        return
    x = run.x(0.5)
    reach = run.half * 0.85
    rim = [(x + reach * 0.5 * (1 - (turn / 3) ** 2), run.middle + reach * turn / 3)
           for turn in range(-3, 4)]  # fmt: skip
    run.pane.stroke(rim, "hole", WELD)
    if bead.restart == "dip":
        run.pane.disc(x, run.middle, run.half * 0.4, "hole", WELD)
