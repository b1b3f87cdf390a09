"""Set up: what is wanted, which processes suit, and the plan of one; kept after every key."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.bench import Bench
from weldwhy.setup import Refusal, plans, refusal
from weldwhy.tui.cards.card import Act, Card, Choice, with_notes
from weldwhy.tui.cards.facts import Fact, checked
from weldwhy.tui.cards.form import Field
from weldwhy.tui.cards.plan import SOUND
from weldwhy.tui.cards.setup import (
    WANTED,
    WHERE,
    entries_for,
    fields_of,
    stop_card,
    suits_card,
    work_words,
)
from weldwhy.tui.screens.cardscreen import PickScreen
from weldwhy.tui.screens.form import FormScreen
from weldwhy.tui.screens.plan import PlanScreen

DONE = "The set-up is done. Change a line here for the next job."


class SetupScreen(FormScreen[None]):
    """The form of what is wanted; 0 shows what suits. A refused metal or job is said at once."""

    where = WHERE

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._notes: list[str] = []

    def on_mount(self) -> None:
        """A plan that was open when the program ended is open again."""
        if self._bench.setup.shown and self._can_plan:
            self._show(self._bench.setup.process)

    def fields(self) -> Sequence[Fact]:
        return fields_of(self._bench.rules, self._bench.setup.work)

    def said(self) -> Sequence[tuple[str, str]]:
        return [
            ("What do you want to weld?", "strong"),
            ("Metal and thickness are needed; the rest may stay as it is.", "dim"),
        ]

    def others(self) -> tuple[Choice, ...]:
        return (Choice("Show what suits", "done", key="0"),)

    def card(self) -> Card:
        self._notes += self._bench.take_notices()
        return with_notes(super().card(), self._notes)

    def chosen(self, choice: Choice) -> None:
        self._notes = []
        super().chosen(choice)

    def keep(self, field: Field, text: str) -> None:
        assert isinstance(field, Fact)
        bench = self._bench
        listed = bool(field.options) and text in dict(field.options)
        value = text if listed else checked(bench.rules, field, text, bench.system)
        if value == field.value:
            return
        entries = entries_for(bench.rules, bench.setup.work, field, value)
        bench.setup = bench.setup.told(*entries)
        if field.id in ("material", "job"):
            self._refused()

    def _refused(self) -> bool:
        """Say to stop and whom to call, if the metal or the job is not for a small shop."""
        found = refusal(self._bench.rules, self._bench.setup.work)
        if found is not None:
            self.app.push_screen(PickScreen(stop_card(found.caution)))
        return found is not None

    @property
    def _can_plan(self) -> bool:
        work = self._bench.setup.work
        return all(map(work.told, WANTED)) and refusal(self._bench.rules, work) is None

    def done(self) -> None:
        work = self._bench.setup.work
        missing = [field.name for field in self.fields() if field.id in WANTED and not field.value]
        if missing:
            self._fault = f"Tell the {' and the '.join(missing)} first."
            self.redraw()
        elif not self._refused():
            self._show(work.process) if work.process else self._show_all()

    def _show_all(self) -> None:
        """The processes that the machine can do, best first."""
        bench, work = self._bench, self._bench.setup.work
        found = plans(bench.rules, work, bench.machine, bench.system)
        assert not isinstance(found, Refusal)
        card = suits_card(work_words(bench.rules, work), found)
        self.app.push_screen(PickScreen(card), self._picked_process)

    def _picked_process(self, act: Act | None) -> None:
        if isinstance(act, str):
            self._show(act)

    def _show(self, process: str) -> None:
        """Open the plan of a process."""
        self._bench.setup = self._bench.setup.opened(process)
        self.app.push_screen(PlanScreen(self._bench), self._left_plan)

    def _left_plan(self, bead: str | None) -> None:
        """Back from a plan: one level, or all the way once the test bead is sound."""
        self._bench.setup = self._bench.setup.closed(finished=bead == SOUND)
        if bead == SOUND:
            self._notes = [DONE]
        elif not self._bench.setup.work.process:
            self._show_all()
        self.redraw()

    async def action_back(self) -> None:  # type: ignore[override]  # the framework awaits either
        await self.program.action_diagnose()
