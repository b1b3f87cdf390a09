"""Rungs for a wall chart: which check to put next, and what each of its answers points at.

One fault is taken to be at work. The belief is that of somebody who has found every rung above
normal; the chances are the rule base's own, slips and "don't know" included.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from weldwhy.engine import rows, tuning
from weldwhy.engine.network import network_for
from weldwhy.engine.plan import surest_check
from weldwhy.model import Cause, Check, RuleBase

NAMED, EACH = 4, 0.08
"""Causes that one answer names at most, each at least so likely: more are a list, no answer."""
LATER = 0.75
"""What a cause that an answer names counts, against the one that it names before."""
SURE = 1.0
"""How much it counts that an answer is sure of what it names."""
TELLING = 0.4
"""An answer tells if the causes that it names are, together, at least so likely."""


@dataclass(frozen=True, slots=True)
class Way:
    """What is found, as ids of answers, and the causes to put right for it, likeliest first."""

    answers: tuple[str, ...]
    causes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Rung:
    """A check with the answers that tell; with any other answer one goes on to the next rung."""

    check: str
    ways: tuple[Way, ...]

    @property
    def causes(self) -> tuple[str, ...]:
        """Every cause that it names, once."""
        return tuple(dict.fromkeys(cause for way in self.ways for cause in way.causes))

    def tells(self, told: Collection[str]) -> tuple[str, ...]:
        """The causes whose remedy it tells itself: the likeliest of each way, if not in `told`."""
        return tuple(dict.fromkeys(w.causes[0] for w in self.ways if w.causes[0] not in told))

    def points_at(self, told: Collection[str]) -> tuple[str, ...]:
        """The causes that it names only, whose remedy has to stand in the list."""
        here = self.tells(told)
        return tuple(c for c in self.causes if c not in told and c not in here)


@dataclass(frozen=True, slots=True)
class Sign:
    """A dangerous cause, and the answer to its surest check that shows it; "" if none does."""

    cause: str
    check: str = ""
    answer: str = ""


class Suspects:
    """The causes and checks of one symptom in one process, with one fault at work.

    The metal is not known: it is one of `metals`, which are those that the process usually welds
    (none: any). Causes of other metals are no suspects unless they are dangerous. `share` is how
    likely each cause is before any answer; the shares add up to 1.
    """

    def __init__(self, rules: RuleBase, symptom: str, process: str) -> None:
        self._network = network_for(rules, process, (symptom,))
        self.metals = metals_of(rules, symptom, process)
        lone = self._network.start[2 : 2 + len(self._network.causes)]
        known = [(c, p) for c, p in zip(self._network.causes, lone) if self._is_suspect(c)]
        self.causes: Mapping[str, Cause] = {cause.id: cause for cause, _ in known}
        self.checks: Mapping[str, Check] = self._network.checks
        total = sum(weight for _, weight in known)
        self.share = {cause.id: weight / total for cause, weight in known}
        self._rows: dict[str, dict[str, tuple[float, ...]]] = {}
        self._after: dict[tuple[str, ...], Mapping[str, float]] = {}
        self._below: dict[tuple[str, tuple[str, ...]], Sequence[tuple[Rung, float]]] = {}

    def _is_suspect(self, cause: Cause) -> bool:
        held = self.metals
        return cause.hazard or not (held and cause.materials) or bool({*held} & {*cause.materials})

    def chances(self, check: str) -> Mapping[str, tuple[float, ...]]:
        """P(each answer | only this cause), by cause; they add up to 1 less "don't know"."""
        known = self._rows.get(check)
        if known is None:
            found = self.checks[check]
            usual = self._told(found, found.baseline)
            known = self._rows[check] = {
                cause.id: self._told(found, rows.single(found, cause))
                if check in cause.shows
                else usual
                for cause in self.causes.values()
            }
        return known

    @staticmethod
    def _told(check: Check, row: Sequence[float]) -> tuple[float, ...]:
        return tuple((1.0 - check.dont_know) * p for p in rows.with_slips(check, row))

    def after(self, checks: Sequence[str]) -> Mapping[str, float]:
        """P(the cause is at work, and all these checks are found normal), by cause."""
        if not checks:
            return self.share
        known = self._after.get(tuple(checks))
        if known is None:
            table = self.chances(checks[-1])
            before = self.after(checks[:-1]).items()
            known = {cause: weight * table[cause][0] for cause, weight in before}
            self._after[tuple(checks)] = known
        return known

    def rungs(self, check: str, above: tuple[str, ...]) -> Sequence[tuple[Rung, float]]:
        """The check as a rung below other checks, and the chance that it leads to what is wrong.

        That chance counts less for what an answer names second or third, which is tried later.
        First with all its ways, then without the one that leads there most seldom, and so on: where
        there is little room, half a rung is better than none. A danger that the check is the surest
        for is named with the answer that it mostly gives, however many likelier causes give it too.
        """
        known = self._below.get((check, above))
        if known is None:
            known = self._below[check, above] = self._rungs(check, self.after(above))
        return known

    def _rungs(self, check: str, left: Mapping[str, float]) -> Sequence[tuple[Rung, float]]:
        ways: dict[tuple[str, ...], list[str]] = {}
        led: dict[tuple[str, ...], float] = {}
        table, asked = self.chances(check), self.checks[check]
        usual = self._told(asked, asked.baseline)
        for place, answer in enumerate(asked.answers[1:], 1):
            joint = {cause: weight * table[cause][place] for cause, weight in left.items()}
            blamed = {c: p for c, p in joint.items() if table[c][place] > usual[place]}
            named = _named(blamed, sum(joint.values()))
            causes = tuple(dict.fromkeys([*self._dangers_of(check, place), *named]))
            if causes:
                ways.setdefault(causes, []).append(answer.id)
                found = sum(joint[cause] * LATER**later for later, cause in enumerate(causes))
                sure = sum(joint[cause] for cause in causes) / sum(joint.values())
                led[causes] = led.get(causes, 0.0) + found * sure**SURE
        seldom = sorted(led, key=lambda causes: led[causes])
        return [
            (
                Rung(check, tuple(Way(tuple(a), c) for c, a in ways.items() if c not in out)),
                sum(chance for causes, chance in led.items() if causes not in out),
            )
            for out in (seldom[:count] for count in range(len(seldom)))
        ]

    def price(self, check: str) -> float:
        """Minutes that the check costs, with the price of being asked once more."""
        return self.checks[check].minutes + tuning.PATIENCE["normal"].attention

    @cached_property
    def hazards(self) -> tuple[str, ...]:
        """The dangerous causes that are likely enough to come before everything else."""
        found = (cause.id for cause in self.causes.values() if cause.hazard)
        return tuple(cause for cause in found if self.share[cause] >= tuning.HAZARD)

    @cached_property
    def dangers(self) -> Mapping[str, tuple[str, ...]]:
        """The surest checks of dangerous causes with those causes, the likeliest cause first."""
        found: dict[str, tuple[str, ...]] = {}
        for cause in sorted(self.hazards, key=lambda cause: -self.share[cause]):
            check = surest_check(self._network, self._network.number[cause])
            if check:
                found[check] = (*found.get(check, ()), cause)
        return found

    def sign(self, cause: str) -> Sign:
        """By what a dangerous cause is known: the likeliest telling answer to its surest check."""
        for check, causes in self.dangers.items():
            if cause in causes:
                row = self.chances(check)[cause][1:]
                return Sign(cause, check, self.checks[check].answers[1 + row.index(max(row))].id)
        return Sign(cause)

    def _dangers_of(self, check: str, place: int) -> Iterator[str]:
        """The dangers whose answer, of those to their surest check, is mostly this one."""
        for cause in self.dangers.get(check, ()):
            telling = self.chances(check)[cause][1:]
            if telling.index(max(telling)) == place - 1:
                yield cause

    def leads(self, rungs: Collection[Rung]) -> float:
        """The chance that the answers on the way down name the cause that is at work.

        After a remedy for another cause one goes on with the next rung, after a stop one does not.
        """
        return sum(share * self._found(cause, rungs) for cause, share in self.share.items())

    def _found(self, cause: str, rungs: Collection[Rung]) -> float:
        going, found = 1.0, 0.0
        for rung in rungs:
            row = self.chances(rung.check)[cause]
            right, stopped = 0.0, 0.0
            for chance, way in _ways(rung, self.checks[rung.check], row):
                if cause in way.causes:
                    right += chance
                elif any(self.causes[each].remedies[0].stop for each in way.causes):
                    stopped += chance
            found += going * right
            going *= 1.0 - right - stopped
        return found


def metals_of(rules: RuleBase, symptom: str, process: str) -> tuple[str, ...]:
    """The metals that the process usually welds: those with a window of settings in it.

    Of a symptom that only some metals show, those; none if there is no window.
    """
    windows = [each for each in rules.windows.values() if process in each.processes]
    usual = [m for m in rules.materials if any(m in each.materials for each in windows)]
    shown = rules.symptoms[symptom].materials
    return tuple(m for m in usual if m in shown) or tuple(shown) or tuple(usual)


@lru_cache(maxsize=16)
def suspects_of(rules: RuleBase, symptom: str, process: str) -> Suspects:
    """The suspects of a page; the same page is filled several times, and in several forms."""
    return Suspects(rules, symptom, process)


def _named(blamed: Mapping[str, float], total: float) -> tuple[str, ...]:
    """The causes that an answer names, likeliest first; none if it points at too many."""
    likely = [cause for cause in blamed if blamed[cause] >= EACH * total]
    order = sorted(likely, key=lambda cause: -blamed[cause])[:NAMED]
    return tuple(order) if sum(blamed[c] for c in order) >= TELLING * total > 0.0 else ()


def _ways(rung: Rung, check: Check, row: Sequence[float]) -> Iterator[tuple[float, Way]]:
    chance = {answer.id: p for answer, p in zip(check.answers, row)}
    for way in rung.ways:
        yield sum(chance[answer] for answer in way.answers), way
