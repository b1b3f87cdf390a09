"""One axis of a picture: a range in the person's own unit, its round numbers, and its cells."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from weldwhy.units import Quantity, convert, show
from weldwhy.unitwords import HOME, WORTH

DECIMAL, BINARY = (1.0, 2.0, 2.5, 5.0), tuple(2.0**power for power in range(-6, 4))
"""Steps between numbers: times a power of ten; inches are halved instead, as on a rule."""

MARGIN = 0.08
"""Of the range, left free at each end."""


@dataclass(frozen=True, slots=True)
class Axis:
    """`low` to `high` in `unit`, laid over `steps` places (cells, or half cells)."""

    kind: str
    unit: str
    low: float
    high: float
    steps: int

    def place(self, q: Quantity) -> int:
        """The place of a quantity, counted from the low end; it may lie outside."""
        part = (convert(q, self.unit) - self.low) / (self.high - self.low)
        return math.floor(part * (self.steps - 1) + 0.5)

    def numbers(self, most: int) -> list[tuple[int, str]]:
        """At most `most` round numbers, each with its place, lowest first."""
        step = _step((self.high - self.low) / max(most, 1), self.unit == "in")
        first = math.ceil(self.low / step - 1e-9)
        last = math.floor(self.high / step + 1e-9)
        values = [self._quantity(at * step) for at in range(first, last + 1)]
        return [(self.place(q), show(q).removesuffix(f" {self.unit}")) for q in values[:most]]

    def _quantity(self, value: float) -> Quantity:
        return Quantity(self.kind, value * WORTH[self.kind][self.unit], self.unit)


def axis(holds: Iterable[Quantity], unit: str, steps: int) -> Axis:
    """An axis on which all the quantities have their place, with a margin at both ends."""
    quantities = list(holds)
    values = [convert(q, unit) for q in quantities]
    low, high = min(values), max(values)
    margin = (high - low or high or 1.0) * MARGIN
    return Axis(quantities[0].kind, unit, max(low - margin, 0.0), high + margin, steps)


def own_unit(q: Quantity, system: str | None) -> str:
    """The unit to number an axis in: the system's, or the quantity's own; no sheet gauges."""
    unit = HOME.get(system or "", {}).get(q.kind, q.unit)
    return "in" if unit == "ga" else unit


def _step(least: float, inches: bool) -> float:
    """The smallest round step that is not smaller than `least`."""
    if inches:
        return next((step for step in BINARY if step >= least), BINARY[-1])
    power = 10.0 ** math.floor(math.log10(least))
    return next(step * power for step in (*DECIMAL, 10.0) if step * power >= least * (1 - 1e-9))
