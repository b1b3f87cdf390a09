"""A bead on level plates, cut through: plates, fused metal, cap and root."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import cap, groove, nugget
from weldwhy.drawing.pane import WELD, Pane, near


@dataclass(frozen=True, slots=True)
class Cut:
    """Where the parts of a cut lie on its pane, in dots."""

    pane: Pane
    x: float
    """The middle of the bead."""
    y: float
    half: float
    """Half the width of the bead, or the leg of a fillet."""
    deep: float
    """How thick the plate is."""
    toes: tuple[tuple[float, float], tuple[float, float]]
    """The edges of the bead, left and right: the first dots of plate outside it."""
    root: tuple[float, float]
    floor: int
    """The row of the lower plate's face."""


_CAP = 0.17
"""How high a sound cap stands, in parts of the pane's height."""
_HANGS = {"drops": 0.08, "whiskers": 0.14}
"""How much room what hangs from a root needs below the plates, more than a sound one."""


def cut(bead: Bead, pane: Pane) -> Cut:
    """The cut painted on a bare pane."""
    height, width = pane.height, pane.width
    lower, thinner = _room(bead)
    deep = max(near(height * (0.48 - 0.2 * bead.bend - thinner)), 2)
    face = near(height * (0.28 + max(_CAP * bead.height - 0.24, 0.0) + lower))
    half = max(min(height * 0.6, width * 0.26) * bead.width, 1.0)
    middle = (width - 1) / 2
    margin = 1 if width > 20 else 0
    if bead.heated_through:  # the part stands clear of the furnace round about it
        margin = max(near(width * 0.09), margin)
    plate = "heat" if bead.heated_through else bead.plate
    pane.fill(margin, face, width - 1 - margin, face + deep - 1, plate)
    made = Cut(
        pane, middle, face + deep * 0.35, half, deep,
        ((middle - half - 1, face), (middle + half + 1, face)),
        (middle, face + deep - 1), face,
    )  # fmt: skip
    _gap(bead, made, face)
    depths = _depths(bead, made)
    zone = max(height * 0.1, 1.0) * bead.heat
    for down in range(min(len(depths) + near(zone * 0.6), deep)):
        reach = depths[min(down, len(depths) - 1)] + zone
        if down >= len(depths):
            reach *= 1 - (down - len(depths) + 1) / (zone + 1)
        left = max(near(middle - reach), margin)
        pane.line(face + down, left, width - 1 - left, "heat")
    for down, reach in enumerate(depths):
        pane.line(face + down, near(middle - reach), near(middle + reach), "weld")
    if len(depths) < deep:
        _gap(bead, made, face + len(depths))
    _cap(bead, made)
    _root(bead, made, len(depths) >= deep)
    _toes(bead, made)
    _rims(bead, made)
    _between(bead, made)
    return made


def _room(bead: Bead) -> tuple[float, float]:
    """How much lower and how much thinner the plates are drawn, for what is round about them."""
    if bead.heated_through:
        return 0.06, 0.2
    if bead.specks == "tungsten" or bead.late:
        return 0.22, 0.08
    below = _HANGS.get(bead.root, 0.0) if bead.seen == "behind" else 0.0
    return -below, 1.5 * below


_WIRES = ((-0.5, -0.9, 0.7), (-0.15, -0.35, 1.0), (0.15, 0.2, 0.75), (0.5, 0.8, 0.95))
"""Ends of wire under a root: where each begins, how it leans, and how far down it reaches."""


def _gap(bead: Bead, made: Cut, top: int) -> None:
    """The joint from a row down to the root; a tight one is a dark line."""
    if bead.joint == "plate":
        return
    gap = near(bead.gap * made.deep * 0.7)
    left = near(made.x - gap / 2)
    bottom = made.floor + int(made.deep) - 1
    made.pane.fill(left, top, left + gap, bottom, "hole" if gap < 2 else "")


def _depths(bead: Bead, made: Cut) -> list[float]:
    """Half the width of what melted, row by row from the face down."""
    deep = int(made.deep)
    melted = bead.penetration * 0.62 if bead.joint == "plate" else bead.penetration
    if bead.root == "none":
        melted = min(melted, 0.6)
    if melted >= 1:
        wide = 1 + 0.15 * (melted - 1)
        return [made.half * wide * groove(down / deep) for down in range(deep)]
    rows = max(near(deep * melted), 1)
    return [made.half * nugget(down / rows) for down in range(rows)]


def _cap(bead: Bead, made: Cut) -> None:
    pane, half = made.pane, made.half
    if bead.hollow:
        rows = max(near(bead.hollow * made.deep * 0.5), 1)
        for down in range(rows):
            reach = half * nugget(down / rows) + 0.4
            pane.line(made.floor + down, near(made.x - reach), near(made.x + reach), "")
        return
    high = pane.height * _CAP * bead.height
    for up in range(1, near(high) + 1):
        reach = half * cap((up - 0.5) / high, bead.toe == "steep")
        pane.line(made.floor - up, near(made.x - reach), near(made.x + reach), "weld")


def _root(bead: Bead, made: Cut, through: bool) -> None:
    pane, half, under = made.pane, made.half, made.floor + int(made.deep)
    if not through:
        return
    if bead.root == "sucked":
        for up in range(1, max(near(made.deep * 0.28), 1) + 1):
            reach = half * 0.4 * (1 - (up - 1) / (made.deep * 0.4))
            pane.line(under - up, near(made.x - reach), near(made.x + reach), "")
        return
    if bead.root == "whiskers":
        _wires(made, under)
        return
    high = pane.height * {"drops": 0.36, "sugared": 0.16}.get(bead.root, 0.07)
    wide = half * {"drops": 0.52, "sugared": 0.6}.get(bead.root, 0.42)
    paint = "slag" if bead.root == "sugared" else "weld"
    for down in range(max(near(high), 1)):
        reach = wide * cap((down + 0.5) / max(high, 1), bead.root == "drops")
        pane.line(under + down, near(made.x - reach), near(made.x + reach), paint)
    if bead.root == "sugared":
        for step in range(-2, 3):
            x = made.x + step * wide * 0.42
            pane.disc(x, under + high * (0.5 if step % 2 else 0.9), high * 0.3, "slag")
            pane.dot(near(x + 1), under + near(high * 0.3), "hole", frozenset({"slag"}))
    elif bead.root == "one-edge":
        foot = near(made.deep * 0.45)
        pane.fill(near(made.x - half), under - foot, near(made.x) - 1, under - 1, "plate")
        pane.fill(0, under, near(made.x) - 1, pane.height - 1, "")
        pane.column(near(made.x), under - foot, under - 1, "hole")


def _wires(made: Cut, under: int) -> None:
    """Ends of wire, straight and all of one thickness, that stick out of a flat root."""
    long = made.pane.height - 1 - under
    for begin, lean, part in _WIRES:
        foot = near(made.x + begin * made.half)
        reach = near(long * part)
        made.pane.stroke([(foot, under), (foot + lean * reach, under + reach)], "weld")


def _toes(bead: Bead, made: Cut) -> None:
    pane = made.pane
    for side, (x, y), way in (("left", made.toes[0], -1), ("right", made.toes[1], 1)):
        if bead.undercut in (side, "both"):
            deep = max(made.deep * 0.4, 1.0)
            for down in range(near(deep)):
                reach = max(made.half * 0.4, 1.0) * (1 - down / deep)
                far = near(x + way * (reach - 1))
                pane.line(near(y) + down, min(near(x), far), max(near(x), far), "")
            pane.dot(near(x), near(y + deep), "hole")
        if bead.overlap in (side, "both"):
            high = max(pane.height * 0.11, 1.0)
            for up in range(near(high)):
                reach = max(made.half * 0.42, 2.0) * (0.75 if up == 0 and high >= 3 else 1.0)
                far = near(x + way * reach * (1 - (up / high) ** 2 * 0.5))
                pane.line(near(y) - 1 - up, min(near(made.x), far), max(near(made.x), far), "weld")
            far = near(x + way * max(made.half * 0.38, 1.0))
            pane.line(near(y), min(near(x), far), max(near(x), far), "hole")


def _rims(bead: Bead, made: Cut) -> None:
    """A side of the groove that the bead only lies against."""
    for side, way in (("left", -1), ("right", 1)):
        if bead.unfused in (side, "both"):
            for down in range(near(made.deep * 0.08), near(made.deep * 0.9)):
                reach = made.half * groove(down / made.deep)
                x = near(made.x + way * reach)
                made.pane.line(made.floor + down, x, x + (made.half > 7), "hole")


def _between(bead: Bead, made: Cut) -> None:
    """Where one run lies on another; a dark line if they did not melt together."""
    if bead.runs < 2:
        return
    paint = "hole" if bead.unfused == "runs" else "ripple"
    count, pane = int(bead.runs), made.pane
    low = made.floor + near(made.deep * 0.42)
    for step in range(1, count):
        x = made.x + made.half * (2 * step / count - 1)
        top = pane.top(near(x))
        pane.dot(near(x), top, "")
        pane.stroke([(x, top + 1), (x + (made.x - x) * 0.3, low)], paint, WELD)
    reach = made.half * 0.66
    sag = made.deep * 0.16
    pane.stroke([(made.x - reach, low), (made.x, low + sag), (made.x + reach, low)], paint, WELD)
