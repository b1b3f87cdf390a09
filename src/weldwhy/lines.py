"""Lines for a terminal of any width, a printer or a screen reader: wrapped, and text only."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from textwrap import wrap

from weldwhy.plaintext import clean

WIDTH = 76
"""Columns: fits an 80-column terminal with room to spare."""


def safe(lines: Iterable[str]) -> list[str]:
    """The lines without anything that drives a terminal; their indents stay."""
    return [" " * (len(line) - len(line.lstrip(" "))) + clean(line) for line in lines]


def wrapped(lines: Iterable[str], width: int = WIDTH) -> Iterator[str]:
    """The lines, long ones cut between words; what follows hangs under the first word."""
    for line in lines:
        if len(line) <= width:
            yield line
            continue
        indent = len(line) - len(line.lstrip(" ")) + 2
        yield from wrap(line, width, subsequent_indent=" " * indent, break_on_hyphens=False)
