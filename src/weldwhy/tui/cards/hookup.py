"""The hook-up, drawn: machine, both terminals and what goes on them, and the gas where there is."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy.plaintext import capital
from weldwhy.tui.rows import Row, row

TERMINALS = {"plus": "plus (+)", "minus": "minus (-)", "ac": "AC"}
"""The words on a terminal, by its side."""

LINES, ASCII_LINES = tuple("\u250c\u2510\u2514\u2518\u2500\u2502\u251c\u2524"), tuple("++++-|++")
"""Four corners, level, upright, a lead that leaves to the right, a lead that comes in there."""

ROWS, GUN_ROW, CLAMP_ROW = 7, 2, 5
LEAD = 4
"""Cells of a lead or hose, from the side of one box to the side of the next."""
CYLINDER, MACHINE, HUNG = 13, 21, 14
"""Cells of the boxes from side to side."""


@dataclass(frozen=True, slots=True)
class HookUp:
    """What hangs on which terminal. `gun` and `clamp` are plus, minus or ac."""

    holder: str
    gun: str
    clamp: str
    gas: bool


def hookup_rows(hook: HookUp, ascii_only: bool) -> list[Row]:
    """The drawing: seven rows, 57 cells wide at most."""
    drawing = _Drawing(ASCII_LINES if ascii_only else LINES)
    x = 1
    if hook.gas:
        drawing.box(x, 0, CYLINDER, 5, {1: "cylinder", GUN_ROW: "regulator"})
        drawing.lead(x + CYLINDER - 1, GUN_ROW)
        x += CYLINDER - 1 + LEAD
    gas = "gas in" if hook.gas else ""
    gun, clamp = (f"{TERMINALS[side]:>10}" for side in (hook.gun, hook.clamp))
    inside = {1: "machine", GUN_ROW: f"{gas:<7}{gun}", CLAMP_ROW: f"{'':7}{clamp}"}
    drawing.box(x, 0, MACHINE, ROWS, inside)
    if hook.gas:
        drawing.end(x, GUN_ROW)
    x += MACHINE - 1
    for y, name in ((GUN_ROW, hook.holder), (CLAMP_ROW, "work clamp")):
        drawing.box(x + LEAD, y - 1, max(HUNG, len(name) + 4), 3, {1: name})
        drawing.lead(x, y)
        drawing.end(x + LEAD, y)
    return drawing.rows


def hookup_words(hook: HookUp) -> str:
    """The same in words, for those who cannot see the drawing."""
    if hook.gun == "ac":
        return f"{capital(hook.holder)} and work clamp both on AC: neither side is plus."
    sides = TERMINALS[hook.gun], TERMINALS[hook.clamp]
    return f"{capital(hook.holder)} to {sides[0]}, work clamp to {sides[1]}."


class _Drawing:
    """Boxes and leads on a sheet of letters."""

    def __init__(self, lines: tuple[str, ...]) -> None:
        self._lines = lines
        self._cells = [[" "] * 80 for _ in range(ROWS)]

    def box(self, x: int, y: int, width: int, height: int, texts: dict[int, str]) -> None:
        """A box with its upper left corner at x, y; texts by the row inside it."""
        top_left, top_right, low_left, low_right, level, upright, *_ = self._lines
        self._write(x, y, top_left + level * (width - 2) + top_right)
        for at in range(1, height - 1):
            self._write(x, y + at, f"{upright} {texts.get(at, ''):<{width - 4}} {upright}")
        self._write(x, y + height - 1, low_left + level * (width - 2) + low_right)

    def lead(self, x: int, y: int) -> None:
        """A lead from the right side of the box at x."""
        self._write(x, y, self._lines[6] + self._lines[4] * (LEAD - 1))

    def end(self, x: int, y: int) -> None:
        """Where a lead comes into the left side of the box at x."""
        self._write(x, y, self._lines[7])

    def _write(self, x: int, y: int, text: str) -> None:
        self._cells[y][x : x + len(text)] = text

    @property
    def rows(self) -> list[Row]:
        """The sheet as rows without blanks at their ends."""
        return [row(("".join(line).rstrip(), "text")) for line in self._cells]
