"""The book of all wall charts: what stands before its pages, and which pages it has.

Pages are numbered by themselves, so that a page keeps its number however the front is printed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from weldwhy.blocks import marked
from weldwhy.lines import WIDTH, safe, wrapped
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital, clean
from weldwhy.report import caution_lines
from weldwhy.steps import call_for_help, symptoms_of

PAGE_END = "\f"
USE = (
    "One page for each symptom and process. Find the symptom in the contents, under your process.",
    "Read Care first: it says in short what Safety first, here in the front, says in full. A step "
    "that needs a caution names it by its number, such as !2,5.",
    "Then the ladder: start at rung 1. If you find what stands under it, put that right and run a "
    "test bead; a letter such as (C) points at the list below. If you do not find it, or the bead "
    "is still bad, go one rung down.",
    "At the end of the ladder comes a list: put its causes right in their order, one at a time, a "
    "test bead after each. At a STOP, stop.",
    "Remedies are in short: the live guide tells all. The foot of a page says how much it covers: "
    "how often, of a hundred faults as the rules know them, the remedy stands on it, and how often "
    "the rungs lead to it.",
    "A page knows nothing of your machine, thickness or metal: it is for the metals that its "
    "process usually welds. The live guide asks, and weighs every answer: type weldwhy.",
)


@dataclass(frozen=True, slots=True)
class Entry:
    """A page of the book: its number, and the symptom and process that it is for."""

    number: int
    title: str
    symptom: str
    process: str


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the front: a title and its paragraphs."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Book:
    """The front of the book; `contents` holds the pages by process in plain words."""

    title: str
    about: tuple[str, ...]
    parts: tuple[Part, ...]
    contents: Mapping[str, tuple[Entry, ...]]

    @property
    def entries(self) -> Iterator[Entry]:
        """All pages in order."""
        for entries in self.contents.values():
            yield from entries


def book(rules: RuleBase, process: str = "") -> Book:
    """The book of one process, or of all."""
    contents: dict[str, tuple[Entry, ...]] = {}
    number = 1
    for each in rules.processes.values():
        if process in ("", each.id):
            found = symptoms_of(rules, each.id)
            contents[clean(capital(each.plain))] = tuple(
                Entry(place, clean(capital(symptom.name)), symptom.id, each.id)
                for place, symptom in enumerate(found, number)
            )
            number += len(found)
    about = (
        f"{number - 1} pages for the wall: what to check, and what to put right.",
        f"For: {'; '.join(contents)}.",
        f"If a page does not help, stop and call {call_for_help(0.0).call}.",
    )
    parts = (Part("How to use a page", USE), Part("Safety first", tuple(_safety(rules))))
    return Book("Why is this weld bad?", tuple(safe(about)), parts, contents)


def _safety(rules: RuleBase) -> Iterator[str]:
    """Every caution of the rules, those that stop first."""
    known = sorted(rules.cautions.values(), key=lambda caution: not caution.stop)
    for caution in known:
        yield " ".join(caution_lines([caution]))


def text_front(made: Book) -> Iterator[str]:
    """The front in letters; a form feed ends each part."""
    yield from (made.title.upper(), "=" * len(made.title), *wrapped(made.about), PAGE_END)
    for part in made.parts:
        yield part.title.upper()
        yield from wrapped(line for text in part.lines for line in ("", text))
        yield PAGE_END
    yield "CONTENTS"
    for process, entries in made.contents.items():
        yield from ("", process)
        yield from (_row(f"  {entry.title} ", f" {entry.number}") for entry in entries)
    yield PAGE_END


def _row(left: str, right: str) -> str:
    return f"{left[: WIDTH - len(right)].ljust(WIDTH - len(right), '.')}{right}"


def markdown_front(made: Book) -> Iterator[str]:
    """The front in Markdown."""
    yield from (f"# {marked(made.title)}", "", *_paragraphs(made.about))
    for part in made.parts:
        yield from (f"# {marked(part.title)}", "", *_paragraphs(part.lines))
    yield "# Contents"
    for process, entries in made.contents.items():
        yield from ("", f"## {marked(process)}", "")
        yield from (f"- {marked(entry.title)}: page {entry.number}" for entry in entries)


def _paragraphs(lines: Iterable[str]) -> Iterator[str]:
    for line in lines:
        yield from (marked(line), "")
