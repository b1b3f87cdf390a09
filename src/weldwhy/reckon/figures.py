"""What calculators take from the rules: choices to offer, figures by wire, metal and gas."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from weldwhy.beadtravel import weight_share
from weldwhy.model import RuleBase, Table
from weldwhy.reckon.calculator import Given, Output, ReckonError
from weldwhy.units import Quantity, parse, show
from weldwhy.unitwords import BASE

_NEAR = 0.03
"""A size this far past the end of a table is still that size: 0.8 mm is 0.030 in."""


def processes(rules: RuleBase) -> Mapping[str, str]:
    """Every process, by its plain name."""
    return {each.id: each.plain for each in rules.processes.values()}


def wire_processes(rules: RuleBase) -> Mapping[str, str]:
    """The processes that feed a wire: those whose operating windows go by wire size."""
    fed = {p for w in rules.windows.values() if w.size_of == "wire" for p in w.processes}
    return {name: plain for name, plain in processes(rules).items() if name in fed}


def wires(rules: RuleBase) -> Mapping[str, str]:
    """The kinds of wire whose melting is known."""
    return {row: row.replace("-", " ") for row in rules.tables["melting"].rows}


def metals(rules: RuleBase) -> Mapping[str, str]:
    """The metals whose density is known."""
    known = rules.tables["density"].rows
    return {each.id: each.name for each in rules.materials.values() if each.id in known}


def gases(rules: RuleBase) -> Mapping[str, str]:
    """Every shielding gas."""
    return {each.id: each.name for each in rules.gases.values()}


def density(rules: RuleBase, metal: str) -> float:
    """Density of weld metal, g/cm3."""
    return rules.tables["density"].value(metal, "rho")


def efficiency(rules: RuleBase, process: str, gas: str = "") -> float:
    """Share of the wire or rod that ends in the weld; CO2 has a row of its own."""
    table = rules.tables["deposition-efficiency"]
    row = f"{process}-co2"
    own = row in table.rows and mostly_co2(rules, gas)
    return table.value(row if own else process, "usual")


def mostly_co2(rules: RuleBase, gas: str) -> bool:
    """Whether a gas is more CO2 than anything else; not so if it was left out."""
    return gas in rules.gases and rules.gases[gas].parts.get("co2", 0) > 50


def cored(rules: RuleBase, process: str) -> tuple[str, ...]:
    """What must be said of the weight of a cored wire; nothing for other processes."""
    weight = weight_share(rules, process)
    if weight == 1:
        return ()
    return (
        "The core of a cored wire is lighter than steel: it is taken to weigh "
        f"{100 * weight:.0f} % of a solid one. Weigh a length of yours to be sure.",
    )


def beyond(table: Table, wire: str, size: Quantity) -> bool:
    """Whether a wire is thicker than all of its kind in a table, or its kind is not in it."""
    known = _sizes(table, wire)
    return not known or size.value > max(known) * (1 + _NEAR)


def at_size(table: Table, wire: str, size: Quantity, column: str) -> float:
    """A figure of a wire at its size, between the two nearest that are known.

    Rows are named "solid-steel 0.035 in". ReckonError if the size lies outside what is known.
    """
    known = _sizes(table, wire)
    for (thin, row), (thick, next_row) in pairwise([*known.items(), *list(known.items())[-1:]]):
        if thin * (1 - _NEAR) <= size.value <= thick * (1 + _NEAR):
            low, high = table.value(row, column), table.value(next_row, column)
            share = (size.value - thin) / (thick - thin) if thick > thin else 0.0
            return low + (high - low) * min(max(share, 0.0), 1.0)
    names = [row.partition(" ")[2] for row in known.values()]
    span = f"; they run from {names[0]} to {names[-1]}" if names else ""
    raise ReckonError(f"no figures for {show(size)} {wire.replace('-', ' ')} wire{span}")


def _sizes(table: Table, wire: str) -> dict[float, str]:
    """The rows of a kind of wire by size in mm, thin ones first."""
    rows = (row for row in table.rows if row.partition(" ")[0] == wire)
    return dict(sorted((parse(row.partition(" ")[2], "length").value, row) for row in rows))


def result(name: str, title: str, kind: str, value: float) -> Output:
    """A result in the base unit of its kind, as a plain number."""
    return Output(name, title, Quantity(kind, float(value), BASE[kind]))


def each_length(given: Given) -> tuple[str, float]:
    """The length for which weld metal is told, and the same in metres: a foot or a metre."""
    return ("foot", 0.3048) if given.system == "in" else ("metre", 1.0)
