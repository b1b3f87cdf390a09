"""What the calculators of stainless steel and aluminium work out: ferrite, and the filler."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from weldwhy import hotcracks, metalwork
from weldwhy.arithmetic import stainless
from weldwhy.arithmetic.aluminium import magnesium_silicide
from weldwhy.arithmetic.bounds import Reckoned, remarks
from weldwhy.arithmetic.makes import Makes, mixed
from weldwhy.metalwork import Metal
from weldwhy.model import RuleBase
from weldwhy.reckon.calculator import Given, Outcome, Output, ReckonError

NO_FILLER = "none"
SHOWN = ("C", "Cr", "Ni", "Mo", "Mn", "Si", "N")
MARKS = "0 to 3"
"""Unit of the columns that mark how well a filler serves a use."""
HARD = "hard and brittle: it holds martensite; take a filler richer in chromium and nickel"


def stainless_fillers(rules: RuleBase) -> Mapping[str, str]:
    """The stainless fillers whose weld metal is known, and none at all."""
    rows = rules.tables["stainless-filler"].rows
    return {row: f"{row[:3]}{row[3:].upper()}" for row in rows} | {NO_FILLER: "no filler"}


def uses(rules: RuleBase) -> Mapping[str, str]:
    """What an aluminium weld may be for: the columns of marks."""
    table = rules.tables["aluminium-filler"]
    columns = zip(table.columns, table.units, strict=True)
    return {column: column for column, unit in columns if unit == MARKS}


def stainless_ferrite(rules: RuleBase, given: Given) -> Outcome:
    """Ferrite of a stainless weld between two metals, and what it means."""
    base = metalwork.read(rules, given.word("base"))
    other = metalwork.read(rules, given.word("other")) if "other" in given else base
    for each in (base, other):
        if each.material not in ("", "stainless") and not metalwork.is_steel(rules, each.material):
            raise ReckonError(f"{each.name} is no steel; this does not fit it")
    weld = _stainless_weld(rules, given, mixed(base.makes, other.makes, 0.5))
    creq, nieq = stainless.delong(weld)
    number = stainless.ferrite_number(creq, nieq)
    warnings = tuple(
        line for each in (base, other) for line in hotcracks.warning(rules, each.makes)
    )
    words = metalwork.verdict(rules.tables["ferrite"], number)
    if _hard(weld):
        words = HARD
    outputs = (
        Output("verdict", "what it means", hotcracks.NOT_FOR_WELDING if warnings else words),
        Output("ferrite", "ferrite number FN", round(float(number), 1)),
        Output("weld", "weld metal", _contents(weld)),
        Output("schaeffler", "Schaeffler", _pair(stainless.schaeffler(weld))),
        Output("wrc", "WRC-1992", _pair(stainless.wrc(weld))),
    )
    notes = (each.note for each in (base, other) if each.note)
    said = (*warnings, *notes, *_precision(weld), *remarks(number))
    return Outcome(outputs, tuple(dict.fromkeys(said)))


def _stainless_weld(rules: RuleBase, given: Given, base: Makes) -> dict[str, float]:
    row = given.word("filler")
    if row == NO_FILLER:
        chromium = base.get("Cr", 0.0)
        if chromium < rules.tables["stainless-from"].value("Cr"):
            raise ReckonError(
                f"with {chromium:.1f} % chromium this is no stainless weld; add filler"
            )
        if base.get("Ni", 0.0) < rules.tables["stainless-from"].value("Ni"):
            raise ReckonError(
                "with so little nickel the weld is not austenitic, and a ferrite number says "
                "nothing of it; keep the heat low, or add filler"
            )
        return dict(base)
    filler = metalwork.composition_of(rules.tables["stainless-filler"], row)
    return mixed(base, filler, _dilution(rules, given, "stainless"))


def _dilution(rules: RuleBase, given: Given, metal: str) -> float:
    if "dilution" in given:
        return given.number("dilution") / 100.0
    return rules.tables["dilution"].value(metal)


def _hard(weld: Makes) -> bool:
    creq, nieq = stainless.schaeffler(weld)
    return float(nieq) < float(stainless.martensite_below(float(creq)))


def _precision(weld: Makes) -> tuple[str, ...]:
    if _hard(weld):
        return ("The line where martensite begins is good to about 1 % nickel equivalent.",)
    return ("From a composition alone this is good to about 3 FN; only a meter on the bead knows.",)


def _contents(weld: Makes) -> str:
    return ", ".join(f"{each} {_figure(weld[each])} %" for each in SHOWN if weld.get(each))


def _figure(percent: float) -> str:
    return f"{percent:.1f}" if percent >= 1 else f"{percent:.2g}"


def _pair(equivalents: tuple[Reckoned, Reckoned]) -> str:
    creq, nieq = equivalents
    return f"chromium equivalent {creq:.1f}, nickel equivalent {nieq:.1f}"


@dataclass(frozen=True, slots=True)
class _Choice:
    """A filler for a base alloy, how well it serves the use, and the bead's crack sensitivity."""

    name: str
    serves: float
    cracks: Reckoned


def aluminium_filler(rules: RuleBase, given: Given) -> Outcome:
    """The filler for an aluminium alloy and a use, and what it does to cracking."""
    base = metalwork.read(rules, given.word("base"))
    if base.material not in ("", "aluminium"):
        raise ReckonError(f"{base.name} is no aluminium; this does not fit it")
    notes = (*hotcracks.warning(rules, base.makes), *((base.note,) if base.note else ()))
    refused = _refused(rules, base, given.word("use"))
    fitting = [] if refused else _choices(rules, given, base.makes)
    if not fitting:
        why = refused or "No filler of the table suits that use on this alloy."
        return Outcome((Output("filler", "filler", "none"),), (why, *notes))
    alone, (first, *others) = hotcracks.sensitivity(rules, base.makes), fitting
    rest = ", ".join(each.name for each in others) or "none"
    return Outcome(
        (
            Output("filler", "filler", first.name),
            Output("others", "others that will do", rest),
            Output("cracking", f"cracking with {first.name}", _words(rules, first.cracks)),
            Output("alone", "cracking without filler", _words(rules, alone)),
        ),
        notes,
    )


def _refused(rules: RuleBase, base: Metal, use: str) -> str:
    """Why no filler will do; "" if one may."""
    hot = rules.tables["aluminium-limit"].value("hot-magnesium")
    if hotcracks.beside(rules, base.makes):
        return "Not for arc welding: it cracks beside the bead whatever the filler."
    if hotcracks.free_cutting(rules, base.makes):
        return "Not for arc welding, whatever the filler."
    if use == "heat" and base.makes.get("Mg", 0.0) > hot:
        return f"With more than {hot:g} % magnesium the metal itself is not for that heat."
    return ""


def _choices(rules: RuleBase, given: Given, base: Makes) -> list[_Choice]:
    """The fillers that leave a sound bead for the use, the best first, ties in table order."""
    table, words = rules.tables["aluminium-filler"], rules.tables["crack-words"]
    brittle = rules.tables["aluminium-limit"].value("brittle-mg2si")
    share, found = _dilution(rules, given, "aluminium"), list[_Choice]()
    alloyed = base.get("Si", 0.0) + base.get("Mg", 0.0)
    for row in table.rows:
        serves = table.value(row, given.word("use"))
        weld = mixed(base, metalwork.composition_of(table, row), share)
        cracks = hotcracks.sensitivity(rules, weld)
        sound = metalwork.verdict(words, cracks) != [*words.rows][-1]
        meant = table.value(row, "base-from") <= alloyed <= table.value(row, "base-to")
        if serves and meant and sound and magnesium_silicide(weld) <= brittle:
            found.append(_Choice(row, serves, cracks))
    return sorted(found, key=lambda each: (-each.serves, float(each.cracks)))


def _words(rules: RuleBase, cracks: Reckoned) -> str:
    return f"{metalwork.verdict(rules.tables['crack-words'], cracks)} ({cracks:.1f} of 1)"
