"""Holes in a bead seen from above: pores, burrows, the crater's pipe, and holes right through."""

from __future__ import annotations

from collections.abc import Iterable
from math import pi, sin

from weldwhy.drawing.beadabove import Run
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import places
from weldwhy.drawing.pane import METAL, WELD, Pane, near, spot

COUNTS = {"few": 6, "some": 14, "many": 48}
SIZES = {"fine": 0.10, "middle": 0.17, "coarse": 0.28}
"""Radius of a pore in parts of half the bead's width."""


def room(dots: float, each: float, count: int) -> int:
    """At most so many marks as there is room for, each taking so many dots; never fewer than 3."""
    return min(count, max(int(dots / each), 3))


def pores(bead: Bead, run: Run) -> None:
    """The holes that show on the face."""
    radius = SIZES[bead.pore_size] * run.half
    if bead.pores in ("burrows", "tracks"):
        _burrows(bead, run)
        return
    holes = [
        (run.x(along), run.y(along, across), radius * (0.7 + 0.6 * size))
        for along, across, size in spots(bead, run.length, run.half)
    ]
    sown(run.pane, holes, METAL)


def sown(pane: Pane, holes: Iterable[tuple[float, float, float]], on: frozenset[str]) -> None:
    """Round holes, each apart from those before it; one that would touch them is left out."""
    done: list[tuple[int, int, float]] = []
    for x, y, radius in holes:
        at, line, reach = near(x), near(y), spot(radius)
        if all(
            max(abs(at - other), abs(line - row)) >= reach + far + 1 for other, row, far in done
        ):
            done.append((at, line, reach))
            pane.disc(at, line, radius, "hole", on)


def spots(bead: Bead, length: float, half: float) -> list[tuple[float, float, float]]:
    """Where pores lie: part of the length, part of half the width, size."""
    count = COUNTS[bead.pore_count]
    if bead.pores == "line":
        count = room(length, 2.2, count)
        return [((step + 0.7) / count * 0.92, 0.0, 0.5) for step in range(count)]
    count = room(length * half, 2, count)
    found = []
    for begin, end, seed in _REACHES.get(bead.pores, ()):
        for along, across, size in places(count, seed):
            found.append((begin + along * (end - begin), (across * 2 - 1) * 0.68, size))
    return found


_REACHES = {
    "scattered": ((0.04, 0.96, 0),), "start": ((0.02, 0.2, 0),), "end": ((0.8, 0.97, 1),),
    "ends": ((0.02, 0.2, 0), (0.8, 0.97, 1)),
}  # fmt: skip
"""Which parts of the run pores lie in; those that lie deep show nowhere."""


def _burrows(bead: Bead, run: Run) -> None:
    """Long holes that wind like worms, to one side of the middle and the other by turns.

    Tracks lie in the face and go along it; burrows come up from below, and lean outwards.
    """
    long = max(near(run.half * 1.6), 6)
    lean = 0.0 if bead.pores == "tracks" else 0.12 * run.half
    sway = max(run.half * 0.25, 1.0)
    count = min(max(int(run.length / (long * 0.85)), 2), COUNTS[bead.pore_count])
    for step in range(count):
        side = 1 if step % 2 else -1
        first = near(run.first + (step + 0.5) / count * run.length - long / 2)
        middle = near(run.y((step + 0.5) / count, 0.42 * side))
        line = [
            (first + at, middle + side * lean * (2 * part - 1) - sway * sin(2 * pi * part))
            for at in range(long)
            for part in (at / (long - 1),)
        ]
        run.pane.stroke(line, "hole", METAL)
        for x, y in line:
            run.pane.disc(x, y, run.half * 0.12, "hole", METAL)


def end(bead: Bead, run: Run) -> None:
    """The last pool: filled, hollow, or hollow with a pipe that goes deep."""
    if bead.crater == "filled":
        return
    x, y = run.crater
    run.pane.disc(x, y, run.half * 0.9, "ripple", WELD)
    if bead.crater == "hollow":
        run.pane.disc(x, y, run.half * 0.9 - 1, "weld", WELD)
    else:
        run.pane.disc(x, y, max(run.half * 0.34, 0.9), "hole", METAL)


def holes(bead: Bead, run: Run) -> None:
    """Where the pool fell through: a hole with a thick round rim, scorched about it."""
    count = int(bead.holes)
    for step in range(count):
        along = (step + 0.5) / count * 0.9 + 0.04
        size = run.half * (0.85 + 0.3 * ((step * 0.618) % 1))
        x, y = run.x(along), run.middle
        run.pane.disc(x, y, size + max(run.half * 0.45, 1), "heat", frozenset({"plate"}))
        run.pane.disc(x, y, size + max(run.half * 0.22, 1), "ripple")
        run.pane.disc(x, y, size, "hole")
