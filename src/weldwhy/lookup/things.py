"""What can be looked up: every thing of every kind, with the names it is found by."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, NamedTuple

from weldwhy.model import Cause, Remedy, RuleBase
from weldwhy.plaintext import clean
from weldwhy.reckon.catalogue import CALCULATORS


class Ref(NamedTuple):
    """One thing by its kind and its id; ids of different kinds may be the same."""

    kind: str
    id: str


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of thing: `one` and `many` as people say it; `part` of the rule base it stands in."""

    id: str
    one: str
    many: str
    part: str = ""


KINDS: Mapping[str, Kind] = {
    kind.id: kind
    for kind in (
        Kind("symptom", "symptom", "symptoms", "symptoms"),
        Kind("cause", "cause", "causes", "causes"),
        Kind("check", "check", "checks", "checks"),
        Kind("remedy", "remedy", "remedies"),
        Kind("term", "word", "words of the trade", "terms"),
        Kind("calculator", "calculator", "calculators"),
        Kind("setting", "setting", "settings", "settings"),
        Kind("window", "window", "windows: where the settings may lie", "windows"),
        Kind("process", "process", "processes", "processes"),
        Kind("metal", "metal", "metals", "materials"),
        Kind("grade", "grade", "grades of metal", "grades"),
        Kind("gas", "gas", "gases", "gases"),
        Kind("filler", "filler", "fillers: wire and rods", "fillers"),
        Kind("setup", "set-up", "set-ups", "setups"),
        Kind("caution", "caution", "cautions", "cautions"),
        Kind("job", "kind of work", "kinds of work", "jobs"),
        Kind("source", "source", "sources", "sources"),
    )
}
"""The kinds in the order they are listed; of things that are found equally well the earlier one
comes first."""


def parts_of(rules: RuleBase, kind: str) -> Mapping[str, Any]:
    """Everything of one kind by id. A remedy comes as the pair of its cause and itself."""
    if kind == "remedy":
        return {r.id: (c, r) for c in rules.causes.values() for r in c.remedies}
    if kind == "calculator":
        return {each.id: each for each in CALCULATORS}
    found: Mapping[str, Any] = getattr(rules, KINDS[kind].part)
    return found


class Things:
    """All things of a rule base, in the order of the kinds and, inside a kind, of the files."""

    def __init__(self, rules: RuleBase) -> None:
        self.rules = rules
        self.all: dict[Ref, Any] = {
            Ref(kind, name): item for kind in KINDS for name, item in parts_of(rules, kind).items()
        }
        self._by_id: dict[str, list[Ref]] = {}
        for ref in self.all:
            self._by_id.setdefault(ref.id, []).append(ref)

    def __contains__(self, ref: Ref) -> bool:
        return ref in self.all

    def of_kind(self, kind: str) -> list[Ref]:
        """Every thing of this kind."""
        return [ref for ref in self.all if ref.kind == kind]

    def called(self, name: str) -> list[Ref]:
        """The things that have this id, of whatever kind."""
        return self._by_id.get(name, [])

    def remedy(self, name: str) -> tuple[Cause, Remedy]:
        """A remedy with the cause it belongs to."""
        found: tuple[Cause, Remedy] = self.all[Ref("remedy", name)]
        return found

    def name(self, ref: Ref) -> str:
        """What the thing is called, as safe text; a check by its question, a remedy by its deed."""
        return clean(self._name(ref))

    def _name(self, ref: Ref) -> str:
        item = self.all[ref]
        if ref.kind == "check":
            return str(item.ask)
        if ref.kind == "remedy":
            return str(item[1].do)
        if ref.kind == "caution":
            return str(item.text)
        if ref.kind == "process":
            return f"{item.plain}: {item.name}"
        if ref.kind == "source":
            return str(item.title)
        if ref.kind == "setup":
            process = self.rules.processes.get(ref.id)
            return f"set-up of {process.plain}" if process else f"set-up {ref.id}"
        if ref.kind == "grade" and ref.id.lower() not in item.name.lower():
            return f"{ref.id}, {item.name}"
        return str(item.name)

    def also(self, ref: Ref) -> tuple[str, ...]:
        """Other names of the thing."""
        return tuple(getattr(self.all[ref], "also", ()))

    def said(self, ref: Ref) -> Iterator[str]:
        """What people say who mean the thing."""
        said = self.rules.said
        if ref.kind == "remedy":
            yield from said.get(f"remedy {self.remedy(ref.id)[0].id} {ref.id}", ())
        elif ref.kind == "check":
            for answer in self.all[ref].answers:
                yield from said.get(f"answer {ref.id} {answer.id}", ())
        else:
            word = "material" if ref.kind == "metal" else ref.kind
            yield from said.get(f"{word} {ref.id}", ())


SHORT = 64
"""Letters of a name that stands in a list."""


def in_short(text: str, most: int = SHORT) -> str:
    """The text, cut between words with two dots where it is longer than `most` letters.

    >>> in_short("Look into the nozzle. What is there?", 24)
    'Look into the nozzle ..'
    """
    if len(text) <= most:
        return text
    kept = text[: most - 2].rpartition(" ")[0] or text[: most - 3]
    return f"{kept.rstrip('.,:; ')} .."


@lru_cache(maxsize=4)  # rules are equal only to themselves
def things(rules: RuleBase) -> Things:
    """The things of these rules."""
    return Things(rules)
