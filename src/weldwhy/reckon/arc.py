"""Calculators of the arc: heat input, energy, and the volts of an arc."""

from __future__ import annotations

from weldwhy.arithmetic import arc
from weldwhy.arithmetic.bounds import outside, remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output


def _heat_input(rules: RuleBase, given: Given) -> Outcome:
    process = given.word("process")
    factor = rules.tables["heat-factor"].value(process)
    heat = arc.heat_input(
        given.number("volts"), given.number("amps"), given.number("travel"), factor
    )
    said = [*remarks(heat)]
    if process in rules.tables["arc-efficiency"].rows:
        measured = rules.tables["arc-efficiency"].value(process)
        said.append(
            f"The factor {factor:g} is a convention, so that procedures can be compared; "
            f"{measured:g} was measured in mild steel."
        )
    made = figures.result("heat", "heat input", "heat", heat)
    return Outcome((made, Output("factor", "process factor", factor)), tuple(said))


def _arc_energy(rules: RuleBase, given: Given) -> Outcome:
    volts, amps, travel = given.number("volts"), given.number("amps"), given.number("travel")
    energy = arc.arc_energy(volts, amps, travel)
    code = arc.heat_input_asme(volts, amps, travel * 60 / 25.4)
    return Outcome(
        (
            figures.result("energy", "arc energy", "heat", energy),
            Output("code", "heat input by the American boiler code, J/in", float(code)),
        ),
        remarks(energy),
    )


def _lines(rules: RuleBase) -> dict[str, str]:
    """The rating line of each process, and the lines that were measured."""
    plain = figures.processes(rules)
    rows = rules.tables["load-voltage"].rows
    return {r: f"{plain[r]}, rating" if r in plain else r.replace("-", " ") for r in rows}


def _load_volts(rules: RuleBase, given: Given) -> Outcome:
    table, line, amps = rules.tables["load-voltage"], given.word("line"), given.number("amps")
    base, slope, least, most = table.rows[line]
    volts = arc.load_volts(amps, base, slope)
    said = dict.fromkeys((*remarks(volts), *outside("amps", amps, least, most, "A")))
    note = (table.note,) if line in rules.processes and table.note else ()
    return Outcome((figures.result("volts", "volts", "voltage", volts),), (*said, *note))


_VOLTS = Input("volts", "volts at the arc", "voltage", "19 V")
_AMPS = Input("amps", "amps", "current", "120 A")
_TRAVEL = Input("travel", "travel speed", "speed", "6 mm/s")
_PROCESS = Input("process", "process", "choice", "gmaw", choices=figures.processes)
_LINE = Input("line", "which line", "choice", "short-circuit-MIG", choices=_lines)

CALCULATORS = (
    Calculator(
        "heat-input", "heat input", "arc",
        "Heat that goes into each millimetre or inch of weld, with the factor of the process.",
        (_PROCESS, _VOLTS, _AMPS, _TRAVEL), _heat_input, (arc.heat_input,),
    ),
    Calculator(
        "arc-energy", "arc energy", "arc",
        "Energy that the arc uses on each millimetre or inch of weld, without a process factor.",
        (_VOLTS, _AMPS, _TRAVEL), _arc_energy, (arc.arc_energy, arc.heat_input_asme),
    ),
    Calculator(
        "load-volts", "volts for amps", "arc",
        "Volts that belong to so many amps: as machines are rated, or as short-circuit MIG has it.",
        (_LINE, _AMPS), _load_volts, (arc.load_volts,),
    ),
)  # fmt: skip
