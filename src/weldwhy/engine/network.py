"""What is in play for a report: causes, the sets of them that may be at work, and checks.

A hypothesis is the set of causes still at work: none, one, two, or (once a remedy has failed)
three of them, or "something not in this list". Everything is flat lists by hypothesis number,
because one pass over three lists is what the engine does most.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property, lru_cache
from itertools import combinations
from math import log2, prod
from operator import add
from typing import NamedTuple

from weldwhy.engine import rows, tuning
from weldwhy.engine.looks import Looks, look_of, shown
from weldwhy.model import Cause, Check, RuleBase

Members = tuple[int, ...]
EMPTY, UNLISTED = 0, 1
"""Hypothesis numbers of "nothing is wrong any more" and "something not in this list"."""


class Network:
    """The causes, sets and checks of one report, with start weights and likelihood rows.

    `looks` holds the symptoms told by a picture only: P(that picture is picked | symptom).
    `first`, `second`, `third` give the cause number at each place of a set; `len(causes)` stands
    for an empty place, `len(causes) + 1` for the unlisted cause.
    """

    def __init__(
        self,
        causes: Sequence[Cause],
        checks: Sequence[Check],
        symptoms: Sequence[str],
        multipliers: Mapping[str, float] | None = None,
        triples: Iterable[str] = (),
        process: str = "",
        looks: Looks | None = None,
    ) -> None:
        self.causes = tuple(causes)
        self.number = {cause.id: i for i, cause in enumerate(self.causes)}
        self.symptoms = tuple(symptoms)
        self.process = process
        self.looks = dict(looks or {})
        self._shown = [shown(cause, self.symptoms, self.looks) for cause in self.causes]
        boost = multipliers or {}
        self._rate = [cause.rate(process) * boost.get(cause.id, 1.0) for cause in self.causes]
        self.sets: tuple[Members, ...] = ((), (-1,), *self._sets_in_play(frozenset(triples)))
        self.set_number = {members: h for h, members in enumerate(self.sets)}
        self.checks = {check.id: check for check in checks if self._tells_something(check)}
        none, unknown = len(self.causes), len(self.causes) + 1
        padded = [
            (unknown, none, none) if s == (-1,) else (*s, none, none, none)[:3] for s in self.sets
        ]
        self.first = [p[0] for p in padded]
        self.second = [p[1] for p in padded]
        self.third = [p[2] for p in padded]
        self._tables: dict[str, tuple[tuple[list[float], ...], list[float]]] = {}
        self._exits: dict[int, list[tuple[int, int]]] = {}

    def _tells_something(self, check: Check) -> bool:
        return any(
            check.id in cause.shows and rows.single(check, cause) != check.baseline
            for cause in self.causes
        )

    def _excluded(self, members: Members) -> bool:
        groups = [self.causes[i].exclusive for i in members if self.causes[i].exclusive]
        return len(groups) != len(set(groups))

    def _sets_in_play(self, triples: frozenset[str]) -> list[Members]:
        numbers = range(len(self.causes))
        wanted = {self.number[c] for c in triples if c in self.number}
        found: list[Members] = [(i,) for i in numbers]
        found += combinations(numbers, 2)  # excluded pairs too, weightless: the grid stays whole
        if wanted:
            threes = [m for m in combinations(numbers, 3) if not wanted.isdisjoint(m)]
            allowed = [m for m in threes if not self._excluded(m)]
            heaviest = sorted(allowed, key=lambda m: (-self._start_weight(m), m))
            found += sorted(heaviest[: tuning.TRIPLES])
        return found

    def _start_weight(self, members: Members) -> float:
        """Base rates times P(all reported symptoms appear and each member causes at least one)."""
        if len(self.symptoms) == 1:
            # one symptom: each member must cause it, so the sum below is a plain product
            return prod(self._rate[m] * self._shown[m][0] for m in members)
        total = 0.0
        for size in range(len(members) + 1):
            for idle in combinations(members, size):
                busy = [m for m in members if m not in idle]
                total += (-1) ** size * self._covered(busy, idle)
        return prod(self._rate[m] for m in members) * max(total, 0.0)

    def _covered(self, busy: Sequence[int], idle: Sequence[int]) -> float:
        """P(the idle members cause no reported symptom, the busy ones between them all)."""
        result = 1.0
        for place in range(len(self.symptoms)):
            quiet = prod(1.0 - self._shown[m][place] for m in idle)
            missed = prod(1.0 - self._shown[m][place] for m in busy)
            result *= quiet * (1.0 - missed)
        return result

    @cached_property
    def start(self) -> list[float]:
        """Weight of each hypothesis before any answer; sums to 1, the empty set has none."""
        weights = [0.0] * len(self.sets)
        mass = {1: tuning.ONE_FAULT, 2: tuning.TWO_FAULTS, 3: tuning.THREE_FAULTS}
        by_size: dict[int, float] = {1: 0.0, 2: 0.0, 3: 0.0}
        for h, members in enumerate(self.sets[2:], 2):
            weights[h] = 0.0 if self._excluded(members) else self._start_weight(members)
            by_size[len(members)] += weights[h]
        if by_size[3]:
            # triples are held only as needed; each keeps the share it has among all of them
            numbers = range(len(self.causes))
            by_size[3] = sum(
                self._start_weight(m) for m in combinations(numbers, 3) if not self._excluded(m)
            )
        held = sum(mass[size] for size, total in by_size.items() if total)
        for h, members in enumerate(self.sets[2:], 2):
            size = len(members)
            if by_size[size]:
                weights[h] *= mass[size] / held / by_size[size] * (1.0 - tuning.UNLISTED)
        weights[UNLISTED] = tuning.UNLISTED
        total = sum(weights)
        return [w / total for w in weights]

    def rows(self, check_id: str) -> tuple[list[float], ...]:
        """For each answer of the check, P(answer | hypothesis) by number, slips included."""
        return self._table(check_id)[0]

    def certainty(self, check_id: str) -> list[float]:
        """Sum of P log2 P over the answers, by hypothesis number: minus the entropy left."""
        return self._table(check_id)[1]

    def _table(self, check_id: str) -> tuple[tuple[list[float], ...], list[float]]:
        known = self._tables.get(check_id)
        if known is None:
            known = self._tables[check_id] = self._make_table(self.checks[check_id])
        return known

    def _make_table(self, check: Check) -> tuple[tuple[list[float], ...], list[float]]:
        """Rows and their certainty, worked out once for each set of linked causes.

        A set's key is a number whose digits are its linked members; sets that share the linked
        members share the row, and looking keys up in bulk is much faster than set by set.
        """
        linked = [i for i, cause in enumerate(self.causes) if check.id in cause.shows]
        span = len(linked) + 1
        digit = [0] * (len(self.causes) + 2)
        for place, i in enumerate(linked, 1):
            digit[i] = place
        high, middle = [d * span * span for d in digit], [d * span for d in digit]
        keys = map(
            add,
            map(add, map(high.__getitem__, self.first), map(middle.__getitem__, self.second)),
            map(digit.__getitem__, self.third),
        )
        keyed = list(keys)
        single = [rows.single(check, self.causes[i]) for i in linked]
        made: dict[int, tuple[float, ...]] = {}
        for key in set(keyed):
            members = [key // (span * span), key // span % span, key % span]
            together = rows.together(check, [single[m - 1] for m in members if m])
            made[key] = rows.with_slips(check, together)
        table = list(map(made.__getitem__, keyed))
        table[UNLISTED] = rows.with_slips(check, rows.unlisted(check))
        sure = {key: _certainty(row) for key, row in made.items()}
        certain = list(map(sure.__getitem__, keyed))
        certain[UNLISTED] = _certainty(table[UNLISTED])
        return tuple(list(column) for column in zip(*table)), certain

    def exits(self, cause: int) -> list[tuple[int, int]]:
        """Pairs (set with the cause, the same set without it), as hypothesis numbers."""
        known = self._exits.get(cause)
        if known is None:
            known = [
                (h, self.set_number[tuple(m for m in members if m != cause)])
                for h, members in enumerate(self.sets)
                if cause in members
            ]
            self._exits[cause] = known
        return known

    def holding(self, cause: int) -> list[int]:
        """Hypothesis numbers of the sets that hold the cause."""
        return [before for before, _ in self.exits(cause)]

    def marginals(self, weights: Sequence[float]) -> list[float]:
        """Sum of the weights of the sets holding each cause, by cause number."""
        return self.grid(weights).marginals()

    def grid(self, weights: Sequence[float]) -> Grid:
        """The weights laid out by who is in the set; see `Grid`."""
        count, held = len(self.causes), list(weights)
        place = 2 + count
        upper = []
        for i in range(count):
            row = held[place : place + count - 1 - i]
            upper.append([0.0] * (i + 1) + row)
            place += len(row)
        both = [list(map(add, row, column)) for row, column in zip(upper, zip(*upper))]
        return Grid(held[2 : 2 + count], both, list(zip(self.sets[place:], held[place:])))


class Grid(NamedTuple):
    """Weights of single faults, of pairs as a symmetric table, and of sets of three.

    Sums over rows of this table are what plans are priced with; they run in bulk, set by set they
    would take three times as long.
    """

    single: list[float]
    pair: list[list[float]]
    triples: list[tuple[Members, float]]

    def marginals(self) -> list[float]:
        """Sum of the weights of the sets holding each cause."""
        sums = list(map(add, self.single, map(sum, self.pair)))
        for members, weight in self.triples:
            for m in members:
                sums[m] += weight
        return sums


def _certainty(row: Sequence[float]) -> float:
    return sum(p * log2(p) for p in row if p)


def _fits(allowed: tuple[str, ...], value: str) -> bool:
    return not allowed or not value or value in allowed


@lru_cache(maxsize=64)
def network_for(
    rules: RuleBase,
    process: str,
    symptoms: tuple[str, ...],
    material: str = "",
    multipliers: tuple[tuple[str, float], ...] = (),
    triples: frozenset[str] = frozenset(),
    resembled: tuple[str, ...] = (),
) -> Network:
    """The network of a report; an empty process or material means that it is not known.

    Of the symptoms, those `resembled` were picked by their picture: look-alikes are in play too.
    """
    looks = {symptom: look_of(rules, symptom) for symptom in resembled if symptom in symptoms}
    met = {s for symptom in symptoms for s in looks.get(symptom, (symptom,))}
    causes = [
        cause
        for cause in rules.causes.values()
        if _fits(cause.processes, process)
        and _fits(cause.materials, material)
        and _in_play(cause, symptoms, looks)
    ]
    checks = [
        check
        for check in rules.checks.values()
        if _fits(check.processes, process)
        and _fits(check.materials, material)
        and (not check.symptoms or any(s in check.symptoms for s in met))
    ]
    return Network(causes, checks, symptoms, dict(multipliers), triples, process, looks)


def _in_play(cause: Cause, symptoms: Sequence[str], looks: Looks) -> bool:
    """Whether the cause gives a symptom reported, or often enough one that looks like it."""
    if any(symptom in cause.symptoms for symptom in symptoms):
        return True
    return max(shown(cause, tuple(looks), looks), default=0.0) >= tuning.LOOKED_AT
