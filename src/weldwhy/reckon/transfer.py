"""The calculator of metal transfer: how the metal crosses the arc in MIG."""

from __future__ import annotations

from math import inf, isinf

from weldwhy.arithmetic import arc
from weldwhy.arithmetic.bounds import possible
from weldwhy.arithmetic.spans import WIRE
from weldwhy.model import RuleBase
from weldwhy.reckon import figures
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output


def _gases(rules: RuleBase) -> dict[str, str]:
    """The gases for MIG: nitrogen is for backing, and hydrogen, which cracks steel, for TIG."""
    return {
        name: text
        for name, text in figures.gases(rules).items()
        if not {"hydrogen", "nitrogen"} & rules.gases[name].parts.keys()
    }


def _transfer(rules: RuleBase, given: Given) -> Outcome:
    possible("wire size", given.number("size"), *WIRE)
    amps, spray = given.number("amps"), _spray_from(rules, given)
    least, most = _short_circuit(rules, given)
    limit = _short_circuit_volts(rules, given)
    too_high = "volts" in given and given.number("volts") > limit
    short = f"{least:.0f} to {most:.0f} A, up to {limit:g} V" if most else "not with this wire"
    never = Output("spray", "spray", "not in this gas")
    sprays = figures.result("spray", "spray from", "current", 0 if isinf(spray) else spray)
    return Outcome(
        (
            Output("transfer", "transfer", arc.transfer(amps, spray, 0 if too_high else most)),
            never if isinf(spray) else sprays,
            Output("short", "short circuit", short),
        ),
        (*_gas_said(rules, given, spray, most), *_volts_said(given, least, most, limit)),
    )


def _spray_from(rules: RuleBase, given: Given) -> float:
    """Amps from which on this wire sprays in this gas; infinite if it never does."""
    wire, parts = given.word("wire"), rules.gases[given.word("gas")].parts
    limits = rules.tables["spray-gas"]
    too_much = parts.get("co2", 0) > limits.value(wire, "co2-most")
    if too_much or parts.get("argon", 0) < limits.value(wire, "argon-least"):
        return inf
    return figures.at_size(rules.tables["spray-current"], wire, given.quantity("size"), "amps")


def _short_circuit(rules: RuleBase, given: Given) -> tuple[float, float]:
    """Amps between which this wire works in short circuit; 0 and 0 if it never does."""
    table = rules.tables["short-circuit-current"]
    wire, size = given.word("wire"), given.quantity("size")
    if figures.beyond(table, wire, size):
        return 0.0, 0.0
    return figures.at_size(table, wire, size, "from"), figures.at_size(table, wire, size, "to")


def _short_circuit_volts(rules: RuleBase, given: Given) -> float:
    """The most volts of a short-circuit arc in this gas."""
    row = "co2" if figures.mostly_co2(rules, given.word("gas")) else "argon"
    return rules.tables["short-circuit-volts"].value(row)


def _gas_said(rules: RuleBase, given: Given, spray: float, most: float) -> tuple[str, ...]:
    """What the gas does to the figures."""
    if isinf(spray):
        return () if most else ("Neither spray nor short circuit: this gas is not for this wire.",)
    published = rules.tables["spray-gas"].value(given.word("wire"), "co2-published")
    co2 = rules.gases[given.word("gas")].parts.get("co2", 0)
    if co2 <= published:
        return ()
    return (f"With {co2:g} % CO2 spray starts at more amps than this: "
            f"the figure is for {published:g} % or less.",)  # fmt: skip


def _volts_said(given: Given, least: float, most: float, limit: float) -> tuple[str, ...]:
    amps = given.number("amps")
    if not most or amps > most:
        return ()
    if amps < least:
        return (f"Below {least:.0f} A this wire burns unsteadily.",)
    if "volts" in given:
        return ()
    return (f"The volts are taken to be {limit:g} V or less; "
            "above that the arc is too long for short circuits.",)  # fmt: skip


CALCULATORS = (
    Calculator(
        "transfer", "metal transfer", "arc",
        "How the metal crosses the arc in MIG: short circuit, globular or spray.",
        (Input("wire", "kind of wire", "choice", "solid-steel", choices=figures.wires),
         Input("size", "wire size", "length", "0.035 in"),
         Input("gas", "shielding gas", "choice", "c25", choices=_gases),
         Input("amps", "amps", "current", "120 A"),
         Input("volts", "volts", "voltage", "19 V", optional=True)),
        _transfer, (arc.transfer,),
    ),
)  # fmt: skip
