"""What the calculators of steel work out: carbon equivalents, and the preheat they ask for."""

from __future__ import annotations

from weldwhy import hotcracks, metalwork, preheat
from weldwhy.arithmetic import steel
from weldwhy.arithmetic.bounds import remarks
from weldwhy.metalwork import Metal
from weldwhy.model import RuleBase
from weldwhy.reckon import rows
from weldwhy.reckon.calculator import Given, Outcome, Output, ReckonError
from weldwhy.units import Quantity, UnitError, parse_number, show

WARM_CAUTIONS = ("hot-metal", "fire")
PROCEDURE = (
    "Where a break could hurt somebody, or a code applies, a written procedure for this steel and "
    "a certified welder decide."
)

WORST = (
    "Reckoned with the most that the grade usually holds; the figures of the metal's own "
    "certificate may ask for less."
)


def carbon_equivalent(rules: RuleBase, given: Given) -> Outcome:
    """CE, Pcm and CET of a steel, and what its CE asks for."""
    metal = _steel(rules, given)
    ce, pcm, cet = (formula(metal.makes) for formula in (steel.ce_iiw, steel.pcm, steel.cet))
    words = metalwork.verdict(rules.tables["weldability"], ce)
    if hotcracks.free_cutting(rules, metal.makes):
        words = hotcracks.NOT_FOR_WELDING
    outputs = (
        Output("verdict", "what it asks for", words),
        Output("ce", "carbon equivalent CE (IIW)", round(float(ce), 3)),
        Output("pcm", "cracking parameter Pcm", round(float(pcm), 3)),
        Output("cet", "carbon equivalent CET", round(float(cet), 3)),
    )
    said = dict.fromkeys((*_of(rules, metal), *remarks(ce, pcm, cet)))
    return Outcome(outputs, tuple(said))


def preheat_needed(rules: RuleBase, given: Given) -> Outcome:
    """The least preheat and the most between beads, with the cautions that come before it."""
    metal = metalwork.read(rules, given.word("metal"))
    if metal.material and not metalwork.is_steel(rules, metal.material):
        return _not_steel(rules, metal)
    metal = _steel(rules, given)
    taken = rules.tables["preheat-taken"]
    heat = given.number("heat") if "heat" in given else taken.value("any", "heat")
    hydrogen, assumed = _hydrogen(rules, given.word("hydrogen"))
    wanted = preheat.need(rules, metal, given.number("thickness"), hydrogen, heat)
    if "heat" not in given:
        assumed = (*assumed, f"Heat input is taken as {heat:g} kJ/mm, a small bead.")
    cautions = rows.warnings(rules, *WARM_CAUTIONS) if wanted.due else ()
    most = _most(rules, metal)
    clash = tuple(_below(wanted.least, each.value) for each in most)
    outputs = (_least(wanted.least, wanted.due), *(() if any(clash) else most))
    worst = (WORST,) if metal.id and wanted.due else ()
    procedure = (PROCEDURE,) if wanted.due else ()
    said = (*filter(None, clash), *_of(rules, metal), *wanted.remarks, *worst, *assumed)
    return Outcome(outputs, (*procedure, *said), cautions)


def _below(least: float, most: Quantity | float | str) -> str:
    """What is said where the most between beads lies below the least preheat; else ""."""
    if not isinstance(most, Quantity) or most.value >= least:
        return ""
    return (
        f"More than the {show(most, 'in')} ({show(most, 'mm')}) that is usual at most between "
        "beads: take a filler with less hydrogen, and weld it only by a written procedure."
    )


def _steel(rules: RuleBase, given: Given) -> Metal:
    """The metal as read; ReckonError if it is no plain or low-alloy steel."""
    metal = metalwork.read(rules, given.word("metal"))
    if metal.material and not metalwork.is_steel(rules, metal.material):
        raise ReckonError(f"{metal.name} is no plain or low-alloy steel; this does not fit it")
    least = rules.tables["stainless-from"].value("Cr")
    if metal.makes.get("Cr", 0.0) >= least:
        raise ReckonError(f"with {least:g} % chromium or more it is stainless; this does not fit")
    if "C" not in metal.makes:
        raise ReckonError("its carbon is missing; write it like C 0.18 Mn 1.2")
    return metal


def _of(rules: RuleBase, metal: Metal) -> tuple[str, ...]:
    """What must be said of the metal itself."""
    return (*hotcracks.warning(rules, metal.makes), *((metal.note,) if metal.note else ()))


def _least(least: float, due: bool) -> Output:
    if due:
        return Output("preheat", "preheat at least", Quantity("temperature", least, "C"))
    cold = Quantity("temperature", least, "C")
    words = f"none as a rule; dry, and not colder than {show(cold, 'in')} ({show(cold, 'mm')})"
    return Output("preheat", "preheat", words)


def _most(rules: RuleBase, metal: Metal) -> tuple[Output, ...]:
    # a composition alone names no kind: the careful limit, that of mild steel, is told
    most = preheat.interpass(rules, metal.id, metal.material or "mild-steel")
    if most is None:
        return ()
    return (
        Output("interpass", "before the next bead at most", Quantity("temperature", most, "C")),
    )


def _not_steel(rules: RuleBase, metal: Metal) -> Outcome:
    """Stainless and aluminium harden little: no preheat, and a limit between beads."""
    most = _most(rules, metal)
    if not most:
        raise ReckonError(f"the rules have no preheat for {metal.name}")
    return Outcome(
        (_least(rules.tables["preheat-taken"].value("any", "none"), False), *most),
        _of(rules, metal),
    )


def _hydrogen(rules: RuleBase, text: str) -> tuple[float, tuple[str, ...]]:
    """Hydrogen from a number or a filler class, and what was assumed."""
    if not text:
        careful = rules.tables["hydrogen"].value("any")
        return careful, (f"Hydrogen is taken as {careful:g} ml in 100 g, on the careful side.",)
    filler = preheat.filler_named(rules, text)
    if filler is not None:
        if filler.hydrogen is None:
            raise ReckonError(f"the rules do not say how much hydrogen {filler.name} leaves")
        return filler.hydrogen, (
            f"{filler.name}, kept as it should be: {filler.hydrogen:g} ml of hydrogen in 100 g.",
        )
    try:
        return parse_number(text), ()
    except UnitError:
        raise ReckonError(
            "hydrogen: write a filler class, such as E7018, or a number of ml in 100 g, such as 5"
        ) from None
