"""The rules on trial: simulated cases of a symptom, and what they say of its causes and checks.

Each case is drawn from the rules' own numbers (a metal, one to three faults or one not listed);
the simulated person answers wrongly or not at all as often as `Manners` says. So it measures
whether the checks can find the causes, not whether the numbers are those of real shops.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations, pairwise
from statistics import mean

from weldwhy.engine import rows, world
from weldwhy.engine.belief import Belief
from weldwhy.engine.choice import Step
from weldwhy.engine.network import Network, network_for
from weldwhy.engine.tuning import PATIENCE
from weldwhy.engine.world import ELSEWHERE, Manners, World
from weldwhy.model import RuleBase

APART = 0.30
"""A check tells two causes apart if it sorts so many more of their beads than chance would."""
SOON = 5
"""Questions and remedies after which it is asked whether a fault is found."""
BINS = (0.0, 0.05, 0.15, 0.30, 0.50, 0.70, 0.85, 1.01)
"""Edges of the stated chances that the calibration is told for."""


@dataclass(frozen=True, slots=True)
class Trial:
    """One simulated case. `ranked` are the likeliest three when the first remedy was advised.

    `stated` holds the chance then given to each cause, and whether it was at work; `soon` are the
    faults that were put right, or stood among the likeliest three, after `SOON` steps; `mended`
    those put right before the case was given up.
    """

    process: str
    faults: frozenset[str]
    listed: bool
    ranked: tuple[str, ...]
    steps: int
    asked: tuple[str, ...]
    stated: tuple[tuple[float, bool], ...]
    soon: frozenset[str]
    mended: frozenset[str]
    helped: bool


@dataclass(frozen=True, slots=True)
class Score:
    """What the trials of one symptom come to; rates are None where no trial tells of them."""

    symptom: str
    trials: int
    first: float | None
    in_three: float | None
    both: float | None
    soon_one: float | None
    soon_two: float | None
    steps: float
    mended: float | None
    helped: float
    curve: tuple[tuple[float, float, int], ...]


@dataclass
class Findings:
    """What the trials of all symptoms leave behind."""

    seen: Counter[str] = field(default_factory=Counter)
    found: Counter[str] = field(default_factory=Counter)
    asked: Counter[str] = field(default_factory=Counter)
    best: set[str] = field(default_factory=set)

    def add(self, trials: Iterable[Trial]) -> None:
        """Count the causes and checks of these trials."""
        for trial in trials:
            self.seen.update(trial.faults)
            self.found.update(trial.faults & (set(trial.ranked) | trial.mended))
            self.asked.update(trial.asked)

    def never_found(self) -> list[str]:
        """Causes that were at work and neither came among the first three nor were mended."""
        return sorted(cause for cause in self.seen if not self.found[cause])

    def idle(self, rules: RuleBase) -> list[str]:
        """Checks that were never asked, and are the best to part no two causes."""
        return sorted(c for c in rules.checks if not self.asked[c] and c not in self.best)


def trials(
    rules: RuleBase, symptom: str, cases: int, seed: int = 0, manners: Manners | None = None
) -> list[Trial]:
    """`cases` simulated cases for each process of the symptom, on a metal drawn for each."""
    manners = manners or Manners()
    done = []
    for process in rules.symptoms[symptom].processes:
        for number in range(cases):
            key = f"{seed} {symptom} {process} {number}"
            network = _network(rules, process, symptom, random.Random(key))
            if network is not None:
                done.append(_trial(network, key, manners))
    return done


def _network(rules: RuleBase, process: str, symptom: str, rng: random.Random) -> Network | None:
    """The network on a metal drawn from those that have a cause for the symptom."""
    metals = list(rules.symptoms[symptom].materials or rules.materials) or [""]
    rng.shuffle(metals)
    found = (network_for(rules, process, (symptom,), metal) for metal in metals)
    return next((network for network in found if network.causes), None)


def _trial(network: Network, seed: str, manners: Manners) -> Trial:
    faults = world.draw(network, seed, not_listed=manners.not_listed)
    case = World(network, PATIENCE["normal"], seed, set(faults), network.causes, manners)
    watched = _Watch(case)
    world.live(case, watched)
    marginals, steps = watched.first or ({}, len(case.asked))
    names = _names(network, faults)
    mended = names - _names(network, case.faults)
    return Trial(
        process=network.process,
        faults=names,
        listed=ELSEWHERE not in faults,
        ranked=_three(marginals),
        steps=steps + 1,
        asked=tuple(case.asked),
        stated=tuple((p, cause in names) for cause, p in marginals.items()),
        soon=mended if watched.soon is None else names & watched.soon,
        mended=mended,
        helped=case.helped,
    )


class _Watch:
    """Notes the belief at the first remedy, and what is found after the first few steps."""

    def __init__(self, case: World) -> None:
        self.case = case
        self.at_work = _names(case.network, case.faults)
        self.taken = 0
        self.first: tuple[dict[str, float], int] | None = None
        self.soon: frozenset[str] | None = None

    def __call__(self, belief: Belief, step: Step) -> None:
        marginals = belief.marginals()
        if step.kind in ("fix", "help") and self.first is None:
            self.first = marginals, len(self.case.asked)
        if self.taken == SOON:
            mended = self.at_work - _names(self.case.network, self.case.faults)
            self.soon = mended | set(_three(marginals))
        self.taken += 1


def _names(network: Network, faults: Iterable[int]) -> frozenset[str]:
    return frozenset(network.causes[f].id for f in faults if f != ELSEWHERE)


def _three(marginals: Mapping[str, float]) -> tuple[str, ...]:
    return tuple(sorted(marginals, key=lambda c: -marginals[c])[:3])


def score(symptom: str, done: Sequence[Trial]) -> Score:
    """The rates of one symptom's trials; ValueError if there are none."""
    if not done:
        raise ValueError("no trial to score")
    ones = [t for t in done if len(t.faults) == 1]
    twos = [t for t in done if len(t.faults) == 2]
    return Score(
        symptom=symptom,
        trials=len(done),
        first=_rate(t.ranked[:1] == tuple(t.faults) for t in ones),
        in_three=_rate(t.faults <= set(t.ranked) for t in ones),
        both=_rate(t.faults <= set(t.ranked) for t in twos),
        soon_one=_rate(t.faults <= t.soon for t in ones),
        soon_two=_rate(t.faults <= t.soon for t in twos),
        steps=mean(t.steps for t in done),
        mended=_rate(t.mended == t.faults for t in done if t.listed),
        helped=mean(t.helped for t in done),
        curve=tuple(curve(done)),
    )


def _rate(hits: Iterable[bool]) -> float | None:
    told = list(hits)
    return mean(told) if told else None


def curve(done: Iterable[Trial]) -> Iterator[tuple[float, float, int]]:
    """Mean chance stated, share that was so, and how many, for each range of chances."""
    told = [each for trial in done for each in trial.stated]
    for low, high in pairwise(BINS):
        held = [(p, hit) for p, hit in told if low <= p < high]
        if held:
            yield mean(p for p, _ in held), mean(hit for _, hit in held), len(held)


@dataclass(frozen=True, slots=True)
class Pair:
    """Two causes of one report, and how far the best check parts them (0: not at all, 1: fully)."""

    one: str
    other: str
    check: str
    apart: float


def pairs(rules: RuleBase, symptom: str, process: str) -> Iterator[Pair]:
    """Every two causes that a report can have on one metal, with the check that parts them best."""
    network = network_for(rules, process, (symptom,))
    for one, other in combinations(network.causes, 2):
        if one.materials and other.materials and not set(one.materials) & set(other.materials):
            continue
        best, check = 0.0, ""
        for name in one.shows.keys() | other.shows.keys():
            if name in network.checks:
                found = network.checks[name]
                a, b = (rows.with_slips(found, rows.single(found, c)) for c in (one, other))
                gap = 0.5 * sum(abs(x - y) for x, y in zip(a, b))
                if (gap, name) > (best, check):
                    best, check = gap, name
        yield Pair(one.id, other.id, check, best)
