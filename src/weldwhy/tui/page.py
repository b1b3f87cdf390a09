"""A page: rows of text with roles, drawn line by line; only cells that changed are sent again."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import ClassVar

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.geometry import Region
from textual.message import Message
from textual.strip import Strip
from textual.widget import Widget

from weldwhy.tui.rows import BLANK, DRAWN, ROLES, Row, fit, row

Build = Callable[[int, int], Sequence[Row]]
"""Makes the rows for a width and height. More rows than the height are cut into parts."""


class Lines(Widget):
    """Shows the rows its builder makes for the size it has. It knows rows and nothing else."""

    def __init__(self, build: Build, name: str) -> None:
        super().__init__(id=name)
        self._build = build
        self._rows: Sequence[Row] = ()
        self._shown: list[Row] = []
        self.part = 0
        self.mark: int | None = None
        self._seen: set[int] = set()

    @property
    def rows(self) -> list[Row]:
        """The rows now on the screen."""
        return self._shown

    @property
    def parts(self) -> int:
        """Into how many parts the page is cut at its present height."""
        return len(self._starts)

    @property
    def _starts(self) -> list[int]:
        """Where each part begins. Rows that are tied stay on one part if a part can hold them."""
        height, rows = self.size.height, self._rows
        if len(rows) <= height or height < 2:
            return [0]
        starts = [0]
        while (full := starts[-1] + height - 1) < len(rows):
            cut = full
            while cut > starts[-1] and rows[cut].tied:
                cut -= 1
            starts.append(cut if cut > starts[-1] else full)
        return starts

    def rebuild(self, to_top: bool = False) -> None:
        """Make the rows again and redraw what changed."""
        width, height = self.size
        if width < 1 or height < 1:
            return
        self._rows = self._build(width, height)
        if to_top:
            self.part, self.mark = 0, None
            self._seen.clear()
        self.show_part(min(self.part, self.parts - 1))

    def show_part(self, part: int) -> None:
        """Show one part of a page that is cut, and redraw what changed."""
        self.part = part
        old, self._shown = self._shown, self._visible()
        self._seen.update(line.pick for line in self._shown if line.pick is not None)
        changed = [
            Region(0, y, max(_last_change(*pair), 1), 1)
            for y, pair in enumerate(_pairs(old, self._shown, self.size.height))
            if pair[0] != pair[1]
        ]
        if changed:
            self.refresh(*changed)

    def turn(self, by: int) -> bool:
        """Turn to another part; False when there is none that way."""
        if not 0 <= self.part + by < self.parts:
            return False
        self.show_part(self.part + by)
        return True

    def was_seen(self, number: int) -> bool:
        """Whether the choice has been on the screen since the page was made anew."""
        return number in self._seen

    def set_mark(self, number: int | None) -> None:
        """Put the mark on a choice and turn to the part that shows it."""
        self.mark = number
        for at, line in enumerate(self._rows):
            if line.pick == number is not None and self.parts > 1:
                self.part = bisect_right(self._starts, at) - 1
                break
        self.show_part(self.part)

    def _visible(self) -> list[Row]:
        height, starts = self.size.height, self._starts
        if len(starts) == 1:
            rows = list(self._rows[:height])
        else:
            first, *rest = starts[self.part : self.part + 2]
            rows = list(self._rows[first : rest[0] if rest else None])
            rows += [BLANK] * (height - 1 - len(rows))
            turn = "PgDn" if rest else "PgUp"
            words = f"  part {self.part + 1} of {len(starts)}: {turn} for the rest"
            rows.append(row((words, "key")))
        return [self._marked(line) for line in rows]

    def _marked(self, line: Row) -> Row:
        """The row with the mark, if it opens the choice that has it."""
        if self.mark is None or line.pick != self.mark or not line.spans:
            return line
        text, role = line.spans[0]
        if not text.startswith("  ") or not text.strip():
            return line
        return Row((("> ", "key"), (text[2:], role), *line.spans[1:]), line.pick)

    def render_line(self, y: int) -> Strip:
        """One line, cut to the width, with nothing in it that could drive the terminal."""
        width = self.size.width
        line = self._shown[y] if y < len(self._shown) else BLANK
        base = self.rich_style
        segments = [Segment(_safe(text), self._style_of(role, base)) for text, role in line.spans]
        return Strip(segments).adjust_cell_length(width, base)

    def _style_of(self, role: str, base: Style) -> Style:
        if role == "text":
            return base
        paint, _, under = role.partition("/")
        style = base + self.get_component_rich_style(f"page--{paint}")
        if not under:
            return style
        lower = self.get_component_rich_style(f"page--{under}")  # a cell in two colours
        return style + Style(bgcolor=lower.color)

    def on_resize(self) -> None:
        self.rebuild()
        self.refresh()  # what stood there at another size is of no use


def _safe(text: str) -> str:
    return text if text.isprintable() else "".join(m for m in text if m.isprintable())


def _pairs(old: Sequence[Row], new: Sequence[Row], height: int) -> list[tuple[Row, Row]]:
    def at(rows: Sequence[Row], y: int) -> Row:
        return rows[y] if y < len(rows) else BLANK

    return [(at(old, y), at(new, y)) for y in range(height)]


def _last_change(old: Row, new: Row) -> int:
    """The cells from the left edge up to the last one that differs."""
    one, two = _cells(old), _cells(new)
    last = max(len(one), len(two))
    one += [(" ", "text")] * (last - len(one))
    two += [(" ", "text")] * (last - len(two))
    while last and one[last - 1] == two[last - 1]:
        last -= 1
    return cell_len("".join(mark for mark, _ in two[:last])) if new.width != len(new.text) else last


def _cells(line: Row) -> list[tuple[str, str]]:
    return [(mark, role) for text, role in line.spans for mark in text]


class Page(Lines):
    """Rows in all roles, of which those with a choice can be clicked."""

    # The framework styles each role of each page again at every change of style, so a page that
    # shows few roles says which; plain text has the page's own style.
    COMPONENT_CLASSES: ClassVar[set[str]] = {f"page--{role}" for role in ROLES if role != "text"}

    @dataclass
    class Picked(Message):
        """The row of a choice was clicked."""

        number: int

    def on_click(self, event: events.Click) -> None:
        number = self._shown[event.y].pick if event.y < len(self._shown) else None
        if number is not None:
            self.post_message(self.Picked(number))


class PicturePage(Page):
    """A page that also shows drawn welds."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {f"page--{paint}" for paint in DRAWN}


class TitleLine(Lines):
    """The top line: the program, where one is, and a note at the right end."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {"page--head", "page--strong"}

    def __init__(self, build: Callable[[], tuple[str, str]]) -> None:
        super().__init__(lambda width, _height: [_title(*build(), width)], "title")


def _title(left: str, right: str, width: int) -> Row:
    name = " weldwhy  "
    room = width - len(name) - cell_len(right) - 2
    if room < 10:
        return row((name, "head"), (fit(left, max(width - len(name), 0)), "text"))
    return row((name, "head"), (fit(left, room), "text"), (f"  {right}", "strong"))
