"""The optional facts, one numbered line each; a line that is typed is checked at once."""

from __future__ import annotations

from textual import events

from weldwhy.bench import Bench
from weldwhy.entries import EntryError
from weldwhy.tui.cards.card import Act, Card, Choice, text_body
from weldwhy.tui.cards.facts import TYPE_IT, Fact, checked, facts_of, options_card
from weldwhy.tui.commands import FACTS, bindings_of
from weldwhy.tui.rows import capital
from weldwhy.tui.screens.cardscreen import CardScreen, PickScreen
from weldwhy.tui.screens.typed import TypedLine

NOT_TOLD = "don't know"


class FactsScreen(CardScreen[None]):
    """Fills in the facts of the open case. With `only`, that one fact, and back again."""

    BINDINGS = bindings_of(FACTS)
    place = FACTS

    def __init__(self, bench: Bench, only: str = "") -> None:
        super().__init__()
        self._bench = bench
        self._only = only
        self._editing: Fact | None = None
        self._line = TypedLine()
        self._fault = ""
        if only:
            self._begin(next(f for f in self._facts() if f.id == only))

    def _facts(self) -> tuple[Fact, ...]:
        facts = facts_of(self._bench.rules, self._bench.case)
        return tuple(f for f in facts if not self._only or f.id == self._only)

    def card(self) -> Card:
        said = [
            ("What do you know? Every line may stay as it is.", "strong"),
            ("Metal, thickness and settings sharpen the answer; a wrong guess does harm.", "dim"),
        ]
        choices = tuple(self._choice(fact) for fact in self._facts())
        others = () if self._editing else (Choice("Go on", "done", key="0"),)
        return Card(text_body(said), choices, others, where="What is known")

    def _choice(self, fact: Fact) -> Choice:
        name = capital(fact.name)
        if self._editing is None or fact.id != self._editing.id:
            return Choice(f"{name}: {fact.shown or NOT_TOLD}", fact.id)
        note = self._fault or f"Such as {fact.example}. " * bool(fact.example)
        if not self._fault:
            note += "Enter keeps it, esc leaves it."
        role = "caution" if self._fault else "dim"
        return Choice(f"{name}: {self._line.text}_", fact.id, note=note, note_role=role)

    def chosen(self, choice: Choice) -> None:
        if choice.act == "done":
            self.dismiss(None)
            return
        fact = next(f for f in self._facts() if f.id == choice.act)
        if fact.options:
            card = options_card(fact)
            self.app.push_screen(PickScreen(card), lambda act: self._picked(fact, act))
        else:
            self._begin(fact)
            self.redraw()

    def _picked(self, fact: Fact, act: Act | None) -> None:
        if act == TYPE_IT:
            self._begin(fact)
        elif act is not None and not isinstance(act, str):
            self._bench.record(*act)
            if any(caution.stop for caution in self._bench.interview.standing_cautions):
                self.dismiss(None)  # the case screen says to stop, and whom to call
                return
        self.redraw()

    def _begin(self, fact: Fact) -> None:
        self._editing, self._line, self._fault = fact, TypedLine(fact.value), ""

    def on_key(self, event: events.Key) -> None:
        if self._editing is None:
            return
        event.stop()
        event.prevent_default()
        if event.key == "enter":
            self._keep(self._editing)
        elif event.key == "escape":
            self._end()
        elif self._line.take(event):
            self._fault = ""
            self.redraw()

    def on_paste(self, event: events.Paste) -> None:
        if self._editing is not None:
            self._line.add(event.text)
            self.redraw()

    def _keep(self, fact: Fact) -> None:
        try:
            value = checked(self._bench.rules, fact, self._line.text, self._bench.system)
        except EntryError as fault:
            self._fault = str(fault)
            self.redraw()
            return
        if value != fact.value:
            self._bench.record(fact.entry(value))
        self._end()

    def _end(self) -> None:
        self._editing = None
        if self._only:
            self.dismiss(None)
        else:
            self.redraw()

    def action_done(self) -> None:
        self.dismiss(None)
