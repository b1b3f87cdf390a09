"""A screen that shows a form: lines are picked or typed, and checked as soon as they are kept."""

from __future__ import annotations

from collections.abc import Sequence

from textual import events

from weldwhy.tui.cards.card import Act, Card, Choice
from weldwhy.tui.cards.form import TYPE_IT, Editing, Field, form_card, options_card, picked
from weldwhy.tui.commands import FACTS, bindings_of
from weldwhy.tui.screens.base import Result
from weldwhy.tui.screens.cardscreen import CardScreen, PickScreen
from weldwhy.tui.screens.typed import TypedLine


class FormScreen(CardScreen[Result]):
    """Shows `fields()`; `keep()` takes what was typed or picked, or refuses it with ValueError."""

    BINDINGS = bindings_of(FACTS)
    place = FACTS
    where = ""
    """What the top line says."""

    def __init__(self) -> None:
        super().__init__()
        self._editing: Field | None = None
        self._line = TypedLine()
        self._fault = ""

    def fields(self) -> Sequence[Field]:
        """The lines of the form now."""
        raise NotImplementedError

    def said(self) -> Sequence[tuple[str, str]]:
        """What stands above the lines: paragraphs with their roles."""
        return ()

    def others(self) -> tuple[Choice, ...]:
        """Choices with their own keys below the lines."""
        return (Choice("Go on", "done", key="0"),)

    def keep(self, field: Field, text: str) -> None:
        """Take the new value of a field; ValueError in one plain line refuses it."""
        raise NotImplementedError

    def done(self) -> None:
        """What the key 0 does."""
        self.dismiss(None)

    def begin(self, field: Field) -> None:
        """Begin to type into a field."""
        self._editing, self._line, self._fault = field, TypedLine(field.value), ""

    def ended(self) -> None:
        """Typing has ended, with or without a new value."""
        self.redraw()

    def card(self) -> Card:
        editing = self._editing
        typing = Editing(editing.id, self._line.text, self._fault) if editing else None
        said = [*self.said()]
        if self._fault and not editing:
            said.append((self._fault, "caution"))
        return form_card(said, self.fields(), typing, self.others(), self.where)

    def chosen(self, choice: Choice) -> None:
        self._fault = ""
        field = next((field for field in self.fields() if field.id == choice.act), None)
        if field is None:
            self.done()
        elif field.options:
            card = options_card(field, self.where)
            self.app.push_screen(PickScreen(card), lambda act: self._picked(field, act))
        else:
            self.begin(field)
            self.redraw()

    def _picked(self, field: Field, act: Act | None) -> None:
        value = picked(act)
        if act == TYPE_IT:
            self.begin(field)
        elif value is not None:
            self._take(field, value)
        self.redraw()

    def on_key(self, event: events.Key) -> None:
        if self._editing is None:
            return
        event.stop()
        event.prevent_default()
        if event.key == "enter":
            self._enter(self._editing)
        elif event.key == "escape":
            self._end()
        elif self._line.take(event):
            self._fault = ""
            self.redraw()

    def on_paste(self, event: events.Paste) -> None:
        if self._editing is not None:
            self._line.add(event.text)
            self.redraw()

    def _enter(self, field: Field) -> None:
        if self._take(field, self._line.text):
            self._end()
        else:
            self.redraw()

    def _take(self, field: Field, text: str) -> bool:
        """Hand a value on; False, and its fault shown, if it is refused."""
        try:
            self.keep(field, text)
        except ValueError as fault:
            self._fault = str(fault)
            return False
        return True

    def _end(self) -> None:
        self._editing = None
        self.ended()

    def action_done(self) -> None:
        self.done()
