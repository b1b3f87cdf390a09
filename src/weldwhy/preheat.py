"""How warm a metal is to be before and between beads.

Pure: the figures are tables of the rules, the formula is arithmetic. Where the formula does not
hold, a table counts or the need is said to be none as a rule.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from weldwhy import consumables, metalwork
from weldwhy.arithmetic import steel
from weldwhy.arithmetic.bounds import Impossible, Reckoned
from weldwhy.case import Case
from weldwhy.metalwork import Metal
from weldwhy.model import RuleBase
from weldwhy.setupmodel import Filler
from weldwhy.units import Quantity, Target

TABLES = ("weldability", "preheat-group", "interpass", "preheat-taken", "hydrogen")


@dataclass(frozen=True, slots=True)
class Need:
    """The least preheat, C, whether any is due, and what must be said with it."""

    least: float
    due: bool
    remarks: tuple[str, ...] = ()


def need(rules: RuleBase, metal: Metal, thickness: float, hydrogen: float, heat: float) -> Need:
    """The preheat a steel wants: its own row of the table, else the formula by CET.

    `thickness` in mm, `hydrogen` in ml in 100 g of weld, `heat` in kJ/mm. Where the formula holds
    and asks for more than the grade's row, it counts. Above its range of CET, and on thin plate of
    a steel with more carbon than it holds for, the table by carbon equivalent counts; below its
    range, and on other thin plate, none is due as a rule. Impossible outside physics; KeyError
    without the tables.
    """
    cet = steel.cet(metal.makes)
    steel.preheat_cet(cet, thickness, hydrogen, heat)  # refuses impossible numbers for every steel
    carbon, thin = metal.makes.get("C", 0.0), thickness < steel.THICKNESS_HOLDS[0]
    if metal.id in rules.tables["preheat-group"].rows:
        return _by_grade(rules, metal, thickness, _formula(cet, thickness, hydrogen, heat))
    if cet > steel.CET_HOLDS[1]:
        said = f"CET {cet:.2f} is more than the formula holds for; this is a common figure."
        return Need(_by_words(rules, metal), True, (said,))
    if thin and carbon > steel.CARBON_HOLDS[1]:
        said = f"With {carbon:g} % carbon thin plate may crack too; this is a common figure."
        least = _by_words(rules, metal)
        return Need(least, least > rules.tables["preheat-taken"].value("any", "room"), (said,))
    return _by_formula(rules, cet, thickness, hydrogen, heat)


def _by_grade(rules: RuleBase, metal: Metal, thickness: float, found: Reckoned) -> Need:
    """The grade's row, or what the formula found if it holds and asks for more."""
    table = rules.tables["preheat-group"]
    column = "thin" if thickness <= table.value(metal.id, "thin-to") else "thick"
    least = table.value(metal.id, column)
    holds = thickness >= steel.THICKNESS_HOLDS[0] and steel.cet(metal.makes) <= steel.CET_HOLDS[1]
    if holds and found > least:
        said = "The formula asks for more than the table for this grade, and counts."
        return Need(float(found), True, (f"{said} A written procedure comes first.",))
    said = "By a table for this grade, not by the formula. A written procedure comes first."
    return Need(least, least > rules.tables["preheat-taken"].value("any", "room"), (said,))


def _by_words(rules: RuleBase, metal: Metal) -> float:
    """The common preheat, C, of steels of this carbon equivalent."""
    words = rules.tables["weldability"]
    return words.value(metalwork.verdict(words, steel.ce_iiw(metal.makes)), "preheat")


def _formula(cet: Reckoned, thickness: float, hydrogen: float, heat: float) -> Reckoned:
    """The formula, with each number held to its range on the side that would give too little."""
    least, most = steel.HYDROGEN_HOLDS
    return steel.preheat_cet(
        cet,
        max(thickness, steel.THICKNESS_HOLDS[0]),
        min(max(hydrogen, least), most),
        min(heat, steel.HEAT_HOLDS[1]),
    )


def _by_formula(
    rules: RuleBase, cet: Reckoned, thickness: float, hydrogen: float, heat: float
) -> Need:
    taken = rules.tables["preheat-taken"]
    none, room = taken.value("any", "none"), taken.value("any", "room")
    thinnest = steel.THICKNESS_HOLDS[0]
    if cet < steel.CET_HOLDS[0]:
        said = f"CET {cet:.2f} is less than the formula holds for; such steel mostly needs none."
        return Need(none, False, (said,))
    found = _formula(cet, thickness, hydrogen, heat)
    remarks = [*found.remarks, *_held(hydrogen, heat)]
    if thickness < thinnest:
        more = f" At {thinnest:g} mm it would ask for {found:.0f} C." if found > room else ""
        remarks.append(
            f"Below {thinnest:g} mm the formula does not hold; such plate mostly needs none.{more}"
        )
    if thickness < thinnest or found <= room:
        return Need(none, False, tuple(remarks))
    return Need(float(found), True, tuple(remarks))


def _held(hydrogen: float, heat: float) -> Iterator[str]:
    """What is said where hydrogen or heat input were held to the formula's range."""
    least, most = steel.HYDROGEN_HOLDS
    if hydrogen > most:
        yield (
            f"Hydrogen {hydrogen:g} is more than the formula holds for and is taken as {most:g}; "
            "a low-hydrogen rod or wire is the better cure."
        )
    if hydrogen < least:
        yield f"Hydrogen {hydrogen:g} is less than the formula holds for and is taken as {least:g}."
    if heat > steel.HEAT_HOLDS[1]:
        yield (
            f"Heat input {heat:g} kJ/mm is more than the formula holds for and is taken as "
            f"{steel.HEAT_HOLDS[1]:g}."
        )


def interpass(rules: RuleBase, metal_id: str, material: str) -> float | None:
    """The hottest the metal may be before the next bead, C: by its grade, else by its kind."""
    rows = rules.tables["interpass"].rows if "interpass" in rules.tables else {}
    return next((rows[name][0] for name in (metal_id, material) if name in rows), None)


def filler_named(rules: RuleBase, text: str, process: str = "") -> Filler | None:
    """The filler of the rules that a text such as "1/8 in 7018" names, if there is one."""
    asked = consumables.read(text)[1] or text.strip()
    if not asked:
        return None
    for filler in rules.fillers.values():
        named = filler.id == asked.lower() or consumables.same_class(asked, filler.name)
        if named and (not process or process in filler.processes):
            return filler
    return None


def hydrogen(rules: RuleBase, case: Case) -> float:
    """Diffusible hydrogen of the case's rod or wire, ml in 100 g; else the process's careful one.

    KeyError without the table.
    """
    for setting in ("rod", "wire"):
        found = filler_named(rules, case.measured.get(setting, ""), case.process)
        if found is not None and found.hydrogen is not None:
            return found.hydrogen
    table = rules.tables["hydrogen"]
    return table.value(case.process if case.process in table.rows else "any")


def target(
    rules: RuleBase, case: Case, thickness: Quantity | None, heat: float | None
) -> Target | None:
    """The preheat wanted in a case: from the least preheat to the interpass limit.

    By its grade, else by its metal as a common steel of that kind. `heat` in kJ/mm. None if
    nothing is known of the metal, or of the thickness of a steel; and where the least preheat
    lies above the interpass limit, so that no number would be right.
    """
    if any(name not in rules.tables for name in TABLES):
        return None
    metal = metalwork.known(rules, case.grade, case.material)
    material = metal.material if metal else case.material
    most = interpass(rules, metal.id if metal else "", material)
    taken = rules.tables["preheat-taken"]
    low: float | None = taken.value("any", "none")
    if metal is not None and metalwork.is_steel(rules, material):
        low = _least(rules, metal, case, thickness, heat or taken.value("any", "heat"))
    if most is None or low is None or low > most:
        return None
    best = min(low + taken.value("any", "margin"), most)
    return Target(*(Quantity("temperature", value, "C") for value in (low, best, most)))


def _least(
    rules: RuleBase, metal: Metal, case: Case, thickness: Quantity | None, heat: float
) -> float | None:
    if thickness is None:
        return None
    try:
        return need(rules, metal, thickness.value, hydrogen(rules, case), heat).least
    except Impossible:
        return None
