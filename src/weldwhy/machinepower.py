"""What the start values ask of the leads, the socket and the cord of the person's machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from weldwhy.arithmetic import leads, power
from weldwhy.arithmetic.arc import load_volts
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.model import Machine, RuleBase
from weldwhy.reckon import leads as sizes
from weldwhy.units import Quantity, Target, show, two_digits

Targets = Mapping[str, Target]
TABLES = ("copper", "drop-limit", "supply", "load-voltage", "cord-sizes")
ELECTRICIAN = "weld with fewer amps, or have an electrician fit a socket of its own"


def asked(
    rules: RuleBase, process: str, machine: Machine, targets: Targets
) -> Iterator[tuple[str, str]]:
    """Name and words of what is asked of leads, socket and cord; of what is not told, nothing."""
    amps = targets.get("amps")
    if amps is None or any(name not in rules.tables for name in TABLES):
        return
    try:
        yield from _leads(rules, machine, amps.best.value)
        drawn = _drawn(rules, process, machine, targets, amps.best.value)
        if drawn:
            yield "supply", _socket(machine, drawn)
            yield from _cord(rules, machine, max(drawn.values()))
    except Impossible:
        return


def _leads(rules: RuleBase, machine: Machine, amps: float) -> Iterator[tuple[str, str]]:
    """Volts lost on the way out and back; one length stands for the other where it is not told."""
    out, back = machine.gun or machine.work_lead, machine.work_lead or machine.gun
    if machine.lead is None or out is None or back is None:
        return
    one_way = (out.value + back.value) / 2
    lost = leads.cable_drop(one_way, amps, machine.lead.value, sizes.resistivity(rules))
    limit = rules.tables["drop-limit"].value("usual", "leads")
    if lost < limit / 2:
        return  # nothing that anybody would feel
    more = f"; more than {limit:g} V, so take shorter or thicker leads" if lost > limit else ""
    yield "leads", f"{show(two_digits(Quantity('voltage', lost, 'V')))} lost in both{more}"


def _drawn(
    rules: RuleBase, process: str, machine: Machine, targets: Targets, amps: float
) -> dict[str, float]:
    """Amps drawn from the socket while the arc burns, by the kind of machine; none if not known."""
    line, kinds = rules.tables["load-voltage"], rules.tables["supply"]
    volts = targets["volts"].best.value if "volts" in targets else None
    if volts is None and process in line.rows:
        volts = float(load_volts(amps, line.value(process, "base"), line.value(process, "slope")))
    if machine.supply is None or volts is None:
        return {}
    supply = machine.supply.value
    return {
        kind: float(power.supply_amps(volts, amps, supply, efficiency, factor))
        for kind, (efficiency, factor) in kinds.rows.items()
    }


def _socket(machine: Machine, drawn: Mapping[str, float]) -> str:
    """What the socket must give, and whether its breaker stands it."""
    assert machine.supply is not None
    least, most = min(drawn.values()), max(drawn.values())
    said = f"draws {least:.0f} to {most:.0f} A at {show(machine.supply)}"
    if machine.breaker is None:
        return said
    if least > machine.breaker.value:
        return f"{said}, more than your {show(machine.breaker)} breaker: {ELECTRICIAN}"
    if most <= machine.breaker.value:
        return said
    thirsty = max(drawn, key=lambda kind: drawn[kind])
    return f"{said}; a {thirsty} can trip your {show(machine.breaker)} breaker"


def _cord(rules: RuleBase, machine: Machine, amps: float) -> Iterator[tuple[str, str]]:
    if machine.cord is None or machine.supply is None:
        return
    drop = machine.supply.value * rules.tables["drop-limit"].value("usual", "cord") / 100
    named = sizes.least_size(rules, sizes.CORDS, machine.cord.value, amps, drop)
    yield "extension cord", f"{show(machine.cord)} long: {named} at least, unrolled all the way"
