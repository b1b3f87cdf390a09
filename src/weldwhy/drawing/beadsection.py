"""A bead cut through: the cut itself, and what is in it and on it."""

from __future__ import annotations

from weldwhy.drawing import beadbutt, beadfillet, beadround, beadsplit
from weldwhy.drawing.beadbutt import Cut
from weldwhy.drawing.beadgas import COUNTS, SIZES, room, sown
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import places
from weldwhy.drawing.beadskin import BANDS, casting
from weldwhy.drawing.pane import METAL, WELD, Pane, near


def paint(bead: Bead, pane: Pane) -> Pane:
    """The cut on a bare pane."""
    made = (beadfillet if bead.cornered else beadbutt).cut(bead, pane)
    _skin(bead, made)
    _missing(bead, made)
    if bead.heated_through:
        beadround.furnace(made)
    if bead.late:
        beadround.clock(made)
    if bead.metal == "cast":
        casting(pane)
    _inside(bead, made)
    for where in bead.cracks:
        beadsplit.crack(where, made)
    if bead.holes:
        beadsplit.hole(made)
    if bead.broken:
        beadsplit.broken(made)
    if bead.crater != "filled":
        beadsplit.crater(bead, made)
    if bead.tacks == "cracked":
        beadsplit.crack("centre", made)
    if bead.bend:
        (_leant if bead.cornered else _bent)(bead, made)
    return pane


def _inside(bead: Bead, made: Cut) -> None:
    """Pores, slag and specks in the metal."""
    pane, half = made.pane, made.half
    if bead.pores in ("burrows", "tracks"):
        _burrows(bead, made)
    elif bead.pores:
        radius = max(SIZES[bead.pore_size] * half * 0.55, 0.4)
        found = _spots(bead, made)
        sown(pane, ((x, y, radius * (0.7 + 0.6 * size)) for x, y, size in found), WELD)
    if bead.slag == "trapped":
        for across, down, long in ((-0.5, 0.1, 0.42), (0.3, -0.25, 0.3), (0.12, 0.42, 0.25)):
            x, y, reach = made.x + across * half, made.y + down * half, max(long * half, 1.0)
            thick = max(near(half * 0.12), 1)
            for line in range(3 * thick):
                part = (0.5, 1.0, 0.75)[line // thick]
                for at in range(near(x - reach * part), near(x + reach * part * 0.8) + 1):
                    pane.dot(at, near(y) - thick + line, "slag", WELD)
    if bead.restart:
        # the new run lies on the end of the old one
        dip = (made.x, made.floor + made.deep * 0.2)
        ends = ((made.x - half * 0.8, made.floor), (made.x + half * 0.8, made.floor))
        pane.stroke([ends[0], dip, ends[1]], "ripple", WELD)
    if bead.specks == "oxide":
        _skins(made)
    elif bead.specks:
        beadround.electrode(made)
        _splinter(made)


def _skins(made: Cut) -> None:
    """Skins of oxide: on both faces of the plates, and folded into the bead from its toes."""
    pane, half, deep = made.pane, made.half, made.deep
    for face in (made.floor, made.floor + int(deep) - 1):
        for x in range(pane.width):
            pane.dot(x, face, "tint", METAL - WELD)
    for fold in _FOLDS:
        line = [(made.x + across * half, made.floor + down * deep) for across, down in fold]
        pane.stroke(line, "tint", WELD)


_FOLDS = (
    ((-1.0, 0.0), (-0.6, 0.05), (-0.5, 0.5), (-0.2, 0.8), (-0.05, 0.5), (-0.15, 0.25)),
    ((1.0, 0.0), (0.7, 0.05), (0.3, 0.3), (0.45, 0.55), (0.2, 0.8)),
)
"""How skins lie in a bead, in parts of its half width and of the plate's thickness."""


def _splinter(made: Cut) -> None:
    """A bright point with sharp corners, shut up in the metal with a dark rim about it."""
    pane, half, deep = made.pane, made.half, made.deep
    x, y = near(made.x - half * 0.4), near(made.floor + deep * 0.4)
    long, thick = max(half * 0.9, 3.0), float(beadround.thickness(made))
    for more, paint in ((1, "ripple"), (0, "pale")):
        for at in range(-more, near(long) + 1 + more):
            reach = near(thick * (1 - max(at, 0) / long)) + more
            pane.column(x + at, y - reach, y + reach, paint)


def _spots(bead: Bead, made: Cut) -> list[tuple[float, float, float]]:
    if bead.pores == "line":
        x, y = made.root
        return [(x, y - made.half * 0.25, 0.6)]
    count = room(made.half * made.deep, 3, COUNTS[bead.pore_count] // 2)
    low = 0.35 if bead.pores == "deep" else 0.0
    half = made.half
    return [
        (made.x + (along * 2 - 1) * half * 0.75, made.y + (across - 0.55 + low) * half, size)
        for along, across, size in places(count, 3)
    ]


def _burrows(bead: Bead, made: Cut) -> None:
    """Burrows come up from the root and spread; tracks are only pits in the face."""
    pane, half = made.pane, made.half
    for across in (-0.6, -0.2, 0.2, 0.6) if half > 11 else (-0.5, 0.5):
        x = made.x + across * half
        if bead.pores == "tracks":
            pane.disc(x, pane.top(near(x)), 0.5, "hole", METAL)
        else:
            foot = made.x + across * half * 0.4, made.root[1] - made.deep * 0.3
            top = x, made.floor + made.deep * 0.1
            middle = (foot[0] + top[0]) / 2 + half * 0.1, (foot[1] + top[1]) / 2
            pane.stroke([foot, middle, top], "hole", WELD)


def _skin(bead: Bead, made: Cut) -> None:
    """What lies on the faces: slag, soot, powder, rust, drops; the colours of heat in them."""
    if bead.strikes:
        spot = near(made.toes[1][0] + made.half * 0.8)
        top = made.pane.top(spot)
        made.pane.fill(spot - 1, top, spot + 1, top + near(made.deep * 0.12), "slag")
    if not (bead.slag or bead.colour or bead.dust or bead.spatter):
        return
    left, right = made.toes[0][0], made.toes[1][0]
    for x in range(made.pane.width):
        top = made.pane.top(x)
        if top < made.pane.height:
            _layer(bead, made, x, top, max(left - x, x - right))


def _layer(bead: Bead, made: Cut, x: int, top: int, away: float) -> None:
    """One column of the skin; `away` is how far it lies from the bead, less than 0 on it."""
    pane, on_bead = made.pane, away < 0
    thick = max(near(pane.height * 0.06), 1)
    if _slagged(bead, made, x, away):
        pane.column(x, top - thick, top - 1, "slag")
    if bead.colour and 0 <= away < made.half * 1.3:
        pane.column(x, top, top + thick - 1, BANDS[bead.colour][away > made.half * 0.6])
    if bead.dust and away < made.half and (x * 5) % 7 < (5 if on_bead else 3):
        if bead.dust == "rust":
            pane.column(x, top, top + thick - 1, "heat")
        else:
            pane.dot(x, top - 1, "slag" if bead.dust == "soot" else "pale")
    if bead.spatter and away > 1 and (x * 7) % (5 if bead.spatter == "much" else 11) == 0:
        pane.disc(x, top - 0.6, 0.06 * pane.height * (0.3 + (x * 0.618) % 1), "hot")


def _slagged(bead: Bead, made: Cut, x: int, away: float) -> bool:
    if bead.slag == "toes":
        return abs(away) < max(made.half * 0.22, 1.2)
    return away < 0 and (bead.slag == "cover" or (bead.slag == "patches" and x % 7 < 3))


def _leant(bead: Bead, made: Cut) -> None:
    """The upright pulled over towards the bead; rows are moved, heights stay."""
    pane = made.pane
    for y in range(min(made.floor, pane.height)):
        off = min(near((made.floor - y) * 0.4 * bead.bend), pane.width)
        pane.rows[y] = [""] * off + pane.rows[y][: pane.width - off]


def _bent(bead: Bead, made: Cut) -> None:
    """Plates folded up towards the bead; columns are moved, lengths across stay."""
    pane = made.pane
    level = near(made.floor + made.deep)
    middle = (pane.width - 1) / 2
    most = pane.height * 0.42 * bead.bend
    stiff = middle * 0.3
    columns = [list(column) for column in zip(*pane.rows, strict=True)]
    for x, column in enumerate(columns):
        up = near(most * max(abs(x - middle) - stiff, 0) / max(middle, 1)) - near(most * 0.2)
        rest = pane.height - abs(up)
        bare = [""] * (pane.height - rest)
        columns[x] = column[up:] + bare if up >= 0 else bare + column[:rest]
    pane.rows = [list(row) for row in zip(*columns, strict=True)]
    dashes(pane, (0, level), (pane.width - 1, level))


def _missing(bead: Bead, made: Cut) -> None:
    """Where a face lies too low: how high a flush one would be."""
    if bead.hollow:
        ends = made.toes
        if not bead.cornered:
            ends = ((ends[0][0], made.floor), (ends[1][0], made.floor))
        dashes(made.pane, *ends)


def dashes(pane: Pane, start: tuple[float, float], end: tuple[float, float]) -> None:
    """What should be there and is not, where nothing is: a line of dashes."""
    (x, y), (to_x, to_y) = start, end
    count = max(near(max(abs(to_x - x), abs(to_y - y))), 1)
    dash = max(pane.height // 12, 1)
    for step in range(count + 1):
        if step // dash % 2 == 0:
            part = step / count
            at = near(x + (to_x - x) * part), near(y + (to_y - y) * part)
            pane.dot(*at, "ripple", frozenset({""}))
