"""A part of a picture that is painted by itself and cut off at its own edge; square dots."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil, floor

from weldwhy.drawing.canvas import Canvas

METAL = frozenset({"plate", "weld", "ripple", "heat", "tint", "pale"})
"""Paints of what is solid, which a hole or a crack can be in."""
WELD = frozenset({"weld", "ripple"})
"""Paints of the bead itself."""


def near(distance: float) -> int:
    """The whole dot nearest to a distance."""
    return int(distance + 0.5) if distance >= 0 else -int(0.5 - distance)


def spot(radius: float) -> float:
    """Half as wide as a spot of this radius is on whole dots; a small one is 1, 2, 3 or 5 wide."""
    for most, drawn in ((0.9, 0.5), (1.35, 1.0), (1.9, 1.5), (2.5, 2.5)):
        if radius < most:
            return drawn
    return radius


class Pane:
    """`width` by `height` dots, bare at first; what lies outside is left out."""

    def __init__(self, width: int, height: int) -> None:
        self.width = width
        self.height = height
        self.rows = [[""] * width for _ in range(height)]

    def line(self, y: int, left: int, right: int, paint: str) -> None:
        """Paint a row from `left` to `right`, both included."""
        if 0 <= y < self.height:
            left, right = max(left, 0), min(right, self.width - 1)
            if left <= right:
                self.rows[y][left : right + 1] = [paint] * (right - left + 1)

    def column(self, x: int, top: int, bottom: int, paint: str) -> None:
        """Paint a column from `top` to `bottom`, both included."""
        if 0 <= x < self.width:
            for row in self.rows[max(top, 0) : max(bottom + 1, 0)]:
                row[x] = paint

    def fill(self, left: int, top: int, right: int, bottom: int, paint: str) -> None:
        """Paint a block, both ends included."""
        for y in range(max(top, 0), min(bottom + 1, self.height)):
            self.line(y, left, right, paint)

    def at(self, x: int, y: int) -> str:
        """The paint of a dot; "" outside."""
        return self.rows[y][x] if 0 <= x < self.width and 0 <= y < self.height else ""

    def dot(self, x: int, y: int, paint: str, on: frozenset[str] | None = None) -> None:
        """Paint a dot; with `on` only over one of these paints."""
        if 0 <= x < self.width and 0 <= y < self.height:
            row = self.rows[y]
            if on is None or row[x] in on:
                row[x] = paint

    def disc(
        self, x: float, y: float, radius: float, paint: str, on: frozenset[str] | None = None
    ) -> None:
        """Paint a round spot, at least a dot; with `on` only over one of these paints."""
        wide = spot(radius)
        if wide == 0.5:
            self.dot(near(x), near(y), paint, on)
            return
        if wide == 1.0:  # a small spot is round only if it lies evenly on the dots
            x, y, radius = floor(x) + 0.5, floor(y) + 0.5, 0.8
        elif wide in (1.5, 2.5):
            x, y, radius = near(x), near(y), wide - 0.05
        reach = radius * radius
        for line in range(ceil(y - radius), floor(y + radius) + 1):
            half = max(reach - (line - y) ** 2, 0.0) ** 0.5
            for at in range(ceil(x - half), floor(x + half) + 1):
                self.dot(at, line, paint, on)

    def stroke(
        self, points: Iterable[tuple[float, float]], paint: str, on: frozenset[str] | None = None
    ) -> None:
        """Paint a line of one dot's width from point to point."""
        last: tuple[float, float] | None = None
        for x, y in points:
            if last is not None:
                across, down = x - last[0], y - last[1]
                steps = max(int(max(abs(across), abs(down)) + 0.999), 1)
                for step in range(steps + 1):
                    part = step / steps
                    self.dot(near(last[0] + across * part), near(last[1] + down * part), paint, on)
            last = x, y

    def turned(self) -> Pane:
        """The pane on its side: what was at the left is on top."""
        made = Pane(self.height, self.width)
        made.rows = [list(column) for column in zip(*self.rows, strict=True)]
        return made

    def top(self, x: int) -> int:
        """The first painted dot of a column from above; the height of the pane if there is none."""
        if 0 <= x < self.width:
            for y, row in enumerate(self.rows):
                if row[x]:
                    return y
        return self.height

    def paste(self, canvas: Canvas, left: int, top: int) -> None:
        """Lay the pane on a canvas, its upper left dot on that half cell; it must fit."""
        for y, row in enumerate(self.rows, top):
            canvas.halves[y][left : left + self.width] = row
