"""A screen that shows a card: digits, a mark that moves, and windows of nine choices."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from weldwhy.tui.cards.card import PER_WINDOW, Act, Card, Choice, lay_out
from weldwhy.tui.commands import LIST, bindings_of
from weldwhy.tui.page import Page
from weldwhy.tui.rows import Row
from weldwhy.tui.screens.base import PageScreen, Result


class CardScreen(PageScreen[Result]):
    """Shows `card()` and hands what is chosen to `chosen()`."""

    place: ClassVar[str] = LIST

    def __init__(self) -> None:
        super().__init__()
        self.first = 0
        self._card: Card | None = None

    def card(self) -> Card:
        """The card to show now."""
        raise NotImplementedError

    def chosen(self, choice: Choice) -> None:
        """A choice was made."""
        raise NotImplementedError

    @property
    def shown_card(self) -> Card:
        """The card now on the screen."""
        if self._card is None:
            self._card = self.card()
        return self._card

    def rows(self, width: int, height: int) -> Sequence[Row]:
        return lay_out(self.shown_card, width, height, self.first)

    def title_texts(self) -> tuple[str, str]:
        return self.shown_card.where, ""

    def redraw(self, to_top: bool = False) -> None:
        self._card = None
        if to_top:
            self.first = 0
        super().redraw(to_top)

    def action_answer(self, number: int) -> None:
        """Make the numbered choice, if there is one of that number."""
        window = self.shown_card.window(self.first)
        if number <= len(window):
            self.chosen(window[number - 1])

    def action_none(self) -> None:
        """Make the choice that has the key 0, if the card has one."""
        for choice in self.shown_card.others:
            if choice.key == "0":
                self.chosen(choice)

    def on_page_picked(self, message: Page.Picked) -> None:
        self.action_answer(message.number)

    def action_next(self) -> None:
        self._move(1)

    def action_previous(self) -> None:
        self._move(-1)

    def _move(self, by: int) -> None:
        """Move the mark; over the edge of a window it goes to the next window."""
        page, count = self.main, len(self.shown_card.window(self.first))
        if not count:
            page.turn(by)
        elif page.mark is None:
            page.set_mark(1 if by > 0 else count)
        elif 1 <= page.mark + by <= count:
            page.set_mark(page.mark + by)
        elif self._turn_window(by):
            page.set_mark(1 if by > 0 else len(self.shown_card.window(self.first)))

    def action_take(self) -> None:
        """Make the choice that has the mark; without a mark nothing happens."""
        if self.main.mark is not None:
            self.action_answer(self.main.mark)

    def action_page_down(self) -> None:
        if not self.main.turn(1):
            self._turn_window(1)

    def action_page_up(self) -> None:
        if not self.main.turn(-1):
            self._turn_window(-1)

    def _turn_window(self, by: int) -> bool:
        first = self.first + by * PER_WINDOW
        if not 0 <= first < len(self.shown_card.choices):
            return False
        self.first = first
        self.main.rebuild(to_top=True)
        return True


class PickScreen(CardScreen[Act]):
    """Shows one given card and returns what the choice made there does; None when left."""

    BINDINGS = bindings_of(LIST)

    def __init__(self, card: Card) -> None:
        super().__init__()
        self._given = card

    def card(self) -> Card:
        return self._given

    def chosen(self, choice: Choice) -> None:
        self.dismiss(choice.act)
