"""What the grade of a metal says of a fault: how many times likelier it makes each cause.

Pure: the figures are tables of the rules.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import exp, log

from weldwhy import hotcracks, metalwork
from weldwhy.arithmetic import steel
from weldwhy.arithmetic.makes import Makes
from weldwhy.case import Case
from weldwhy.model import RuleBase
from weldwhy.readings import MOST_WEIGHT


def weights(rules: RuleBase, case: Case) -> tuple[tuple[str, float], ...]:
    """How many times likelier the grade makes each cause that the tables name; () without one.

    Each lies in [1/20, 20]; only causes of these rules are named.
    """
    metal = metalwork.told(rules, case.grade)
    if metal is None:
        return ()
    cutting = bool(hotcracks.free_cutting(rules, metal.makes))
    found = dict(_row(rules, "cutting-weight", "free-cutting" if cutting else "ordinary"))
    if metalwork.is_steel(rules, metal.material):
        found |= dict(_hardening(rules, metal.makes))
    elif metal.material == "aluminium":
        found |= dict(_row(rules, "aluminium-weight", _aluminium(rules, metal.makes, cutting)))
    elif metal.material == "stainless":
        found |= dict(_ferrite(rules, case, metal.makes))
    return tuple(
        (cause, min(max(times, 1.0 / MOST_WEIGHT), MOST_WEIGHT))
        for cause, times in found.items()
        if cause in rules.causes
    )


def _ferrite(rules: RuleBase, case: Case, makes: Makes) -> Iterator[tuple[str, float]]:
    """What the ferrite of the bead says, where the filler was told."""
    words = rules.tables.get("ferrite-weight")
    for setting in ("rod", "wire"):
        number = hotcracks.ferrite(rules, makes, case.measured.get(setting, ""))
        if number is not None and words is not None:
            row = metalwork.verdict(words, number)
            yield from ((cause, words.value(row, cause)) for cause in words.columns[1:])


def _row(rules: RuleBase, table_id: str, row: str) -> Iterator[tuple[str, float]]:
    table = rules.tables.get(table_id)
    if table is not None and row in table.rows:
        yield from zip(table.columns, table.rows[row], strict=True)


def _hardening(rules: RuleBase, makes: Makes) -> Iterator[tuple[str, float]]:
    """The columns after the first, between the two rows about the steel's carbon equivalent."""
    table = rules.tables.get("steel-weight")
    if table is None:
        return
    rows = sorted(table.rows.values())
    equivalent = min(max(float(steel.ce_iiw(makes)), rows[0][0]), rows[-1][0])
    low, high = next(
        (pair for pair in pairwise(rows) if pair[0][0] <= equivalent <= pair[1][0]),
        (rows[-1], rows[-1]),
    )
    part = (equivalent - low[0]) / (high[0] - low[0] or 1.0)
    for at, cause in enumerate(table.columns[1:], 1):
        yield cause, exp(log(low[at]) * (1 - part) + log(high[at]) * part)


def _aluminium(rules: RuleBase, makes: Makes, cutting: bool) -> str:
    if cutting or hotcracks.beside(rules, makes):
        return "unweldable"
    return "cracks without filler" if hotcracks.likely(rules, makes) else "ordinary"
