"""The gallery of drawn pictures, the second way into a case, and one picture looked at closely."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from textual.app import ComposeResult

from weldwhy.bench import Bench
from weldwhy.model import Symptom
from weldwhy.plaintext import capital
from weldwhy.tui.cards.card import Act, Card, Choice, lay_out
from weldwhy.tui.cards.gallery import (
    SIDE_BY_SIDE,
    drawn,
    gallery_rows,
    groups_drawn,
    leaf_for,
    no_pictures,
    picture_card,
)
from weldwhy.tui.cards.start import short_name
from weldwhy.tui.commands import GALLERY, LIST, bindings_of
from weldwhy.tui.page import PicturePage
from weldwhy.tui.rows import Row
from weldwhy.tui.screens.base import PageScreen
from weldwhy.tui.screens.cardscreen import CardScreen


class GalleryScreen(PageScreen[Act]):
    """Returns the entry that a picture was picked with, or None."""

    BINDINGS = bindings_of(GALLERY)
    place = GALLERY

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._first = 0
        self._group = 0
        """Number of the group in `groups_drawn`; 0 is all of them."""

    def compose_body(self) -> ComposeResult:
        yield PicturePage(self.rows, "main")

    def title_texts(self) -> tuple[str, str]:
        page = self.query("#main").first(PicturePage).size
        count = len(self._shown(leaf_for(page.width, page.height).count))
        process = self._bench.rules.processes.get(self._process)
        work = short_name(process.plain).partition(" with ")[0] if process else "all processes"
        found = f"{self._first + 1} to {self._first + count} of {len(self._all)}"
        return f"Pictures: {work}", found if count else ""

    @property
    def _process(self) -> str:
        return self._bench.case.process

    @property
    def _groups(self) -> list[str]:
        return groups_drawn(self._bench.rules, self._process)

    @property
    def _all(self) -> list[Symptom]:
        return drawn(self._bench.rules, self._process, self._groups[self._group])

    def _shown(self, count: int) -> list[Symptom]:
        return self._all[self._first : self._first + count]

    def rows(self, width: int, height: int) -> Sequence[Row]:
        leaf = leaf_for(width, height)
        shown = self._shown(leaf.count)
        if not shown:
            return no_pictures(width)
        rules, letters = self._bench.rules, self.program.terminal.letters
        head = capital(rules.groups.get(self._groups[self._group], "all kinds"))
        return gallery_rows(rules, shown, head, leaf, letters, self._process)

    def action_answer(self, number: int) -> None:
        """Look at the numbered picture closely."""
        page = self.main
        shown = self._shown(leaf_for(page.size.width, page.size.height).count)
        if number <= len(shown):
            self.app.push_screen(PictureScreen(self._bench, shown[number - 1].id), self._picked)

    def _picked(self, act: Act | None) -> None:
        if act is not None:
            self.dismiss(act)

    def action_none(self) -> None:
        self.dismiss(None)

    def action_page_down(self) -> None:
        self._turn(1)

    def action_page_up(self) -> None:
        self._turn(-1)

    def _turn(self, by: int) -> None:
        page = self.main
        first = self._first + by * leaf_for(page.size.width, page.size.height).count
        if 0 <= first < len(self._all):
            self._first = first
            self.redraw()
        elif by < 0 < self._first:
            self._first = 0
            self.redraw()

    def action_next_group(self) -> None:
        self._change_group(1)

    def action_previous_group(self) -> None:
        self._change_group(-1)

    def _change_group(self, by: int) -> None:
        self._group = (self._group + by) % len(self._groups)
        self._first = 0
        self.redraw()


class PictureScreen(CardScreen[Act]):
    """One picture closely; returns the entry it was picked with. Look-alikes open in its place."""

    BINDINGS = bindings_of(LIST)

    def __init__(self, bench: Bench, symptom: str) -> None:
        super().__init__()
        self._bench = bench
        self._symptom = symptom

    def compose_body(self) -> ComposeResult:
        yield PicturePage(self.rows, "main")

    def card(self) -> Card:
        letters = self.program.terminal.letters
        return picture_card(self._bench.interview, self._symptom, letters)

    def rows(self, width: int, height: int) -> Sequence[Row]:
        card = replace(self.shown_card, in_body=width < SIDE_BY_SIDE)
        return lay_out(card, width, height, self.first)

    def chosen(self, choice: Choice) -> None:
        if isinstance(choice.act, str):
            self._symptom = choice.act
            self.redraw(to_top=True)
        else:
            self.dismiss(choice.act)
