"""The travel speed that the size of a bead tells: so much wire went into so long a bead."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic.bead import bead_area, fillet_area, travel_for_area
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.consumables import size_of
from weldwhy.model import RuleBase
from weldwhy.units import Quantity, two_digits


def travel_of_bead(
    rules: RuleBase, process: str, read: Mapping[str, Quantity | str]
) -> Quantity | None:
    """How fast the gun must have moved: the wire that went in is the metal of the bead.

    None unless wire, feed and the size of the bead are known, and how much of the wire stays.
    """
    feed, size = read.get("wire_feed"), size_of(read.get("wire"))
    share, area = share_laid(rules, process), _area(rules, read)
    if not isinstance(feed, Quantity) or size is None or share is None or area is None:
        return None
    try:
        speed = float(travel_for_area(area, feed.value, size.value, share))
    except Impossible:
        return None
    return two_digits(Quantity("speed", speed, "in/min" if feed.unit == "ipm" else "mm/s"))


def share_laid(rules: RuleBase, process: str) -> float | None:
    """Share of a wire's volume that becomes weld: less what is lost, and a cored wire's core.

    None where the rules hold no figure of how much stays.
    """
    stays = rules.tables.get("deposition-efficiency")
    if stays is None or process not in stays.rows:
        return None
    return stays.value(process) * weight_share(rules, process)


def weight_share(rules: RuleBase, process: str) -> float:
    """Weight of a wire against a solid one of its size: below 1 for a cored wire."""
    weights = rules.tables.get("wire-weight")
    rows = [row for row in weights.rows if row.split()[0] == process] if weights else []
    return min((weights.value(row) for row in rows), default=1.0) if weights else 1.0


def fillet_section(rules: RuleBase, leg: float) -> float:
    """Section of a fillet in mm2: the triangle, and what a rounded face holds besides."""
    face = rules.tables.get("rounded-face")
    return float(fillet_area(leg, leg)) * (face.value("fillet") if face else 1.0)


def _area(rules: RuleBase, read: Mapping[str, Quantity | str]) -> float | None:
    leg, width, height = (read.get(name) for name in ("leg", "bead_width", "bead_height"))
    try:
        if isinstance(leg, Quantity):
            return fillet_section(rules, leg.value)
        if isinstance(width, Quantity) and isinstance(height, Quantity):
            return bead_area(width.value, height.value)
    except Impossible:
        return None
    return None
