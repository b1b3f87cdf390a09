"""What lies on a bead or beside it: slag, soot, rust, spatter, burnt spots, colours, specks."""

from __future__ import annotations

from weldwhy.drawing.beadabove import Run, drops
from weldwhy.drawing.beadgas import room
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import grain, places, rounded, wave
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
            "ripple" if paint in _PLATES and part < 0.1 else paint
            for paint, part in zip(row, grains, strict=True)
        ]


def flange(pane: Pane) -> None:
    """A casting is seldom a plain plate: round corners, and a bolt hole in each."""
    radius = max(pane.height * 0.085, 1.0)
    corner = near(radius)
    for left in (True, False):
        x = radius * 2.2 if left else pane.width - 1 - radius * 2.2
        for upper in (True, False):
            y = radius * 1.2 if upper else pane.height - 1 - radius * 1.2
            pane.disc(x, y, radius, "ripple", _PLATES)
            pane.disc(x, y, radius * 0.5, "hole", _RINGS)
            for off in range(corner):
                first = 0 if left else pane.width - corner + off
                line = off if upper else pane.height - 1 - off
                pane.line(line, first, first + corner - off - 1, "")


_RINGS = frozenset({"ripple"})


def dust(bead: Bead, run: Run) -> None:
    """Soot, powder or rust, thick at the bead and thin farther out."""
    if bead.dust == "rust":
        _rust(run)
    elif bead.dust:
        soot = bead.dust == "soot"
        reach = run.half * (1.5 if soot else 1.2)
        for y in range(run.pane.height):
            off = (abs(y - run.middle) - run.half) / reach
            share = (0.4 if soot else 0.5) if off < 0 else 0.9 * (1 - off)
            _strewn(run, y, share, "slag" if soot else "pale", () if soot else _wiped(run))
        if not soot:
            _finger(run)


def _wiped(run: Run) -> tuple[int, ...]:
    """The columns that a finger has wiped clean, right across the bead."""
    half = max(near(run.half * 0.6), 1)
    middle = near(run.x(0.6))
    return tuple(range(middle - half, middle + half + 1))


def _finger(run: Run) -> None:
    """The finger at the end of what it has wiped."""
    columns, foot = _wiped(run), run.pane.height - 1
    half = len(columns) / 2
    tip = run.middle + run.half * 0.5
    for at, x in enumerate(columns):
        top = near(tip + half * (1 - rounded(min(at, len(columns) - 1 - at) + 0.6, half)))
        run.pane.column(x, top, foot, "heat")
    nail = max(near(half * 0.45), 1)
    for x in columns[nail:-nail]:
        run.pane.column(x, near(tip) + 1, near(tip) + nail, "plate")


def _strewn(run: Run, y: int, share: float, paint: str, but: tuple[int, ...] = ()) -> None:
    """A part of the dots of a row painted, without a visible order; some columns stay clean."""
    if share > 0:
        row, grains = run.pane.rows[y], grain(y, run.pane.width)
        for x in range(run.first, run.last + 1):
            if grains[x] < share and row[x] in METAL and x not in but:
                row[x] = paint


def _rust(run: Run) -> None:
    """Ragged patches on bead and plate, some eaten into pits, and what ran down from them."""
    pane, foot = run.pane, run.pane.height - 1
    for step, (along, across, size) in enumerate(places(13, 4)):
        along = (step + along) / 13
        x, y = run.x(along), run.y(along, (across * 2 - 1) * 1.3)
        radius = run.half * (0.2 + 0.35 * size)
        pane.disc(x, y, radius, "heat")
        pane.disc(x + radius, y + radius * 0.6, radius * 0.6, "heat")
        if step % 2 == 0:
            pane.column(near(x), near(y), near(y + (foot - y) * (0.5 + 0.5 * size)), "heat")
        if step % 4 == 0:
            pane.disc(x, y, run.half * 0.12, "hole")


def thrown(bead: Bead, run: Run) -> None:
    """Drops of metal on the plate; burnt spots with a tail where the arc was struck."""
    if bead.spatter:
        count = room(run.pane.width * run.pane.height, 16, 34 if bead.spatter == "much" else 10)
        for x, y, size in drops(run, count, 1, max(run.half * 0.45, 2.0), 0.0):
            radius = run.half * (0.12 + 0.4 * size * size)
            if radius > 1:
                run.pane.disc(x + 0.7, y + 0.7, radius, "ripple", _PLATES)
            run.pane.disc(x, y, radius, "hot")
    if bead.strikes:
        _strikes(run, 3 if bead.strikes == "much" else 2)


def _strikes(run: Run, count: int) -> None:
    """Scratches in the plate, burnt where the arc lit; the rod stands on the last of them."""
    pane, top = run.pane, max(run.bottoms) + 2
    free = pane.height - top
    radius = max(free * 0.17, 1.0)
    for step in range(count):
        x = pane.width * (0.13 + 0.25 * step)
        y = top + free * (0.34 if step % 2 else 0.5)
        start = (x - radius * 3, y - radius * 1.2)
        pane.stroke([start, (x, y)], "slag", _PLATES)
        lit = step == count - 1
        pane.disc(x, y, radius * 1.25, "hot" if lit else "slag", _PLATES)
        if not lit:
            pane.disc(x, y, radius * 0.6, "hole")
    _rod(pane, x, y, radius)


def _rod(pane: Pane, x: float, y: float, radius: float) -> None:
    """A rod that comes in from the right, with sparks at its end."""
    for across, down in ((0.2, -2.4), (-1.7, -1.6), (-1.8, 1.3), (0.2, 2.4)):
        pane.stroke([(x, y), (x + across * radius, y + down * radius)], "hot", _PLATES)
    slope = 0.35
    for at in range(near(x + radius * 0.9), pane.width):
        level = near(y - (at - x) * slope)
        thick = max(near(radius * 0.9), 1)
        pane.column(at, level - thick, level + thick, "heat")
        pane.column(at, level - thick // 2, level + thick // 2, "weld")


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
