"""Which checks tell most about a symptom: those whose answers differ most between its causes."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from weldwhy.model import Cause, RuleBase

MOST = 6
"""Checks named for a symptom."""


def telling_checks(rules: RuleBase) -> Mapping[str, tuple[str, ...]]:
    """For each symptom the checks that tell most, the most telling first.

    The measure is how much the chance of an answer varies between the causes of the symptom, each
    cause weighed by how often it is met and shows it. A cause that does not name a check answers
    it as usual.
    """
    by_symptom: dict[str, list[tuple[Cause, float]]] = {name: [] for name in rules.symptoms}
    for cause in rules.causes.values():
        for symptom, grade in cause.symptoms.items():
            if symptom in by_symptom:
                by_symptom[symptom].append((cause, cause.base * grade))
    changes = {name: _changes(rules, cause) for name, cause in rules.causes.items()}
    return {
        symptom: _best(rules, symptom, causes, changes) for symptom, causes in by_symptom.items()
    }


_Change = tuple[str, str, float]
"""A check, one of its answers, and how far the cause moves the chance of it."""


def _changes(rules: RuleBase, cause: Cause) -> list[_Change]:
    found = []
    for name, row in cause.shows.items():
        check = rules.checks.get(name)
        if check is not None:
            usual = {a.id: b for a, b in zip(check.answers, check.baseline, strict=True)}
            found += [(name, each, grade - usual[each]) for each, grade in row.items()]
    return found


def _best(
    rules: RuleBase,
    symptom: str,
    causes: list[tuple[Cause, float]],
    changes: Mapping[str, list[_Change]],
) -> tuple[str, ...]:
    whole = sum(weight for _, weight in causes) or 1.0
    mean: dict[tuple[str, str], float] = defaultdict(float)
    square: dict[tuple[str, str], float] = defaultdict(float)
    for cause, weight in causes:
        part = weight / whole
        for check, answer, change in changes[cause.id]:
            mean[check, answer] += part * change
            square[check, answer] += part * change * change
    worth: dict[str, float] = defaultdict(float)
    for (check, answer), sum_of_squares in square.items():
        worth[check] += sum_of_squares - mean[check, answer] ** 2
    offered = [
        name
        for name in worth
        if not rules.checks[name].symptoms or symptom in rules.checks[name].symptoms
    ]
    return tuple(sorted(offered, key=lambda name: -worth[name])[:MOST])
