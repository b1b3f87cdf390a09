"""A page, and lists of what there is, as lines of plain text: for a terminal or a printer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from weldwhy.drawing.letters import letters_of
from weldwhy.lines import safe
from weldwhy.lookup.drawn import drawn
from weldwhy.lookup.leaf import Leaf, Line
from weldwhy.lookup.shelves import shelves
from weldwhy.lookup.things import KINDS, Ref, in_short, things
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital

PICTURE = (56, 12)
"""Cells of the picture at the top of a page."""


def page_lines(rules: RuleBase, leaf: Leaf) -> list[str]:
    """The page, its picture in letters at the top; behind a link stands the id it is found by."""
    title = f"{leaf.title} ({KINDS[leaf.ref.kind].one} {leaf.ref.id})"
    canvas = drawn(rules, leaf, *PICTURE)
    # a picture keeps its blanks; of what rules wrote on it only what can be seen is left
    painted = (
        ["".join(filter(str.isprintable, line)) for line in letters_of(canvas)] if canvas else []
    )
    lines: list[str] = []
    for part in leaf.parts:
        lines += ["", f"{part.title}:"] if part.title else [""]
        for line in part.lines:
            lines += _told(line, bool(part.title))
    return [*safe([title]), *painted, *safe(lines)]


def _told(line: Line, inset: bool) -> Iterator[str]:
    lead = "  " if inset else ""
    if line.to is None:
        yield f"{lead}{line.text}"
        return
    note = f": {line.note}" if line.note else ""
    yield f"{lead}- {line.text} [{line.to.id}]{note}"


def found_lines(rules: RuleBase, refs: Iterable[Ref]) -> list[str]:
    """One line for each thing: what it is, its id, and its name cut to a line."""
    known = things(rules)
    return safe(f"  {KINDS[r.kind].one} {r.id}: {in_short(known.name(r))}" for r in refs)


def kind_lines(rules: RuleBase, kind: str) -> list[str]:
    """Everything of one kind, under its headings."""
    known = things(rules)
    lines: list[str] = []
    for title, refs in shelves(rules, kind).items():
        lines += [f"{capital(title)}:"]
        lines += [f"  {ref.id}: {in_short(known.name(ref))}" for ref in refs]
    return safe(lines)


def overview_lines(rules: RuleBase) -> list[str]:
    """What there is to look up, with how much of it."""
    known = things(rules)
    lines = ["What can be looked up:"]
    for kind in KINDS.values():
        lines.append(f"  {len(known.of_kind(kind.id)):>4} {kind.many} ({kind.id})")
    return [*lines, "", "`weldwhy lookup WORD` shows a page, `weldwhy lookup --list KIND` a list."]
