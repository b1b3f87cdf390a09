"""Calculators of heat: what an arc melts, how hot it makes the plate, where it settles."""

from __future__ import annotations

from weldwhy.arithmetic import arc, droop, heatflow
from weldwhy.arithmetic.bounds import remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, ReckonError

_KELVIN = 273.15

_PROCESS = Input("process", "process", "choice", "gmaw", choices=figures.processes)
_VOLTS = Input("volts", "volts at the arc", "voltage", "20 V")
_AMPS = Input("amps", "amps", "current", "200 A")
_TRAVEL = Input("travel", "travel speed", "speed", "5 mm/s")


def _metals(rules: RuleBase) -> dict[str, str]:
    return {m: rules.materials[m].name for m in rules.tables["heat-flow"].rows}


_METAL = Input("metal", "metal", "choice", "mild-steel", choices=_metals)


def _melted_area(rules: RuleBase, given: Given) -> Outcome:
    melts = rules.tables["heat-flow"].value(given.word("metal"), "melts")
    area = heatflow.melted_area(
        given.number("volts"),
        given.number("amps"),
        given.number("travel"),
        rules.tables["heat-factor"].value(given.word("process")),
        given.number("melting") / 100,
        heatflow.melting_energy(melts + _KELVIN),
    )
    made = figures.result("area", "melted section", "area", area)
    said = "Good to the order of magnitude only: filler and melted plate together."
    return Outcome((made,), (*remarks(area), said))


def _power_to_melt(rules: RuleBase, given: Given) -> Outcome:
    melts = rules.tables["heat-flow"].value(given.word("metal"), "melts")
    power = heatflow.power_to_melt(
        given.number("area"),
        given.number("travel"),
        rules.tables["heat-factor"].value(given.word("process")),
        given.number("melting") / 100,
        heatflow.melting_energy(melts + _KELVIN),
    )
    made = figures.result("power", "power of the arc", "power", power / 1000)
    return Outcome((made,), (*remarks(power), "Good to the order of magnitude only."))


def _peak(rules: RuleBase, given: Given) -> Outcome:
    factor = rules.tables["heat-factor"].value(given.word("process"))
    heat = arc.heat_input(
        given.number("volts"), given.number("amps"), given.number("travel"), factor
    )
    capacity, melts, changes = rules.tables["heat-flow"].rows[given.word("metal")]
    if given.number("start") >= changes:
        raise ReckonError(f"the plate must be colder than {changes:g} C, where the metal changes")
    plate = (given.number("thickness"), given.number("start"), melts, capacity)
    peak = heatflow.peak_temperature(given.number("distance"), heat * 1000, *plate)
    width = heatflow.heated_width(changes, heat * 1000, *plate)
    return Outcome(
        (
            figures.result("peak", "hottest at that distance", "temperature", peak),
            figures.result("width", "heat-affected zone, each side", "length", width),
        ),
        (
            *remarks(heat),
            "Only for plate that is melted right through in one pass; on thicker plate the heat "
            "also flows down, and the zone is narrower.",
        ),
    )


def _droop(rules: RuleBase, given: Given) -> Outcome:
    volts = droop.arc_length_volts(
        given.number("length"), given.number("base"), given.number("per_mm")
    )
    amps = droop.working_amps(given.number("open"), given.number("short"), volts, 0)
    return Outcome(
        (
            figures.result("amps", "amps", "current", amps),
            figures.result("volts", "volts", "voltage", volts),
            figures.result("power", "power of the arc", "power", volts * amps / 1000),
        ),
        remarks(amps),
    )


def _efficiency(rules: RuleBase, given: Given) -> Outcome:
    watts = given.number("power") * 1000
    share = arc.arc_efficiency(watts, given.number("volts"), given.number("amps"))
    made = figures.result("share", "share that went into the work", "percent", share * 100)
    return Outcome((made,), remarks(share))


_MELTING = Input("melting", "share of the heat that melts", "percent", "50 %")

CALCULATORS = (
    Calculator(
        "melted-area", "section that the arc melts", "heat",
        "How large a section of weld the power of the arc can melt at a travel speed.",
        (_PROCESS, _METAL, _VOLTS, _AMPS, _TRAVEL, _MELTING),
        _melted_area, (heatflow.melting_energy, heatflow.melted_area),
    ),
    Calculator(
        "power-to-melt", "power for a section of weld", "heat",
        "How much power the arc needs to melt a section of weld at a travel speed.",
        (_PROCESS, _METAL, Input("area", "section of the weld", "area", "10 mm2"), _TRAVEL,
         _MELTING),
        _power_to_melt, (heatflow.melting_energy, heatflow.power_to_melt),
    ),
    Calculator(
        "peak-temperature", "heat beside the weld", "heat",
        "How hot thin plate gets beside a weld, and how wide the heat-affected zone is.",
        (_PROCESS, _METAL, _VOLTS, _AMPS, _TRAVEL,
         Input("thickness", "plate thickness", "length", "5 mm"),
         Input("start", "temperature of the plate before", "temperature", "20 C"),
         Input("distance", "distance from the edge of the weld", "length", "3 mm")),
        _peak, (heatflow.peak_temperature, heatflow.heated_width),
    ),
    Calculator(
        "droop", "arc length and amps", "heat",
        "How far the amps of a stick or TIG source fall when the arc is drawn out.",
        (Input("open", "open-circuit volts", "voltage", "80 V"),
         Input("short", "amps when the rod sticks", "current", "160 A"),
         Input("base", "volts of a very short arc", "voltage", "20 V"),
         Input("per_mm", "volts for each mm of arc", "number", "2"),
         Input("length", "arc length", "length", "3 mm")),
        _droop, (droop.arc_length_volts, droop.working_amps),
    ),
    Calculator(
        "arc-efficiency", "measured arc efficiency", "heat",
        "What share of the arc's power a calorimeter found in the work.",
        (Input("power", "power found in the work", "power", "1.6 kW"),
         Input("volts", "volts at the arc", "voltage", "12 V"),
         Input("amps", "amps", "current", "200 A")),
        _efficiency, (arc.arc_efficiency,),
    ),
)  # fmt: skip
