"""Whether a metal tears as it freezes: free-cutting bar, and aluminium by what is in the bead."""

from __future__ import annotations

from weldwhy import metalwork
from weldwhy.arithmetic.aluminium import crack_sensitivity
from weldwhy.arithmetic.bounds import Reckoned
from weldwhy.arithmetic.makes import Makes
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


def likely(rules: RuleBase, makes: Makes) -> bool:
    """Whether such an aluminium bead is likely to crack; False if the rules cannot say."""
    words = rules.tables.get("crack-words")
    if words is None or "crack-peak" not in rules.tables:
        return False
    return metalwork.verdict(words, sensitivity(rules, makes)) == [*words.rows][-1]
