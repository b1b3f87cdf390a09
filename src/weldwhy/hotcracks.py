"""Whether a metal tears as it freezes: free-cutting bar, stainless and aluminium by the bead."""

from __future__ import annotations

from weldwhy import consumables, metalwork
from weldwhy.arithmetic import stainless
from weldwhy.arithmetic.aluminium import crack_sensitivity
from weldwhy.arithmetic.bounds import Reckoned
from weldwhy.arithmetic.makes import Makes, mixed
from weldwhy.model import RuleBase

NOT_FOR_WELDING = "not for welding: the base metal makes the bead tear as it freezes"
"""What a verdict says of a free-cutting metal."""


def free_cutting(rules: RuleBase, makes: Makes) -> tuple[str, ...]:
    """The elements, such as sulphur or lead, of which it holds too much to be welded."""
    limits = rules.tables.get("free-cutting")
    rows = limits.rows if limits else {}
    return tuple(each for each, (least, *_) in rows.items() if makes.get(each, 0.0) >= least)


def warning(rules: RuleBase, makes: Makes) -> tuple[str, ...]:
    """What must be said before a free-cutting metal is welded; nothing of any other."""
    found = [f"{each} {makes[each]:g} %" for each in free_cutting(rules, makes)]
    if not found:
        return ()
    return (
        f"It holds {', '.join(found)}, as bars made to turn well do: the bead tears as it freezes. "
        "Do not weld it; make the part from a weldable grade.",
    )


def beside(rules: RuleBase, makes: Makes) -> bool:
    """Whether an aluminium alloy cracks beside the bead whatever the filler, as 7075 does.

    Copper together with magnesium or zinc stays liquid there when the rest is solid.
    """
    limits = rules.tables.get("aluminium-limit")
    return (
        limits is not None
        and makes.get("Cu", 0.0) >= limits.value("copper-beside")
        and makes.get("Mg", 0.0) + makes.get("Zn", 0.0) >= limits.value("magnesium-and-zinc-beside")
    )


def sensitivity(rules: RuleBase, makes: Makes) -> Reckoned:
    """How much an aluminium bead is given to hot cracks, 0 to 1. KeyError without the table."""
    peaks = rules.tables["crack-peak"]
    each = {
        row: (peaks.value(row, "from"), peaks.value(row, "to"), peaks.value(row, "over"))
        for row in peaks.rows
    }
    return crack_sensitivity(makes, each)


def ferrite(rules: RuleBase, makes: Makes, filler: str) -> Reckoned | None:
    """Ferrite number of a stainless bead with a filler told as "ER308L" or "1/8 in 308L-16".

    None for a filler whose weld metal the rules do not know.
    """
    table, dilution = rules.tables.get("stainless-filler"), rules.tables.get("dilution")
    named = consumables.read(filler)[1].removeprefix("ER").removeprefix("E").lower()
    row = next((r for r in (table.rows if table else {}) if named.partition("-")[0] == r), "")
    if table is None or dilution is None or not row:
        return None
    share = dilution.value("stainless")
    weld = mixed(makes, metalwork.composition_of(table, row), share)
    return stainless.ferrite_number(*stainless.delong(weld))


def likely(rules: RuleBase, makes: Makes) -> bool:
    """Whether such an aluminium bead is likely to crack; False if the rules cannot say."""
    words = rules.tables.get("crack-words")
    if words is None or "crack-peak" not in rules.tables:
        return False
    return metalwork.verdict(words, sensitivity(rules, makes)) == [*words.rows][-1]
