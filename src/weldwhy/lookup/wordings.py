"""Figures of the rules as words on a page: how often, how common, how long."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import log10

from weldwhy.lookup.leaf import Leaf, Line, Part, part
from weldwhy.lookup.links import UNPUBLISHED, Links, source_id
from weldwhy.lookup.things import Ref, Things, things
from weldwhy.model import Cause, Caution, RuleBase
from weldwhy.plaintext import capital, clean
from weldwhy.report import caution_lines, source_text

OFTEN = ("seldom met", "met now and then", "often met", "very often met")
"""How common a cause is, from the rarest step of the rules to the commonest."""


def how_often(rules: RuleBase, grade: float) -> str:
    """A chance as the nearest likelihood word of the rules; "" if they have none."""
    words = rules.likelihoods
    return min(words, key=lambda word: abs(words[word] - grade), default="")


def how_common(rules: RuleBase, rate: float) -> str:
    """How often a cause is met, against the other causes of the rules."""
    steps = sorted({cause.base for cause in rules.causes.values()})
    below = sum(step < rate for step in steps)
    return OFTEN[min(below * len(OFTEN) // max(len(steps), 1), len(OFTEN) - 1)]


def plain_names(rules: RuleBase, processes: Iterable[str]) -> str:
    """Processes as people call them."""
    return "; ".join(rules.processes[p].plain for p in processes if p in rules.processes)


def metal_names(rules: RuleBase, materials: Iterable[str]) -> str:
    """Metals by their names."""
    return ", ".join(rules.materials[m].name for m in materials if m in rules.materials)


def telling(usual: float, grade: float) -> float:
    """How strongly an answer speaks for a cause, in decibans; below 0 it speaks against it."""
    return 10 * log10(max(grade, 0.001) / max(usual, 0.001))


def cautions(rules: RuleBase, names: Iterable[str]) -> list[Line]:
    """Cautions in full, each behind the word that says what it is."""
    found: list[Caution] = [rules.cautions[name] for name in names if name in rules.cautions]
    return [Line(text, "caution") for text in caution_lines(found)]


def linked(
    known: Things, refs: Iterable[Ref], notes: Mapping[Ref, str] | None = None
) -> list[Line]:
    """Links by the names of what they lead to."""
    held = notes or {}
    return [Line(known.name(ref), to=ref, note=held.get(ref, "")) for ref in refs]


def causes_of(near: Links, known: Things, symptom: str, process: str = "") -> list[Cause]:
    """The causes of a symptom, the likeliest before any answer first; of one process if told."""
    causes: list[Cause] = [known.all[ref] for ref in near.of(Ref("symptom", symptom), "cause")]
    found = [cause for cause in causes if process in ("", *cause.processes)]
    return sorted(found, key=lambda cause: -cause.rate(process) * cause.symptoms[symptom])


def sources(known: Things, cited: Iterable[str]) -> list[Line]:
    """Citations in full, each leading to its source where it has a page of what rests on it."""
    lines = []
    for each in dict.fromkeys(cited):
        ref = Ref("source", source_id(each))
        to = ref if ref in known and ref.id != UNPUBLISHED else None
        lines.append(Line(source_text(known.rules, each), "dim", to))
    return lines


def plain_leaf(
    rules: RuleBase,
    ref: Ref,
    title: str,
    parts: tuple[Part, ...],
    cited: str,
    draws: bool = False,
) -> Leaf:
    """A page whose last part is its source, if it has one."""
    source = part("Source", sources(things(rules), [cited])) if cited else ()
    return Leaf(ref, capital(clean(title)), (*parts, *source), draws=draws)
