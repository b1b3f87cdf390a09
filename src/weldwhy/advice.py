"""From a cause to its remedies: cautions first, then the action and the corrective settings."""

from __future__ import annotations

from dataclasses import dataclass, replace

from weldwhy import units
from weldwhy.case import Case
from weldwhy.consumables import size_of
from weldwhy.machine import mark
from weldwhy.model import Cause, Caution, Machine, Remedy, RuleBase
from weldwhy.pairing import paired
from weldwhy.readings import worked_out
from weldwhy.units import Quantity, Target, UnitError
from weldwhy.windows import Found, distance, find


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

    @property
    def allowed(self) -> str:
        """The allowed range in words; what a machine only just reaches has no range."""
        if not self.low or self.low == self.high:
            return self.low and "no more and no less"
        return f"{self.low} to {self.high}"


@dataclass(frozen=True, slots=True)
class Advice:
    """A remedy with its cautions (to be shown first) and its settings."""

    remedy: Remedy
    cautions: tuple[Caution, ...]
    settings: tuple[SettingAdvice, ...]


@dataclass(frozen=True, slots=True)
class Shown:
    """The unit system asked for (None: the person's own units stay), and that for all the rest.

    Targets are told in the terms of the `machine`'s dials too, where it has marks only.
    """

    asked: str | None = None
    other: str | None = None
    machine: Machine | None = None

    def dial(self, setting: str, name: str, best: Quantity) -> str:
        """Where to turn the dial, in a sentence; "" where its marks are not known."""
        where = mark(self.machine, setting, best) if self.machine else ""
        return f"On your {name} dial that is {where}." if where else ""

    def of(self, yours: Quantity | str) -> str | None:
        """The system for the target of a setting: that of the person's own value, if it has one."""
        own = units.system_of(yours) if isinstance(yours, Quantity) else None
        return self.asked or own or self.other


def read_thickness(text: str) -> Quantity | None:
    """The thickness as a quantity; None if it is not known or cannot be read."""
    try:
        return units.parse(text, "length") if text else None
    except UnitError:
        return None


def window(rules: RuleBase, case: Case, material: str) -> Found | None:
    """Where settings should lie for this work on this metal, if the rules hold a window.

    A preheat is among the targets where the grade, or the kind of metal, asks for one.
    """
    settings = worked_out(rules, case.process, case.measured)
    thickness = read_thickness(case.thickness)
    found = find(
        rules, case.process, material, thickness, settings, case.place,
        joint=case.joint, position=case.position,
    )  # fmt: skip
    if found is None:
        return None
    feed = settings.get("wire_feed")
    wire = size_of(settings.get("wire"))
    found = paired(found, wire, feed if isinstance(feed, Quantity) else None)
    if thickness is None:
        return found  # no preheat can be told then, so its arithmetic is not brought in
    from weldwhy import preheat
    from weldwhy.beadheat import bead_heat

    heat = bead_heat(rules, case.process, settings, found)
    wanted = preheat.target(rules, case, thickness, heat.value if heat else None)
    if wanted is None:
        return found
    return replace(found, targets={**found.targets, "preheat": wanted})


def settled(rules: RuleBase, case: Case, found: Found | None) -> frozenset[str]:
    """Checks that a measured setting answers by itself."""
    if found is None:
        return frozenset()
    told = worked_out(rules, case.process, case.measured).keys() & found.targets.keys()
    return frozenset(check.id for check in rules.checks.values() if check.setting in told)


def advise(
    rules: RuleBase, case: Case, cause: Cause, found: Found | None, shown: Shown
) -> tuple[Advice, ...]:
    """The cause's remedies in order, each with cautions and settings in the person's units."""
    return tuple(
        Advice(
            remedy,
            tuple(rules.cautions[c] for c in remedy.cautions if c in rules.cautions),
            tuple(
                setting_advice(rules, case, name, found, shown, cause) for name in remedy.settings
            ),
        )
        for remedy in cause.remedies
    )


def setting_advice(
    rules: RuleBase,
    case: Case,
    setting: str,
    found: Found | None,
    shown: Shown,
    cause: Cause | None = None,
) -> SettingAdvice:
    """One setting as told, with its target; `cause` is the one that it is to put right, if any."""
    name = rules.settings[setting].name if setting in rules.settings else setting
    yours = worked_out(rules, case.process, case.measured).get(setting, "")
    own = units.show(yours, shown.asked) if isinstance(yours, Quantity) else yours
    target: Target | None = found.targets.get(setting) if found else None
    if found is None or target is None:
        return SettingAdvice(setting, name, own, "", "", "")
    system = shown.of(yours)
    best, low, high = (units.show(q, system) for q in (target.best, target.low, target.high))
    fault = cause.setting if cause else None
    at_fault = fault is not None and fault[0] == setting
    if isinstance(yours, Quantity) and abs(distance(yours, target)) <= 1.0 and not at_fault:
        best = own  # one thing is changed at a time: what is in its window stays
    dial = shown.dial(setting, name, target.best)
    # a preheat comes from the metal: what was assumed for the window does not touch it
    assumed = "" if setting == "preheat" else found.note
    said = (assumed, found.said.get(setting, ""), found.beyond.get(setting, ""), dial)
    note = " ".join(part for part in said if part)
    return SettingAdvice(setting, name, own, best, low, high, note)
