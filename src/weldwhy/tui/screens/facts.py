"""The optional facts, one numbered line each; a line that is typed is checked at once."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.bench import Bench
from weldwhy.tui.cards.facts import Fact, checked, entry_of, facts_of, of_mark, with_marks
from weldwhy.tui.cards.form import Field
from weldwhy.tui.screens.form import FormScreen


class FactsScreen(FormScreen[None]):
    """Fills in the facts of the open case. With `only`, that one fact, and back again."""

    where = "What is known"

    def __init__(self, bench: Bench, only: str = "") -> None:
        super().__init__()
        self._bench = bench
        self._only = only
        if only:
            self.begin(next(f for f in self.fields() if f.id == only))

    def fields(self) -> Sequence[Fact]:
        facts = facts_of(self._bench.rules, self._bench.case)
        wanted = [fact for fact in facts if not self._only or fact.id == self._only]
        return [with_marks(fact, self._bench.machine) for fact in wanted]

    def said(self) -> Sequence[tuple[str, str]]:
        return [
            ("What do you know? Every line may stay as it is.", "strong"),
            ("Metal, thickness and settings sharpen the answer; a wrong guess does harm.", "dim"),
        ]

    def keep(self, field: Field, text: str) -> None:
        assert isinstance(field, Fact)
        rules, system = self._bench.rules, self._bench.system
        value = text if field.options and text in dict(field.options) else ""
        value = value or of_mark(field, self._bench.machine, text)
        value = value or checked(rules, field, text, system)
        # a metal that nobody knows is told too, so that it is not asked again
        unknown = not value and bool(field.options) and not field.setting
        if value != field.value or unknown:
            self._bench.record(entry_of(field, value))
        if any(caution.stop for caution in self._bench.interview.standing_cautions):
            self.dismiss(None)  # the case screen says to stop, and whom to call

    def ended(self) -> None:
        if self._only:
            self.dismiss(None)
        else:
            self.redraw()
