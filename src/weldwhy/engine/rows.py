"""Likelihood rows: the chance of each answer to a check when a given set of causes is at work."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.model import Cause, Check

LEAST_NORMAL, MOST_NORMAL = 0.005, 0.985
"""Bounds on P(normal answer) when several causes act together."""


def single(check: Check, cause: Cause) -> tuple[float, ...]:
    """P(answer | only this cause), in answer order, before slips; the baseline if not linked.

    Answers named in the rule get their grade; the rest is split as in the baseline.
    """
    named = cause.shows.get(check.id)
    if not named:
        return check.baseline
    left = 1.0 - sum(named.values())
    rest = sum(b for a, b in zip(check.answers, check.baseline) if a.id not in named)
    if rest <= 0.0:
        total = sum(named.values())
        return tuple(named.get(a.id, 0.0) / total for a in check.answers)
    return tuple(
        named[a.id] if a.id in named else left * b / rest
        for a, b in zip(check.answers, check.baseline)
    )


def together(check: Check, rows: Sequence[tuple[float, ...]]) -> tuple[float, ...]:
    """P(answer | all linked causes of a set): leaky noisy-OR on "normal", the rest by share.

    One row comes back as it is; no row gives the baseline.
    """
    if not rows:
        return check.baseline
    if len(rows) == 1:
        return rows[0]
    normal = check.baseline[0]
    for row in rows:
        normal *= row[0] / check.baseline[0]
    normal = min(max(normal, LEAST_NORMAL), MOST_NORMAL)
    shares = [sum(row[a] for row in rows) for a in range(1, len(check.answers))]
    total = sum(shares)
    if total <= 0.0:
        shares, total = [1.0] * len(shares), float(len(shares))
    return (normal, *((1.0 - normal) * share / total for share in shares))


def unlisted(check: Check) -> tuple[float, ...]:
    """P(answer | something not in the list): half the baseline, half even."""
    even = 1.0 / len(check.answers)
    return tuple(0.5 * b + 0.5 * even for b in check.baseline)


def with_slips(check: Check, row: Sequence[float]) -> tuple[float, ...]:
    """The row with the check's noise floor: a share `noise` of answers is given at random."""
    floor = check.noise / len(row)
    return tuple((1.0 - check.noise) * p + floor for p in row)
