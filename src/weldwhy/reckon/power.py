"""Calculators of power: duty, what the machine draws, and the most volts without an arc."""

from __future__ import annotations

from weldwhy.arithmetic import duty as minutes
from weldwhy.arithmetic import power
from weldwhy.arithmetic.bounds import remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures, leads, rows, tungsten
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output, ReckonError

_WHO_DECIDES = (
    "A first look only: the plate on the machine, your local code and a licensed electrician "
    "decide on breaker, socket and wiring."
)
_TOO_MANY = "none: more than the plate allows"
_AC_DC = {"ac": "alternating current (AC)", "dc": "direct current (DC)"}


def _ratings(given: Given) -> list[minutes.Rating]:
    """The one or two ratings of the plate, percent and amps."""
    if ("second" in given) != ("second_amps" in given):
        raise ReckonError("a second rating needs its percent and its amps")
    found = [(given.number("rated"), given.number("rated_amps"))]
    if "second" in given:
        found.append((given.number("second"), given.number("second_amps")))
    return found


def _duty(rules: RuleBase, given: Given) -> Outcome:
    ratings = _ratings(given)
    amps, most = given.number("amps"), max(amps for _, amps in ratings)
    duty = minutes.duty_between(amps, ratings)
    made = [*_minutes(duty)] if amps <= most else [Output("duty", "duty at these amps", _TOO_MANY)]
    made.append(_allowed("steady", "amps without a rest", minutes.amps_between(100, ratings), most))
    if "wanted" in given:
        wanted = minutes.amps_between(given.number("wanted"), ratings)
        made.append(_allowed("allowed", "most amps for the duty you want", wanted, most))
    said = (
        "Near the rated amps only, and in air up to 40 C (104 F); hot air and dust take more off."
    )
    return Outcome(tuple(made), (*remarks(duty), said))


def _minutes(duty: float) -> tuple[Output, ...]:
    """A duty, and the minutes of arc and of rest that it means."""
    rest = minutes.rest_minutes(duty)
    return (
        figures.result("duty", "duty at these amps", "percent", duty),
        figures.result("arc", "arc in every ten minutes", "time", 10 - rest),
        figures.result("rest", "rest in every ten minutes", "time", rest),
    )


def _allowed(name: str, text: str, amps: float, most: float) -> Output:
    """Amps as a result, never more than the plate allows."""
    return figures.result(name, text, "current", min(amps, most))


def _supply(rules: RuleBase, given: Given) -> Outcome:
    arc = (given.number("volts"), given.number("amps"))
    kind = rules.tables["supply"]
    shares = [
        given.number(name) if name in given else kind.value(given.word("machine"), column)
        for name, column in (("efficiency", "efficiency"), ("power_factor", "power factor"))
    ]
    drawn = power.apparent_power(*arc, shares[0], shares[1])
    amps = power.supply_amps(*arc, given.number("supply"), shares[0], shares[1])
    generator = drawn * rows.figure(rules, "generator", "times")
    made = [
        figures.result("supply_amps", "amps drawn from the supply", "current", amps),
        Output("drawn", "power drawn", f"{drawn:.1f} kVA"),
        Output(
            "north_america", "next breaker, North America", _breaker(rules, amps, "north-america")
        ),
        Output("europe", "next breaker, Europe", _breaker(rules, amps, "europe")),
        Output("generator", "generator, at least", f"{generator:.1f} kVA"),
    ]
    if "duty" in given:
        steady = minutes.effective_amps(amps, given.number("duty"))
        made.insert(1, figures.result("steady", "the same as steady amps", "current", steady))
    return Outcome(tuple(made), (_WHO_DECIDES, *remarks(amps)))


def _breaker(rules: RuleBase, amps: float, place: str) -> str:
    """The next standard size for the amps drawn while the arc burns."""
    return rows.least(rules.tables[f"breaker-{place}"], amps=amps) or "none: ask an electrician"


def _open_circuit(rules: RuleBase, given: Given) -> Outcome:
    table, kind = rules.tables["open-circuit"], given.word("current")
    volts = given.number("volts")
    peak = power.peak_volts(volts)
    made = [
        Output(f"rule_{at}", row, _against(volts, table.value(row, kind)))
        for at, row in enumerate(table.rows, 1)
    ]
    if kind == "ac":
        made.append(figures.result("peak", "peak, if it is a sine", "voltage", peak))
    said = (table.note, rows.source(rules, "open-circuit"))
    return Outcome(tuple(made), said, rows.warnings(rules, "electric-shock"))


def _against(volts: float, most: float) -> str:
    return f"{'within' if volts <= most else 'above'} the {most:g} V allowed"


CALCULATORS = (
    Calculator(
        "duty-cycle", "duty cycle", "power",
        "How many minutes in ten the machine can weld at these amps, from the ratings on its "
        "plate, and what it can give without a rest.",
        (Input("amps", "amps you weld at", "current", "120 A"),
         Input("rated", "rated duty", "percent", "30 %"),
         Input("rated_amps", "amps of that rating", "current", "130 A"),
         Input("second", "another rated duty", "percent", "20 %", optional=True),
         Input("second_amps", "amps of that rating", "current", "180 A", optional=True),
         Input("wanted", "duty you want", "percent", "60 %", optional=True)),
        _duty, (minutes.duty_between, minutes.duty_at, minutes.amps_between, minutes.rest_minutes),
    ),
    Calculator(
        "supply-current", "what the machine draws", "power",
        "Amps drawn from a single-phase supply while the arc burns, the next breaker size, and the "
        "generator it takes.",
        (Input("volts", "volts at the arc", "voltage", "20 V"),
         Input("amps", "amps at the arc", "current", "150 A"),
         Input("supply", "supply volts", "voltage", "230 V"),
         Input("machine", "kind of machine", "choice", "inverter", choices=rows.of("supply")),
         Input("efficiency", "efficiency on the plate", "number", "0.85", optional=True),
         Input("power_factor", "power factor on the plate", "number", "0.7", optional=True),
         Input("duty", "duty you weld at", "percent", "30 %", optional=True)),
        _supply, (power.supply_amps, power.apparent_power, minutes.effective_amps),
    ),
    *leads.CALCULATORS,
    Calculator(
        "open-circuit", "open-circuit limits", "power",
        "Whether the volts with no arc stay within what is allowed for welding by hand.",
        (Input("volts", "volts with no arc", "voltage", "75 V"),
         Input("current", "kind of current", "choice", "dc", choices=lambda rules: _AC_DC)),
        _open_circuit, (power.peak_volts,),
    ),
    *tungsten.CALCULATORS,
)  # fmt: skip
