"""A page that is looked up: its links are digits, and the trail leads back."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult

from weldwhy.bench import Bench
from weldwhy.case import Reported
from weldwhy.lookup.page import leaf
from weldwhy.lookup.things import KINDS, Ref, things
from weldwhy.tui.cards.lookupsheet import Sheet, leaf_blocks, sheets
from weldwhy.tui.commands import LEAF, bindings_of, shown_key
from weldwhy.tui.page import Page, PicturePage
from weldwhy.tui.rows import Row, row
from weldwhy.tui.screens.base import PageScreen

SEARCH = "search"
"""What the screen returns when something else is to be looked for."""

BEGINS = {"symptom": "Begin a case with it", "calculator": "Work it out"}
"""What can be begun from a page, by its kind."""

PUT_AWAY = "The case that was open is put away, not lost."


class LeafScreen(PageScreen[str]):
    """Shows one page after the other; returns `SEARCH`, or None when the trail is at its end."""

    BINDINGS = bindings_of(LEAF)
    place: ClassVar[str] = LEAF

    def __init__(self, bench: Bench, ref: Ref) -> None:
        super().__init__()
        self._bench = bench
        self._trail: list[tuple[Ref, int]] = []
        self._ref = ref
        self._at = 0
        self._made: list[Sheet] = []

    def compose_body(self) -> ComposeResult:
        yield PicturePage(self.rows, "main")

    def title_texts(self) -> tuple[str, str]:
        return f"Look up: {KINDS[self._ref.kind].one}", ""

    @property
    def ref(self) -> Ref:
        """The thing whose page is open."""
        return self._ref

    @property
    def sheet(self) -> Sheet:
        """What is in sight: nothing yet if the window has always been too small for a page."""
        return self._made[self._at] if self._made else Sheet((), ())

    @property
    def count(self) -> int:
        """Into how many sheets the page is cut."""
        return len(self._made)

    def rows(self, width: int, height: int) -> Sequence[Row]:
        bench, letters = self._bench, self.program.terminal.letters
        made = leaf(bench.rules, self._ref, bench.case.process, bench.system)
        blocks = leaf_blocks(bench.rules, made, width, height, letters, self._key_row())
        self._made = sheets(blocks, width, height)
        self._at = min(self._at, len(self._made) - 1)
        return self.sheet.rows

    def _key_row(self) -> Row | None:
        words = BEGINS.get(self._ref.kind)
        if words is None:
            return None
        return row((f"  {shown_key('begin', self.program.own_keys):<2} ", "key"), (words, "text"))

    def _show(self, ref: Ref, at: int = 0) -> None:
        self._ref, self._at = ref, at
        self.redraw(to_top=True)

    def action_answer(self, number: int) -> None:
        """Follow the link of that number, if one is in sight."""
        links = self.sheet.links
        if number <= len(links):
            self._trail.append((self._ref, self._at))
            self._show(links[number - 1])

    def on_page_picked(self, message: Page.Picked) -> None:
        self.action_answer(message.number)

    def action_back(self) -> None:
        if self._trail:
            self._show(*self._trail.pop())
        else:
            self.dismiss(None)

    def on_key(self, event: events.Key) -> None:
        if event.key == "backspace":
            event.stop()
            event.prevent_default()
            self.action_back()

    def action_search(self) -> None:
        self.dismiss(SEARCH)

    def action_page_down(self) -> None:
        self._turn(1)

    def action_page_up(self) -> None:
        self._turn(-1)

    def _turn(self, by: int) -> bool:
        if not 0 <= self._at + by < self.count:
            return False
        self._show(self._ref, self._at + by)
        return True

    def action_next(self) -> None:
        self._move(1)

    def action_previous(self) -> None:
        self._move(-1)

    def _move(self, by: int) -> None:
        """Move the mark; over the edge of a sheet it goes to the next one."""
        page, count = self.main, len(self.sheet.links)
        to = (1 if by > 0 else count) if page.mark is None else page.mark + by
        if 1 <= to <= count:
            page.set_mark(to)
        elif self._turn(by) and self.sheet.links:
            page.set_mark(1 if by > 0 else len(self.sheet.links))

    def action_take(self) -> None:
        if self.main.mark is not None:
            self.action_answer(self.main.mark)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        if action == "begin" and self._ref.kind not in BEGINS:
            return None
        return super().check_action(action, parameters)

    def action_begin(self) -> None:
        """Begin a case with the symptom, or work the calculator."""
        if self._ref.kind == "symptom":
            self.app.call_later(self._begin_case)
        elif self._ref.kind == "calculator":
            from weldwhy.tui.screens.arithmetic import SumScreen

            calculator = things(self._bench.rules).all[self._ref]
            self.app.push_screen(SumScreen(self._bench, calculator, {}))

    async def _begin_case(self) -> None:
        """Begin a case that reports the symptom, and go to where it is found out."""
        bench = self._bench
        told = bench.case if bench.left_open is None else bench.left_open
        if told.symptoms or told.resembled or bench.left_open is not None:
            bench.begin_with(Reported(self._ref.id))
            await self.program.show_new_case([PUT_AWAY])
        else:  # only the work was told so far: the same work has this symptom
            bench.record(Reported(self._ref.id))
            await self.program.show_new_case([])
