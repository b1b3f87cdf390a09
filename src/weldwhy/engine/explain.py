"""Why a cause ranks where it does, in decibans, and what would change the guide's mind.

A deciban is ten times the decimal logarithm of an odds ratio (Good, Weight of evidence; from
memory): 3 double the odds, 10 make them tenfold, below 1 is not worth showing.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import log10

from weldwhy.engine.belief import Log, LogEntry, in_effect, replay
from weldwhy.engine.choice import Value
from weldwhy.engine.network import Network

SHOWN = 1.0
"""Decibans below this are not shown."""
LIKELY_ENOUGH = 0.05
"""Answers less likely than this are left out of "what would change my mind"."""


@dataclass(frozen=True, slots=True)
class Weight:
    """Decibans that one entry of the log gave for or against a cause."""

    entry: LogEntry
    decibans: float


@dataclass(frozen=True, slots=True)
class Turn:
    """An answer that would put another cause first."""

    check: str
    answer: str
    chance: float
    cause: str


def odds_decibans(probability: float) -> float:
    """10 log10 of the odds, held within +-150 so that a certainty stays a number."""
    p = min(max(probability, 1e-15), 1.0 - 1e-15)
    return 10.0 * log10(p / (1.0 - p))


def weights_of_evidence(network: Network, log: Log, cause: str) -> tuple[Weight, ...]:
    """Weight of each entry for the cause at its turn; with the start they add up to the end.

    An entry that a later one replaces is left out: it no longer says anything.
    """
    standing = {id(entry) for stretch in in_effect(network, log) for entry in stretch}
    log = tuple(entry for entry in log if id(entry) in standing)
    before = odds_decibans(replay(network, ()).probability(cause))
    result = []
    for end in range(1, len(log) + 1):
        after = odds_decibans(replay(network, log[:end]).probability(cause))
        result.append(Weight(log[end - 1], after - before))
        before = after
    return tuple(result)


def without(network: Network, log: Log, dropped: int, cause: str) -> float:
    """P(cause) if entry number `dropped` of the log had not been given: the order-free figure."""
    return replay(network, log[:dropped] + log[dropped + 1 :]).probability(cause)


def turns(network: Network, leader: str, values: tuple[Value, ...]) -> tuple[Turn, ...]:
    """Answers to the priced checks that would put another cause first, likeliest first."""
    found = []
    for value in values:
        for branch in value.branches:
            if branch.chance < LIKELY_ENOUGH:
                continue
            sums = network.marginals(branch.weights)[: len(network.causes)]
            best = max(range(len(sums)), key=lambda i: (sums[i], -i))
            if network.causes[best].id != leader:
                found.append(
                    Turn(value.check, branch.answer, branch.chance, network.causes[best].id)
                )
    return tuple(sorted(found, key=lambda t: (-t.chance, t.check, t.answer)))
