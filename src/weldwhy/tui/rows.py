"""Rows of text with roles: what a page shows, made by pure functions and tested without a screen.

A role is a word for what a piece of text is for ("caution", "dim"); the style sheet decides how
it looks, and no role is told by colour alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from rich.cells import cell_len, set_cell_size

from weldwhy.plaintext import clean

ROLES = (
    "text", "dim", "strong", "head", "key", "caution", "bar", "bar-rest", "edit", "notice",
    "allowed", "elsewhere",
)  # fmt: skip
"""What a piece of text is for. The last two are the paints of an operating window."""

DRAWN = ("plate", "weld", "ripple", "heat", "hole", "slag", "hot", "tint", "pale")
"""The paints of drawn welds, which only a page with such pictures styles."""

Span = tuple[str, str]
"""A piece of text and its role."""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a page. `pick` is the number of the choice that a click on it makes.

    `tied`: where a page is cut into parts, the cut does not come before this row.
    """

    spans: tuple[Span, ...] = ()
    pick: int | None = None
    tied: bool = False

    @property
    def text(self) -> str:
        """The line without roles."""
        return "".join(text for text, _ in self.spans)

    @property
    def width(self) -> int:
        """Cells the line needs."""
        return cell_len(self.text)


BLANK = Row()


def row(*spans: Span, pick: int | None = None) -> Row:
    """A row of the given spans, empty ones left out."""
    return Row(tuple(span for span in spans if span[0]), pick)


def wrap(text: str, width: int, taken: int = 0) -> list[str]:
    """`text` made safe and broken into lines of at most `width` cells (never fewer than 2).

    `taken` cells of the first line are in use. A word longer than a line is cut; no letter is
    lost.
    """
    width = max(width, 2)  # one wide character must fit
    room = max(width - taken, 2)
    lines: list[str] = []
    line = ""
    for word in clean(text).split(" "):
        if line and cell_len(line) + 1 + cell_len(word) > room:
            lines.append(line)
            line, room = "", width
        while cell_len(word) > room:
            lines.append(_head(word, room))
            word, room = word[len(lines[-1]) :], width
        line = f"{line} {word}" if line else word
    return [*lines, line] if line or not lines else lines


def _head(word: str, width: int) -> str:
    used = 0
    for place, mark in enumerate(word):
        used += cell_len(mark)
        if used > width:
            return word[:place]
    return word


def paragraph(
    text: str, width: int, role: str = "text", first: Span = ("", "text"), hang: int | None = None
) -> list[Row]:
    """`text` wrapped into rows; `first` opens the first row, later ones hang under its end."""
    opened = cell_len(first[0])
    indent = opened if hang is None else hang
    lines = wrap(text, width - indent, opened - indent)
    pad = " " * indent
    return [row(first if at == 0 else (pad, "text"), (line, role)) for at, line in enumerate(lines)]


def inset(text: str, width: int, role: str = "text") -> list[Row]:
    """`text` wrapped for a page of this width, with a blank at both sides."""
    return paragraph(text, width - 1, role, (" ", "text"))


def fit(text: str, width: int, ending: str = "..") -> str:
    """`text` in exactly `width` cells: padded, or cut with an ending that shows the cut."""
    text = clean(text)
    if cell_len(text) <= width:
        return text + " " * (width - cell_len(text))
    if width <= len(ending):
        return set_cell_size(text, max(width, 0))
    kept = set_cell_size(text, width - len(ending)).rstrip(" ,")
    return kept + "." * (width - len(ending) - cell_len(kept)) + ending


def rule(title: str, width: int, note: str = "") -> Row:
    """A heading drawn as a line across the page, with a note at its right end."""
    lead = f"\u2500 {clean(title)} "
    tail = f" {clean(note)} \u2500" if note else ""
    line = "\u2500" * max(width - cell_len(lead) - cell_len(tail), 0)
    return row((lead, "head"), (line, "dim"), (tail[:-1], "text"), (tail[-1:], "dim"))


def bar(share: float, width: int, ascii_only: bool = False) -> tuple[Span, Span]:
    """A bar as two spans: filled cells (reverse video, or `#`) and the rest as dots."""
    full = min(max(round(share * width), 1 if share > 0.005 else 0), width)
    filled = ("#" * full, "text") if ascii_only else (" " * full, "bar")
    return filled, ("." * (width - full), "bar-rest")


def tied(rows: Sequence[Row]) -> list[Row]:
    """The rows as one block that is not cut."""
    return [replace(line, tied=at > 0) for at, line in enumerate(rows)]


def beside(left: Sequence[Row], right: Sequence[Row], width: int) -> list[Row]:
    """Two blocks of rows side by side; the left one gets `width` cells and is never cut."""
    rows: list[Row] = []
    for one, two in zip_longest(left, right, fillvalue=BLANK):
        gap = " " * max(width - one.width, 0) if two.spans else ""
        rows.append(Row((*one.spans, *(((gap, "text"),) if gap else ()), *two.spans), one.pick))
    return rows


def joined(rows: Iterable[Row]) -> str:
    """Rows as plain text, for tests and for copying."""
    return "\n".join(line.text.rstrip() for line in rows)
