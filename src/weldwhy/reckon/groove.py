"""The calculator of a butt joint's groove: section, passes, weld metal and filler."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic import bead, groove
from weldwhy.arithmetic.bounds import Reckoned, remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output, ReckonError

_SHAPES = {
    "square": "square",
    "single-v": "V, both plates bevelled",
    "double-v": "double V, both plates bevelled from both sides",
    "single-bevel": "one plate bevelled",
    "double-bevel": "one plate bevelled from both sides",
}


def _shapes(rules: RuleBase) -> Mapping[str, str]:
    return _SHAPES


def _groove(rules: RuleBase, given: Given) -> Outcome:
    area = _section(given)
    whole = groove.with_reinforcement(area, given.number("reinforcement") / 100)
    leg = given.number("pass_leg")
    count = groove.passes(whole, bead.fillet_area(leg, leg))
    length, metres = figures.each_length(given)
    # mm2 x m is cm3, and g/cm3 makes it grams
    metal = whole * metres * figures.density(rules, given.word("metal")) / 1000
    filler = metal / figures.efficiency(rules, given.word("process"))
    return Outcome(
        (
            figures.result("area", "section of the groove", "area", area),
            figures.result("weld", "section of the weld", "area", whole),
            Output("passes", "passes, at least", float(count)),
            figures.result("metal", f"weld metal for each {length}", "mass", metal),
            figures.result("filler", f"wire or rod for each {length}", "mass", filler),
        ),
        remarks(area, whole, count),
    )


def _section(given: Given) -> Reckoned:
    """Section of the groove, mm2; a square joint has no angle, whatever was given."""
    shape, plate = given.word("shape"), (given.number("thickness"), given.number("gap"))
    if shape == "square":
        area = groove.groove_area(*plate, 0, 0, False)
    else:
        section = groove.bevel_area if shape.endswith("bevel") else groove.groove_area
        face = given.number("face") if "face" in given else 0.0
        area = section(*plate, face, given.number("angle"), shape.startswith("double"))
    if not area:
        raise ReckonError("this joint is closed, with no groove to fill: all of its weld is plate")
    return area


CALCULATORS = (
    Calculator(
        "groove", "groove of a butt joint", "weld",
        "Section of a groove, the passes that fill it, and the weld metal and filler it takes. "
        "The angle is that between the two faces.",
        (Input("shape", "shape", "choice", "single-v", choices=_shapes),
         Input("thickness", "thickness", "length", "10 mm"),
         Input("gap", "root gap", "length", "2 mm"),
         Input("face", "root face, if any", "length", "2 mm", optional=True),
         Input("angle", "angle of the groove (square has none)", "angle", "60 deg"),
         Input("reinforcement", "share that stands above it", "percent", "10 %"),
         Input("pass_leg", "leg of a fillet that you lay in one pass", "length", "6 mm"),
         Input("process", "process", "choice", "gmaw", choices=figures.processes),
         Input("metal", "metal", "choice", "mild-steel", choices=figures.metals)),
        _groove,
        (groove.groove_area, groove.bevel_area, groove.with_reinforcement, groove.passes),
    ),
)  # fmt: skip
