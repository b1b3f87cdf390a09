"""Calculators of the TIG torch: tungsten for the amps, cup and gas flow for the tungsten."""

from __future__ import annotations

from weldwhy.arithmetic.bounds import possible
from weldwhy.arithmetic.sizes import cup_bore, least_enough, nearest
from weldwhy.model import RuleBase, Table
from weldwhy.reckon import figures, rows
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output, ReckonError

_POLARITIES = {
    "dcen": "DC, torch on minus",
    "dcep": "DC, torch on plus",
    "ac-balanced": "AC, balanced",
    "ac-unbalanced": "AC, less cleaning than heat",
}
_AMPS = Input("amps", "amps", "current", "120 A")
_POLARITY = Input("polarity", "polarity", "choice", "dcen", choices=lambda rules: _POLARITIES)


def _range(table: Table, row: str, polarity: str) -> tuple[float, float]:
    return table.value(row, f"{polarity} from"), table.value(row, f"{polarity} to")


def _for_amps(rules: RuleBase, amps: float, polarity: str) -> str:
    """The thinnest tungsten that carries the amps; ReckonError if none of them does."""
    table = rules.tables["tungsten-amps"]
    most = {row: _range(table, row, polarity)[1] for row in table.rows}
    row = least_enough(amps, {row: high for row, high in most.items() if high})
    if not row:
        top = max(most.values())
        raise ReckonError(f"no tungsten here carries {amps:g} A so; the thickest takes {top:g} A")
    return row


def _tungsten(rules: RuleBase, given: Given) -> Outcome:
    amps, polarity = given.number("amps"), given.word("polarity")
    table = rules.tables["tungsten-amps"]
    row = _for_amps(rules, amps, polarity)
    low, high = _range(table, row, polarity)
    others = {each: _range(table, each, polarity) for each in table.rows if each != row}
    also = [each for each, (least, most) in others.items() if least <= amps <= most]
    made = [
        Output("size", "tungsten", row),
        Output("range", "it carries", f"{low:g} to {high:g} A"),
        Output("also", "will also do", ", ".join(also) or "no other"),
    ]
    said = (f"Below {low:g} A the arc of this tungsten wanders.",) if amps < low else ()
    return Outcome(tuple(made), (*said, table.note, rows.source(rules, "tungsten-amps")))


def _cup(rules: RuleBase, given: Given) -> Outcome:
    table, amps, thin = rules.tables["cup"], given.number("amps"), rules.tables["tungsten-amps"]
    alternating = given.word("polarity").startswith("ac")
    if _share(rules, given, "hydrogen") and (alternating or "thickness" in given):
        raise ReckonError("hydrogen makes holes in aluminium; take argon")
    size = _size(rules, given)
    row, tungsten = (
        nearest(size, {each: listed.value(each, "size") for each in listed.rows})
        for listed in (table, thin)
    )
    thickest = max(table.rows, key=lambda each: table.value(each, "size"))
    if size > 1.15 * table.value(thickest, "size"):
        raise ReckonError(f"no figures for a tungsten of {size:g} mm; the thickest is {thickest}")
    times = _helium_times(rules, given)
    cups = [table.value(row, column) for column in ("cup from", "cup to")]
    flows = [table.value(row, column) * times for column in ("flow from", "flow to")]
    made = [
        Output("tungsten", "tungsten", tungsten),
        Output("cup", "cup", f"no. {cups[0]:g} to {cups[1]:g}"),
        figures.result("bore", "bore of the smaller", "length", cup_bore(cups[0])),
        figures.result("flow_low", "gas flow from", "flow", flows[0]),
        figures.result("flow_high", "gas flow to", "flow", flows[1]),
    ]
    if "thickness" in given:
        made += _textbook(rules, given)
    unfit = _unfit(rules, tungsten, amps, given.word("polarity"))
    return Outcome(tuple(made), (*unfit, table.note, rows.source(rules, "cup")))


def _size(rules: RuleBase, given: Given) -> float:
    """The tungsten in use, mm, or else the one for the amps."""
    if "tungsten" in given:
        return given.number("tungsten")
    row = _for_amps(rules, given.number("amps"), given.word("polarity"))
    return rules.tables["tungsten-amps"].value(row, "size")


def _inert(rules: RuleBase) -> dict[str, str]:
    """The gases for TIG: CO2 and oxygen burn the tungsten away, nitrogen is for backing."""
    unfit = ("co2", "oxygen", "nitrogen")
    return {
        name: text
        for name, text in figures.gases(rules).items()
        if not any(rules.gases[name].parts.get(part) for part in unfit)
    }


def _share(rules: RuleBase, given: Given, part: str) -> float:
    """Percent of a part in the gas; argon if none was given."""
    return rules.gases[given.word("gas") or "argon"].parts.get(part, 0)


def _helium_times(rules: RuleBase, given: Given) -> float:
    """How many times the flow of argon this gas needs."""
    helium = _share(rules, given, "helium")
    return 1 + helium / 100 * (rules.tables["helium-flow"].value("helium") - 1)


def _unfit(rules: RuleBase, row: str, amps: float, polarity: str) -> tuple[str, ...]:
    """A remark if the tungsten does not carry these amps."""
    table = rules.tables["tungsten-amps"]
    high = _range(table, row, polarity)[1]
    return (f"This tungsten carries {high:g} A at most so: it will melt.",) if amps > high else ()


def _textbook(rules: RuleBase, given: Given) -> list[Output]:
    """Bore and gas flow of the textbook's row for aluminium of this thickness."""
    table, thickness = rules.tables["cup-aluminium"], given.number("thickness")
    column = "helium" if _share(rules, given, "helium") > 50 else "argon"
    possible("thickness", thickness, 0.1, 500, "mm")
    row = least_enough(thickness, {each: table.value(each, "up to") for each in table.rows})
    bore, flow = table.value(row, "bore"), table.value(row, column)
    return [
        figures.result("textbook_bore", "bore, textbook for aluminium", "length", bore),
        figures.result("textbook_flow", f"{column}, textbook for aluminium", "flow", flow),
    ]


CALCULATORS = (
    Calculator(
        "tungsten-size", "tungsten size", "power",
        "The thinnest tungsten that carries the amps, by polarity.",
        (_AMPS, _POLARITY), _tungsten, (least_enough,),
    ),
    Calculator(
        "cup-and-flow", "TIG cup and gas flow", "power",
        "Cup and gas flow for the tungsten in use, or for the one that the amps need.",
        (_AMPS, _POLARITY,
         Input("tungsten", "tungsten in use", "length", "3/32 in", optional=True),
         Input("gas", "shielding gas", "choice", "argon", True, _inert),
         Input("thickness", "thickness, if aluminium", "length", "1/8 in", optional=True)),
        _cup, (least_enough, nearest, cup_bore),
    ),
)  # fmt: skip
