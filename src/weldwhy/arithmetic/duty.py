"""Minutes of arc that a machine can stand in ten, and the amps it can stand without a rest."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import sqrt

from weldwhy.arithmetic.bounds import Impossible, Reckoned, possible, remarks
from weldwhy.arithmetic.spans import AMPS, Span

_PERCENT: Span = (0.1, 100, "%")
_TEN = 10.0
"""Minutes of the period that a duty is a part of."""

Rating = tuple[float, float]
"""What a plate says: so many percent of ten minutes at so many amps."""


def duty_at(amps: float, rated_percent: float, rated_amps: float) -> Reckoned:
    """Duty of a machine at other amps than its rated ones, percent of ten minutes.

    D = Dr (Ir / I)^2, 100 at most: Dr rated percent at Ir amps, I the amps asked of.

    Holds for: ten-minute periods, amps near the rated ones and not above them. Above the rated
    amps the machine may not be used, whatever the formula says.

    Source: AWS Welding Handbook vol. 2, power sources; IEC 60974-1. From memory.
    """
    possible("amps", amps, *AMPS)
    possible("rated duty", rated_percent, *_PERCENT)
    possible("rated amps", rated_amps, *AMPS)
    duty = min(100.0, rated_percent * (rated_amps / amps) ** 2)
    return Reckoned(duty, _above(amps, rated_amps), remarks(amps, rated_amps))


def amps_at(percent: float, rated_percent: float, rated_amps: float) -> Reckoned:
    """Amps that a machine may give for a duty other than its rated one, A.

    I = Ir sqrt(Dr / D): Dr rated percent at Ir amps, D the percent asked of.

    Holds for: ten-minute periods, amps near the rated ones and not above them. Above the rated
    amps the machine may not be used, whatever the formula says.

    Source: AWS Welding Handbook vol. 2, power sources; IEC 60974-1. From memory.
    """
    possible("duty", percent, *_PERCENT)
    possible("rated duty", rated_percent, *_PERCENT)
    possible("rated amps", rated_amps, *AMPS)
    amps = rated_amps * sqrt(rated_percent / percent)
    return Reckoned(amps, _above(amps, rated_amps), remarks(percent, rated_amps))


def _above(amps: float, rated_amps: float) -> tuple[str, ...]:
    if amps <= rated_amps:
        return ()
    return (f"{amps:.0f} A is above the rated {rated_amps:g} A: do not use the machine so",)


def duty_between(amps: float, ratings: Sequence[Rating]) -> Reckoned:
    """Duty of a machine with several ratings, each (percent, amps); percent of ten minutes.

    The square law D = Dr (Ir / I)^2 from the nearest rating below and above I, the lower of the
    two taken; never less than the rating above, which holds at fewer amps all the more.

    Holds for: ten-minute periods, ratings whose percent falls as their amps rise, amps up to the
    highest rated ones. Between two ratings it errs on the careful side.

    Source: the square law, as for one rating; the careful choice of two is common practice.
    """
    possible("amps", amps, *AMPS)
    rated = _in_order(ratings)
    if amps <= rated[0][1]:
        return duty_at(amps, *rated[0])
    if amps >= rated[-1][1]:
        return duty_at(amps, *rated[-1])
    below, above = next(pair for pair in pairwise(rated) if amps <= pair[1][1])
    careful = min(float(duty_at(amps, *below)), float(duty_at(amps, *above)))
    return Reckoned(min(max(careful, above[0]), below[0]), remarks(amps))


def amps_between(percent: float, ratings: Sequence[Rating]) -> Reckoned:
    """Most amps that a machine with several ratings, each (percent, amps), gives for a duty, A.

    The most amps whose duty, worked out between the ratings, is no less than the one asked for.

    Holds for: ten-minute periods, ratings whose percent falls as their amps rise.

    Source: the square law, as for one rating; the careful choice of two is common practice.
    """
    possible("duty", percent, *_PERCENT)
    rated = _in_order(ratings)
    if percent >= rated[0][0]:
        return amps_at(percent, *rated[0])
    if percent <= rated[-1][0]:
        return amps_at(percent, *rated[-1])
    below, above = next(pair for pair in pairwise(rated) if percent > pair[1][0])
    careful = min(float(amps_at(percent, *below)), float(amps_at(percent, *above)))
    return Reckoned(max(careful, below[1]), remarks(percent))


def _in_order(ratings: Sequence[Rating]) -> list[Rating]:
    """The ratings by rising amps; Impossible if there is none or the percent does not fall."""
    rated = sorted(ratings, key=lambda rating: rating[1])
    if not rated:
        raise Impossible("no rating given; a plate says, for example, 30 % at 130 A")
    for (percent, amps), (next_percent, next_amps) in pairwise(rated):
        if not (next_percent < percent and next_amps > amps):
            one, other = f"{percent:g} % at {amps:g} A", f"{next_percent:g} % at {next_amps:g} A"
            raise Impossible(f"{one} and {other} cannot both be: more amps go with less duty")
    return rated


def rest_minutes(duty: float) -> Reckoned:
    """Minutes of rest that a machine needs in every ten, min.

    r = 10 - D / 10: D duty in percent; the other D / 10 minutes are arc.

    Holds for: ten-minute periods, 40 C air at most.

    Source: AWS glossary, duty cycle.
    """
    return Reckoned(_TEN * (1 - possible("duty", duty, *_PERCENT) / 100), remarks(duty))


def effective_amps(amps: float, duty: float) -> Reckoned:
    """Steady amps that would heat a supply lead as much as amps that come and go, A.

    I = I1 sqrt(D / 100): I1 amps while the arc burns, D duty in percent.

    Holds for: ten-minute periods; what the machine draws without an arc is left out.

    Source: IEC 60974-1, effective supply current. From memory.
    """
    possible("amps", amps, 0.1, 2000, "A")
    return Reckoned(amps * sqrt(possible("duty", duty, *_PERCENT) / 100), remarks(amps, duty))
