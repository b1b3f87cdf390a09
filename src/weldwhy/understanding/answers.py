"""Which checks a text answers, as far as they can be put in the case."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property

from weldwhy.case import Answered, Supposed
from weldwhy.model import Check
from weldwhy.understanding import manner
from weldwhy.understanding.expected import Expected, expected
from weldwhy.understanding.heard import SURE, Understood
from weldwhy.understanding.judging import DOUBTFUL, AnswerView, answer_chance, answer_confidence
from weldwhy.understanding.leanings import Leaning, leanings
from weldwhy.understanding.matching import Match
from weldwhy.understanding.symptoms import MUCH
from weldwhy.understanding.telling import Said, Telling, source_of
from weldwhy.understanding.tokens import Token, without
from weldwhy.understanding.work import Work, met_in

RIVAL, TORN = 0.9, 0.85
"""How near a second answer to the same check may come, and what the first is worth then."""
OF_MANY = 0.85
"""How sure the normal answer is where one of several others is denied."""

View = tuple[AnswerView, str, str, tuple[int, ...]]
Held = tuple[float, str, tuple[int, ...]]
"""How sure, the answer, and the numbers of its words."""


class Answers:
    """The answers in a text, given the work and the symptoms told."""

    def __init__(self, telling: Telling, work: Work, symptoms: set[str], of_work: set[int]) -> None:
        self.telling, self.work, self.symptoms, self.of_work = telling, work, symptoms, of_work
        self.rules = telling.rules

    def told(self, tried: dict[str, Held]) -> Iterator[Understood]:
        """One entry for each check answered; `tried` are answers that are results of tries."""
        found: dict[str, list[Held]] = {}
        for view, check_id, answer, source in self.views():
            sure = answer_confidence(answer_chance(view))
            if sure >= DOUBTFUL and source:
                found.setdefault(check_id, []).append((sure, answer, source))
        found |= {check: [held] for check, held in tried.items()}
        for check_id, held in found.items():
            if check_id not in self.telling.case.answers:
                yield from self._best(check_id, held)

    def _best(self, check_id: str, held: list[Held]) -> Iterator[Understood]:
        held.sort(key=lambda each: (-each[0], each[1]))
        sure, answer, source = held[0]
        others = [each[0] for each in held if each[1] != answer]
        if others and others[0] > RIVAL * sure:
            sure *= TORN
        if sure >= SURE:
            yield self.telling.made(source, Answered(check_id, answer), sure)
        elif sure >= DOUBTFUL:
            yield self.telling.made(source, Supposed(check_id, answer), sure)

    def views(self) -> Iterator[View]:
        """What speaks for each answer that anything speaks for: check, answer, its words."""
        leans = leanings(self.rules, self._stated, "answer")
        fits, flips, denied = self._phrases()
        for key in sorted({*leans, *fits, *flips}):
            check_id, _, answer = key.partition(" ")
            check = self.rules.checks.get(check_id)
            if check is None or not self.can_be_asked(check):
                continue
            no = denied.get(key, 0.0)
            yield self._view(check, answer, leans.get(key), fits.get(key), 0.0, no)
            if key in flips:
                # what speaks for the answer that is denied speaks for this one
                share, said = flips[key]
                yield self._view(check, answer, leans.get(said.what), said, share, 0.0)

    @property
    def _stated(self) -> tuple[Token, ...]:
        """The words of the text, those of questions blank: "is the wire rusty?" tells nothing."""
        free, asked = self.work.free, self.telling.asked
        return without(free, {n for n, word in enumerate(free) if word.clause in asked})

    def _is_asked(self, match: Match) -> bool:
        return self.telling.words[match.last].clause in self.telling.asked

    def _phrases(
        self,
    ) -> tuple[dict[str, Said], dict[str, tuple[float, Said]], dict[str, float]]:
        """The best phrase of each answer; those that mean it by denying another; those denied."""
        fits: dict[str, Said] = {}
        flips: dict[str, tuple[float, Said]] = {}
        denied: dict[str, float] = {}
        for said in self.telling.said("answer"):
            check_id, _, answer = said.what.partition(" ")
            check = self.rules.checks.get(check_id)
            if check is None or self.telling.is_guess(said.match) or self._is_asked(said.match):
                continue
            if self.telling.telling(said.match.words) <= self.of_work:
                continue  # "mild steel" names the metal and answers nothing
            if not said.match.denied:
                fits.setdefault(said.what, said)
                continue
            denied[said.what] = max(denied.get(said.what, 0.0), said.fit)
            meant, share = _denied(check, answer)
            key = f"{check_id} {meant}"
            if meant and (key not in flips or said.fit * share > flips[key][0]):
                flips[key] = (said.fit * share, said)
        return fits, flips, denied

    def _view(
        self, check: Check, answer: str, lean: Leaning | None, said: Said | None, flipped: float,
        denied: float,
    ) -> View:  # fmt: skip
        source = source_of(said, lean)
        fit = said.fit if said else 0.0
        likely, lifted = self._expected.of(check.id, answer)
        normal = float(answer == check.answers[0].id)
        view = AnswerView(
            score=lean.score if lean else 0.0,
            covered=min(lean.covered, MUCH) if lean else 0.0,
            beside=lean.beside if lean else 0.0,
            words=float(lean.words if lean else 0),
            fit=fit,
            fit_squared=fit * fit,
            exact=said.exact if said else 0.0,
            whole=self.work.whole(said.match) * fit if said else 0.0,
            flipped=flipped,
            limited=float(bool(check.symptoms)),
            matters=float(not self.symptoms or check.id in self._matters),
            normal=normal,
            odd=lean.odd if lean and not flipped else 0.0,
            denied=denied,
            result=self._goes_with(answer, source),
            likely=likely,
            lifted=lifted,
            likely_normal=likely * normal,
        )
        return view, check.id, answer, source

    def can_be_asked(self, check: Check) -> bool:
        """Whether process, metal and symptoms, as far as told, allow the check."""
        process, metal = self.work.process, self.work.material
        return (
            (not check.processes or not process or process in check.processes)
            and (not check.materials or not metal or metal in check.materials)
            and (
                not check.symptoms
                or not self.symptoms
                or not self.symptoms.isdisjoint(check.symptoms)
            )
        )

    @cached_property
    def _expected(self) -> Expected:
        return expected(self.rules, self.work.process, frozenset(self.symptoms))

    @cached_property
    def _matters(self) -> set[str]:
        """The checks in which some cause of a symptom told shows."""
        return {
            check
            for cause in self.rules.causes.values()
            if not self.symptoms.isdisjoint(cause.symptoms) and met_in(cause, self.work.process)
            for check in cause.shows
        }

    def _goes_with(self, answer: str, source: Sequence[int]) -> float:
        """Whether a result is told in these clauses, and goes with an answer that is a result."""
        if answer not in manner.AS_ANSWER or not source:
            return 0.0
        words = self.telling.words
        first, last = words[source[0]], words[source[-1]]
        inside = [
            word
            for word in words
            if first.clause <= word.clause <= last.clause + 1 and word.sentence == first.sentence
        ]
        results = {
            each.result
            for each in self.telling.results
            if inside[0].start <= each.start < inside[-1].end
        }
        if not results:
            return 0.0
        return 1.0 if manner.AS_ANSWER[answer] in results else -1.0


def _denied(check: Check, answer: str) -> tuple[str, float]:
    """The answer that is meant when one is denied, and how surely; "" if that cannot be told."""
    ids = [each.id for each in check.answers]
    if len(ids) == 2:
        return ids[1 - ids.index(answer)], 1.0
    if answer == ids[0] or check.ordered:
        return "", 0.0
    return ids[0], OF_MANY
