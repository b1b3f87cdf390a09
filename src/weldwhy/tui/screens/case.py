"""The case screen: answers, commands and the lists they open, around the step of the case.

What a command opens is imported when the command is given: the first screen is there sooner.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from textual.screen import Screen

from weldwhy.case import DONT_KNOW, SITUATION, SKIP, SOUND, Entry, Passed, Reported, Situated, Tried
from weldwhy.tui.cards.card import Act, Card, Choice
from weldwhy.tui.commands import CASE, bindings_of
from weldwhy.tui.screens.cardscreen import PickScreen
from weldwhy.tui.screens.step import StepScreen


class CaseScreen(StepScreen):
    """Takes the answers to the step shown, and carries out the commands of a case."""

    BINDINGS = bindings_of(CASE)
    place = CASE

    def tell(self, *entries: Entry) -> None:
        """Add entries; once it is told what is wrong, ask for the facts that may be known.

        Not where the job itself says to stop: that stands first.
        """
        before = self.under_way
        super().tell(*entries)
        stops = any(caution.stop for caution in self.interview.standing_cautions)
        if self.under_way and not before and not stops:
            self.action_facts()

    def chosen(self, choice: Choice) -> None:
        if not isinstance(choice.act, str):
            self.tell(*choice.act)
            return
        deeds = {
            "go_on": self._go_on,
            "put_away": self._put_away,
            "leave": self._leave,
            "change_job": self._change_job,
            "other_symptom": self._other_symptom,
            "say": self.action_say,
            "gallery": self.action_gallery,
            "copy": self.action_copy,
            "save": self.action_save,
        }
        deeds[choice.act]()

    def _go_on(self) -> None:
        self.bench.go_on()
        self.redraw(to_top=True)

    def show_new(self, notes: list[str]) -> None:
        """Show the case that another place has begun."""
        self.settle()
        self.notes = notes
        self.redraw(to_top=True)

    def _put_away(self) -> None:
        self.settle()
        self.bench.put_away()
        self.redraw(to_top=True)

    def _leave(self) -> None:
        self.bench.put_away()
        self.program.exit(0)

    def _change_job(self) -> None:
        from weldwhy.tui.cards.facts import facts_of
        from weldwhy.tui.cards.form import options_card, picked

        facts = facts_of(self.bench.rules, self.bench.case)
        card = options_card(next(fact for fact in facts if fact.id == "job"))

        def told(act: Act | None) -> None:
            job = picked(act)
            if job is not None:
                self.tell(Situated("job", job))

        self.app.push_screen(PickScreen(card), told)

    def _other_symptom(self) -> None:
        from weldwhy.tui.cards.questions import same_card

        step = self.step

        def old_one(act: Act | None) -> None:
            if act is None or isinstance(act, str) or not isinstance(act[0], Reported):
                return
            card = same_card(self.bench.rules, self.bench.case.symptoms, step, act[0])
            self.app.push_screen(PickScreen(card), self._after_remedy)

        self._pick_symptom(old_one)

    def _pick_symptom(self, then: Callable[[Act | None], None]) -> None:
        """Let a symptom be picked, of many by its group, and hand it on."""
        from weldwhy.tui.cards.questions import symptoms_card

        def picked(act: Act | None) -> None:
            if isinstance(act, str):
                self.app.push_screen(PickScreen(symptoms_card(self.interview, act)), then)
            else:
                then(act)

        self.app.push_screen(PickScreen(symptoms_card(self.interview)), picked)

    def _after_remedy(self, act: Act | None) -> None:
        if act is None or isinstance(act, str):
            return
        tried, new = act
        if isinstance(tried, Tried) and tried.result == SOUND:
            self.settle()
            self.bench.record(tried)
            self.bench.new_for((new,))
            self.notes = ["The old case is put away as cured; this is a new one on the same work."]
            self.redraw(to_top=True)
        else:
            self.tell(*act)

    def _back_here(self, _nothing: object) -> None:
        self.redraw(to_top=True)

    # commands

    def action_dont_know(self) -> None:
        step = self.step
        if self.bench.left_open is not None or step.kind not in ("ask", "check"):
            return
        if step.id != "symptom" or self.interview.supposed:
            self.tell(self._passed(DONT_KNOW))

    def _passed(self, reason: str) -> Entry:
        """The entry for leaving the step unanswered."""
        step = self.step
        return Situated(step.id, "") if step.id in SITUATION else Passed(step.id, reason)

    def action_skip(self) -> None:
        if not self.under_way:
            return
        if self.step.kind in ("ask", "check"):
            self.tell(self._passed(SKIP))
        elif self.step.kind == "remedy":
            self.tell(Passed(self.step.id, SKIP))

    def action_undo(self) -> None:
        if self.check_action("undo", ()):
            self.settle()
            self.bench.undo()
            self.redraw(to_top=True)

    def action_back(self) -> None:
        if self.own_step is not None:
            self.own_step = None
            self.redraw(to_top=True)

    def action_questions(self) -> None:
        from weldwhy.tui.cards.questions import questions_card

        self._pick(questions_card(self.interview), self._ask)

    def _ask(self, act: Act | None) -> None:
        if isinstance(act, str):
            self.own_step = self.interview.ask(act)
            self.redraw(to_top=True)

    def action_causes(self) -> None:
        from weldwhy.tui.cards.cause import causes_card

        self._pick(causes_card(self.interview), self._open)

    def _open(self, act: Act | None) -> None:
        if isinstance(act, str):
            from weldwhy.tui.cards.cause import cause_card

            card = cause_card(self.interview, act, self.program.terminal.letters)
            self.app.push_screen(PickScreen(card), lambda what: self._from_cause(act, what))

    def _from_cause(self, cause_id: str, act: Act | None) -> None:
        kind, _, what = act.partition(":") if isinstance(act, str) else ("", "", "")
        if kind == "try":
            step = self.interview.remedy(cause_id, int(what))
            name = self.bench.rules.causes[cause_id].name
            self.own_step = replace(step, reason=f"your own choice, for: {name}")
        elif kind == "check":
            self.own_step = self.interview.ask(what)
        else:
            self.action_causes()
            return
        self.redraw(to_top=True)

    def action_facts(self) -> None:
        from weldwhy.tui.screens.facts import FactsScreen

        if self.under_way:
            self.app.push_screen(FactsScreen(self.bench), self._back_here)

    def action_reading(self) -> None:
        from weldwhy.tui.screens.facts import FactsScreen

        if self.under_way and self.reading_of(self.step):
            setting = self.bench.rules.checks[self.step.id].setting
            self.app.push_screen(FactsScreen(self.bench, only=setting), self._read)

    def _read(self, _nothing: object) -> None:
        self.own_step = None
        self.redraw(to_top=True)

    def action_symptom(self) -> None:
        if self.under_way:
            self._pick_symptom(self._tell_picked)

    def _tell_picked(self, act: Act | None) -> None:
        if act is not None and not isinstance(act, str):
            self.tell(*act)

    def action_say(self) -> None:
        from weldwhy.tui.screens.say import SayScreen

        self._other_way_in(SayScreen(self.bench))

    def action_gallery(self) -> None:
        from weldwhy.tui.screens.gallery import GalleryScreen

        self._other_way_in(GalleryScreen(self.bench))

    def _other_way_in(self, screen: Screen[Any]) -> None:
        def told(act: Act | None) -> None:
            if act and not isinstance(act, str):
                self.tell(*act)

        if self.check_action("say", ()):
            self.app.push_screen(screen, told)

    def action_told(self) -> None:
        from weldwhy.tui.cards.told import told_card

        self._pick(told_card(self.interview), self._back_here)

    def action_new_case(self) -> None:
        from weldwhy.tui.cards.start import sure_card

        self._pick(sure_card(), lambda act: self._put_away() if act == "put_away" else None)

    def _pick(self, card: Card, then: Callable[[Act | None], None]) -> None:
        if self.under_way:
            self.app.push_screen(PickScreen(card), then)

    def action_copy(self) -> None:
        if self.under_way:
            from weldwhy.casereport import case_text

            # not wrapped: whatever it is pasted into has a width of its own
            self.app.copy_to_clipboard("\n".join(case_text(self.interview)) + "\n")
            self._say("Copied. If nothing arrives where you paste it, save it with w instead.")

    def action_save(self) -> None:
        from weldwhy.tui.cards.saving import saving_card

        self._pick(saving_card(), self._save_as)

    def _save_as(self, form: Act | None) -> None:
        if not isinstance(form, str):
            return
        from weldwhy.casereport import case_report

        path = self.bench.save_report(case_report(self.interview, form), form)
        if path is not None:
            self._say(f"Saved as {path}")
        else:
            self.redraw()

    def _say(self, note: str) -> None:
        self.notes = [note]
        self.redraw()
