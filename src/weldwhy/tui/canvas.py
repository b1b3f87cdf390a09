"""A canvas of half cells: paint by its role, letters on top; as colour, or as letters alone.

A cell has an upper and a lower half, so a picture is twice as fine up and down as text is.
Distances are cells from the left edge and half cells from the top one; what lies outside is left
out.
"""

from __future__ import annotations

from itertools import groupby

from weldwhy.tui.rows import PAINTS, Row, Span, row

UPPER, LOWER, FULL = "\u2580", "\u2584", "\u2588"


class Canvas:
    """`width` by `height` cells to be painted; a paint is one of `rows.PAINTS`."""

    def __init__(self, width: int, height: int) -> None:
        self.width = width
        self.height = height
        self._halves = [[""] * width for _ in range(2 * height)]
        self._signs: dict[tuple[int, int], Span] = {}

    def fill(self, left: int, top: int, right: int, bottom: int, paint: str) -> None:
        """Paint a block, both ends included; top and bottom in half cells."""
        first, last = max(left, 0), min(right, self.width - 1)
        if last < first:
            return
        stroke = [paint] * (last - first + 1)
        for line in self._halves[max(top, 0) : max(bottom + 1, 0)]:
            line[first : last + 1] = stroke

    def put(self, x: int, y: int, text: str, role: str) -> None:
        """Letters on the cells from `x` in row `y`, over whatever is painted there."""
        for at, letter in enumerate(text, x):
            self._signs[at, y] = letter, role

    def rows(self, letters: bool = False) -> list[Row]:
        """The picture; with `letters` each paint is its own ASCII letter instead of a colour."""
        return [self._row(y, letters) for y in range(self.height)]

    def _row(self, y: int, letters: bool) -> Row:
        upper, lower = self._halves[2 * y], self._halves[2 * y + 1]
        cells = [
            self._signs.get((x, y)) or _cell(upper[x], lower[x], letters) for x in range(self.width)
        ]
        runs = groupby(cells, key=lambda cell: cell[1])
        return row(*(("".join(sign for sign, _ in run), role) for role, run in runs))


def _cell(upper: str, lower: str, letters: bool) -> Span:
    """One cell; where both halves differ its role names both paints, the upper one first."""
    if letters or not (upper or lower):
        return PAINTS.get(upper or lower, " "), "text"
    if upper == lower:
        return FULL, upper
    if not lower:
        return UPPER, upper
    return (UPPER, f"{upper}/{lower}") if upper else (LOWER, lower)
