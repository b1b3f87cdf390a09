"""As much of a terminal as is needed to see what a stream of bytes leaves on the screen."""

from __future__ import annotations

import re

from rich.cells import cell_len

_TOKEN = re.compile(
    r"\x1b\[(\d*)(?:;(\d*))?H|\x1b\[([0-9;]*)m|(\x1b\[[012]?[JK])"
    r"|(\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)|\x1b\[[0-?]*[ -/]*[@-~])|([^\x1b])"
)


class Emulator:
    """Cells by row and column; a cell never written is a plain blank."""

    def __init__(self) -> None:
        self.cells: dict[tuple[int, int], tuple[str, str]] = {}
        self.x = self.y = 0
        self.style = ""

    def take(self, data: str) -> None:
        for found in _TOKEN.finditer(data):
            row, column, style, erase, _, mark = found.groups()
            if style is not None:
                self._set_style(style)
            elif erase is not None:
                self._erase(erase)
            elif mark is not None:
                self._put(mark)
            elif found[0].endswith("H"):
                self.y, self.x = int(row or 1) - 1, int(column or 1) - 1

    def _set_style(self, codes: str) -> None:
        first, _, rest = codes.partition(";")
        if first in ("", "0"):
            self.style, codes = "", rest
        if codes and codes != "0":
            self.style = f"{self.style};{codes}" if self.style else codes
        if "38" not in codes and "48" not in codes:
            kept = [code for code in self.style.split(";") if code not in ("39", "49", "")]
            self.style = ";".join(kept) if "38" not in self.style else self.style

    def _erase(self, what: str) -> None:
        for y, x in list(self.cells):
            if what.endswith("J") or (y == self.y and x >= self.x):
                del self.cells[y, x]

    def _put(self, mark: str) -> None:
        if mark in "\r\n":
            self.x = 0
            self.y += mark == "\n"
            return
        width = cell_len(mark)
        if width == 0:
            before, style = self.cells.get((self.y, self.x - 1), (" ", ""))
            self.cells[self.y, self.x - 1] = (before + mark, style)
            return
        for x in range(self.x, self.x + width):
            self._part_wide(x)
        self.cells[self.y, self.x] = (mark, self.style)
        if width == 2:
            self.cells[self.y, self.x + 1] = ("", self.style)
        self.x += width

    def _part_wide(self, x: int) -> None:
        """Half of a wide character cannot stay when the other half is overwritten."""
        if self.cells.get((self.y, x), (" ", ""))[0] == "":
            self.cells[self.y, x - 1] = (" ", "")
        if self.cells.get((self.y, x + 1), (" ", ""))[0] == "":
            self.cells[self.y, x + 1] = (" ", "")

    def seen(self) -> dict[tuple[int, int], tuple[str, str]]:
        """What can be seen: plain blanks left out."""
        return {place: cell for place, cell in self.cells.items() if cell != (" ", "")}

    def text(self) -> list[str]:
        """The rows as text."""
        rows = [[" "] * 200 for _ in range(1 + max((y for y, _ in self.cells), default=0))]
        for (y, x), (mark, _) in self.cells.items():
            rows[y][x] = mark
        return ["".join(row).rstrip() for row in rows]
