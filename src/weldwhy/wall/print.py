"""The form of a wall chart on a sheet of A4: sizes of letters, margins, and where lines break.

Lengths are millimetres, sizes of letters points.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from weldwhy.wall.pieces import Piece, Role, blocks, split
from weldwhy.wall.typeface import POINT, Span, broken, width

WIDTH, HEIGHT, EDGE = 210.0, 297.0, 8.0
"""The sheet, and the bare edge that a printer needs."""
INNER = WIDTH - 2 * EDGE
GAP = 5.0
COLUMN = (INNER - GAP) / 2
"""What is between the two columns of the list, and the width of each."""
SPARE = 0.5
"""What a line stays short of its room: programs round letters to their dots."""
LEADING = 1.12
TITLE, SUBTITLE, HEADING, SMALL = 24.0, 13.0, 11.0, 8.0
"""Sizes in points; the rest of the page is set in a type of its own size."""
RAIL = 11.0
"""Width of the margin in which the rungs are numbered."""
LARGEST: dict[Role, float] = {"heading": HEADING, "caution": 11.0, "foot": SMALL}
"""Roles that stay small however large the rest is set."""
PICTURE = 36.0
"""Width of the picture's place; it is half as high."""
PICTURE_CELLS = (56, 14)
PICTURE_PLACE = (WIDTH - EDGE - PICTURE, EDGE + TITLE * POINT * 1.15 + 4.0, PICTURE)
"""Cells of the picture; its left and upper edge on the sheet, and its width."""
POINTS = {13.0: 0.99, 12.0: 0.98, 11.0: 0.95, 10.0: 0.0}
"""Sizes in which a page may be set, best first, and how much it must then cover."""

MARGINS: dict[Role, float] = {"check": RAIL + 2.5, "way": RAIL + 6.5, "item": 7.0}
AFTER: dict[Role, float] = {"way": 0.2, "item": 0.6, "heading": 0.6}
BEFORE: dict[Role, float] = {"heading": 1.3, "check": 0.8, "call": 0.8, "foot": 0.5}


@dataclass(frozen=True, slots=True)
class Print:
    """The form of a page on paper, set in letters of `points`, with its picture's elements."""

    points: float
    picture: tuple[str, ...] = ()

    @property
    def enough(self) -> float:
        """What a page set so must cover, or the next smaller type is taken."""
        return POINTS[self.points]

    @property
    def said(self) -> str:
        """The size of the letters in words."""
        return f"Set in {self.points:g} point."

    @property
    def line(self) -> float:
        """Letters of the small type that surely fit one line."""
        return INNER / (SMALL * POINT * 0.66)

    @property
    def step(self) -> float:
        """The height of a line of the page's own type."""
        return self.points * POINT * LEADING

    def size(self, role: Role) -> float:
        """The size of a role's letters, in millimetres."""
        return POINT * min(self.points, LARGEST.get(role, self.points))

    def lines(self, each: Piece) -> list[tuple[Span, ...]]:
        """The lines of a piece."""
        return list(_lines(each, self.size(each.role), self._room(each.role)))

    def _room(self, role: Role) -> float:
        return (COLUMN if role == "item" else INNER) - MARGINS.get(role, 0.0) - SPARE

    def height(self, each: Piece) -> float:
        """The height of a piece with the space round it; of a caution or an entry of the list the
        part that it takes of them all."""
        if each.role == "caution":
            size = self.size("caution")
            wide = width(f"{each.mark} ", size, bold=True)
            wide += sum(width(f"{text} ", size, style == "bold") for style, text in each.runs)
            return wide / (INNER - 6.0) * size * LEADING
        return self._high(each) / (2 if each.role == "item" else 1)

    def _high(self, each: Piece) -> float:
        lines = len(_lines(each, self.size(each.role), self._room(each.role)))
        space = BEFORE.get(each.role, 0.0) + AFTER.get(each.role, 0.0)
        return lines * self.size(each.role) * LEADING + space

    def columns(self, block: Sequence[Piece]) -> tuple[Sequence[Piece], Sequence[Piece]]:
        """The list in two columns, as even as it goes."""
        count = split([self._high(each) for each in block])
        return block[:count], block[count:]

    def whole(self, pieces: Iterable[Piece]) -> float:
        """The height of all these pieces as they are set."""
        total = 0.0
        for block in blocks(pieces):
            if block[0].role == "item":
                parts = self.columns(block)
                total += max(sum(self._high(each) for each in part) for part in parts)
            else:
                total += self._high(block[0])
        return total

    def room(self, looks: Iterable[Piece]) -> float:
        """What is left below the head."""
        return HEIGHT - EDGE - self.head_end(looks)

    def head_end(self, looks: Iterable[Piece]) -> float:
        """Where the head ends: title, rule, and how it looks beside the picture."""
        least = PICTURE / 2 + 1.0 if self.picture else 0.0
        return top() + max(sum(self.looks_height(each) for each in looks), least) + 0.5

    def looks_height(self, each: Piece) -> float:
        """The height of a piece that stands beside the picture."""
        return len(self.looks_lines(each)) * self.size("looks") * LEADING + 0.6

    def looks_lines(self, each: Piece) -> list[tuple[Span, ...]]:
        """The lines of a piece that stands beside the picture."""
        room = INNER - SPARE - (PICTURE + 5.0 if self.picture else 0.0)
        return list(_lines(each, self.size("looks"), room))


@lru_cache(maxsize=8192)
def _lines(each: Piece, size: float, room: float) -> tuple[tuple[Span, ...], ...]:
    return tuple(broken(each.runs, size, room))


def top() -> float:
    """Where the head's text begins, below title and rule."""
    return EDGE + TITLE * POINT * 1.15 + 3.5
