"""The interview as numbered lines: any terminal, a pipe, a screen reader. No cursor control.

One line in, a few lines out. The case is kept after every entry, so that a dropped line or a
killed process loses nothing; the end of the input is the same as `q`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import TextIO

from weldwhy.bench import Bench
from weldwhy.case import (
    DONT_KNOW,
    RESULTS,
    SITUATION,
    SKIP,
    Entry,
    Passed,
    Situated,
    Tried,
    entry_for,
)
from weldwhy.casereport import case_text
from weldwhy.console import Console, Leave
from weldwhy.entries import EntryError, in_own_words, volunteered
from weldwhy.interview import Interview
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.report import (
    cause_lines,
    ended,
    not_understood_lines,
    ranking_lines,
    ranking_title,
    remedy_settings,
    step_lines,
    understood_lines,
)
from weldwhy.steps import Step
from weldwhy.store import Store
from weldwhy.surroundings import ExitCode

HELP = (
    "A number answers. 0: don't know. s: skip. u: undo the last entry.",
    "c N: open cause N. t N: you tried what helps against cause N. r: the whole report.",
    "o: other questions; o N: take question N of them.",
    "A number you can read off, at any time: volts 18 V, or gas flow 25 cfh.",
    "a: the question again. q: stop, the case is kept. ?: this help.",
    'Or tell it in your own words: say holes in the bead, mig, it is windy (or begin with ").',
)
FEW = 9
"""Most other questions listed at once: more would be read out for minutes."""


def run(rules: RuleBase, store: Store, source: TextIO | None, sink: TextIO | None) -> ExitCode:
    """Hold one interview over lines of text."""
    console = Console(source, sink)
    bench = Bench(rules, store, Interview, _now)
    try:
        Talk(bench, console).hold()
    except Leave:
        console.say("The case is kept." if store.resume() else "No case is kept.")
    return ExitCode.FINE


def _now() -> str:
    return datetime.now().astimezone().isoformat(timespec="seconds")


class Talk:
    """One interview in lines: the case on the bench, and what was asked last."""

    def __init__(self, bench: Bench, console: Console) -> None:
        self.bench = bench
        self.say, self.hear, self.choose = console.say, console.hear, console.choose
        self.step = bench.interview.step
        self.to_ask = True
        """Whether the step must be put (again): not after a remark that leaves it in sight."""
        self.ranking: list[str] = []
        """The ranking as last told; an unchanged one is not told twice."""

    @property
    def interview(self) -> Interview:
        """What the guide thinks now."""
        return self.bench.interview

    # the conversation

    def hold(self) -> None:
        """Ask until the bead is sound or the person stops."""
        self.say("weldwhy: find out why a weld is bad and how to put it right.", *HELP)
        self._resume()
        while not self.bench.case.sound:
            if self.to_ask:
                self._show_step()
            self._obey(self.hear())
        self.say("", *case_text(self.interview))
        self.bench.put_away()
        self.say(*self.bench.take_notices())

    def _resume(self) -> None:
        self.say(*self.bench.take_notices())
        left = self.bench.left_open
        if left is None:
            return
        told = Interview(self.bench.rules, left).told
        self.say("", "An unfinished case is kept:", *(f"  - {line}" for line in told))
        afresh = "Start a new one; the old one goes to the finished cases"
        if self.choose(["Go on with it", afresh]) == 1:
            self.bench.go_on()
        else:
            self.bench.put_away()
        self._after_change()

    # what is shown

    def _show_ranking(self) -> None:
        if not self.interview.ranked or self.bench.case.sound:
            return
        lines = ranking_lines(self.interview)
        if lines != self.ranking:
            self.say("", f"{ranking_title(self.interview)}:", *(f"  {line}" for line in lines))
        self.ranking = lines

    def _show_step(self) -> None:
        self.to_ask = False
        lines = ["", *step_lines(self.step)]
        if self.step.kind == "remedy":
            lines += remedy_settings(self.interview, self.step)
        if self._tries:
            lines += [self.interview.lens] if self.interview.lens else []
            lines.append("Then run a test bead. It is:")
        choices = self._choices()
        lines += [f"  {number}. {text}" for number, text in enumerate(choices, 1)]
        if not choices:
            lines.append("q: stop here, the case is kept. r: the whole report. u: undo.")
        self.say(*lines)

    @property
    def _tries(self) -> bool:
        """Whether the step is something to do, whose result is a test bead."""
        return bool(self.step.cause) and self.step.kind in ("remedy", "stop")

    def _choices(self) -> list[str]:
        if self._tries:
            return list(RESULTS)
        return [answer.text for answer in self.step.answers]

    # what is typed

    def _obey(self, line: str) -> None:
        word, _, rest = line.partition(" ")
        if line.startswith('"') or (word.lower() == "say" and rest):
            self._tell(line.strip('"') if line.startswith('"') else rest)
        elif line.isascii() and line.isdigit():
            self._number(int(line[:4]))
        elif word.lower() in self._commands and (not rest or rest.isdigit()):
            self._commands[word.lower()](int(rest[:4]) if rest else 0)
        elif line:
            self._volunteer(line)

    @property
    def _commands(self) -> Mapping[str, Callable[[int], None]]:
        return {
            "s": lambda _: self._pass(SKIP),
            "u": lambda _: self._undo(),
            "c": self._open,
            "t": self._tried,
            "o": self._others,
            "a": lambda _: self._put(self.step),
            "r": lambda _: self.say("", *case_text(self.interview)),
            "?": lambda _: self.say(*HELP),
            "q": lambda _: self._leave(),
        }

    def _number(self, number: int) -> None:
        if number == 0:
            self._pass(DONT_KNOW)
        elif number > len(self._choices()):
            self.say(f"There is no answer {number} here.")
        elif self._tries:
            self._report_bead(RESULTS[number - 1])
        else:
            self._add(entry_for(self.step.id, self.step.answers[number - 1].id))

    def _report_bead(self, result: str) -> None:
        if result == "worse":
            self.say("Put it back as it was before you go on.")
        self._add(Tried(self.step.cause, self.step.id, result))

    def _pass(self, reason: str) -> None:
        if self.step.id == "symptom" and not self.interview.supposed:
            self.say("Pick the one that comes nearest; nothing can be found without it.")
        elif self.step.id in SITUATION:
            self._add(Situated(self.step.id, ""))
        elif self.step.answers or (self.step.kind == "remedy" and reason == SKIP):
            self._add(Passed(self.step.id, reason))
        else:
            self.say("This is what is best done now. Something else instead:")
            self._others(0)

    def _undo(self) -> None:
        if not self.bench.case.entries:
            self.say("There is nothing to undo.")
            return
        self.say(f"Undone: {self.interview.told[-1]}")
        self.bench.undo()
        self._after_change()

    def _cause(self, number: int) -> str | None:
        ranked = self.interview.ranked
        if 1 <= number <= len(ranked):
            return ranked[number - 1].cause.id
        known = f"they run from 1 to {len(ranked)}" if ranked else "none is known yet"
        self.say(f"There is no cause {number}; {known}." if number else f"Which cause? {known}.")
        return None

    def _open(self, number: int) -> None:
        cause = self._cause(number)
        if cause is not None:
            self.say(*cause_lines(self.interview, cause))

    def _tried(self, number: int) -> None:
        cause = self._cause(number)
        if cause is not None:
            before = sum(each.cause == cause for each in self.bench.case.tried)
            self._put(self.interview.remedy(cause, before))

    def _others(self, number: int) -> None:
        others = self.interview.open_checks[:FEW]
        if 1 <= number <= len(others):
            self._put(self.interview.ask(others[number - 1].id))
        elif number or not others:
            self.say(f"There is no other question {number}." if number else "No other questions.")
        else:
            self.say(*(f"  o {place}. {check.ask}" for place, check in enumerate(others, 1)))

    def _leave(self) -> None:
        raise Leave

    def _tell(self, words: str) -> None:
        """Take what is told in the person's own words, and say what was made of it."""
        from weldwhy.understanding.hearing import understand  # most answers are numbers

        rules = self.bench.rules
        heard = understand(rules, words, self.bench.case, self.bench.system)
        self.say(*understood_lines(rules, heard.understood))
        self.say(*not_understood_lines(heard.not_understood))
        told = in_own_words(words, heard)
        if told:
            self.bench.record(*told)
            if not heard.understood and not heard.not_understood:
                self.say("Nothing of this was understood; your words are kept for the report.")
        if heard.entries:
            self._after_change()

    def _volunteer(self, line: str) -> None:
        try:
            entry = volunteered(self.bench.rules, line, self.bench.system)
        except EntryError as fault:
            self.say(ended(capital(str(fault))))
        else:
            self._add(entry)

    def _add(self, entry: Entry) -> None:
        self.bench.record(entry)
        self._after_change()

    def _after_change(self) -> None:
        self.say(*self.bench.take_notices())
        self._put(self.interview.step)
        self._show_ranking()

    def _put(self, step: Step) -> None:
        self.step = step
        self.to_ask = True
