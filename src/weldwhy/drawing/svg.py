"""A canvas as SVG, for a page that is printed: a rectangle for each run of one paint."""

from __future__ import annotations

from html import escape
from itertools import groupby

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.paints import INK

ASPECT = 2.0
"""How much higher than wide a cell is; a half cell is square."""


def svg_of(canvas: Canvas, x: float, y: float, width: float) -> list[str]:
    """The elements of the picture, `width` wide with its upper left corner at `x`, `y`."""
    cell = width / canvas.width
    half = cell * ASPECT / 2
    lines = []
    for row, paints in enumerate(canvas.halves):
        at = 0
        for paint, run in groupby(paints):
            count = len(list(run))
            if paint:
                lines.append(
                    f'<rect x="{x + at * cell:.2f}" y="{y + row * half:.2f}" '
                    # a hair over its size, or the paper shows between two of one paint
                    f'width="{count * cell + 0.05:.2f}" height="{half + 0.05:.2f}" '
                    f'fill="{INK[paint]}"/>'
                )
            at += count
    size = cell * ASPECT * 0.8
    for (column, line), (letter, _) in sorted(canvas.signs.items()):
        if letter.strip():
            lines.append(
                f'<text x="{x + (column + 0.5) * cell:.2f}" y="{y + (line + 0.8) * 2 * half:.2f}" '
                f'font-size="{size:.2f}" text-anchor="middle" '
                f'font-family="monospace">{escape(letter)}</text>'
            )
    return lines
