"""The step of the case: what stands on the screen, and how entries change it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from textual.app import ComposeResult

from weldwhy.bench import Bench
from weldwhy.case import Entry
from weldwhy.interview import Interview
from weldwhy.steps import Step
from weldwhy.tui.cards.card import Card, with_notes
from weldwhy.tui.cards.end import end_card, put_back
from weldwhy.tui.cards.side import side_rows, to_go
from weldwhy.tui.cards.start import group_card, process_card, resume_card, symptom_card, work_text
from weldwhy.tui.cards.step import step_card
from weldwhy.tui.page import Page
from weldwhy.tui.rows import Row
from weldwhy.tui.screens.base import WIDE
from weldwhy.tui.screens.cardscreen import CardScreen

if TYPE_CHECKING:
    from weldwhy.advice import SettingAdvice

WAY_IN = ("process", "group", "symptom")
"""Steps before there are causes to show."""
ONLY_OPEN = ("causes", "questions", "facts", "symptom")
"""What makes no sense once the bead is sound."""
NEED_A_CASE = ("causes", "questions", "facts", "told", "copy", "save", "symptom", "new_case")


class StepScreen(CardScreen[None]):
    """Shows the step of the case on the bench and takes the answers."""

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self.bench = bench
        self.own_step: Step | None = None
        """A step the person chose instead of the guide's; None: the guide's."""
        self.notes: list[str] = []

    # what is shown

    @property
    def interview(self) -> Interview:
        """What the guide thinks now."""
        return self.bench.interview

    @property
    def step(self) -> Step:
        """The step now shown: the person's own choice, or the guide's."""
        barred = any(caution.stop for caution in self.interview.standing_cautions)
        return self.interview.step if barred else self.own_step or self.interview.step

    @property
    def under_way(self) -> bool:
        """Whether a symptom and the process were told, so that there are causes to show."""
        return self.bench.left_open is None and self.step.id not in WAY_IN

    def compose_body(self) -> ComposeResult:
        yield Page(self.rows, "main")
        yield Page(self._side, "side")

    def card(self) -> Card:
        bench, step = self.bench, self.step
        self.notes += bench.take_notices()
        notes = list(self.notes)
        if bench.left_open is not None:
            return with_notes(resume_card(bench.rules, bench.left_open), notes)
        work, keys = work_text(self.interview), self.program.own_keys
        if step.id == "symptom":
            return with_notes(symptom_card(bench.rules, step, keys), notes)
        if step.id == "process":
            return with_notes(process_card(step, work, keys), notes)
        if step.id == "group":
            return with_notes(group_card(step, work, keys), notes)
        if step.kind == "done":
            return with_notes(end_card(self.interview), notes)
        notes += [n for n in (put_back(bench.case, self.interview), self.interview.notice) if n]
        advices = self.interview.remedies(step.cause) if step.cause else ()
        settings = next((a.settings for a in advices if a.remedy.id == step.id), ())
        own = self.own_step is not None and step is self.own_step
        reading, lens = self.reading_of(step), self.interview.lens
        drawing = self._drawing(settings) if settings else ()
        card = step_card(step, work_text(self.interview), settings, own, reading, lens, drawing)
        return with_notes(card, notes)

    def _drawing(self, settings: Sequence[SettingAdvice]) -> Sequence[Row]:
        """The picture of the operating window, where one of these settings is in it."""
        # imported when it is first needed: the first screen of all is there sooner
        from weldwhy.tui.cards.caseview import drawing_of

        return drawing_of(self.interview, settings, self.program.terminal.letters)

    def reading_of(self, step: Step) -> str:
        """The setting that this check reads, if its number would tell the guide something."""
        check, window = self.bench.rules.checks.get(step.id), self.interview.window
        if check is None or window is None or check.setting not in window.targets:
            return ""
        from weldwhy.tui.cards.facts import facts_of

        known = {fact.id: fact.name for fact in facts_of(self.bench.rules, self.bench.case)}
        return known.get(check.setting, "")

    def _side(self, width: int, height: int) -> list[Row]:
        by_job = any(caution.stop for caution in self.interview.standing_cautions)
        if not self.under_way or by_job:
            return []  # a weld that is not to be mended here needs no ranking of what to mend
        ascii_only = self.program.terminal.ascii
        return side_rows(self.interview, width, height, self.size.width >= WIDE, ascii_only)

    def title_texts(self) -> tuple[str, str]:
        going = self.under_way and self.step.kind != "stop"
        return self.shown_card.where, to_go(self.interview) if going else ""

    @property
    def _without_side(self) -> bool:
        return not self.under_way or self.step.kind == "done"

    def first_classes(self) -> set[str]:
        return super().first_classes() | ({"-start"} if self._without_side else set())

    def redraw(self, to_top: bool = False) -> None:
        self.set_class(self._without_side, "-start")
        super().redraw(to_top)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        if action == "undo":
            return True if self.bench.case.entries and self.bench.left_open is None else None
        if action in ("say", "gallery"):
            open_one = self.bench.left_open is None and self.step.kind != "done"
            return True if open_one else None
        if action in ONLY_OPEN and self.step.kind == "done":
            return None
        if action in NEED_A_CASE:
            return True if self.under_way else None
        return True

    def action_answer(self, number: int) -> None:
        """Make the numbered choice; one on a part that was not shown yet is only shown.

        Where warnings fill the first part, nobody is to say what came of a remedy not yet read.
        """
        there = number <= len(self.shown_card.window(self.first))
        if there and not self.main.was_seen(number):
            self.main.set_mark(number)
        else:
            super().action_answer(number)

    # what is told

    def tell(self, *entries: Entry) -> None:
        """Add entries to the case and show the next step."""
        self.settle()
        self.bench.record(*entries)
        self.redraw(to_top=True)

    def settle(self) -> None:
        """Forget the person's own step and the notes: something new begins."""
        self.own_step = None
        self.notes = []
