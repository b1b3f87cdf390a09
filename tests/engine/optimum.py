"""What no policy can beat, and what the engine's policy costs: both exact, for tiny networks.

The optimum searches every order of questions and remedies (with cuts that cannot lose the best
one). The engine's policy is walked through every answer and report, so neither figure has chance
in it. Both use the chances that the engine believes in, so the gap is the choice's alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from weldwhy.engine import tuning
from weldwhy.engine.belief import Finding, Fix, Log, after_fix, replay
from weldwhy.engine.choice import Chooser, Step
from weldwhy.engine.network import EMPTY, Network
from weldwhy.engine.tuning import Tuning

Weights = tuple[float, ...]
GONE = 1e-15
"""Branches with less weight than this cannot happen."""


@dataclass(frozen=True, slots=True)
class State:
    """Weights (they need not sum to 1), questions still open, tries in vain by cause number."""

    weights: Weights
    open: frozenset[str]
    tries: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Move:
    """A question or a remedy: its price for the whole weight, and the states it may lead to."""

    name: str
    price: float
    after: tuple[State, ...]


class Optimum:
    """The least expected minutes to the end of a case, over all policies."""

    def __init__(self, network: Network, tuned: Tuning) -> None:
        self.network = network
        self.tuned = tuned
        self._fix = [c.remedies[0].minutes + tuned.test_bead for c in network.causes]
        self._works = [c.remedies[0].works for c in network.causes]
        self._known: dict[tuple[Weights, frozenset[str], tuple[int, ...]], float] = {}

    def start(self) -> State:
        """The state before anything is asked."""
        tries = (0,) * len(self.network.causes)
        return State(tuple(self.network.start), frozenset(self.network.checks), tries)

    def moves(self, state: State) -> Iterator[Move]:
        """Every question and remedy that could be done now."""
        if sum(w > GONE for w in state.weights) > 1:
            for check in sorted(state.open):
                yield self._question(state, check)
        for cause, tries in enumerate(state.tries):
            if tries < tuning.TRIES and any(
                state.weights[h] > GONE for h in self.network.holding(cause)
            ):
                yield self._remedy(state, cause)

    def _question(self, state: State, name: str) -> Move:
        check = self.network.checks[name]
        left, total = state.open - {name}, sum(state.weights)
        after = []
        if check.dont_know:
            unknown = tuple(w * check.dont_know for w in state.weights)
            after.append(State(unknown, left, state.tries))
        for row in self.network.rows(name):
            told = tuple(w * p * (1.0 - check.dont_know) for w, p in zip(state.weights, row))
            if sum(told) > GONE:
                after.append(State(told, left, state.tries))
        return Move(name, total * (check.minutes + self.tuned.attention), tuple(after))

    def _remedy(self, state: State, cause: int) -> Move:
        tries = list(state.tries)
        works = self._works[cause] if not tries[cause] else tuning.SECOND_TRY
        tries[cause] += 1
        after = []
        for report in tuning.REPORTS:
            still_bad = tuple(after_fix(self.network, state.weights, cause, works, report))
            if sum(still_bad) > GONE:
                after.append(State(still_bad, state.open, tuple(tries)))
        name = self.network.causes[cause].id
        return Move(name, sum(state.weights) * self._fix[cause], tuple(after))

    def _least(self, state: State) -> float:
        """Less than any policy can reach: all faults known, each remedy works at once."""
        total = 0.0
        for h, (w, members) in enumerate(zip(state.weights, self.network.sets)):
            if w and h != EMPTY:
                curable = all(m >= 0 and state.tries[m] < tuning.TRIES for m in members)
                cost = sum(self._fix[m] for m in members) if curable else self.tuned.help
                total += w * min(cost, self.tuned.help)
        return total

    def minutes(self, state: State | None = None) -> float:
        """Expected minutes from the state on, times the sum of its weights."""
        state = state or self.start()
        total = sum(state.weights)
        key = (tuple(round(w / total, 12) for w in state.weights), state.open, state.tries)
        known = self._known.get(key)
        if known is None:
            known = self._known[key] = self._search(state) / total
        return known * total

    def _search(self, state: State) -> float:
        best = sum(state.weights) * self.tuned.help
        moves = [(m.price + sum(map(self._least, m.after)), m) for m in self.moves(state)]
        for least, move in sorted(moves, key=lambda found: found[0]):
            for after in move.after:
                if least >= best:
                    break
                least += self.minutes(after) - self._least(after)
            best = min(best, least)
        return best


class Policy:
    """The engine's own policy, walked through every outcome. A second look is not offered."""

    def __init__(self, network: Network, tuned: Tuning) -> None:
        self.network = network
        self.tuned = tuned
        self._known: dict[tuple[object, ...], float] = {}

    def minutes(self, log: Log = (), refused: frozenset[str] = frozenset()) -> float:
        """Expected minutes from here on."""
        belief = replay(self.network, log)
        key = (tuple(round(w, 13) for w in belief.weights), refused, *self._told(log))
        known = self._known.get(key)
        if known is None:
            chooser = Chooser(belief, log, refused, self.tuned, looked_again=self.network.checks)
            known = self._known[key] = self._walk(chooser.step, belief.weights, log, refused)
        return known

    @staticmethod
    def _told(log: Log) -> tuple[object, ...]:
        asked = frozenset(e.check for e in log if isinstance(e, Finding))
        return asked, tuple(sorted(e.cause for e in log if isinstance(e, Fix)))

    def _walk(self, step: Step, weights: Weights, log: Log, refused: frozenset[str]) -> float:
        if step.kind == "help":
            return self.tuned.help
        if step.kind == "fix":
            return self._after_remedy(step.cause, weights, log, refused)
        check = self.network.checks[step.check]
        total = check.minutes + self.tuned.attention
        if check.dont_know:
            total += check.dont_know * self.minutes(log, refused | {check.id})
        for answer, row in zip(check.answers, self.network.rows(check.id)):
            chance = (1.0 - check.dont_know) * sum(w * p for w, p in zip(weights, row))
            if chance > GONE:
                total += chance * self.minutes((*log, Finding(check.id, answer.id)), refused)
        return total

    def _after_remedy(
        self, cause: str, weights: Weights, log: Log, refused: frozenset[str]
    ) -> float:
        number = self.network.number[cause]
        remedy = self.network.causes[number].remedies[0]
        tried = any(isinstance(e, Fix) and e.cause == cause for e in log)
        works = tuning.SECOND_TRY if tried else remedy.works
        total = remedy.minutes + self.tuned.test_bead
        for report in tuning.REPORTS:
            chance = sum(after_fix(self.network, weights, number, works, report))
            if chance > GONE:
                total += chance * self.minutes((*log, Fix(cause, report)), refused)
        return total
