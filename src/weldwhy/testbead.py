"""The test bead after the set-up: what to run, what a sound one looks like, what it measures."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy.arithmetic.bead import fillet_throat, travel_for_area
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.beadtravel import fillet_section, share_laid
from weldwhy.model import Caution, RuleBase, Table
from weldwhy.setupmodel import Setup
from weldwhy.steps import cautions
from weldwhy.suiting import Situation, holding
from weldwhy.units import Quantity, Target, two_digits


@dataclass(frozen=True, slots=True)
class Bead:
    """A test bead; its cautions are shown before it. Leg and throat only where it is a fillet."""

    run: str
    sound: str
    source: str
    cautions: tuple[Caution, ...] = ()
    leg: Target | None = None
    throat: Target | None = None


def bead(rules: RuleBase, setup: Setup, work: Situation, system: str | None) -> Bead | None:
    """The first test bead that fits the work, with the leg and the throat of a fillet."""
    line = next(iter(holding(setup.test_beads, work)), None)
    if line is None:
        return None
    leg = _leg(rules, work, system) if line.fillet else None
    throat = None
    if leg is not None:
        throat = Target(*(_rule(fillet_throat(q.value), q.unit) for q in _ends(leg)))
    return Bead(line.run, line.sound, line.source, cautions(rules, line.cautions), leg, throat)


def _leg(rules: RuleBase, work: Situation, system: str | None) -> Target | None:
    table = rules.tables.get("fillet-leg")
    if table is None or work.thickness is None:
        return None
    unit = "in" if system == "in" else "mm"
    sizes = (_between(table, work.thickness, name) for name in ("least", "leg", "most"))
    return Target(*(_rule(size, unit) for size in sizes))


def _rule(millimetres: float, unit: str) -> Quantity:
    """A length as it is read off a gauge: to 1/64 in from 1/16 in up, or to a tenth of a mm."""
    if unit == "in":
        return Quantity("length", max(round(millimetres / 25.4 * 64), 4) * 25.4 / 64, unit)
    return Quantity("length", round(millimetres, 1), unit)


def _between(table: Table, thickness: float, column: str) -> float:
    """A straight line between the rows by thickness; beyond the first and last row their own."""
    stairs = sorted((table.value(row, "thickness"), table.value(row, column)) for row in table.rows)
    below = max((s for s in stairs if s[0] <= thickness), default=stairs[0])
    above = min((s for s in stairs if s[0] >= thickness), default=stairs[-1])
    part = (thickness - below[0]) / (above[0] - below[0]) if above[0] > below[0] else 0.0
    return below[1] + (above[1] - below[1]) * part


def travel(
    rules: RuleBase, process: str, leg: Target, feed: Quantity, wire: Quantity, system: str | None
) -> Target | None:
    """The travel speed at which this wire feed lays down a fillet of this leg.

    The greater leg is the slower end. None where the rules hold no figure of how much wire stays.
    """
    share = share_laid(rules, process)
    if share is None:
        return None
    unit = "in/min" if system == "in" else "mm/s"
    try:
        speeds = [
            float(travel_for_area(fillet_section(rules, q.value), feed.value, wire.value, share))
            for q in reversed(_ends(leg))
        ]
    except Impossible:
        return None
    return Target(*(two_digits(Quantity("speed", speed, unit)) for speed in speeds))


def _ends(target: Target) -> tuple[Quantity, Quantity, Quantity]:
    return target.low, target.best, target.high
