"""A page as it is read: a title, perhaps a picture, and parts made of lines and links.

Every text in it is safe to show. How wide it is, and how a link is followed, is left to who shows
it: `text.py` on paper and in a pipe, the screens for keys.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from weldwhy.lookup.things import Ref
from weldwhy.plaintext import clean


@dataclass(frozen=True, slots=True)
class Line:
    """One piece of text. `role`: text, dim, strong, caution or notice. `to`: where it leads.

    `note` is told of a link, such as how often the one comes with the other.
    """

    text: str
    role: str = "text"
    to: Ref | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """Lines under a heading; without one they stand under the title."""

    title: str
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Leaf:
    """The page of one thing. `draws`: its picture or hook-up stands on the page (`drawn.py`)."""

    ref: Ref
    title: str
    parts: tuple[Part, ...]
    draws: bool = False

    @property
    def links(self) -> tuple[Ref, ...]:
        """Where the page leads, each place once, in the order of the page."""
        found = (line.to for part in self.parts for line in part.lines if line.to)
        return tuple(dict.fromkeys(found))


def part(title: str, lines: Iterable[Line]) -> tuple[Part, ...]:
    """A part, or none at all where there is nothing in it; its texts are made safe."""
    held = tuple(
        Line(text, line.role, line.to, clean(line.note))
        for line in lines
        if (text := clean(line.text))
    )
    return (Part(clean(title), held),) if held else ()


def said(label: str, text: str, role: str = "text") -> list[Line]:
    """A labelled line, or none where there is nothing to say."""
    return [Line(f"{label}: {text}", role)] if text else []
