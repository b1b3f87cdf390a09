"""A board of 48 by 28 units for drawings of things, as large as fits on a canvas, in its middle.

Drawings give units from the upper left corner of the board; what is thinner than a half cell is
drawn one half cell thick, so that it never vanishes on a small canvas.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, floor, hypot, sqrt

from weldwhy.drawing.canvas import Canvas

WIDE, HIGH = 48, 28

Point = tuple[float, float]

WORDY = (36, 10)
"""Cells from which on a drawing has room for words."""
ROOMY = 0.6
"""Half cells in a unit from which on a drawing has room for details."""


class Sketch:
    """The board on `canvas`; paints are those of `paints.PAINTS`."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.scale = min(canvas.width / WIDE, 2 * canvas.height / HIGH)
        """Half cells in a unit, across as well as down."""
        self.left = (canvas.width - WIDE * self.scale) / 2
        self.top = (2 * canvas.height - HIGH * self.scale) / 2

    def at(self, point: Point) -> Point:
        """The place of a point on the canvas, in half cells."""
        return self.left + point[0] * self.scale, self.top + point[1] * self.scale

    def box(self, left: float, top: float, right: float, bottom: float, paint: str) -> None:
        """A block with level edges."""
        x, y = map(_edge, self.at((left, top)))
        to_x, to_y = map(_edge, self.at((right, bottom)))
        self.canvas.fill(x, y, max(to_x - 1, x), max(to_y - 1, y), paint)

    def bar(self, x: float, half: float, top: float, bottom: float, paint: str) -> None:
        """An upright block of twice `half` in width, the same to both sides of `x`."""
        middle, y = self.at((x, top))
        first, last = self._both_sides(middle, half)
        to_y = _edge(self.at((x, bottom))[1])
        self.canvas.fill(first, _edge(y), last, max(to_y - 1, _edge(y)), paint)

    def beam(self, y: float, half: float, left: float, right: float, paint: str) -> None:
        """A level block of twice `half` in height, the same above and below `y`."""
        x, level = self.at((left, y))
        first, last = self._both_sides(level, half)
        to_x = _edge(self.at((right, y))[0])
        self.canvas.fill(_edge(x), first, max(to_x - 1, _edge(x)), last, paint)

    def frame(self, left: float, top: float, right: float, bottom: float, paint: str) -> None:
        """A block with an outline all round."""
        x, y = map(_edge, self.at((left, top)))
        to_x, to_y = (_edge(place) - 1 for place in self.at((right, bottom)))
        edge = max(round(self.scale), 1)
        self.canvas.fill(x, y, to_x, to_y, "ripple")
        self.canvas.fill(x + edge, y + edge, to_x - edge, to_y - edge, paint)

    def ground(self, top: float, paint: str, left: float = 0, right: float = WIDE) -> None:
        """A block down to the canvas's lower edge, and from a side of the board to the canvas's."""
        x, y = map(_edge, self.at((left, top)))
        to_x = _edge(self.at((right, top))[0])
        first = x if left > 0 else 0
        last = to_x if right < WIDE else self.canvas.width
        self.canvas.fill(first, y, last - 1, 2 * self.canvas.height - 1, paint)

    def disc(self, x: float, y: float, radius: float, paint: str, inner: float = 0) -> None:
        """A disc; with an `inner` radius, a ring."""
        middle, level = (round(2 * place) / 2 for place in self.at((x, y)))
        outer = max(radius * self.scale, 0.75) + 0.01
        bare = min(inner * self.scale, outer - 1) if inner else 0
        for row in range(_edge(level - outer), _edge(level + outer)):
            above = row + 0.5 - level
            reach = _chord(outer, above)
            core = _chord(bare, above) if bare > 0 else 0
            first, last = _edge(middle - reach), _edge(middle + reach) - 1
            if core:
                self.canvas.fill(first, row, _edge(middle - core) - 1, row, paint)
                self.canvas.fill(_edge(middle + core), row, last, row, paint)
            else:
                self.canvas.fill(first, row, last, row, paint)

    def shape(self, points: Sequence[Point], paint: str) -> None:
        """The inside of a closed line."""
        corners = [self.at(point) for point in points]
        edges = list(zip(corners, [*corners[1:], corners[0]]))
        levels = [y for _, y in corners]
        for row in range(_edge(min(levels)), _edge(max(levels))):
            level = row + 0.5
            cuts = sorted(
                x + (level - y) * (to_x - x) / (to_y - y)
                for (x, y), (to_x, to_y) in edges
                if (y <= level) != (to_y <= level)
            )
            for enter, leave in zip(cuts[::2], cuts[1::2]):
                self.canvas.fill(_edge(enter), row, _edge(leave) - 1, row, paint)

    def line(self, points: Sequence[Point], thick: float, paint: str) -> None:
        """A line through the points."""
        for start, end in pairwise(points):
            if thick * self.scale < 1.5:
                self._thin(self.at(start), self.at(end), paint)
            else:
                self._thick(start, end, thick, paint)
        if thick * self.scale >= 1.5:
            for x, y in points[1:-1]:
                self.disc(x, y, thick / 2, paint)

    def dotted(self, start: Point, end: Point, paint: str, thick: float = 1) -> None:
        """What should be there and is not: a line of dashes."""
        (x, y), (to_x, to_y) = start, end
        count = max(round(hypot(to_x - x, to_y - y) * min(self.scale, 1) / 2.5), 2)
        for part in range(count):
            near, far = part / count, (part + 0.45) / count
            self.line(
                [
                    (x + (to_x - x) * near, y + (to_y - y) * near),
                    (x + (to_x - x) * far, y + (to_y - y) * far),
                ],
                thick,
                paint,
            )

    def cross(self, x: float, y: float, reach: float) -> None:
        """Not so: two dark strokes, with a light rim where the page is bare behind them."""
        reach = max(reach, 1.6 / self.scale)
        if self.scale < ROOMY and reach * self.scale < 2.8:  # too few dots to see through it
            self.disc(x, y, reach * 1.35, "plate")
        for side in (-1, 1):
            self.line([(x - reach, y - side * reach), (x + reach, y + side * reach)], 1.2, "hole")
        left, top = map(floor, self.at((x - reach, y - reach)))
        right, bottom = map(ceil, self.at((x + reach, y + reach)))
        for row in range(top - 1, bottom + 2):
            for column in range(left - 1, right + 2):
                if self._bare_beside_dark(column, row):
                    self.canvas.dot(column, row, "plate")

    def _bare_beside_dark(self, x: int, y: int) -> bool:
        halves, width, height = self.canvas.halves, self.canvas.width, 2 * self.canvas.height
        if not (0 <= x < width and 0 <= y < height) or halves[y][x]:
            return False
        return any(
            "hole" in halves[row][max(x - 1, 0) : x + 2]
            for row in range(max(y - 1, 0), min(y + 2, height))
        )

    def arrow(self, start: Point, end: Point, paint: str = "ripple", head: float = 2.5) -> None:
        """A line with a head at its end."""
        (x, y), (to_x, to_y) = start, end = self._snapped(start), self._snapped(end)
        length = hypot(to_x - x, to_y - y) or 1
        back = max(head, 2.2 / self.scale)
        across, down = (to_x - x) / length * back, (to_y - y) / length * back
        self.line([start, end], 1, paint)
        for side in (-0.8, 0.8):
            wing = (to_x - across - side * down, to_y - down + side * across)
            self.line([end, wing], 1, paint)

    def word(self, x: float, y: float, text: str) -> None:
        """A short word with its middle at a point, where there is room for words at all."""
        if self.canvas.width < WORDY[0] or self.canvas.height < WORDY[1]:
            return
        self.sign(x, y, text)

    def sign(self, x: float, y: float, text: str) -> None:
        """A word or mark on a canvas of any size, unless it would be cut off."""
        middle, level = self.at((x, y))
        column, row = round(middle - len(text) / 2), int(level // 2)
        inside = 0 <= column <= self.canvas.width - len(text) and 0 <= row < self.canvas.height
        if inside:
            self.canvas.fill(column, 2 * row, column + len(text) - 1, 2 * row + 1, "")
            self.canvas.put(column, row, text, "strong")

    def label(self, x: float, y: float, name: str, mark: str) -> None:
        """A mark at a point, with its name to the left where there is room for words."""
        roomy = self.canvas.width >= WORDY[0] and self.canvas.height >= WORDY[1]
        text = f"{name} {mark}" if roomy else mark
        self.sign(x - (len(text) - 1) / 2 / self.scale, y, text)

    def even(self, x: float) -> float:
        """The nearest place between two half cells: what stands there is alike on both sides."""
        return (round(self.left + x * self.scale) - self.left) / self.scale

    def _snapped(self, point: Point) -> Point:
        """The middle of the half cell that a point is in."""
        x, y = self.at(point)
        return (
            (floor(x) + 0.5 - self.left) / self.scale,
            (floor(y) + 0.5 - self.top) / self.scale,
        )

    def _both_sides(self, middle: float, half: float) -> tuple[int, int]:
        """First and last half cell around a place, as many on one side as on the other."""
        odd = abs(middle - round(middle)) > 0.25
        wide = half * self.scale
        count = 2 * max(round(wide - 0.5), 0) + 1 if odd else 2 * max(round(wide), 1)
        first = round(middle - count / 2)
        return first, first + count - 1

    def _thin(self, start: Point, end: Point, paint: str) -> None:
        x, y = map(floor, start)
        across, down = floor(end[0]) - x, floor(end[1]) - y
        steps = max(abs(across), abs(down), 1)
        for step in range(steps + 1):
            self.canvas.dot(x + round(across * step / steps), y + round(down * step / steps), paint)

    def _thick(self, start: Point, end: Point, thick: float, paint: str) -> None:
        (x, y), (to_x, to_y) = start, end
        length = hypot(to_x - x, to_y - y) or 1
        across, down = (to_x - x) / length * thick / 2, (to_y - y) / length * thick / 2
        self.shape(
            [
                (x - down, y + across),
                (to_x - down, to_y + across),
                (to_x + down, to_y - across),
                (x + down, y - across),
            ],
            paint,
        )


def _edge(place: float) -> int:
    """The first half cell whose middle lies at or past a place."""
    return ceil(place - 0.5)


def _chord(radius: float, above: float) -> float:
    return sqrt(max(radius * radius - above * above, 0))
