"""What a machine reaches, and what the marks on its dials stand for.

Pure. Where nothing was told of a machine nothing is claimed: there is no limit then, and no mark.
"""

from __future__ import annotations

from bisect import bisect_left

from weldwhy import marks
from weldwhy.model import Machine, RuleBase
from weldwhy.units import Quantity

_SAME = 1e-6
"""Values that differ by less than this part of the larger one are the same."""

_Point = tuple[float, float]


def default(rules: RuleBase) -> Machine:
    """The machine taken until the person tells theirs: the first of the rules.

    Of rules without machines, one that can do everything and of which nothing is known.
    """
    blank = Machine("any", "any machine", tuple(rules.processes))
    return next(iter(rules.machines.values()), blank)


def limit(machine: Machine, process: str, setting: str) -> tuple[Quantity, Quantity] | None:
    """The least and the most the machine gives of a setting in a process; None if not told."""
    own = machine.limits_in.get(process, {})
    return own.get(setting) or machine.limits.get(setting)


def mark(machine: Machine, setting: str, quantity: Quantity) -> str:
    """Where to turn a dial that has marks only: "7", "about 6.5", "between D and E", "above 10".

    Between known marks it is a straight line. "" where no mark of the setting is known, or the
    one that is known stands for something else.
    """
    known = machine.dials.get(setting, {})
    for name, value in known.items():
        if _same(value.value, quantity.value):
            return name
    points = sorted((value.value, marks.place(name) or 0.0) for name, value in known.items())
    if len(points) < 2:
        return ""
    where = _between(points, quantity.value)
    if where is not None:
        places = [place for _, place in points]
        return marks.about(where, marks.are_letters(known), max(places) - min(places))
    rises = points[0][1] < points[-1][1]
    past_the_top = (quantity.value > points[-1][0]) == rises
    by_place = sorted(known, key=lambda name: marks.place(name) or 0.0)
    return f"above {by_place[-1]}" if past_the_top else f"below {by_place[0]}"


def at_mark(machine: Machine, setting: str, words: str) -> Quantity | None:
    """What a mark, or a place between marks as `mark` names it, stands for; the inverse of `mark`.

    None beyond the known marks, and for words that name no mark.
    """
    known = machine.dials.get(setting, {})
    where = marks.read_about(words)
    if where is None or not known:
        return None
    points = sorted((marks.place(name) or 0.0, value.value) for name, value in known.items())
    value = _between(points, where)
    first = next(iter(known.values()))
    return None if value is None else Quantity(first.kind, value, first.unit)


def _between(points: list[_Point], x: float) -> float | None:
    """The straight line through the points that lie next to `x`; None outside all of them."""
    at = bisect_left(points, (x, float("-inf")))
    if at < len(points) and _same(points[at][0], x):
        return points[at][1]
    if not 0 < at < len(points):
        return None
    (left, below), (right, above) = points[at - 1], points[at]
    return below + (above - below) * (x - left) / (right - left)


def _same(a: float, b: float) -> bool:
    return abs(a - b) <= _SAME * max(abs(a), abs(b))
