"""What reading rule folders gave: every item with its place, the rule base of what was sound.

Checks over the whole base work on a `Survey`: `base` for the values, `problem` for the place to
point at. Knows nothing of how files are read.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from weldwhy.model import RuleBase
from weldwhy.problems import Level, Problem
from weldwhy.shape import Reference
from weldwhy.yamltree import Mapping, place

Data = dict[str, Any]

# "common practice" may be cited without an entry among the sources.
_NO_BOOK = ("source", "common-practice")


@dataclass(frozen=True, slots=True)
class Item:
    """One item of a rule file as read: its values by key, and its place in the file."""

    kind: str
    id: str
    file: str
    node: Mapping
    data: Data
    references: tuple[Reference, ...] = ()

    def problem(
        self, path: tuple[str | int, ...], words: str, check_id: str, level: Level = "error"
    ) -> Problem:
        """A problem at `path` inside the item, such as `("shows", "nozzle-look")`."""
        at = place(self.node, *(path or (self.kind,)))
        return Problem(self.file, at.line, at.column, level, words, check_id)


@dataclass(slots=True)
class Survey:
    """Items by kind and id, problems so far, and the base built from the items that were sound.

    `unread` holds what exists but could not be read: "kind", or "kind id".
    """

    items: dict[str, dict[str, Item]] = field(default_factory=dict)
    unread: set[str] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)
    base: RuleBase = field(default_factory=lambda: RuleBase({}, {}, {}, {}))

    def all(self, kind: str) -> Iterator[Item]:
        """Every item of a kind, in the order of the files."""
        yield from self.items.get(kind, {}).values()

    def whole(self, kind: str) -> bool:
        """Whether every item of this kind could be read, so that a missing link is a real one."""
        return not any(name.partition(" ")[0] == kind for name in self.unread)

    def known(self, kind: str, name: str) -> bool:
        """Whether there is such an item, be it one that could not be read."""
        if name in self.items.get(kind, {}) or {kind, f"{kind} {name}"} & self.unread:
            return True
        return (kind, name) == _NO_BOOK

    def item(self, kind: str, name: str) -> Item:
        """The item with this id; it must exist."""
        return self.items[kind][name]


def tuples(data: Data, *names: str) -> Data:
    """The lists under these keys as tuples; an absent key gives an empty one."""
    return {name: tuple(data.get(name, ())) for name in names}
