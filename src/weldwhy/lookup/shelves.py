"""Everything of one kind under the headings that it is browsed by."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.lookup.things import Ref, Things, things
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean

HOW = {
    "ask": "questions",
    "look": "what can be looked at",
    "try": "what can be tried",
    "measure": "what can be measured",
}
"""The shelves of the checks, by how they are done."""

LETTERS = ("abc", "def", "ghijkl", "mnop", "qrs", "tuvwxyz")
"""The shelves of words of the trade, by first letters."""


def shelves(rules: RuleBase, kind: str) -> Mapping[str, tuple[Ref, ...]]:
    """The things of a kind by heading; a kind that is not divided has one shelf."""
    known = things(rules)
    heading = HEADINGS.get(kind, _undivided)
    found: dict[str, list[Ref]] = {}
    for ref in known.of_kind(kind):
        found.setdefault(clean(heading(known, ref)), []).append(ref)
    if kind == "term":
        found = {
            title: sorted(refs, key=lambda ref: known.name(ref).lower())
            for title, refs in sorted(found.items())
        }
    return {title: tuple(refs) for title, refs in found.items()}


def _undivided(_known: Things, _ref: Ref) -> str:
    return "all"


def _letters(known: Things, ref: Ref) -> str:
    first = known.name(ref)[:1].lower()
    found = next((each for each in LETTERS if first in each), "")
    return f"{found[0].upper()} to {found[-1].upper()}" if found else "0 to 9"


def _metal(known: Things, material: str) -> str:
    metal = known.rules.materials.get(material)
    return metal.name if metal else material


def _process(known: Things, process: str) -> str:
    found = known.rules.processes.get(process)
    return found.plain if found else process


HEADINGS: Mapping[str, Callable[[Things, Ref], str]] = {
    "symptom": lambda known, ref: known.rules.groups.get(known.all[ref].group, "others"),
    "cause": lambda known, ref: known.rules.families.get(known.all[ref].family, "others"),
    "check": lambda known, ref: HOW[known.all[ref].how],
    "remedy": lambda known, ref: known.rules.families.get(known.all[ref][0].family, "others"),
    "term": _letters,
    "calculator": lambda known, ref: str(known.all[ref].topic),
    "window": lambda known, ref: _process(known, known.all[ref].processes[0]),
    "grade": lambda known, ref: _metal(known, known.all[ref].material),
    "filler": lambda known, ref: str(known.all[ref].kind),
}
"""What a thing of a divided kind stands under."""
