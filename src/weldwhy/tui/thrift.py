"""Sends only the cells that changed: a model of the terminal between the framework and the line.

The framework sends whole rows again, and whole screens when one opens. Over a slow line that is
felt. Nothing here depends on the framework: text with escape sequences goes in and comes out.
"""

from __future__ import annotations

import re

from rich.cells import cell_len

Cell = tuple[str, str]
"""A character (empty: the right half of a wide one) and its style codes."""

_TOKEN = re.compile(
    r"\x1b\[(?P<move>[0-9;]*)H"
    r"|\x1b\[(?P<style>[0-9;]*)m"
    r"|(?P<other>\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)?|\x1b\[[0-?]*[ -/]*[@-~]|\x1b[^\[\]]?)"
    r"|(?P<line>[\r\n])"
    r"|(?P<text>[^\x1b\r\n]+)"
)

_NARROW = re.compile("[\x20-\x7e\u00a1-\u02ff\u2500-\u259f]+")
"""Letters, lines and blocks, of which each takes one cell: nearly all that is ever sent."""

_UPSETTING = re.compile(r"\x1b\[(?:\?1049[hl]|[0-9]*[JKLMPSTX@])|\x1bc")
"""Sequences after which nobody knows what stands on the screen."""

GAP = 5
"""Unchanged cells that cost less to send again than to jump over."""

BLANK: Cell = (" ", "")


class Thrift:
    """Knows what stands on the terminal and leaves out what would not change it."""

    def __init__(self) -> None:
        self._shown: dict[int, dict[int, Cell]] = {}
        self._pending: dict[int, dict[int, Cell]] = {}
        self._wide: set[int] = set()
        """Rows in which a wide character may stand."""
        self._x = self._y = 0
        self._style = ""

    def forget(self) -> None:
        """The terminal may show anything now: send all that comes."""
        self._shown.clear()

    def reduce(self, data: str) -> str:
        """The shortest output known that has the effect of `data`; the cursor may end elsewhere."""
        out: list[str] = []
        for token in _TOKEN.finditer(data):
            kind, text = token.lastgroup, token[0]
            if kind == "text":
                self._write(text)
            elif kind == "move":
                row, _, column = token["move"].partition(";")
                self._y, self._x = int(row or 1) - 1, int(column or 1) - 1
            elif kind == "style":
                self._style = _style(self._style, token["style"])
            elif kind == "line":
                self._x = 0
                self._y += text == "\n"
            else:
                out += [self._changes(), text]
                if _UPSETTING.match(text):
                    self.forget()
        out.append(self._changes())
        return "".join(out)

    def _write(self, text: str) -> None:
        row = self._pending.setdefault(self._y, {})
        if self._y not in self._wide and _NARROW.fullmatch(text):
            style = self._style
            row.update({x: (mark, style) for x, mark in enumerate(text, self._x)})
            self._x += len(text)
            return
        self._wide.add(self._y)
        for mark in text:
            width = cell_len(mark)
            if width == 0:  # it belongs to the character before it
                before, style = row.get(self._x - 1, BLANK)
                row[self._x - 1] = (before + mark, style)
                continue
            for x in range(self._x, self._x + width):
                self._part_wide(row, x)
            row[self._x] = (mark, self._style)
            if width == 2:
                row[self._x + 1] = ("", self._style)
            self._x += width

    def _part_wide(self, row: dict[int, Cell], x: int) -> None:
        """A terminal blanks what is left of a wide character when half of it is overwritten."""
        shown = self._shown.get(self._y, {})
        if row.get(x, shown.get(x, BLANK))[0] == "":
            row[x - 1] = BLANK
        if row.get(x + 1, shown.get(x + 1, BLANK))[0] == "":
            row[x + 1] = BLANK

    def _changes(self) -> str:
        pen = _Pen()
        for y in sorted(self._pending):
            shown, new = self._shown.setdefault(y, {}), self._pending[y]
            changed = sorted(x for x, cell in new.items() if shown.get(x) != cell)
            shown.update(new)
            for first, last in _runs(changed, shown):
                while first and shown[first][0] == "":
                    first -= 1
                _run(pen, shown, y, first, last)
        self._pending.clear()
        pen.change("")
        return "".join(pen.out)


class _Pen:
    """Collects output and changes the style only where it differs."""

    def __init__(self) -> None:
        self.out: list[str] = []
        self._style = ""

    def change(self, style: str) -> None:
        if style != self._style:
            both = self._style and style
            self.out.append(f"\x1b[0;{style}m" if both else f"\x1b[{style or 0}m")
            self._style = style


def _style(now: str, codes: str) -> str:
    """The style after a style sequence; the defaults 39 and 49 are not worth a byte."""
    kept = codes.split(";")
    if "38" not in kept and "48" not in kept:
        kept = [code for code in kept if code not in ("39", "49")]
    if kept in ([], ["0"], [""]):
        return "" if codes in ("", "0") else now
    return ";".join([now, *kept]) if now else ";".join(kept)


def _runs(changed: list[int], row: dict[int, Cell]) -> list[tuple[int, int]]:
    """Stretches that hold all changed columns; near ones are one if what is between is known."""
    runs: list[tuple[int, int]] = []
    for x in changed:
        near = runs and x - runs[-1][1] <= GAP
        if near and all(between in row for between in range(runs[-1][1], x)):
            runs[-1] = (runs[-1][0], x)
        else:
            runs.append((x, x))
    return runs


def _run(pen: _Pen, row: dict[int, Cell], y: int, first: int, last: int) -> None:
    """One stretch: go there and write it; blanks up to the end of the line are erased."""
    stop = last
    if all(cell == BLANK for x, cell in row.items() if x > last):
        while stop >= first and row[stop] == BLANK:
            stop -= 1
    erase = last - stop > 3
    pen.out.append(f"\x1b[{y + 1};{first + 1}H")
    for x in range(first, (stop if erase else last) + 1):
        mark, style = row[x]
        pen.change(style)
        pen.out.append(mark)
    if erase:
        pen.change("")
        pen.out.append("\x1b[K")
