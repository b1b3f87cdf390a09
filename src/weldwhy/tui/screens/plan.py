"""The plan of one process, turned leaf by leaf: steps are ticked, and the test bead decides."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.bench import Bench
from weldwhy.case import Case
from weldwhy.setup import Plan, plan
from weldwhy.setupcase import handed_on
from weldwhy.setupsheet import setup_sheet
from weldwhy.tui.cards.card import Card, Choice, with_notes
from weldwhy.tui.cards.caseview import drawing_of_plan
from weldwhy.tui.cards.checklist import TICK
from weldwhy.tui.cards.plan import BAD, LEAF, PlanShown, leaves
from weldwhy.tui.cards.setup import work_words
from weldwhy.tui.commands import PLAN, bindings_of
from weldwhy.tui.rows import Row
from weldwhy.tui.screens.cardscreen import CardScreen

PUT_AWAY = "The case that was open is put away, not lost. This one knows all that is set up."

USUAL = (80, 22)
"""The size of the page until it is known."""


class PlanScreen(CardScreen[str]):
    """Shows the open plan of the set-up on the bench; returns what the test bead was, or None."""

    BINDINGS = bindings_of(PLAN)
    place = PLAN

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._leaf = self._last = 0
        self._page = USUAL
        self._made: tuple[Plan, Sequence[Row]] | None = None
        self._notes: list[str] = []

    def on_screen_resume(self) -> None:
        """Machine and units may have been changed elsewhere."""
        self._made = None

    @property
    def _plan(self) -> tuple[Plan, Sequence[Row]]:
        """The plan for what is wanted and the machine in use, and its picture."""
        if self._made is None:
            bench, work = self._bench, self._bench.setup.work
            made = plan(bench.rules, work, bench.machine, bench.setup.process, bench.system)
            known = Case(handed_on(bench.rules, work, made))
            letters = self.program.terminal.letters
            self._made = made, drawing_of_plan(bench.rules, made, known, bench.machine, letters)
        return self._made

    def _leaves(self) -> list[Card]:
        bench, (made, drawing) = self._bench, self._plan
        words, ascii_only = work_words(bench.rules, bench.setup.work), self.program.terminal.ascii
        shown = PlanShown(bench.rules, made, words, drawing, bench.setup.done, ascii_only)
        return leaves(shown, *self._page)

    def rows(self, width: int, height: int) -> Sequence[Row]:
        if (width, height) != self._page:
            self._page, self._card = (width, height), None
        return super().rows(width, height)

    def card(self) -> Card:
        self._notes += self._bench.take_notices()
        made = self._leaves()
        self._last = len(made) - 1
        self._leaf = min(self._leaf, self._last)
        return with_notes(made[self._leaf], self._notes)

    def chosen(self, choice: Choice) -> None:
        act = str(choice.act)
        self._notes = []
        if act.startswith(TICK):
            self._bench.setup = self._bench.setup.ticked(act.removeprefix(TICK))
            self.redraw()
        elif act.startswith(LEAF):
            self._leaf = int(act.removeprefix(LEAF))
            self.redraw(to_top=True)
        elif act == BAD:
            self.app.call_later(self._diagnose)
        else:
            self.dismiss(act)

    def _turn_window(self, by: int) -> bool:
        """Past the end of a leaf comes the next one."""
        if not 0 <= self._leaf + by <= self._last:
            return False
        self._leaf += by
        self._notes = []
        self.redraw(to_top=True)
        return True

    async def _diagnose(self) -> None:
        """Begin a case with all that is known of the work, and go to where it is found out."""
        bench = self._bench
        open_before = bool(bench.case.entries) or bench.left_open is not None
        bench.begin_with(*handed_on(bench.rules, bench.setup.work, self._plan[0]))
        await self.program.show_new_case([PUT_AWAY] if open_before else [])

    def _sheet(self) -> list[str]:
        bench = self._bench
        return setup_sheet(bench.rules, self._plan[0], bench.setup.work, bench.machine, "text")

    def action_copy_sheet(self) -> None:
        self.app.copy_to_clipboard("\n".join(self._sheet()) + "\n")
        self._say("Copied. If nothing arrives where you paste it, save it with w instead.")

    def action_save_sheet(self) -> None:
        path = self._bench.save_report(self._sheet())
        self._say(f"Saved as {path}" if path is not None else "")

    def _say(self, note: str) -> None:
        self._notes = [note] if note else []
        self.redraw()
