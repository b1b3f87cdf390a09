"""Calculators of the bead: a fillet's sizes, travel speed read off a bead, and arc time."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic import arc, bead
from weldwhy.arithmetic.bounds import Reckoned, possible, remarks
from weldwhy.beadtravel import weight_share
from weldwhy.model import RuleBase
from weldwhy.reckon import figures
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, ReckonError


def _measures(rules: RuleBase) -> Mapping[str, str]:
    return {"leg": "the leg", "throat": "the throat"}


def _beads(rules: RuleBase) -> Mapping[str, str]:
    return {"fillet": "fillet, by its leg", "flat": "bead on flat plate, by width and height"}


def _fillet(rules: RuleBase, given: Given) -> Outcome:
    leg = _leg(given)
    other = given.number("other_leg") if "other_leg" in given else leg
    throat, area = bead.fillet_throat(leg, other), bead.fillet_area(leg, other)
    length, metres = figures.each_length(given)
    grams = area * metres * figures.density(rules, given.word("metal"))  # mm2 x m is cm3
    return Outcome(
        (
            figures.result("leg", "leg", "length", leg),
            figures.result("throat", "throat", "length", throat),
            figures.result("area", "section", "area", area),
            figures.result("metal", f"weld metal for each {length}", "mass", grams / 1000),
        ),
        tuple(dict.fromkeys(remarks(throat, area))),
    )


def _leg(given: Given) -> float:
    """The leg given, or that of the throat given, mm."""
    if given.word("measured") == "leg":
        return given.number("size")
    if "other_leg" in given:
        raise ReckonError("from a throat only equal legs can be told; leave out the other leg")
    return bead.fillet_leg(given.number("size"))


def _travel(rules: RuleBase, given: Given) -> Outcome:
    process, area = given.word("process"), _section(given)
    share = figures.efficiency(rules, process, given.word("gas")) * weight_share(rules, process)
    travel = bead.travel_for_area(area, given.number("feed"), given.number("size"), share)
    made = [
        figures.result("travel", "travel speed", "speed", travel),
        figures.result("area", "section of the bead", "area", area),
    ]
    said = [*remarks(travel)]
    if given.word("bead") == "fillet":
        said.append("A flat face is taken; with a rounded one you moved about a tenth slower.")
    heat = _heat(rules, given, travel)
    if heat is not None:
        made.append(figures.result("heat", "heat input", "heat", heat))
        said += remarks(heat)
    return Outcome(tuple(made), tuple(dict.fromkeys((*said, *figures.cored(rules, process)))))


def _section(given: Given) -> Reckoned:
    """The section of the bead that was measured, mm2."""
    width = given.number("width")
    if given.word("bead") == "fillet":
        return bead.fillet_area(width, given.number("height") if "height" in given else width)
    if "height" not in given:
        raise ReckonError("height is missing; measure how far the bead stands above the plate")
    return bead.bead_area(width, given.number("height"))


def _heat(rules: RuleBase, given: Given, travel: float) -> Reckoned | None:
    """Heat input at this travel speed, kJ/mm; None without volts and amps."""
    missing = [name for name in ("volts", "amps") if name not in given]
    if len(missing) == 1:
        raise ReckonError(f"{missing[0]} is missing; heat input needs volts and amps")
    if missing:
        return None
    factor = rules.tables["heat-factor"].value(given.word("process"))
    return arc.heat_input(given.number("volts"), given.number("amps"), travel, factor)


def _bead(rules: RuleBase, given: Given) -> Outcome:
    process = given.word("process")
    share = figures.efficiency(rules, process, given.word("gas")) * weight_share(rules, process)
    area = bead.area_for_travel(
        given.number("travel"), given.number("feed"), given.number("size"), share
    )
    made = (
        figures.result("leg", "leg of a fillet", "length", bead.leg_of_area(area)),
        figures.result("area", "section of the bead", "area", area),
    )
    return Outcome(made, (*remarks(area), *figures.cored(rules, process)))


def _arc_time(rules: RuleBase, given: Given) -> Outcome:
    passes = possible("passes", given.number("passes"), 1, 1000) if "passes" in given else 1
    minutes = bead.travel_minutes(given.number("length") * passes, given.number("travel"))
    made = [figures.result("arc", "time of arc", "time", minutes)]
    if "share" in given:
        share = possible("share of the time that the arc burns", given.number("share"), 1, 100, "%")
        made.append(figures.result("whole", "time in all", "time", minutes / share * 100))
    return Outcome(tuple(made), remarks(minutes))


_PROCESS = Input("process", "process", "choice", "gmaw", choices=figures.wire_processes)
_SIZE = Input("size", "wire size", "length", "0.035 in")
_FEED = Input("feed", "wire feed", "feed", "250 ipm")
_GAS = Input("gas", "shielding gas", "choice", "c25", True, figures.gases)

CALCULATORS = (
    Calculator(
        "fillet", "fillet size", "weld",
        "Leg, throat, section and weld metal of a fillet with a flat face.",
        (Input("measured", "what is known", "choice", "leg", choices=_measures),
         Input("size", "leg or throat", "length", "6 mm"),
         Input("other_leg", "other leg, if not the same", "length", "6 mm", optional=True),
         Input("metal", "metal", "choice", "mild-steel", choices=figures.metals)),
        _fillet, (bead.fillet_throat, bead.fillet_leg, bead.fillet_area),
    ),
    Calculator(
        "bead-from-travel", "bead from a travel speed", "weld",
        "How large a bead a wire feed makes at a travel speed: as a fillet, and its section.",
        (_PROCESS, _SIZE, _FEED, Input("travel", "travel speed", "speed", "6 mm/s"), _GAS),
        _bead, (bead.area_for_travel, bead.leg_of_area),
    ),
    Calculator(
        "travel-from-bead", "travel speed from a bead", "weld",
        "How fast you moved, told by the bead you made and the wire feed; with volts and amps, "
        "also the heat that went in.",
        (_PROCESS, _SIZE, _FEED,
         Input("bead", "kind of bead", "choice", "fillet", choices=_beads),
         Input("width", "leg of the fillet, or width of the bead", "length", "3/16 in"),
         Input("height", "other leg of the fillet, or height of the bead", "length", "3/16 in",
               optional=True),
         Input("volts", "volts", "voltage", "19 V", optional=True),
         Input("amps", "amps", "current", "145 A", optional=True),
         _GAS),
        _travel,
        (bead.fillet_area, bead.bead_area, bead.travel_for_area, arc.heat_input),
    ),
    Calculator(
        "arc-time", "arc time", "weld",
        "How long the arc burns for a weld, and how long the job takes with all around it.",
        (Input("length", "length of the weld", "distance", "2 m"),
         Input("travel", "travel speed", "speed", "5 mm/s"),
         Input("passes", "number of passes", "number", "1", optional=True),
         Input("share", "share of the time that the arc burns", "percent", "30 %", optional=True)),
        _arc_time, (bead.travel_minutes,),
    ),
)  # fmt: skip
