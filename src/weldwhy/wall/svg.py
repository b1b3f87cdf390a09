"""A wall chart on a sheet of A4, as SVG that needs nothing else and prints in black on white.

Lengths are millimetres. Everything is placed here, line by line, so nothing runs over an edge.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape

from weldwhy.wall.page import Page
from weldwhy.wall.pieces import Piece, blocks
from weldwhy.wall.print import (
    AFTER,
    BEFORE,
    COLUMN,
    EDGE,
    GAP,
    HEIGHT,
    INNER,
    LEADING,
    MARGINS,
    RAIL,
    SUBTITLE,
    TITLE,
    WIDTH,
    Print,
    top,
)  # fmt: skip
from weldwhy.wall.typeface import FAMILY, POINT, Span, width

STYLES: dict[str, str] = {"bold": ' font-weight="bold"', "slanted": ' font-style="italic"', "": ""}


class Sheet:
    """The elements of one page, written from the top down."""

    def __init__(self, page: Page, form: Print) -> None:
        self._page = page
        self._form = form
        self._out: list[str] = []
        self._y = EDGE
        self._rail: tuple[float, float] | None = None
        self._head()
        for block in blocks(page.body):
            if block[0].role == "item":
                self._list(block)
            else:
                self._piece(block[0])
        self._close_rail()
        self._foot()

    def elements(self) -> list[str]:
        """The elements, in the order in which they are painted."""
        return self._out

    def _text(self, x: float, y: float, spans: Iterable[Span], size: float, more: str = "") -> None:
        inner = " ".join(
            f"<tspan{STYLES[s.style]}>{escape(s.text)}</tspan>" if s.style else escape(s.text)
            for s in spans
        )
        self._out.append(
            f'<text x="{x:.2f}" y="{y:.2f}" font-size="{size:.2f}"{more}>{inner}</text>'
        )

    def _rect(self, x: float, y: float, wide: float, high: float, more: str = "") -> None:
        self._out.append(
            f'<rect x="{x:.2f}" y="{y:.2f}" width="{wide:.2f}" height="{high:.2f}"{more}/>'
        )

    def _head(self) -> None:
        page, form = self._page, self._form
        number = f" / {page.number}" if page.number else ""
        side = f"{page.subtitle}{number}"
        small = SUBTITLE * POINT
        aside = width(side, small, bold=True)
        size = TITLE * POINT
        size = min(size, size * (INNER - aside - 6.0) / width(page.title, size, bold=True))
        base = EDGE + TITLE * POINT * 0.85
        self._text(EDGE, base, [Span("bold", page.title)], size)
        end = ' text-anchor="end"'
        self._text(WIDTH - EDGE, base, [Span("bold", side)], small, end)
        self._rect(EDGE, base + 3.0, INNER, 1.4)
        y = top() + 0.5
        self._out += form.picture
        wide = form.size("looks")
        for each in page.looks:
            for line in form.looks_lines(each):
                y += wide * LEADING
                self._text(EDGE, y - wide * 0.25, line, wide)
            y += 0.6
        self._y = form.head_end(page.looks)

    def _list(self, block: Sequence[Piece]) -> None:
        """The entries of the list, in two columns."""
        above = lowest = self._y
        for place, part in enumerate(self._form.columns(block)):
            self._y = above
            for each in part:
                self._piece(each, place * (COLUMN + GAP))
            lowest = max(lowest, self._y)
        self._y = lowest

    def _piece(self, each: Piece, right: float = 0.0) -> None:
        """A piece across the sheet, or in a column that begins further right."""
        form, size = self._form, self._form.size(each.role)
        self._y += BEFORE.get(each.role, 0.0)
        above = self._y
        left = EDGE + right + MARGINS.get(each.role, 0.0)
        if each.role == "check" and self._rail is None:
            self._rail = (above, above)
        if each.role not in ("check", "way"):
            self._close_rail()
        if each.role == "heading":
            self._rect(EDGE, above, INNER, size * LEADING)
            paint = ' fill="#fff"'
            base = above + size * 0.9
            self._text(EDGE + 2.0, base, [Span("bold", each.text)], size, paint)
            end = f'{paint} text-anchor="end"'
            self._text(WIDTH - EDGE - 2.0, base, [Span("", each.mark)], size * 0.85, end)
            self._y += size * LEADING
        else:
            for line in form.lines(each):
                self._y += size * LEADING
                self._text(left, self._y - size * 0.27, line, size)
        self._mark(each, above, size, EDGE + right)
        self._y += AFTER.get(each.role, 0.0)
        if self._rail is not None:
            self._rail = (self._rail[0], self._y)

    def _mark(self, each: Piece, above: float, size: float, left: float) -> None:
        """What stands in the margin: a rung, an arrow, a letter, a danger's mark."""
        base = above + size * 0.92
        if each.role == "check":
            self._rung(each.mark, above + size * LEADING / 2)
        elif each.role == "way":
            x, middle = left + RAIL + 3.0, above + size * LEADING / 2
            half = size * 0.3
            self._out.append(
                f'<path d="M{x:.2f} {middle - half:.2f} l{half * 1.6:.2f} {half:.2f} '
                f'l{-half * 1.6:.2f} {half:.2f} z"/>'
            )
        elif each.role == "item":
            more = ' text-anchor="middle"'
            self._text(left + 3.0, base, [Span("bold", each.mark)], size, more)

    def _rung(self, mark: str, middle: float) -> None:
        self._rect(EDGE, middle - 0.5, RAIL, 1.0)
        self._out.append(f'<circle cx="{EDGE + RAIL / 2:.2f}" cy="{middle:.2f}" r="3.4"/>')
        more = ' fill="#fff" text-anchor="middle"'
        self._text(EDGE + RAIL / 2, middle + 1.55, [Span("bold", mark)], 4.4, more)

    def _close_rail(self) -> None:
        """The two rails of the ladder, once it is known how far down they go."""
        if self._rail is not None:
            above, bottom = self._rail
            for x in (EDGE, EDGE + RAIL - 0.9):
                self._rect(x, above - 1.0, 0.9, bottom - above + 1.0)
            self._rail = None

    def _foot(self) -> None:
        """At the bottom of the sheet, whatever is above."""
        form = self._form
        y = HEIGHT - EDGE - sum(form.height(each) for each in self._page.foot)
        self._rect(EDGE, y - 0.4, INNER, 0.4)
        size = form.size("foot")
        for each in self._page.foot:
            y += BEFORE["foot"]
            for line in form.lines(each):
                y += size * LEADING
                self._text(EDGE, y - size * 0.25, line, size)


def svg_page(page: Page, form: Print) -> list[str]:
    """The lines of an SVG file of one page."""
    title = escape(f"{page.title}, {page.subtitle}", quote=True)
    return [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH:g} {HEIGHT:g}" '
        f'width="{WIDTH:g}mm" height="{HEIGHT:g}mm" role="img" aria-label="{title}" '
        f'font-family="{FAMILY}">',
        f"<title>{title}</title>",
        f'<rect width="{WIDTH:g}" height="{HEIGHT:g}" fill="#fff"/>',
        *Sheet(page, form).elements(),
        "</svg>",
    ]
