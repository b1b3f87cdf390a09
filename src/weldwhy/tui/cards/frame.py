"""The frame of a picture: two axes with their numbers around painted rows."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.tui.cards.axis import Axis
from weldwhy.tui.rows import Row, row

NUMBERED = 5
"""Cells left of the upright axis, for its numbers."""
APART = 8
"""Cells for one number along the lower axis."""

LINES, ASCII_LINES = ("\u2502", "\u2524", "\u2514", "\u2500", "\u252c"), ("|", "+", "+", "-", "+")
"""Upright, upright with a number, corner, level, level with a number."""


def framed(painted: Sequence[Row], across: Axis, up: Axis, ascii_only: bool) -> list[Row]:
    """The painted rows with numbers at their left, and two rows below for the other axis."""
    upright, numbered, corner, level, marked = ASCII_LINES if ascii_only else LINES
    height, width = len(painted), across.steps
    beside = {
        height - 1 - place // 2: text for place, text in up.numbers(max(height // 2, 2))
    }  # two places of the upright axis share a cell
    rows = [
        row((f"{beside.get(y, ''):>{NUMBERED}}", "dim"),
            (numbered if y in beside else upright, "dim"), *line.spans)
        for y, line in enumerate(painted)
    ]  # fmt: skip
    below = across.numbers(max(width // APART, 2))
    places = {place for place, _ in below}
    line = "".join(marked if x in places else level for x in range(width))
    pad = " " * NUMBERED
    return [*rows, row((f"{pad}{corner}{line}", "dim")), row((pad + _numbers(below, width), "dim"))]


def _numbers(below: Sequence[tuple[int, str]], width: int) -> str:
    """The numbers, each under its place; one without room is left out whole."""
    text = ""
    for place, number in below:
        start = place + 1 - len(number) // 2
        if start + len(number) <= width + 1 and (start > len(text) or not text):
            text = text.ljust(max(start, 0)) + number
    return text
