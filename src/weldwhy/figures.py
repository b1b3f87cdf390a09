"""What the start values come to: heat input, duty cycle, wire used, preheat. Each in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from weldwhy.arithmetic.arc import heat_input
from weldwhy.arithmetic.bounds import Impossible, Reckoned
from weldwhy.arithmetic.duty import duty_between, rest_minutes
from weldwhy.machinepower import asked
from weldwhy.model import Machine, RuleBase
from weldwhy.units import Quantity, Target, show, two_digits

Targets = Mapping[str, Target]


@dataclass(frozen=True, slots=True)
class Figure:
    """A number that was worked out: its name, and the value with its unit in words."""

    name: str
    text: str


def heat(rules: RuleBase, process: str, targets: Targets) -> float | None:
    """Heat input at the start values, kJ/mm; None where volts, amps or travel is missing."""
    factor = rules.tables.get("heat-factor")
    wanted = ("volts", "amps", "travel")
    if factor is None or process not in factor.rows or not targets.keys() >= set(wanted):
        return None
    volts, amps, travel = (targets[name].best.value for name in wanted)
    try:
        return float(heat_input(volts, amps, travel, factor.value(process)))
    except Impossible:
        return None


def figures(
    rules: RuleBase,
    process: str,
    machine: Machine,
    targets: Targets,
    wire: Quantity | None,
    system: str | None,
) -> tuple[Figure, ...]:
    """Every figure that the start values allow, in the person's units."""
    found: list[Figure] = []
    if (into := heat(rules, process, targets)) is not None:
        unit = "kJ/in" if system == "in" else "kJ/mm"
        shown = show(two_digits(Quantity("heat", into, unit)))
        found.append(Figure("heat input", f"about {shown}"))
    found += _duty(machine, targets)
    found += [Figure(*each) for each in asked(rules, process, machine, targets)]
    if wire is not None:
        found += _wire(targets, wire, system)
    if "preheat" in targets:
        found.append(Figure("preheat", _preheat_text(rules, targets["preheat"], system)))
    return tuple(found)


def _preheat_text(rules: RuleBase, warm: Target, system: str | None) -> str:
    """From the least preheat to the interpass limit; the least of a cold shop is none."""
    taken = rules.tables.get("preheat-taken")
    least = show(warm.low, system)
    if taken is not None and warm.low.value <= taken.value("any", "none"):
        said = f"none, if the metal is not colder than {least}"
    else:
        said = f"{least} or more, all round the joint"
    return f"{said}; no hotter than {show(warm.high, system)} between beads"


def _duty(machine: Machine, targets: Targets) -> Iterator[Figure]:
    amps = targets.get("amps")
    if amps is None or not machine.duty:
        return
    ratings = [(point.percent, point.amps) for point in machine.duty]
    try:
        duty = duty_between(amps.best.value, ratings)
        rest = rest_minutes(duty)
    except Impossible:
        return
    yield Figure("duty cycle", _duty_text(duty, rest, amps.best))


def _duty_text(duty: Reckoned, rest: Reckoned, amps: Quantity) -> str:
    if duty >= 100:
        return f"at {show(amps)} the machine may weld without a rest"
    # minutes of arc are rounded down and those of rest up: the careful way
    arc = int((10 - rest) * 2) / 2
    said = f"at {show(amps)} {duty:.0f} %: {arc:g} min of arc in ten, then {10 - arc:g} min of rest"
    return ". ".join((said, *duty.remarks))


def _wire(targets: Targets, wire: Quantity, system: str | None) -> Iterator[Figure]:
    """Wire for each metre (or foot) of weld: what is fed while the gun goes that far."""
    feed, travel = targets.get("wire_feed"), targets.get("travel")
    if feed is None or travel is None or not travel.best.value > 0:
        return
    each = feed.best.value * 1000 / 60 / travel.best.value
    per = "ft of wire in a foot" if system == "in" else "m of wire in a metre"
    yield Figure("wire used", f"{each:.1f} {per} of weld")
