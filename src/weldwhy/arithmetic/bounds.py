"""What a number may be: refused outside physics, remarked on outside a formula's range.

Bounds are given in the unit a formula works in and said in both unit systems.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import inf, isfinite
from typing import Self

from weldwhy.units import Quantity, convert
from weldwhy.unitwords import HOME

_KINDS = {HOME["mm"][kind]: kind for kind in HOME["mm"] if kind not in ("section", "area")}
"""The kind of quantity of each unit that has a counterpart in inches worth saying."""


class Impossible(ValueError):
    """A number that physics does not allow; str() is one plain line with what it may be."""


class Reckoned(float):
    """A result that remembers what must be said with it, such as "outside the formula's range"."""

    remarks: tuple[str, ...]

    def __new__(cls, value: float, *remarks: Iterable[str]) -> Self:
        """The value, with the remarks of each group, none twice; Impossible if it is not finite."""
        if not isfinite(value):
            raise Impossible("these numbers give no finite result")
        made = super().__new__(cls, value)
        made.remarks = tuple(dict.fromkeys(line for group in remarks for line in group))
        return made


def remarks(*values: float) -> tuple[str, ...]:
    """The remarks of those of the values that are results, none twice."""
    found = (line for value in values for line in getattr(value, "remarks", ()))
    return tuple(dict.fromkeys(found))


def possible(name: str, value: float, low: float, high: float, unit: str = "") -> float:
    """`value` as it is, if it lies in [low, high]; else Impossible, naming it and its bounds."""
    if not low <= value <= high:  # true for NaN too
        said = f"{name} {_figure(value)} {unit}".rstrip()
        raise Impossible(f"{said} is not possible; it can be {_span(low, high, unit)}")
    return value


def outside(name: str, value: float, low: float, high: float, unit: str = "") -> tuple[str, ...]:
    """A remark if `value` lies outside the range that a formula was made for, else none."""
    if low <= value <= high:
        return ()
    said = f"{name} {_figure(value)} {unit}".rstrip()
    return (f"{said} lies outside {_span(low, high, unit)}, where this holds",)


def _span(low: float, high: float, unit: str) -> str:
    """A range as text, in inches too where its unit has a counterpart."""
    metric = _ends(low, high, unit)
    if unit not in _KINDS:
        return metric
    inches = HOME["in"][_KINDS[unit]]
    least, most = (convert(Quantity(_KINDS[unit], end, unit), inches) for end in (low, high))
    return f"{metric} ({_ends(least, most, inches)})"


def _ends(low: float, high: float, unit: str) -> str:
    if high == inf:
        return f"{_figure(low)} {unit}".rstrip() + " or more"
    return f"{_figure(low)} to {_figure(high)} {unit}".rstrip()


def _figure(value: float) -> str:
    return f"{value:.0f}" if 1e4 <= abs(value) < 1e12 else f"{value:.4g}"
