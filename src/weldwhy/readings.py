"""Measured settings as numbers: those told, and the travel speed that a measured bead gives."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from math import exp

from weldwhy import gases, units
from weldwhy.case import Case
from weldwhy.engine.belief import Reading
from weldwhy.model import RuleBase
from weldwhy.units import Quantity, UnitError
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
    if "travel" in read or not {"wire_feed", "wire"} <= read.keys():
        return read
    from weldwhy.beadtravel import travel_of_bead  # few cases tell enough for it

    speed = travel_of_bead(rules, process, read)
    return read if speed is None else {**read, "travel": speed}


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


def gas_reading(rules: RuleBase, process: str, material: str, text: str) -> Reading:
    """How the gas in use weighs on the causes that a table names; on none if it cannot be judged.

    `material` is the metal as told: nothing is held against a gas for a metal that is assumed.
    """
    suits, times = gases.suits(rules, process, material, text), rules.tables.get("gas-weight")
    if suits is None or times is None:
        return Reading("gas", ())
    row = "right" if suits else "wrong"
    named = ((cause, times.value(row, cause)) for cause in times.columns)
    return Reading(
        "gas", tuple((cause, weight) for cause, weight in named if cause in rules.causes)
    )


def _weight(z: float) -> float:
    # far outside the window the exponential means nothing; bound z first so it cannot overflow
    exponent = STEEPNESS * min(max(z, -10.0), 10.0) - MIDDLE
    return min(max(exp(exponent), 1.0 / MOST_WEIGHT), MOST_WEIGHT)
