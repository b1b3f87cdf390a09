"""What is believed after a log of findings and fixes: a pure function of the log, replayed whole.

Replaying keeps three promises without any care elsewhere: the order of answers between two
fixes cannot matter even in the last bit, undo is "drop the last entry", and nothing drifts.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import log10

from weldwhy.engine import tuning
from weldwhy.engine.network import EMPTY, UNLISTED, Network
from weldwhy.model import Check


@dataclass(frozen=True, slots=True)
class Finding:
    """A check was answered. `trust` is P(the answer was meant so): else it tells nothing."""

    check: str
    answer: str
    trust: float = 1.0

    @property
    def about(self) -> str:
        """What it tells of; a later entry about the same thing replaces it."""
        return f"check {self.check}"


@dataclass(frozen=True, slots=True)
class Reading:
    """A setting was measured: `factors` multiply the odds of the causes that are its faults."""

    setting: str
    factors: tuple[tuple[str, float], ...]

    @property
    def about(self) -> str:
        """What it tells of; a later entry about the same thing replaces it."""
        return f"setting {self.setting}"


@dataclass(frozen=True, slots=True)
class Fix:
    """A remedy for a cause was tried; `report` is sound, better, no change or worse."""

    cause: str
    report: str


Told = Finding | Reading
LogEntry = Finding | Reading | Fix
Log = tuple[LogEntry, ...]


@dataclass(frozen=True, slots=True)
class Belief:
    """Weights by hypothesis number (they sum to 1) and how often each cause was tried in vain.

    `surprise` is log10 of the product of the answers' own chances over their joint chance:
    above 1 the answers disagree with each other.
    """

    network: Network
    weights: tuple[float, ...]
    tries: Mapping[str, int]
    surprise: float = 0.0

    def probability(self, cause: str) -> float:
        """P(the cause is still at work)."""
        number = self.network.number[cause]
        return sum(self.weights[h] for h in self.network.holding(number))

    def marginals(self) -> dict[str, float]:
        """P(still at work) by cause id, in file order."""
        sums = self.network.marginals(self.weights)
        return dict(zip(self.network.number, sums))

    @property
    def unlisted(self) -> float:
        """P(something not in this list)."""
        return self.weights[UNLISTED]

    @property
    def sound(self) -> float:
        """P(nothing is wrong any more)."""
        return self.weights[EMPTY]

    def check_invariants(self) -> None:
        """Raise AssertionError unless the weights are a distribution over the network's sets."""
        assert len(self.weights) == len(self.network.sets)
        assert all(w >= 0.0 for w in self.weights)
        assert abs(sum(self.weights) - 1.0) <= 1e-12


def normalised(weights: Sequence[float]) -> list[float]:
    """The weights divided by their sum; ValueError if nothing is left."""
    total = sum(weights)
    if not total > 0.0:
        raise ValueError("the log leaves no hypothesis possible")
    return [w / total for w in weights]


def in_effect(network: Network, log: Iterable[LogEntry]) -> list[list[LogEntry]]:
    """The log cut at its fixes, told entries in order of what they tell of, replaced ones left out.

    A second answer to a check (or reading of a setting) replaces the first, unless a fix in
    between may have changed what is there to be seen; then both stand, each for its time.
    """
    stretches: list[dict[str, Told]] = [{}]
    fixes: list[Fix] = []
    for entry in log:
        if isinstance(entry, Fix):
            fixes.append(entry)
            stretches.append({})
        elif isinstance(entry, Reading) or entry.check in network.checks:
            _drop_replaced(network, stretches, fixes, entry)
            stretches[-1][entry.about] = entry
    result: list[list[LogEntry]] = []
    for number, found in enumerate(stretches):
        result.append([found[about] for about in sorted(found)])
        if number < len(fixes):
            result.append([fixes[number]])
    return result


def _drop_replaced(
    network: Network, stretches: list[dict[str, Told]], fixes: list[Fix], entry: Told
) -> None:
    for back in range(len(stretches) - 1, -1, -1):
        if back < len(stretches) - 1 and _may_change(network, fixes[back].cause, entry):
            return
        stretches[back].pop(entry.about, None)


def _may_change(network: Network, cause: str, entry: Told) -> bool:
    """Whether putting the cause right can change what the entry tells of."""
    if isinstance(entry, Reading):
        return cause in dict(entry.factors)
    number = network.number.get(cause)
    return number is not None and entry.check in network.causes[number].shows


def discount(answers: int) -> float:
    """Exponent of each of `answers` findings that look at the same thing: (1 + 1/2 + ...)/n."""
    return sum(1.0 / k for k in range(1, answers + 1)) / answers


def exponents(network: Network, log: Iterable[LogEntry]) -> dict[str, float]:
    """The discount of each check answered in the log, by its `same_look` group."""
    groups: dict[str, set[str]] = {}
    for stretch in in_effect(network, log):
        for entry in stretch:
            if isinstance(entry, Finding):
                groups.setdefault(_group(network.checks[entry.check]), set()).add(entry.check)
    return {check: discount(len(group)) for group in groups.values() for check in group}


def _group(check: Check) -> str:
    return f"look {check.same_look}" if check.same_look else f"check {check.id}"


def likelihood(network: Network, check: str, answer: str, exponent: float = 1.0) -> list[float]:
    """P(answer | hypothesis) by hypothesis number, raised to `exponent`."""
    ids = [a.id for a in network.checks[check].answers]
    row = network.rows(check)[ids.index(answer)]
    return row if exponent == 1.0 else [p**exponent for p in row]


def _trusted(row: list[float], trust: float, answers: int) -> list[float]:
    """The row mixed with that of words that were not about this check: any answer as likely."""
    return row if trust == 1.0 else [trust * p + (1.0 - trust) / answers for p in row]


def after_fix(
    network: Network, weights: Sequence[float], cause: int, works: float, report: str
) -> list[float]:
    """Unnormalised weights after a remedy for `cause` that works with chance `works`.

    Sets with the cause lose it with that chance; then the report on the test bead is weighed.
    """
    if report == "sound":
        result = [0.0] * len(weights)
        gone = {before: works for before, after in network.exits(cause) if after == EMPTY}
        result[EMPTY] = weights[EMPTY] + sum(weights[h] * works for h in gone)
        # a bead can come out sound although the believed fault was another: the bead is right
        result[EMPTY] = result[EMPTY] or 1.0
        return result
    unchanged, changed = tuning.REMOVED_NONE[report], tuning.REMOVED_ONE[report]
    result = [w * unchanged for w in weights]
    for before, after in network.exits(cause):
        moved = weights[before] * works
        result[before] -= moved * unchanged
        if after != EMPTY:
            result[after] += moved * changed
    result[EMPTY] = 0.0
    return [max(w, 0.0) for w in result]


def works(network: Network, cause: str, tries: int) -> float:
    """P(the next remedy for the cause works) after `tries` tries in vain."""
    remedies = network.causes[network.number[cause]].remedies
    if tries < len(remedies):
        return remedies[tries].works
    return tuning.SECOND_TRY


def replay(network: Network, log: Log) -> Belief:
    """The belief after the log.

    Raises ValueError for an answer id that the check does not have.
    """
    weights = list(network.start)
    raised = exponents(network, log)
    tries: dict[str, int] = {}
    surprise = 0.0
    for entry in _flat(in_effect(network, log)):
        if isinstance(entry, Finding):
            row = likelihood(network, entry.check, entry.answer, raised[entry.check])
            row = _trusted(row, entry.trust, len(network.checks[entry.check].answers))
            lone = sum(w * p for w, p in zip(network.start, row))
            told = [w * p for w, p in zip(weights, row)]
            surprise += log10(lone) - log10(sum(told))
            weights = normalised(told)
        elif isinstance(entry, Reading):
            weights = normalised(_read(network, weights, entry))
        else:
            weights = _fixed(network, weights, entry, tries)
    return Belief(network, tuple(weights), tries, surprise)


def _read(network: Network, weights: list[float], reading: Reading) -> list[float]:
    read = list(weights)
    for cause, factor in reading.factors:
        for h in network.holding(network.number[cause]) if cause in network.number else ():
            read[h] *= factor
    return read


def _flat(stretches: Iterable[Iterable[LogEntry]]) -> Iterator[LogEntry]:
    for stretch in stretches:
        yield from stretch


def _fixed(network: Network, weights: list[float], fix: Fix, tries: dict[str, int]) -> list[float]:
    if fix.cause not in network.number:
        return weights
    chance = works(network, fix.cause, tries.get(fix.cause, 0))
    if fix.report != "sound":
        tries[fix.cause] = tries.get(fix.cause, 0) + 1
    return normalised(after_fix(network, weights, network.number[fix.cause], chance, fix.report))
