"""How a shop's own closed cases shift the base rates: shrinkage towards the rule base.

Per cause: n times confirmed, e the sum of its starting probabilities over the cases in which it
was in play. The multiplier (a + n) / (a + e) is the mean of a gamma-Poisson rate (conjugate
prior; Gelman et al., Bayesian Data Analysis, from memory).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

SHRINKAGE = 2.0
LEAST, MOST = 0.2, 8.0
HALVED_EVERY = 100
"""Closed cases after which both counts are halved, so that old habits fade."""


@dataclass(frozen=True, slots=True)
class Closed:
    """A closed case: the causes confirmed, and each cause's probability at the start."""

    confirmed: tuple[str, ...]
    starting: Mapping[str, float]


def multipliers(cases: Iterable[Closed]) -> dict[str, float]:
    """Factor on `base` by cause id, in [0.2, 8], recomputed from all closed cases in order."""
    seen: dict[str, float] = {}
    expected: dict[str, float] = {}
    for number, case in enumerate(cases, 1):
        for cause in case.confirmed:
            seen[cause] = seen.get(cause, 0.0) + 1.0
        for cause, share in case.starting.items():
            expected[cause] = expected.get(cause, 0.0) + share
        if number % HALVED_EVERY == 0:
            seen = {cause: n / 2 for cause, n in seen.items()}
            expected = {cause: e / 2 for cause, e in expected.items()}
    return {
        cause: min(
            max((SHRINKAGE + seen.get(cause, 0.0)) / (SHRINKAGE + expected.get(cause, 0.0)), LEAST),
            MOST,
        )
        for cause in sorted({*seen, *expected})
    }
