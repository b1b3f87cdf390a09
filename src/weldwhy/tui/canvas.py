"""A canvas as rows of a page."""

from __future__ import annotations

from weldwhy.drawing.canvas import Canvas
from weldwhy.tui.rows import Row, row


def rows_of(canvas: Canvas, letters: bool = False) -> list[Row]:
    """The picture; with `letters` each paint is its own ASCII letter instead of a colour."""
    return [row(*runs) for runs in canvas.runs(letters)]
