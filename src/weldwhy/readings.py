"""Measured settings as numbers: those told, and the travel speed that a measured bead gives."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from math import exp

from weldwhy import units
from weldwhy.arithmetic.bead import bead_area, fillet_area, travel_for_area
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.case import Case
from weldwhy.consumables import read as read_consumable
from weldwhy.engine.belief import Reading
from weldwhy.model import RuleBase
from weldwhy.units import Quantity, UnitError, two_digits
from weldwhy.windows import Found, distance

STEEPNESS, MIDDLE = 1.8, 1.62
"""Weight of "too high" is exp(STEEPNESS z - MIDDLE), z = distance past the window's middle."""
MOST_WEIGHT = 20.0
BEAD = frozenset({"leg", "bead_width", "bead_height", "wire_feed", "wire"})
"""What travel speed can be worked out from."""


def told(rules: RuleBase, measured: Mapping[str, str]) -> dict[str, Quantity | str]:
    """The measured settings as quantities; what cannot be read, or is text, stays text."""
    read: dict[str, Quantity | str] = {}
    for setting, value in measured.items():
        kind = rules.settings[setting].quantity if setting in rules.settings else "text"
        try:
            read[setting] = value if kind == "text" else units.parse(value, kind)
        except UnitError:
            read[setting] = value
    return read


def habit(rules: RuleBase, case: Case) -> str | None:
    """The unit system a person writes in: that of most quantities told; of equals, the latest."""
    said = [*told(rules, case.measured).values()]
    if case.thickness:
        with suppress(UnitError):
            said.append(units.parse(case.thickness, "length"))
    systems = [units.system_of(each) for each in said if isinstance(each, Quantity)]
    known = [system for system in systems if system]
    return max(reversed(known), key=known.count, default=None)


def worked_out(
    rules: RuleBase, process: str, measured: Mapping[str, str]
) -> dict[str, Quantity | str]:
    """The measured settings, with the travel speed that the bead's size gives if none was told."""
    read = told(rules, measured)
    speed = None if "travel" in read else _travel(rules, process, read)
    return read if speed is None else {**read, "travel": speed}


def size_of(consumable: Quantity | str | None) -> Quantity | None:
    """The size in what was told of a wire or rod, which may name its class too."""
    return read_consumable(consumable)[0] if isinstance(consumable, str) else consumable


def _travel(rules: RuleBase, process: str, read: Mapping[str, Quantity | str]) -> Quantity | None:
    """How fast the gun must have moved: the wire that went in is the metal of the bead."""
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


def reading(
    rules: RuleBase, setting: str, value: Quantity | str | None, found: Found | None
) -> Reading:
    """How a measured setting weighs on the causes that are its faults; on none without a window."""
    target = found.targets.get(setting) if found else None
    if target is None or not isinstance(value, Quantity):
        return Reading(setting, ())
    z = distance(value, target)
    weights = (
        (cause.id, _weight(z if cause.setting[1] == "too high" else -z))
        for cause in rules.causes.values()
        if cause.setting is not None and cause.setting[0] == setting
    )
    return Reading(setting, tuple(weights))


def _weight(z: float) -> float:
    # far outside the window the exponential means nothing; bound z first so it cannot overflow
    exponent = STEEPNESS * min(max(z, -10.0), 10.0) - MIDDLE
    return min(max(exp(exponent), 1.0 / MOST_WEIGHT), MOST_WEIGHT)
