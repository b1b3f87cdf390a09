"""Look up: search as you type, browse, and turn pages whose links are digits."""

from __future__ import annotations

from typing import ClassVar

from textual import events

from weldwhy.bench import Bench
from weldwhy.lookup.index import index
from weldwhy.tui.cards.card import Card, Choice
from weldwhy.tui.cards.lookup import (
    KIND,
    PAGE,
    SHELF,
    found_card,
    kinds_card,
    ref_of,
    shelf_card,
    shelves_card,
    shelves_of,
)
from weldwhy.tui.commands import DIGITS, LOOKUP, bindings_of
from weldwhy.tui.screens.cardscreen import CardScreen
from weldwhy.tui.screens.leaf import SEARCH, LeafScreen
from weldwhy.tui.screens.typed import TypedLine

COMMAND_SIGNS = "?:"
"""Signs that stay commands while a search is typed; no name has them."""


class LookupScreen(CardScreen[None]):
    """What is typed searches; without a word the kinds are browsed, shelf by shelf."""

    BINDINGS = bindings_of(LOOKUP)
    place: ClassVar[str] = LOOKUP

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._line = TypedLine()
        self._kind = self._shelf = ""

    def card(self) -> Card:
        rules, typed = self._bench.rules, self._line.text
        if typed:
            found = [hit.ref for hit in index(rules).search(typed)]
            return found_card(rules, typed, found)
        if self._shelf:
            return shelf_card(rules, self._kind, self._shelf)
        return shelves_card(rules, self._kind) if self._kind else kinds_card(rules)

    def on_key(self, event: events.Key) -> None:
        sign = event.character or ""
        if not self._line.text and event.key == "backspace":
            self.action_back()
        elif not self._writes(sign) or not self._line.take(event):
            return  # a command
        event.stop()
        event.prevent_default()
        self.redraw(to_top=True)

    def _writes(self, sign: str) -> bool:
        """Whether a sign is written: a digit is one only where some name goes on with it."""
        typed = self._line.text
        if sign and sign in COMMAND_SIGNS:
            return False
        if sign and sign in DIGITS:
            return bool(typed) and index(self._bench.rules).continues(typed + sign)
        return bool(typed) or sign not in ("/", "0")

    def on_paste(self, event: events.Paste) -> None:
        event.stop()
        self._line.add(event.text)
        self.redraw(to_top=True)

    def action_take(self) -> None:
        """The marked line, or the first one while a search is typed."""
        if self.main.mark is None and self._line.text:
            self.action_answer(1)
        else:
            super().action_take()

    def chosen(self, choice: Choice) -> None:
        act = str(choice.act)
        if act.startswith(PAGE):
            self.app.push_screen(LeafScreen(self._bench, ref_of(act)), self._came_back)
        elif act.startswith(SHELF):
            self._shelf = act.removeprefix(SHELF)
            self.redraw(to_top=True)
        else:
            self._open_kind(act.removeprefix(KIND))

    def _open_kind(self, kind: str) -> None:
        self._kind = kind
        found = list(shelves_of(self._bench.rules, kind))
        self._shelf = found[0] if len(found) == 1 else ""
        self.redraw(to_top=True)

    def _came_back(self, wish: str | None) -> None:
        """A page was left, perhaps in order to look for something else."""
        if wish == SEARCH:
            self._forget()

    def _forget(self) -> None:
        self._line = TypedLine()
        self._kind = self._shelf = ""
        self.redraw(to_top=True)

    def action_back(self) -> None:
        """First what is typed goes, then the shelf, then the kind, then the place is left."""
        if self._line.text:
            self._line = TypedLine()
        elif self._shelf and len(shelves_of(self._bench.rules, self._kind)) > 1:
            self._shelf = ""
        elif self._kind:
            self._kind = self._shelf = ""
        else:
            self.call_later(self.program.action_diagnose)
            return
        self.redraw(to_top=True)
