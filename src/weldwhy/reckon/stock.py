"""Calculators of stock: wire left, rods needed, and whether spool and cylinder do for a job."""

from __future__ import annotations

import re

from weldwhy import metalwork
from weldwhy.arithmetic import bead, gas, sizes, stock
from weldwhy.arithmetic.bounds import Reckoned, remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures, rows
from weldwhy.reckon.calculator import (
    Calculator,
    Given,
    Input,
    Outcome,
    Output,
    ReckonError,
)
from weldwhy.units import Quantity, UnitError, parse, show_worked


def _wires(rules: RuleBase) -> dict[str, str]:
    """The wires of the table, each by its process and metal in plain words."""
    named: dict[str, str] = {}
    for row in rules.tables["wire-weight"].rows:
        process, _, metal = row.partition(" ")
        named[row] = f"{rules.processes[process].plain}, {rules.materials[metal].name}"
    return named


_WIRE = Input("wire", "wire", "choice", "gmaw mild-steel", choices=_wires)
_SIZE = Input("size", "wire size", "length", "0.030 in")
_WELD = Input("weld", "leg of a fillet (6 mm), or section of another weld (18 mm2)", "text", "6 mm")
_IS_AREA = re.compile(r"2 *$|\bsq\b")
_LENGTH = Input("length", "length of the weld", "distance", "10 m")
_FEED = Input("feed", "wire feed", "feed", "6 m/min", optional=True)


def _density(rules: RuleBase, given: Given) -> float:
    """Density of a wire, core and all, g/cm3."""
    row = given.word("wire")
    metal = figures.density(rules, row.partition(" ")[2])
    return metal * rules.tables["wire-weight"].value(row, "share")


def _wire_left(rules: RuleBase, given: Given) -> Outcome:
    net = given.number("mass") - given.number("empty")
    if net < 0:
        raise ReckonError("the spool cannot weigh less than when empty")
    length = stock.wire_left(net, given.number("size"), _density(rules, given))
    return _of_wire(rules, given, length, remarks(length))


def _wire_wound(rules: RuleBase, given: Given) -> Outcome:
    outer, inner, width = (given.number(name) for name in ("outer", "inner", "width"))
    packing = rows.figure(rules, "winding", "share")
    length = stock.wire_wound(outer, inner, width, given.number("size"), packing)
    said = "By its size, good to a tenth: weigh it if you can."
    return _of_wire(rules, given, length, (*remarks(length), said))


def _of_wire(rules: RuleBase, given: Given, length: float, said: tuple[str, ...]) -> Outcome:
    """The length of wire left, its weight, and the minutes of arc in it."""
    mass = stock.wire_mass(length, given.number("size"), _density(rules, given))
    made = [
        figures.result("length", "wire left", "distance", length),
        figures.result("mass", "weight of that wire", "mass", mass),
    ]
    if "feed" in given:
        minutes = stock.feed_minutes(length, given.number("feed"))
        made.append(figures.result("lasts", "minutes of arc in it", "time", minutes))
    return Outcome(tuple(made), said)


def _weld_metal(rules: RuleBase, given: Given, metal: str) -> Reckoned:
    """Weld metal of the joint, kg, with its rounded face."""
    density = figures.density(rules, metal)
    extra = rules.tables["rounded-face"].value("fillet") - 1
    return stock.weld_metal(_section(given.word("weld")), given.number("length"), density, extra)


def _section(text: str) -> Reckoned:
    """Section of the weld, mm2, written as such or as the leg of a fillet."""
    try:
        return Reckoned(parse(text, "area").value if _IS_AREA.search(text) else _of_leg(text))
    except UnitError as fault:
        raise ReckonError(f"{_WELD.name}: {fault}") from None


def _of_leg(text: str) -> Reckoned:
    leg = parse(text, "length").value
    return bead.fillet_area(leg, leg)


def _rods_needed(rules: RuleBase, given: Given) -> Outcome:
    metal = given.word("metal")
    if metal != given.word("rod") and not metalwork.is_steel(rules, metal):
        raise ReckonError(f"{given.word('rod')} rods are not for {rules.materials[metal].name}")
    mass = _weld_metal(rules, given, metal)
    core = (given.number("size"), _rod_length(rules, given), _stub(rules, given))
    recovery = rules.tables["rod-recovery"].value(given.word("rod"), "share")
    each = stock.rod_metal(*core, figures.density(rules, metal), recovery)
    count = stock.rods_needed(mass, each)
    made = [
        Output("rods", "rods", f"{count:.0f}"),
        figures.result("metal", "weld metal", "mass", mass),
        figures.result("each", "weld metal of one rod", "mass", each),
    ]
    if "rate" in given:
        minutes = stock.arc_minutes(mass, given.number("rate"))
        made.append(figures.result("arc", "minutes of arc", "time", minutes))
    said = ("Bent, stuck and spoilt rods come on top: take a tenth more.",)
    source = rows.source(rules, "rod-recovery")
    return Outcome(tuple(made), (*remarks(mass, each, count), *said, source))


def _rod_length(rules: RuleBase, given: Given) -> float:
    """Length of a rod, mm: as given, or as usual for its size."""
    if "rod_length" in given:
        return given.number("rod_length")
    table = rules.tables["rod-sizes"]
    known = {row: table.value(row, "size") for row in table.rows}
    return table.value(sizes.nearest(given.number("size"), known), "length")


def _stub(rules: RuleBase, given: Given) -> float:
    return given.number("stub") if "stub" in given else rows.figure(rules, "rod-stub", "length")


def _enough(rules: RuleBase, given: Given) -> Outcome:
    process, _, metal = given.word("wire").partition(" ")
    mass = _weld_metal(rules, given, metal)
    wire = stock.filler_needed(mass, figures.efficiency(rules, process))
    made = [
        figures.result("metal", "weld metal", "mass", mass),
        figures.result("wire", "wire the job takes", "mass", wire),
    ]
    if "spool" in given:
        made.append(Output("spool", "spool", _verdict(given.quantity("spool"), wire)))
    if "feed" in given:
        length = stock.wire_left(wire, given.number("size"), _density(rules, given))
        minutes = stock.feed_minutes(length, given.number("feed"))
        made.append(figures.result("arc", "minutes of arc", "time", minutes))
        made += _gas_enough(rules, given, minutes)
    elif "flow" in given or "gas" in given:
        raise ReckonError("the gas needs the minutes of arc: give the wire feed too")
    return Outcome(
        tuple(made), (*remarks(mass, wire), "Practice pieces and spoilt beads come on top.")
    )


def _gas_enough(rules: RuleBase, given: Given, minutes: float) -> list[Output]:
    """The gas the job takes, and whether what is left does, as far as was told."""
    if "flow" not in given:
        return []
    on = minutes * rows.figure(rules, "gas-on", "times")
    litres = gas.gas_for(on, given.number("flow"))
    made = [figures.result("gas", "gas the job takes", "volume", litres)]
    if "gas" in given:
        made.append(Output("cylinder", "cylinder", _verdict(given.quantity("gas"), litres)))
    return made


def _verdict(left: Quantity, needed: float) -> str:
    """Whether what is left is enough, and how much is over or short."""
    said = show_worked(Quantity(left.kind, abs(left.value - needed), left.unit))
    return f"enough, {said} over" if left.value >= needed else f"short by {said}"


CALCULATORS = (
    Calculator(
        "wire-left", "wire left on a spool, by weight", "stock",
        "Length of wire left, and the minutes of arc in it.",
        (_WIRE, _SIZE,
         Input("mass", "weight of the spool now", "mass", "3 kg"),
         Input("empty", "weight of the empty spool", "mass", "0.3 kg"),
         _FEED),
        _wire_left, (stock.wire_left, stock.feed_minutes),
    ),
    Calculator(
        "wire-wound", "wire left on a spool, by its size", "stock",
        "Length of wire left, its weight and the minutes of arc in it, where there are no scales.",
        (_WIRE, _SIZE,
         Input("outer", "outer diameter of the winding", "length", "180 mm"),
         Input("inner", "inner diameter of the winding", "length", "100 mm"),
         Input("width", "width of the winding", "length", "45 mm"),
         _FEED),
        _wire_wound, (stock.wire_wound, stock.wire_mass, stock.feed_minutes),
    ),
    Calculator(
        "rods-needed", "rods for a job", "stock",
        "How many stick rods a weld takes, stubs thrown away.",
        (_WELD, _LENGTH,
         Input("rod", "class of rod", "choice", "7018", choices=rows.of("rod-recovery")),
         Input("size", "rod size", "length", "3.2 mm"),
         Input("metal", "metal", "choice", "mild-steel", choices=figures.metals),
         Input("rod_length", "length of a rod", "length", "350 mm", optional=True),
         Input("stub", "stub thrown away", "length", "50 mm", optional=True),
         Input("rate", "weld metal laid down", "rate", "1.2 kg/h", optional=True)),
        _rods_needed,
        (bead.fillet_area, stock.weld_metal, stock.rod_metal, stock.rods_needed,
         stock.arc_minutes),
    ),
    Calculator(
        "enough", "enough wire and gas for the job?", "stock",
        "Whether the spool and the cylinder do for a job, or how much they fall short.",
        (_WIRE, _SIZE, _WELD, _LENGTH, _FEED,
         Input("spool", "wire left on the spool", "mass", "3 kg", optional=True),
         Input("flow", "gas flow", "flow", "12 L/min", optional=True),
         Input("gas", "gas left in the cylinder", "volume", "2000 L", optional=True)),
        _enough,
        (bead.fillet_area, stock.weld_metal, stock.filler_needed, stock.wire_left,
         stock.feed_minutes, gas.gas_for),
    ),
)  # fmt: skip
