"""A canvas as lines of ASCII letters, for a printer, a pipe or a terminal without colour."""

from __future__ import annotations

from weldwhy.drawing.canvas import Canvas


def letters_of(canvas: Canvas) -> list[str]:
    """The picture as lines of letters, without blanks at their ends."""
    lines = ("".join(signs for signs, _ in runs) for runs in canvas.runs(letters=True))
    return [line.rstrip() for line in lines]
