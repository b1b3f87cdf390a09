"""Calculators of weld leads and extension cords: volts lost, and the size to take."""

from __future__ import annotations

from weldwhy.arithmetic import leads as law
from weldwhy.arithmetic.bounds import remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures, rows
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output

_LENGTH = Input("length", "length of the lead, one way", "distance", "10 ft")
_RETURN = Input("work_lead", "length of the work lead, if not the same", "distance", "10 ft", True)
_AMPS = Input("amps", "amps", "current", "150 A")
_AWG, _METRIC = "AWG", "mm2"
_LEADS, CORDS = "lead-sizes", "cord-sizes"
_CLAMPS = "Worn plugs, a loose work clamp and a coiled lead lose more."


def resistivity(rules: RuleBase) -> float:
    """Of the copper of a warm, stranded lead, ohm mm2/m."""
    at_20, rise, stranding, warm = rules.tables["copper"].rows["lead"]
    return law.copper(warm, at_20, rise, stranding)


def _one_way(given: Given) -> float:
    """Half of the way out and back, m."""
    out = given.number("length")
    return (out + given.number("work_lead")) / 2 if "work_lead" in given else out


def _lead_drop(rules: RuleBase, given: Given) -> Outcome:
    length, amps, section = _one_way(given), given.number("amps"), given.number("section")
    lost = law.cable_drop(length, amps, section, resistivity(rules))
    limit = rows.figure(rules, "drop-limit", "leads")
    said = [_CLAMPS]
    if lost > limit:
        said.insert(0, f"More than {limit:g} V: take a shorter or thicker lead.")
    if hot := _too_hot(rules, _LEADS, section, amps):
        said.insert(0, hot)
    made = (
        figures.result("lost", "volts lost in both leads", "voltage", lost),
        Output(
            "sizes",
            f"smallest lead, {limit:g} V at most and cool",
            least_size(rules, _LEADS, length, amps, limit),
        ),
    )
    return Outcome(made, (*remarks(lost), *said), rows.warnings(rules, "cables"))


def _lead_size(rules: RuleBase, given: Given) -> Outcome:
    length, amps = _one_way(given), given.number("amps")
    usual = rows.figure(rules, "drop-limit", "leads")
    drop = given.number("drop") if "drop" in given else usual
    section = law.section_for(length, amps, drop, resistivity(rules))
    made = (
        Output("sizes", "smallest lead to take", least_size(rules, _LEADS, length, amps, drop)),
        figures.result("section", "copper it needs for the volts alone", "section", section),
    )
    heat = "Counted as welding without a rest, so that the lead stays cool; the work lead likewise."
    return Outcome(made, (*remarks(section), heat, rows.source(rules, _LEADS)))


def least_size(rules: RuleBase, name: str, length: float, amps: float, drop: float) -> str:
    """The least of each system that loses so little and carries the amps, in words."""
    section = law.section_for(length, amps, drop, resistivity(rules))
    table = rules.tables[name]
    found = [rows.least(table, unit, section=section, carries=amps) for unit in (_METRIC, _AWG)]
    return " or ".join(each for each in found if each) or "a shorter one: none is so thick"


def _too_hot(rules: RuleBase, name: str, section: float, amps: float) -> str:
    """What to say when a lead or cord of this section must not carry the amps; else ""."""
    table = rules.tables[name]
    row = rows.at_most(table, "section", section)
    if not row:
        return f"Too thin: {next(iter(table.rows))} is the thinnest to take."
    carries = table.value(row, "carries")
    if amps <= carries:
        return ""
    return f"Too thin: without a rest it gets hot. It carries {carries:g} A, not {amps:g} A."


def _cord_drop(rules: RuleBase, given: Given) -> Outcome:
    length, amps, section = (given.number(each) for each in ("length", "amps", "section"))
    supply = given.number("supply")
    lost = law.cable_drop(length, amps, section, resistivity(rules))
    limit = rows.figure(rules, "drop-limit", "cord")
    longest = length * supply * limit / 100 / lost
    said = ["Unroll it all the way. Wiring, plugs and sockets are a licensed electrician's work."]
    if lost > supply * limit / 100:
        cord = least_size(rules, CORDS, length, amps, supply * limit / 100)
        said.insert(0, f"More than {limit:g} % is lost: the arc grows weak. Take {cord}.")
    if hot := _too_hot(rules, CORDS, section, amps):
        said.insert(0, hot)
    made = (
        figures.result("lost", "volts lost in the cord", "voltage", lost),
        figures.result("share", "share of the supply volts", "percent", 100 * lost / supply),
        figures.result("left", "volts that the machine gets", "voltage", max(0.0, supply - lost)),
        figures.result("longest", f"longest cord for {limit:g} %", "distance", longest),
    )
    return Outcome(made, (*said, *remarks(lost), rows.source(rules, CORDS)))


CALCULATORS = (
    Calculator(
        "lead-drop", "volts lost in the weld leads", "power",
        "Volts lost on the way to the arc and back through the work lead, copper, warm.",
        (_LENGTH, _RETURN, _AMPS, Input("section", "size of the lead", "section", "25 mm2")),
        _lead_drop, (law.cable_drop, law.copper),
    ),
    Calculator(
        "lead-size", "size of weld lead", "power",
        "The smallest copper lead for a length and amps: few volts lost, and not hot.",
        (_LENGTH, _RETURN, _AMPS,
         Input("drop", "volts you can lose", "voltage", "4 V", optional=True)),
        _lead_size, (law.section_for, law.copper),
    ),
    Calculator(
        "cord-drop", "volts lost in an extension cord", "power",
        "Volts lost in the cord to the machine, what the machine then gets, and whether the cord "
        "carries the amps.",
        (Input("length", "length of the cord", "distance", "50 ft"),
         Input("amps", "amps drawn from the supply", "current", "20 A"),
         Input("section", "size of each conductor", "section", "2.5 mm2"),
         Input("supply", "supply volts", "voltage", "230 V")),
        _cord_drop, (law.cable_drop, law.copper),
    ),
)  # fmt: skip
