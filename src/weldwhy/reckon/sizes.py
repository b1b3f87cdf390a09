"""Calculators of sizes: sheet gauges, and the names of what is sold by size."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from weldwhy.arithmetic.sizes import gauge_diameter, nearest, sheet_thickness
from weldwhy.model import RuleBase
from weldwhy.reckon import figures, rows
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output, ReckonError
from weldwhy.units import UnitError, parse

_SHEETS = {
    "steel": "plain steel (trade gauge)",
    "stainless": "stainless",
    "galvanised": "galvanised steel, zinc and all",
    "aluminium": "aluminium (Brown and Sharpe)",
    "statute": "iron and steel by the statute",
}
_SOLD = {"wire": "wire", "rod": "rod", "filler-rod": "filler rod", "tungsten": "tungsten"}
_ALL = "all"
_SIZE = "gauge or thickness"
_GAUGE = re.compile(r"([0-9]{1,2}) ?(?:ga|gauge)?")
_INCH = 25.4


def _sheet_gauge(rules: RuleBase, given: Given) -> Outcome:
    text, sheet = given.word("size"), given.word("sheet") or _ALL
    gauge = _GAUGE.fullmatch(text.lower())
    wanted = list(_SHEETS) if sheet == _ALL else [sheet]
    if gauge:
        made = _thicknesses(rules, wanted, f"{int(gauge[1])} ga")
    else:
        made = list(_gauges(rules, wanted, _inches(text)))
    said = "Mills roll within some percent of it: measure it."
    return Outcome(tuple(made), (said, *_told(rules, sheet)))


def _told(rules: RuleBase, sheet: str) -> tuple[str, ...]:
    """What the table of one sheet says of itself; nothing for all of them."""
    name = f"sheet-{sheet}"
    return () if sheet == _ALL else (rules.tables[name].note, rows.source(rules, name))


def _inches(text: str) -> float:
    try:
        return parse(text, "length").value / _INCH
    except UnitError as fault:
        raise ReckonError(f"{_SIZE}: {fault}") from None


def _thicknesses(rules: RuleBase, sheets: Sequence[str], row: str) -> list[Output]:
    """How thick a gauge is on each of the sheets that have it."""
    tables = {sheet: rules.tables[f"sheet-{sheet}"] for sheet in sheets}
    made = [
        figures.result(sheet, _SHEETS[sheet], "length", table.value(row) * _INCH)
        for sheet, table in tables.items()
        if row in table.rows
    ]
    if not made:
        known = list(next(iter(tables.values())).rows)
        raise ReckonError(f"no {row} of this sheet; they run from {known[0]} to {known[-1]}")
    return made


def _gauges(rules: RuleBase, sheets: Sequence[str], inches: float) -> Iterator[Output]:
    """The gauge nearest to a thickness on each of the sheets."""
    for sheet in sheets:
        table = rules.tables[f"sheet-{sheet}"]
        row = nearest(inches, {each: table.value(each) for each in table.rows})
        there = table.value(row)
        if abs(there - inches) > 0.1 * inches:
            yield Output(sheet, _SHEETS[sheet], "no gauge is near that")
            continue
        yield Output(sheet, _SHEETS[sheet], f"{row}, {there:.4f} in ({there * _INCH:.2f} mm)")


def _size_name(rules: RuleBase, given: Given) -> Outcome:
    table, size = rules.tables[f"{given.word('sold')}-sizes"], given.number("size")
    name = nearest(size, {row: table.value(row, "size") for row in table.rows})
    off = size - table.value(name, "size")
    said = ("That is far from every size sold: measure again.",) if abs(off) > 0.1 * size else ()
    made = (
        Output("name", "sold as", name),
        Output("off", "measured less named", f"{off:+.2f} mm ({off / _INCH:+.3f} in)"),
    )
    return Outcome(made, said)


CALCULATORS = (
    Calculator(
        "sheet-gauge", "sheet gauge", "sizes",
        "Thickness of a sheet gauge, or the gauge of a thickness. One number is another thickness "
        "on plain steel, stainless, galvanised and aluminium.",
        (Input("size", _SIZE, "text", "16 ga"),
         Input("sheet", "sheet", "choice", _ALL, True, lambda rules: {_ALL: "all", **_SHEETS})),
        _sheet_gauge, (sheet_thickness, gauge_diameter),
    ),
    Calculator(
        "size-name", "name of a size", "sizes",
        "What a wire, rod or tungsten that you measured is sold as, in both systems.",
        (Input("size", "size measured", "length", "2.4 mm"),
         Input("sold", "what it is", "choice", "rod", choices=lambda rules: _SOLD)),
        _size_name, (nearest,),
    ),
)  # fmt: skip
