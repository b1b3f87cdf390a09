"""A bead in the corner of two plates, cut through: T joint, lap or outside corner."""

from __future__ import annotations

from weldwhy.drawing.beadbutt import Cut
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.pane import Pane, near


def cut(bead: Bead, pane: Pane) -> Cut:
    """The cut painted on a bare pane."""
    size = min(pane.width, pane.height * 1.15)
    deep = max(near(size * 0.2), 2)
    leg = max(size * 0.42 * min(bead.width, 1.4), 1.5)
    level = leg * (1 + 0.55 * bead.uneven)
    upright = leg * (1 - 0.35 * bead.uneven)
    floor = pane.height - deep - max(near(size * 0.04), 0)
    if bead.joint == "lap":
        upright = leg = max(deep * 1.5, 2.0)
    corner = near((pane.width - level) / 2 + (deep / 2 if bead.joint == "fillet" else 0))
    _plates(bead, pane, corner, floor, deep, near(upright))
    made = Cut(
        pane, corner + level * 0.3, floor - upright * 0.3, (level + upright) / 2, deep,
        ((corner - 1, floor - upright - 1), (corner + level, floor)), (corner, floor), floor,
    )  # fmt: skip
    _fused(bead, made, corner, level, upright)
    _face(bead, made, corner, level, upright)
    _toes(bead, made, corner, level, upright)
    return made


def _plates(bead: Bead, pane: Pane, corner: int, floor: int, deep: int, tall: int) -> None:
    if bead.joint == "corner":
        pane.fill(1, floor - tall, corner - 1, floor - 1, "plate")
        pane.fill(corner, floor, corner + tall, pane.height - 1, "plate")
        pane.dot(corner - 1, floor - 1, "hole")
        return
    pane.fill(0, floor, pane.width - 1, floor + deep - 1, "plate")
    if bead.joint == "lap":
        pane.fill(0, floor - tall, corner - 1, floor - 1, "plate")
    else:
        pane.fill(corner - deep, 0, corner - 1, floor - 1, "plate")
    gap = near(bead.gap * deep)
    left = 0 if bead.joint == "lap" else corner - deep
    pane.fill(left, floor - max(gap, 1), corner - 1, floor - 1, "" if gap > 1 else "hole")


def _fused(bead: Bead, made: Cut, corner: int, level: float, upright: float) -> None:
    """What melted of both plates, and the heated zone behind it."""
    pane = made.pane
    deep = made.deep * 0.42 * bead.penetration
    zone = max(made.deep * 0.3, 1.0) * bead.heat
    metal = frozenset({"plate"})
    for paint, more in (("heat", zone), ("weld", 0.0)):
        on = metal if more else frozenset({"plate", "heat", "hole"})
        reach = deep + more
        for back in range(near(reach)):
            part = 1 - (back / reach) ** 1.5
            for up in range(near((upright + more * 0.5) * part) + 1):
                pane.dot(corner - 1 - back, made.floor - 1 - up, paint, on)
            left = corner - near(reach * 0.6 * part)
            for x in range(left, near(corner + (level + more * 0.5) * part)):
                pane.dot(x, made.floor + back, paint, on)
    if bead.root == "none":
        pane.line(made.floor - 1, corner - int(made.deep), corner + near(level * 0.2), "hole")
        pane.column(corner - 1, made.floor - near(upright * 0.3), made.floor - 1, "hole")


def _face(bead: Bead, made: Cut, corner: int, level: float, upright: float) -> None:
    """The metal outside both plates; its face bulges or is hollow."""
    bulge = 0.13 * bead.height - 0.5 * bead.hollow
    if bead.toe == "steep":
        bulge += 0.12
    for up in range(near(upright)):
        part = (up + 0.5) / upright
        reach = level * (1 - part + bulge * 2.2 * part * (1 - part))
        if reach > 0.3:
            made.pane.line(made.floor - 1 - up, corner, near(corner + reach) - 1, "weld")


def _toes(bead: Bead, made: Cut, corner: int, level: float, upright: float) -> None:
    pane = made.pane
    bite = max(made.deep * 0.42, 1.0)
    if bead.undercut in ("left", "both"):
        top = near(made.floor - upright)
        for back in range(near(bite)):
            tall = max(bite * 1.3 * (1 - back / bite), 1.0)
            pane.column(corner - 1 - back, top - near(tall), top - 1, "")
    if bead.undercut in ("right", "both"):
        for down in range(near(bite)):
            left = near(corner + level)
            pane.line(made.floor + down, left, left + near(bite * (1 - down / bite)), "")
    lip = max(level * 0.3, 2.0)
    if bead.overlap in ("right", "both"):
        left = near(corner + level * 0.75)
        high = max(near(upright * 0.22), 1)
        for up in range(high):
            right = near(corner + level + lip * (1 - up / high / 2))
            pane.line(made.floor - 1 - up, left, right, "weld")
        pane.line(made.floor, near(corner + level), near(corner + level + lip) - 1, "hole")
    if bead.overlap in ("left", "both"):
        top = near(made.floor - upright - lip * 0.6)
        pane.fill(corner, top, corner + max(near(level * 0.15), 1), top + near(lip), "weld")
        pane.column(corner - 1, top, top + near(lip * 0.7), "hole")
    if bead.unfused in ("left", "both"):
        pane.column(corner - 1, near(made.floor - upright), made.floor - 1, "hole")
    if bead.unfused in ("right", "both"):
        pane.line(made.floor, corner, near(corner + level) - 1, "hole")
