"""From a cause to its remedies: cautions first, then the action and the corrective settings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp

from weldwhy import units
from weldwhy.case import Case, Measured
from weldwhy.engine.belief import Reading
from weldwhy.model import Cause, Caution, Remedy, RuleBase
from weldwhy.units import Quantity, Target, UnitError
from weldwhy.windows import Found, distance, find

STEEPNESS, MIDDLE = 1.8, 1.62
"""Weight of "too high" is exp(STEEPNESS z - MIDDLE), z = distance past the window's middle."""
MOST_WEIGHT = 20.0


@dataclass(frozen=True, slots=True)
class SettingAdvice:
    """One row of "yours -> try -> allowed range", as shown; "" where something is not known."""

    setting: str
    name: str
    yours: str
    best: str
    low: str
    high: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Advice:
    """A remedy with its cautions (to be shown first) and its settings."""

    remedy: Remedy
    cautions: tuple[Caution, ...]
    settings: tuple[SettingAdvice, ...]


def read_measured(rules: RuleBase, measured: Mapping[str, str]) -> dict[str, Quantity | str]:
    """The measured settings as quantities; what cannot be read, or is text, stays text."""
    read: dict[str, Quantity | str] = {}
    for setting, value in measured.items():
        kind = rules.settings[setting].quantity if setting in rules.settings else "text"
        try:
            read[setting] = value if kind == "text" else units.parse(value, kind)
        except UnitError:
            read[setting] = value
    return read


def read_thickness(text: str) -> Quantity | None:
    """The thickness as a quantity; None if it is not known or cannot be read."""
    try:
        return units.parse(text, "length") if text else None
    except UnitError:
        return None


def window(rules: RuleBase, case: Case, material: str) -> Found | None:
    """The operating window of the case's situation on this metal, if the rules hold one."""
    settings = read_measured(rules, case.measured)
    thickness = read_thickness(case.thickness)
    return find(rules, case.process, material, thickness, settings, case.place)


def reading(rules: RuleBase, told: Measured, found: Found | None) -> Reading:
    """How a measured setting weighs on the causes that are its faults; on none without a window."""
    value = read_measured(rules, {told.setting: told.value})[told.setting]
    target = found.targets.get(told.setting) if found else None
    if target is None or not isinstance(value, Quantity):
        return Reading(told.setting, ())
    z = distance(value, target)
    weights = (
        (cause.id, _weight(z if cause.setting[1] == "too high" else -z))
        for cause in rules.causes.values()
        if cause.setting is not None and cause.setting[0] == told.setting
    )
    return Reading(told.setting, tuple(weights))


def _weight(z: float) -> float:
    # far outside the window the exponential means nothing; bound z first so it cannot overflow
    exponent = STEEPNESS * min(max(z, -10.0), 10.0) - MIDDLE
    return min(max(exp(exponent), 1.0 / MOST_WEIGHT), MOST_WEIGHT)


def settled(rules: RuleBase, case: Case, found: Found | None) -> frozenset[str]:
    """Checks that a measured setting answers by itself."""
    if found is None:
        return frozenset()
    told = set(case.measured) & set(found.targets)
    return frozenset(check.id for check in rules.checks.values() if check.setting in told)


def advise(
    rules: RuleBase, case: Case, cause: Cause, found: Found | None, system: str | None
) -> tuple[Advice, ...]:
    """The cause's remedies in order, each with cautions and settings in the person's units."""
    return tuple(
        Advice(
            remedy,
            tuple(rules.cautions[c] for c in remedy.cautions if c in rules.cautions),
            tuple(_setting(rules, case, cause, name, found, system) for name in remedy.settings),
        )
        for remedy in cause.remedies
    )


def _setting(
    rules: RuleBase, case: Case, cause: Cause, setting: str, found: Found | None, system: str | None
) -> SettingAdvice:
    name = rules.settings[setting].name if setting in rules.settings else setting
    yours = read_measured(rules, case.measured).get(setting, "")
    shown = units.show(yours, system) if isinstance(yours, Quantity) else yours
    target: Target | None = found.targets.get(setting) if found else None
    if found is None or target is None:
        return SettingAdvice(setting, name, shown, "", "", "")
    best, low, high = (units.show(q, system) for q in (target.best, target.low, target.high))
    at_fault = cause.setting is not None and cause.setting[0] == setting
    if isinstance(yours, Quantity) and abs(distance(yours, target)) <= 1.0 and not at_fault:
        best = shown  # one thing is changed at a time: what is in its window stays
    return SettingAdvice(setting, name, shown, best, low, high, found.note)
