"""The arithmetic: a list of calculators by topic, and the one that is open."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from weldwhy.bench import Bench
from weldwhy.reckon.calculator import Calculator, by_id, read
from weldwhy.reckon.catalogue import CALCULATORS
from weldwhy.reckon.wording import summary, topics
from weldwhy.tui.cards.arithmetic import (
    Sum,
    fields_of,
    reckoned,
    sum_card,
    told,
    topic_card,
    topics_card,
)
from weldwhy.tui.cards.card import Card, Choice
from weldwhy.tui.cards.form import Editing, Field
from weldwhy.tui.commands import LIST, SUM, bindings_of, shown_key
from weldwhy.tui.screens.cardscreen import CardScreen
from weldwhy.tui.screens.form import FormScreen


class ArithmeticScreen(CardScreen[None]):
    """Lists the topics, then the calculators of one; what was typed into each is kept."""

    BINDINGS = bindings_of(LIST)

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._topic = ""
        self._typed: dict[str, dict[str, str]] = {}

    def card(self) -> Card:
        if self._topic:
            return topic_card(self._topic, CALCULATORS)
        return topics_card(CALCULATORS)

    def chosen(self, choice: Choice) -> None:
        name = str(choice.act)
        if self._topic:
            self._open(by_id(CALCULATORS, name))
        elif len(alone := topics(CALCULATORS)[name]) == 1:
            self._open(alone[0])
        else:
            self._topic = name
            self.redraw(to_top=True)

    def _open(self, calculator: Calculator) -> None:
        typed = self._typed.setdefault(calculator.id, {})
        self.app.push_screen(SumScreen(self._bench, calculator, typed))

    def action_back(self) -> None:
        if self._topic:
            self._topic = ""
            self.redraw(to_top=True)
        else:
            self.call_later(self.program.action_diagnose)


class SumScreen(FormScreen[None]):
    """One calculator: its inputs as a form, and what comes of them while they are typed."""

    BINDINGS = bindings_of(SUM)
    place = SUM

    def __init__(self, bench: Bench, calculator: Calculator, typed: dict[str, str]) -> None:
        super().__init__()
        self._bench = bench
        self._calculator = calculator
        self._typed = typed
        self._note = ""

    def _made(self, typed: Mapping[str, str]) -> Sum:
        return reckoned(self._bench.rules, self._calculator, typed, self._bench.system)

    def fields(self) -> Sequence[Field]:
        return fields_of(self._bench.rules, self._made(self._typed))

    def card(self) -> Card:
        editing = self._editing
        typing = Editing(editing.id, self._line.text, self._fault) if editing else None
        typed = self._told(editing, self._line.text) if editing else self._typed
        key = shown_key("copy_result", self.program.own_keys)
        return sum_card(self.fields(), typing, self._made(typed), key, self._note)

    def _told(self, field: Field, text: str) -> dict[str, str]:
        return told(self._calculator, self._typed, field.id, text)

    def keep(self, field: Field, text: str) -> None:
        self._note = ""
        text = " ".join(text.split())
        if text:
            wanted = next(each for each in self._calculator.inputs if each.id == field.id)
            read(self._bench.rules, wanted, text, self._bench.system)
        typed = self._told(field, text)
        self._typed.clear()
        self._typed.update(typed)

    def action_copy_result(self) -> None:
        made = self._made(self._typed)
        if made.outcome is not None:
            lines = summary(self._calculator, made.texts, made.outcome, made.system)
            self.app.copy_to_clipboard("\n".join(lines) + "\n")
            self._note = "Copied. If nothing arrives where you paste it, use `weldwhy reckon`."
            self.redraw()
