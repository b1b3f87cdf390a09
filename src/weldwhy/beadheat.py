"""The heat that a measured bead took: from its volts, its amps and how fast the gun moved."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic.arc import heat_input
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.consumables import size_of
from weldwhy.model import RuleBase
from weldwhy.pairing import amps_at
from weldwhy.units import Quantity, two_digits
from weldwhy.windows import Found

Read = Mapping[str, Quantity | str]


def bead_heat(rules: RuleBase, process: str, read: Read, found: Found | None) -> Quantity | None:
    """Heat input of a bead, kJ/mm; None unless volts, amps and travel are told or follow.

    Amps that were not read off a display are those at which the wire in use melts at its feed.
    """
    volts, travel = read.get("volts"), read.get("travel")
    amps, factors = _amps(read, found), rules.tables.get("heat-factor")
    if not isinstance(volts, Quantity) or not isinstance(travel, Quantity) or amps is None:
        return None
    if factors is None or process not in factors.rows:
        return None
    try:
        heat = heat_input(volts.value, amps.value, travel.value, factors.value(process))
    except Impossible:
        return None
    unit = "kJ/in" if travel.unit == "in/min" else "kJ/mm"
    return two_digits(Quantity("heat", float(heat), unit))


def _amps(read: Read, found: Found | None) -> Quantity | None:
    told, feed, wire = read.get("amps"), read.get("wire_feed"), size_of(read.get("wire"))
    if isinstance(told, Quantity):
        return told
    if found is None or wire is None or not isinstance(feed, Quantity):
        return None
    return amps_at(found, wire, feed)
