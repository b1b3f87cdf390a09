"""The picture of an operating window: what is allowed, where to begin, where you are.

Volts over wire feed where wire is fed, amps over thickness for rods and tungsten. What a machine
cannot pass is a line. Every sign is told in words below.
"""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.drawing.canvas import FULL
from weldwhy.drawing.paints import PAINTS
from weldwhy.tui.canvas import rows_of
from weldwhy.tui.cards.axis import own_unit
from weldwhy.tui.cards.frame import NUMBERED, framed
from weldwhy.tui.cards.plot import TRY, YOURS, Plot
from weldwhy.tui.cards.windowview import AMPS, FEED, View
from weldwhy.tui.rows import Row, Span, inset, row
from weldwhy.units import show

SIZE = (44, 13)
"""Cells of a picture that stands with a table."""
LEAST = (24, 8)
"""Cells below which nothing can be told from a picture."""
FLATTEST = 3
"""Rows of a plot below which words are left out for it."""
END = "\u2592"
"""The sign of a machine's end; in ASCII `%`."""


def picture(view: View, size: tuple[int, int], ascii_only: bool) -> list[Row]:
    """The picture in `size` cells; no rows where nothing can be drawn or there is no room.

    With `ascii_only` it is made of ASCII letters alone and needs no colour.
    """
    width, height = size
    if not view.settings or width < LEAST[0] or height < LEAST[1]:
        return []
    for short in (False, True):
        head = inset(_title(view, short), width, "strong")
        legend = _wrapped(_legend(view, ascii_only, short), width)
        left = height - len(head) - len(legend) - 2
        if left >= FLATTEST:
            break
    plot = Plot(view, width - NUMBERED - 1, left, "%" if ascii_only else END)
    painted = rows_of(plot.canvas, ascii_only)
    return [*head, *framed(painted, plot.across, plot.up, ascii_only), *legend]


def _title(view: View, short: bool) -> str:
    """What stands on the axes, and in which units; in short only the units."""
    upright = view.settings[0]
    unit = own_unit(view.targets[upright].best, view.system)
    if view.thickness and upright == AMPS:
        over, along = "thickness", own_unit(view.thickness, view.system)
    else:
        over, along = view.names.get(FEED, FEED), own_unit(view.targets[FEED].best, view.system)
    if short:
        return f"{unit} over {along}"
    return f"{view.names.get(upright, upright)} ({unit}) over {over} ({along})"


def _legend(view: View, letters: bool, short: bool) -> list[tuple[Span, str]]:
    """Every sign that is in the picture, with its words, or with one word."""

    def paint(name: str) -> Span:
        return (PAINTS[name], "text") if letters else (FULL, name)

    known = view.thickness if not short else None
    here = f" at {show(known, view.system)}" if known else ""
    signs = [(paint("allowed"), f"allowed{here}")]
    told = [view.names.get(s, s) for s in view.settings if s in view.yours]
    if told:
        alone = "" if short or len(told) == len(view.settings) else f" ({told[0]})"
        signs.append(((YOURS, "strong"), f"yours{alone}"))
    if any(q != view.yours.get(setting) for setting, q in view.begin.items()):
        signs.append(((TRY, "strong"), "try"))
    if view.neighbours:
        signs.append((paint("elsewhere"), "other" if short else "at other thicknesses"))
    if any(view.ends(setting) for setting in view.settings):
        signs.append((("%" if letters else END, "caution"), "end" if short else "machine's end"))
    return signs


def _wrapped(signs: Sequence[tuple[Span, str]], width: int) -> list[Row]:
    """The legend, broken between signs only."""
    lines: list[list[Span]] = [[]]
    used = 0
    for at, (sign, words) in enumerate(signs, 1):
        text = f" {words}" + ("," if at < len(signs) else "")
        if used and used + len(text) + 2 > width:
            lines.append([])
            used = 0
        lines[-1] += [(" ", "text"), sign, (text, "text")]
        used += len(text) + 2
    return [row(*spans) for spans in lines]
