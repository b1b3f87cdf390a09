"""In your own words: a text is typed, and what was understood comes back as ticks."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from textual import events
from textual.worker import Worker

from weldwhy.bench import Bench
from weldwhy.case import Entry
from weldwhy.entries import in_own_words
from weldwhy.tui.cards.card import Card, Choice
from weldwhy.tui.cards.heard import AGAIN, ON, STRIKE, heard_card, say_rows
from weldwhy.tui.commands import LIST, SAY, bindings_of
from weldwhy.tui.rows import Row
from weldwhy.tui.screens.base import PageScreen
from weldwhy.tui.screens.cardscreen import CardScreen
from weldwhy.tui.screens.typed import TypedLine
from weldwhy.understanding.heard import Heard
from weldwhy.understanding.hearing import understand

LONGEST = 2000
"""Letters that can be typed: more than anybody tells with gloves on."""

Entries = tuple[Entry, ...]


class SayScreen(PageScreen[Entries]):
    """Returns the words and what was understood and not struck out, as entries, or None."""

    BINDINGS = bindings_of(SAY)
    place = SAY

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._line = TypedLine(longest=LONGEST, joins=True)
        self._gathering: Worker[Heard] | None = None

    def on_mount(self) -> None:
        # what phrases there are is gathered while the person types, and holds up no key
        self.call_after_refresh(self._gather)

    def _gather(self) -> None:
        self._gathering = self.run_worker(partial(understand, self._bench.rules, ""), thread=True)

    def title_texts(self) -> tuple[str, str]:
        return "In your own words", ""

    def rows(self, width: int, height: int) -> Sequence[Row]:
        return say_rows(self._line.text, width)

    def on_key(self, event: events.Key) -> None:
        if self._line.take(event):
            event.stop()
            event.prevent_default()
            self.redraw()

    def on_paste(self, event: events.Paste) -> None:
        event.stop()
        self._line.add(event.text)
        self.redraw()

    async def action_take(self) -> None:
        """Understand what is typed, and show what was understood."""
        text = self._line.text.strip()
        if text:
            if self._gathering is not None:
                await self._gathering.wait()
            bench = self._bench
            heard = understand(bench.rules, text, bench.case, bench.system)
            self.app.push_screen(HeardScreen(bench, text, heard), self._told)
        else:
            self.dismiss(None)

    def _told(self, entries: Entries | None) -> None:
        if entries is not None:
            self.dismiss(entries)


class HeardScreen(CardScreen[Entries]):
    """Ticks to be struck out; returns the words and what is left, or None to say it again."""

    BINDINGS = bindings_of(LIST)

    def __init__(self, bench: Bench, text: str, heard: Heard) -> None:
        super().__init__()
        self._bench = bench
        self._text = text
        self._heard = heard
        self._struck: set[int] = set()

    def card(self) -> Card:
        return heard_card(self._bench.rules, self._heard, self._struck)

    def action_take(self) -> None:
        """The marked line; without a mark show what was not seen yet, then go on."""
        if self.main.mark is not None:
            super().action_take()
        elif not (self.main.turn(1) or self._turn_window(1)):
            self._go_on()

    def _go_on(self) -> None:
        self.dismiss(in_own_words(self._text, self._heard, self._struck))

    def chosen(self, choice: Choice) -> None:
        act = str(choice.act)
        if act == AGAIN:
            self.dismiss(None)
        elif act == ON:
            self._go_on()
        else:
            self._struck ^= {int(act.removeprefix(STRIKE))}
            self.redraw()
