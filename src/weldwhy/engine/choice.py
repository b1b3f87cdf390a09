"""Which step comes next: ask or check something, try a remedy, or call for help.

The step chosen is the one with the least expected minutes to a good bead, looking one question
ahead; a danger comes first whatever it costs.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cached_property
from math import log2
from operator import mul
from typing import Literal

from weldwhy.engine import slips, tuning
from weldwhy.engine.belief import (
    Belief,
    Finding,
    Fix,
    Log,
    after_fix,
    discount,
    exponents,
    works,
)
from weldwhy.engine.network import UNLISTED
from weldwhy.engine.plan import Plan, Planner, surest_check
from weldwhy.engine.tuning import Tuning


@dataclass(frozen=True, slots=True)
class Branch:
    """What one answer would do: its chance, and the plan that follows."""

    answer: str
    chance: float
    weights: tuple[float, ...]
    minutes: float


@dataclass(frozen=True, slots=True)
class Value:
    """What asking a check gains: net minutes saved, and the branches it opens."""

    check: str
    gain: float
    asked: float
    branches: tuple[Branch, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """The next step. `check` for ask, check and again; `cause` for fix, and for help with a
    danger that only others may put right."""

    kind: Literal["hazard", "ask", "check", "again", "fix", "help"]
    minutes: float
    check: str = ""
    cause: str = ""
    value: Value | None = None


class Chooser:
    """The choice for one belief.

    `refused` are checks that were skipped or not known, `declined` causes whose remedy cannot be
    done now, `settled` checks that a measured setting answers.
    """

    def __init__(
        self,
        belief: Belief,
        log: Log,
        refused: Collection[str] = (),
        tuned: Tuning = tuning.PATIENCE["normal"],
        looked_again: Collection[str] = (),
        settled: Collection[str] = (),
        declined: Collection[str] = (),
    ) -> None:
        self.belief = belief
        self.network = belief.network
        self.log = log
        self.tuned = tuned
        self._looked_again = frozenset(looked_again)
        self._declined = frozenset(declined)
        answered = {e.check for e in log if isinstance(e, Finding) and e.trust == 1.0}
        closed = answered | set(refused) | set(settled)
        self.open_checks = tuple(c for c in sorted(self.network.checks) if c not in closed)
        self.planner = self._planner(set(self.open_checks), belief.tries)

    def _planner(self, open_checks: Collection[str], tries: Mapping[str, int]) -> Planner:
        return Planner(self.network, open_checks, tries, self.tuned, self._declined)

    @cached_property
    def plan(self) -> Plan:
        """The plan with no further general question."""
        return self.planner.plan(self.belief.weights)

    @cached_property
    def _groups(self) -> dict[str, int]:
        counts: dict[str, int] = {}
        for check in exponents(self.network, self.log):
            look = self.network.checks[check].same_look
            if look:
                counts[look] = counts.get(look, 0) + 1
        return counts

    def bits(self, check: str) -> float:
        """Mutual information in bits between the answer and what is wrong."""
        weights = self.belief.weights
        total: float = sum(map(mul, weights, self.network.certainty(check)))
        for row in self.network.rows(check):
            chance = sum(map(mul, weights, row))
            if chance > 0.0:
                total -= chance * log2(chance)
        return total

    def value(self, check: str) -> Value:
        """Net expected minutes saved by asking the check now and then following the plan."""
        found = self.network.checks[check]
        weights = self.belief.weights
        branches = []
        after = 0.0
        for answer, row in zip(found.answers, self.network.rows(check)):
            joint = list(map(mul, weights, row))
            chance = sum(joint)
            if chance <= 0.0:
                continue  # an answer that cannot come opens no branch
            cost = self.planner.cost(joint)
            after += cost
            branches.append(Branch(answer.id, chance, tuple(joint), cost / chance))
        gross = max((1.0 - found.dont_know) * (self.plan.minutes - after), 0.0)
        gross *= discount(self._groups.get(found.same_look, 0) + 1) if found.same_look else 1.0
        price = found.minutes + self.tuned.attention
        asked = price + self.plan.minutes - gross
        return Value(check, gross - price, asked, tuple(branches))

    def _worth_valuing(self) -> list[str]:
        ranked = sorted(
            self.open_checks, key=lambda c: (-self.bits(c) / self._price(c), self._price(c), c)
        )
        chosen = ranked[: self.tuned.valued]
        likely = sorted(self.belief.marginals().items(), key=lambda item: (-item[1], item[0]))[:3]
        for cause, _ in likely:
            direct = self.planner.direct_check(self.network.number[cause])
            if direct and direct not in chosen:
                chosen.append(direct)
        return chosen

    def _price(self, check: str) -> float:
        # one second at least, so that bits per minute stays finite for a free question
        return max(self.network.checks[check].minutes + self.tuned.attention, 1.0 / 60.0)

    @cached_property
    def values(self) -> tuple[Value, ...]:
        """The checks worth pricing, most minutes saved first; ties to the cheaper, then by id."""
        found = [self.value(check) for check in self._worth_valuing()]
        return tuple(sorted(found, key=lambda v: (-v.gain, self._price(v.check), v.check)))

    @cached_property
    def hopeless(self) -> float:
        """P(something is at work that no remedy here can cure)."""
        network = self.network
        bad = {i for i in range(len(network.causes)) if not self.planner.curable(i)}
        return sum(
            w
            for h, (w, members) in enumerate(zip(self.belief.weights, network.sets))
            if h == UNLISTED or not bad.isdisjoint(members)
        )

    @cached_property
    def expected(self) -> float:
        """Expected minutes to a good bead with questions still to come.

        It lies between an all-knowing welder's minutes and the plan's with no question after the
        next. Half way was within a fifth of the mean of simulated cases on the shipped rules;
        each end alone was off by half or more.
        """
        gain = self.values[0].gain if self.values else 0.0
        return 0.5 * (
            self.planner.all_knowing(self.belief.weights) + self.plan.minutes - max(gain, 0.0)
        )

    @cached_property
    def step(self) -> Step:
        """The next step by the rules of the module's first line."""
        if self._hazard_step:
            return self._hazard_step
        if len(self._since_last_fix()) >= self.tuned.in_a_row:
            return self._planned(self._planner((), self.belief.tries))
        return self._look_again() or self._question() or self._planned(self.planner)

    @cached_property
    def _hazard_step(self) -> Step | None:
        """A danger: its surest check first; once likely, its remedy at once, or the call for it."""
        for cause in self.network.causes:
            chance = self.belief.probability(cause.id) if cause.hazard else 0.0
            if chance < tuning.HAZARD:
                continue
            number = self.network.number[cause.id]
            if chance > tuning.LIKELY_DANGER and self.planner.offered(number):
                return self._fix(number)
            if chance > tuning.LIKELY_DANGER and cause.remedies[0].stop:
                return Step("help", self.tuned.help, cause=cause.id)
            check = surest_check(self.network, number)
            if check in self.open_checks:
                return Step("hazard", self.network.checks[check].minutes, check, cause.id)
        return None

    def _question(self) -> Step | None:
        if not self.values or self.values[0].gain <= 0.0:
            return None
        best = self.values[0]
        if self.plan.items and not self.plan.items[0].check:
            cause = self.plan.items[0].cause
            if self.fix_first(cause, best) < best.asked:
                return self._fix(cause)
        return Step("ask", self.network.checks[best.check].minutes, best.check, value=best)

    def _planned(self, planner: Planner) -> Step:
        """The plan's first item; with a planner that knows no checks that is a fix."""
        plan = planner.plan(self.belief.weights)
        if not plan.items or self.hopeless > tuning.HOPELESS:
            return Step("help", self.tuned.help)
        item = plan.items[0]
        if item.check:
            minutes = self.network.checks[item.check].minutes
            return Step("check", minutes, item.check, self.network.causes[item.cause].id)
        return self._fix(item.cause)

    def _fix(self, cause: int) -> Step:
        found = self.network.causes[cause]
        minutes = found.remedy(self.belief.tries.get(found.id, 0)).minutes
        return Step("fix", minutes, cause=found.id)

    def fix_first(self, cause: int, question: Value) -> float:
        """Expected minutes of fixing the cause and asking only if the bead stays bad."""
        found = self.network.causes[cause]
        tries = self.belief.tries.get(found.id, 0)
        chance = works(self.network, found.id, tries)
        check = self.network.checks[question.check]
        total = found.remedy(tries).minutes + self.tuned.test_bead
        price = check.minutes + self.tuned.attention
        left_open = set(self.open_checks) - {check.id}
        later = self._planner(left_open, {**self.belief.tries, found.id: tries + 1})
        for report in tuning.REPORTS:
            weights = after_fix(self.network, self.belief.weights, cause, chance, report)
            left = sum(weights)
            if left <= 0.0:
                continue
            unasked = later.cost(weights)
            asked = left * price + check.dont_know * unasked
            for row in self.network.rows(check.id):
                asked += (1.0 - check.dont_know) * later.cost(list(map(mul, weights, row)))
            total += min(asked, unasked)
        return total

    def _look_again(self) -> Step | None:
        best: tuple[float, Finding] | None = None
        for finding in self._since_last_fix():
            if (
                finding.check in self._looked_again
                or slips.chance(self.belief, finding) < slips.LOOK_AGAIN
            ):
                continue
            gain = slips.gain(self.belief, self.planner, self.plan.minutes, finding)
            if gain > slips.WORTH_LOOKING and (best is None or gain > best[0]):
                best = (gain, finding)
        if best is None:
            return None
        rival = self.values[0].gain if self.values else 0.0
        if rival > best[0]:
            return None
        check = best[1].check
        return Step("again", self.network.checks[check].minutes, check)

    def _since_last_fix(self) -> list[Finding]:
        recent: list[Finding] = []
        for entry in self.log:
            if isinstance(entry, Fix):
                recent.clear()
            elif (
                isinstance(entry, Finding)
                and entry.trust == 1.0
                and entry.check in self.network.checks
            ):
                recent.append(entry)
        return recent
