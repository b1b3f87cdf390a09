"""A bead cut through: the cut itself, and what is in it and on it."""

from __future__ import annotations

from weldwhy.drawing import beadbutt, beadfillet, beadsplit
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
    if bead.pores:
        radius = max(SIZES[bead.pore_size] * half * 0.55, 0.4)
        found = _spots(bead, made)
        if bead.pores in ("burrows", "tracks"):
            for x, y, _ in found:
                _burrow(bead, made, x, y)
        else:
            sown(pane, ((x, y, radius * (0.7 + 0.6 * size)) for x, y, size in found), WELD)
    if bead.slag == "trapped":
        for side in (-1, 1):
            x, y = made.x + side * half * 0.42, made.y
            pane.disc(x, y, max(half * 0.17, 0.9), "slag", WELD)
            pane.disc(x + side * half * 0.12, y + half * 0.1, half * 0.1, "slag", WELD)
    if bead.restart:
        # the new run lies on the end of the old one
        dip = (made.x, made.floor + made.deep * 0.2)
        ends = ((made.x - half * 0.8, made.floor), (made.x + half * 0.8, made.floor))
        pane.stroke([ends[0], dip, ends[1]], "ripple", WELD)
    if bead.specks:
        dull = bead.specks == "oxide"
        for along, across, _ in places(room(half * made.deep, 8, 5), 6):
            x, y = made.x + (along * 2 - 1) * half * 0.6, made.y + (across - 0.6) * half * 0.6
            end = (x + half * (0.3 if dull else 0.1), y + (0.6 if dull else 1.0))
            pane.stroke([(x, y), end], "slag" if dull else "hot", WELD)


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


def _burrow(bead: Bead, made: Cut, x: float, y: float) -> None:
    if bead.pores == "tracks":
        made.pane.disc(x, made.pane.top(near(x)), 0.5, "hole", METAL)
        return
    way = 1 if x >= made.x else -1
    reach = made.half * 0.42
    made.pane.stroke([(x, y), (x + way * reach, y - reach * 0.8)], "hole", WELD)


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
            pane.dot(x, top - 1, "slag" if bead.dust == "soot" else "hot")
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
