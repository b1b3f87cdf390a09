"""A bead seen from above: the plates, the bead with its edges, ripples and end."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import groupby

from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import places, rounded, wave
from weldwhy.drawing.pane import WELD, Pane, near


@dataclass(slots=True)
class Run:
    """A bead on its pane, from left to right; its edges column by column, both included."""

    pane: Pane
    middle: float
    half: float
    first: int
    last: int
    tops: list[int] = field(default_factory=list)
    bottoms: list[int] = field(default_factory=list)

    @property
    def length(self) -> int:
        """Dots from the first column to the last."""
        return max(self.last - self.first, 1)

    def x(self, along: float) -> float:
        """The column at a part of the length."""
        return self.first + along * self.length

    def y(self, along: float, across: float) -> float:
        """The row at a part of the width, -1 at the upper edge and 1 at the lower one."""
        at = min(max(near(along * self.length), 0), len(self.tops) - 1)
        top, bottom = self.tops[at], self.bottoms[at]
        return (top + bottom) / 2 + across * (bottom - top) / 2

    def spans(self) -> list[tuple[int, int, int, int]]:
        """Left, right, top and bottom of the bead where columns side by side are alike."""
        found, left = [], self.first
        for (top, bottom), alike in groupby(zip(self.tops, self.bottoms, strict=True)):
            right = left + len(list(alike)) - 1
            found.append((left, right, top, bottom))
            left = right + 1
        return found

    @property
    def crater(self) -> tuple[float, float]:
        """The middle of the last pool."""
        return max(self.last - self.half * 0.95, float(self.first)), self.y(0.98, 0)


def laid(bead: Bead, pane: Pane) -> Run:
    """Plates and bead painted on a bare pane; the run tells where it lies."""
    width, height = pane.width, pane.height
    share = 0.2 if bead.spatter or bead.strikes or bead.dust or bead.colour else 0.26
    half = max(min(height * share * bead.width, height * 0.45), 0.6)
    margin = max(near(width * 0.05), 1) if width > 4 else 0
    middle = (height - 1) * (0.26 if bead.strikes else 0.5)  # room for what was done beside it
    run = Run(pane, middle, half, margin, width - 1 - margin)
    pane.fill(0, 0, width - 1, height - 1, bead.plate)
    _joint(bead, run)
    _edges(bead, run)
    _zone(bead, run)
    for left, right, top, bottom in run.spans():
        pane.fill(left, top, right, bottom, "weld")
    if bead.runs >= 2:
        _side_by_side(bead, run)
    else:
        _ripples(bead, run, run.middle, half)
    _shadow(bead, run)
    return run


def _joint(bead: Bead, run: Run) -> None:
    """The line of the joint, still open before the bead and behind it."""
    if bead.joint == "plate":
        return
    wide = near(bead.gap * run.pane.height * 0.2)
    top = near(run.middle - wide / 2)
    run.pane.fill(0, top, run.pane.width - 1, top + wide, "hole")


def _edges(bead: Bead, run: Run) -> None:
    length, half = run.length, run.half
    for at in range(length + 1):
        along = at / length
        part = rounded(at + 0.4, half * 0.9) * rounded(length - at + 0.4, half * 1.1)
        swell = 1 + 0.45 * bead.varies * wave(along)
        under = 1 + 0.45 * bead.varies * wave(along, 2.0)
        swell *= 1 - 0.35 * bead.uneven
        under *= 1 + 0.35 * bead.uneven
        if bead.restart:
            swell = under = _restarted(bead, along, swell)
        drift = bead.wanders * half * 0.7 * wave(along * 0.7, 4.0)
        line = run.middle + drift
        run.tops.append(near(line - half * part * swell * _lap(bead, "left", along)))
        run.bottoms.append(near(line + half * part * under * _lap(bead, "right", along)))


def _restarted(bead: Bead, along: float, swell: float) -> float:
    reach = abs(along - 0.52) / 0.16
    if reach >= 1:
        return swell
    bump = (1 - reach * reach) ** 2
    if bead.restart == "lump":
        return swell * (1 + 0.5 * bump if along > 0.5 else 1 - 0.25 * bump)
    return swell * (1 - 0.5 * bump)


def _lap(bead: Bead, side: str, along: float) -> float:
    """How much farther the edge reaches where metal has rolled over the plate."""
    if bead.overlap not in (side, "both"):
        return 1.0
    return 1.2 + 0.3 * wave(along * 1.7, 6.0 if side == "left" else 7.0)


def _zone(bead: Bead, run: Run) -> None:
    """The heated zone; the colours of heat are painted over it later."""
    wide = near(run.pane.height * 0.085 * bead.heat)
    if bead.heated_through:
        run.pane.fill(0, 0, run.pane.width - 1, run.pane.height - 1, "heat")
    elif wide:
        for left, right, top, bottom in run.spans():
            run.pane.fill(left, top - wide, right, bottom + wide, "heat")


def _pitches(bead: Bead, run: Run, half: float) -> list[float]:
    """Where the ripples lie along the run."""
    pitch = max(half * 0.85, 4.0)
    if bead.ripple in ("coarse", "ropy", "chevron"):
        pitch = max(half * 1.35, 5.0)
    found, at, step = [], run.first + pitch * 0.8, 0
    while at < run.last + half:
        found.append(at)
        step += 1
        odd = wave(step * 0.13, 3.0) if bead.ripple == "uneven" else 0.0
        at += max(pitch * (1 + 0.75 * odd), 2.0)
    return found


def _ripples(bead: Bead, run: Run, middle: float, half: float) -> None:
    """The frozen rims of the pool, each bulging back to where the run began."""
    if bead.ripple == "none" or half < 1:
        return
    pitches = _pitches(bead, run, half)
    depth = {"ropy": 0.6, "chevron": 1.6}.get(bead.ripple, 0.9) * half
    for y in range(near(middle - half) + 1, near(middle + half)):
        off = min(abs(y - middle) / half, 1.0)
        bulge = off if bead.ripple == "chevron" else off * off
        for at in pitches:
            x = near(at + depth * (bulge - 0.4))
            if run.first < x <= run.last:
                place = x - run.first
                if run.tops[place] < y < run.bottoms[place]:
                    run.pane.rows[y][x] = "ripple"


def _side_by_side(bead: Bead, run: Run) -> None:
    """Several runs, with a valley between each two; a dark one where they are not joined."""
    count = max(min(int(bead.runs), near(run.half * 2) // 3), 2)
    each = run.half / count
    for step in range(count):
        _ripples(bead, run, run.middle - run.half + each * (2 * step + 1), each)
    valley = "hole" if bead.unfused == "runs" else "ripple"
    for step in range(1, count):
        for at in range(run.first, run.last + 1):
            along = (at - run.first) / run.length
            run.pane.dot(at, near(run.y(along, 2 * step / count - 1)), valley, WELD)


def _shadow(bead: Bead, run: Run) -> None:
    """The side away from the light: wider the higher the bead; the other side if it is hollow."""
    deep = near(run.half * 0.2 * bead.height + (0.35 if bead.toe == "steep" else 0.0))
    hollow = near(run.half * 0.55 * bead.hollow)
    for left, right, top, bottom in run.spans():
        if hollow:
            run.pane.fill(left, top, right, min(top + hollow - 1, bottom), "ripple")
        elif bottom > top + 2:
            run.pane.fill(left, max(bottom - deep + 1, top + 2), right, bottom, "ripple")
        if bead.hollow and not bead.cornered:
            # The walls of the groove stand up on both sides: one dark, one in the light.
            wall = max(near(run.half * 0.25), 1)
            run.pane.fill(left, top - wall, right, top - 1, "hole")
            run.pane.fill(left, bottom + 1, right, bottom + wall, "plate")
            run.pane.line(bottom + wall + 1, left, right, "ripple")


def drops(
    run: Run, count: int, seed: int, apart: float, rim: float
) -> list[tuple[float, float, float]]:
    """Places on the plate beside the bead, so far `apart`, `rim` from bead and pane's edge.

    The third number is a size from 0 to 1; where there is no room for all, there are fewer.
    """
    found: list[tuple[float, float, float]] = []
    for along, across, size in places(count, seed):
        x = (0.03 + 0.94 * along) * (run.pane.width - 1)
        side = across * 2 - 1
        at = min(max(near(x) - run.first, 0), len(run.tops) - 1)
        room = run.tops[at] if side < 0 else run.pane.height - 1 - run.bottoms[at]
        reach = rim + max(room - 2 * rim, 0) * abs(side) * 0.92
        y = run.tops[at] - 1 - reach if side < 0 else run.bottoms[at] + 1 + reach
        if all(max(abs(x - left), abs(y - top)) >= apart for left, top, _ in found):
            found.append((x, y, size))
    return found
