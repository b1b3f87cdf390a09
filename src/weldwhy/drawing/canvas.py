"""A canvas of half cells: paint by its role, letters on top; as colour, or as letters alone.

A cell has an upper and a lower half, so a picture is twice as fine up and down as text is.
Distances are cells from the left edge and half cells from the top one; what lies outside is left
out.
"""

from __future__ import annotations

from itertools import groupby

from weldwhy.drawing.paints import PAINTS, TELLING

UPPER, LOWER, FULL = "\u2580", "\u2584", "\u2588"

Run = tuple[str, str]
"""Signs that stand side by side and their role: a paint, two paints with "/", or a role of text."""


class Canvas:
    """`width` by `height` cells to be painted; a paint is one of `paints.PAINTS`."""

    def __init__(self, width: int, height: int) -> None:
        self.width = width
        self.height = height
        self.halves = [[""] * width for _ in range(2 * height)]
        """The paint of each half cell, row by row from the top; "" is bare."""
        self.signs: dict[tuple[int, int], Run] = {}
        """Letters by cell, with their role."""

    def fill(self, left: int, top: int, right: int, bottom: int, paint: str) -> None:
        """Paint a block, both ends included; top and bottom in half cells."""
        first, last = max(left, 0), min(right, self.width - 1)
        if last < first:
            return
        stroke = [paint] * (last - first + 1)
        for line in self.halves[max(top, 0) : max(bottom + 1, 0)]:
            line[first : last + 1] = stroke

    def dot(self, x: int, y: int, paint: str) -> None:
        """Paint one half cell."""
        if 0 <= x < self.width and 0 <= y < 2 * self.height:
            self.halves[y][x] = paint

    def put(self, x: int, y: int, text: str, role: str) -> None:
        """Letters on the cells from `x` in row `y`, over whatever is painted there."""
        for at, letter in enumerate(text, x):
            self.signs[at, y] = letter, role

    def runs(self, letters: bool = False) -> list[list[Run]]:
        """The picture row by row; with `letters` each paint is its own ASCII letter."""
        return [self._runs(y, letters) for y in range(self.height)]

    def _runs(self, y: int, letters: bool) -> list[Run]:
        upper, lower = self.halves[2 * y], self.halves[2 * y + 1]
        signs = self.signs
        cells = [
            signs.get((x, y)) or _cell(above, below, letters)
            for x, (above, below) in enumerate(zip(upper, lower, strict=True))
        ]
        by_role = groupby(cells, key=lambda cell: cell[1])
        return [("".join(sign for sign, _ in run), role) for role, run in by_role]


_RANK = {paint: rank for rank, paint in enumerate(TELLING)}


def _telling(upper: str, lower: str) -> str:
    """The paint whose letter stands for both halves."""
    if upper == lower or _RANK.get(lower, 9) >= _RANK.get(upper, 9):
        return upper or lower
    return lower


def _cell(upper: str, lower: str, letters: bool) -> Run:
    """One cell; where both halves differ its role names both paints, the upper one first."""
    if letters or not (upper or lower):
        return PAINTS.get(_telling(upper, lower), " "), "text"
    if upper == lower:
        return FULL, upper
    if not lower:
        return UPPER, upper
    return (UPPER, f"{upper}/{lower}") if upper else (LOWER, lower)
