"""How likely the rules hold each answer, for process and symptoms told, before anything is read."""

from __future__ import annotations

from functools import lru_cache
from math import log, prod

from weldwhy.engine import rows
from weldwhy.model import Cause, RuleBase

LEAST = 1e-4
"""Chances below this count as this."""
UNNAMED = 0.02
"""P(a symptom | a cause that does not name it): it may be there beside another."""


class Expected:
    """The chances of answers; those of a check are worked out when they are first asked for."""

    def __init__(self, rules: RuleBase, process: str, symptoms: frozenset[str]) -> None:
        self._rules = rules
        self._weights = _weights(rules, process, symptoms) if symptoms else {}
        self._known: dict[str, dict[str, tuple[float, float]]] = {}

    def of(self, check_id: str, answer: str) -> tuple[float, float]:
        """log P(answer), and log of how many times its usual chance that is."""
        if check_id not in self._known:
            self._known[check_id] = self._chances(check_id)
        return self._known[check_id][answer]

    def _chances(self, check_id: str) -> dict[str, tuple[float, float]]:
        check = self._rules.checks[check_id]
        chances = list(check.baseline)
        for cause in _shown_by(self._rules).get(check_id, ()):
            weight = self._weights.get(cause.id, 0.0)
            if weight:
                single = rows.single(check, cause)
                for place, usual in enumerate(check.baseline):
                    chances[place] += weight * (single[place] - usual)
        return {
            answer.id: (
                log(max(chance, LEAST)),
                log(max(chance, LEAST) / max(usual, LEAST)),
            )
            for answer, chance, usual in zip(check.answers, chances, check.baseline, strict=True)
        }


@lru_cache(maxsize=32)  # rules are equal only to themselves
def expected(rules: RuleBase, process: str, symptoms: frozenset[str]) -> Expected:
    """The chances of answers where these symptoms are told; none told: the usual ones."""
    return Expected(rules, process, symptoms)


def _weights(rules: RuleBase, process: str, symptoms: frozenset[str]) -> dict[str, float]:
    """P(cause | symptoms) if there is one cause, by its rate and how it gives the symptoms."""
    found = {
        name: cause.rate(process) * prod(cause.symptoms.get(each, UNNAMED) for each in symptoms)
        for name, cause in rules.causes.items()
        if not symptoms.isdisjoint(cause.symptoms)
        and (not process or not cause.processes or process in cause.processes)
    }
    total = sum(found.values())
    return {name: weight / total for name, weight in found.items()} if total else {}


@lru_cache(maxsize=4)
def _shown_by(rules: RuleBase) -> dict[str, tuple[Cause, ...]]:
    """The causes that show in each check."""
    found: dict[str, list[Cause]] = {}
    for cause in rules.causes.values():
        for check in cause.shows:
            found.setdefault(check, []).append(cause)
    return {check: tuple(causes) for check, causes in found.items()}
