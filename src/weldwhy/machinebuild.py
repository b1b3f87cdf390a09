"""A machine from the values of its file: texts become limits, ratings and marks here.

A limit or a mark can only be read with its setting at hand, which says what kind of quantity it
is and what is possible at all.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from itertools import pairwise
from typing import Any, TypeVar

from weldwhy import marks, units
from weldwhy.model import DutyPoint, Machine, Setting
from weldwhy.problems import Problem
from weldwhy.survey import Item
from weldwhy.units import Quantity, UnitError

QUANTITIES: Mapping[str, tuple[str, str, str]] = {
    "supply": ("voltage", "50 V", "700 V"),
    "breaker": ("current", "3 A", "400 A"),
    "gun": ("distance", "0.5 m", "100 m"),
    "work_lead": ("distance", "0.5 m", "200 m"),
    "lead": ("section", "4 mm2", "200 mm2"),
    "cord": ("distance", "0.3 m", "300 m"),
}
"""The single quantities of a machine: kind, and the least and most that is no slip."""

_STRONGEST = 1000.0
"""Amps of a rating beyond which it is a slip."""
_DUTY = re.compile(r"(?P<percent>[0-9]{1,3}(?:\.[0-9])?) ?% at (?P<amps>.+)")

_Path = tuple[str | int, ...]
_Value = TypeVar("_Value")


def machine(item: Item, settings: Mapping[str, Setting]) -> tuple[Machine, list[Problem]]:
    """A machine, with everything in it that cannot be read, or cannot be, as a problem."""
    data, reading = item.data, _Reading(item, settings)
    limits_in = {
        process: reading.ranges(ranges, "limits_in", process)
        for process, ranges in data.get("limits_in", {}).items()
        if ranges
    }
    made = Machine(
        id=item.id,
        name=data["name"],
        processes=tuple(data["processes"]),
        limits=reading.ranges(data.get("limits", {}), "limits"),
        limits_in=limits_in,
        duty=reading.duty(data.get("duty", [])),
        dials={n: reading.dial(n, each) for n, each in data.get("dials", {}).items() if each},
        note=data.get("note", ""),
        **{name: reading.single(name) for name in QUANTITIES},
    )
    return made, reading.problems


@dataclass(slots=True)
class _Reading:
    """Reads the parts of one machine and notes what is wrong with them."""

    item: Item
    settings: Mapping[str, Setting]
    problems: list[Problem] = field(default_factory=list)

    def ranges(self, texts: Mapping[str, str], *path: str) -> dict[str, tuple[Quantity, Quantity]]:
        """Ranges by setting."""
        found = {
            name: self._try((*path, name), partial(self._range, name, text))
            for name, text in texts.items()
        }
        return {name: ends for name, ends in found.items() if ends is not None}

    def dial(self, setting: str, texts: Mapping[str, str]) -> dict[str, Quantity]:
        """The marks of one dial, in the order of the dial."""
        found: dict[str, Quantity] = {}
        for mark, text in texts.items():
            path = ("dials", setting, mark)
            value = self._try(path, partial(self._mark, setting, mark, text))
            if value is not None:
                found[mark] = value
        if len(found) == len(texts):
            self._try(("dials", setting), partial(_in_order, found))
        return found

    def duty(self, texts: list[str]) -> tuple[DutyPoint, ...]:
        """Ratings."""
        points = [self._try(("duty", at), partial(_duty, text)) for at, text in enumerate(texts)]
        return tuple(point for point in points if point is not None)

    def single(self, name: str) -> Quantity | None:
        """A quantity of the machine itself; None if it was not told."""
        if name not in self.item.data:
            return None
        return self._try((name,), partial(_single, name, self.item.data[name]))

    def _range(self, setting: str, text: str) -> tuple[Quantity, Quantity] | None:
        kind, bounds = self._numbers(setting)
        if not kind:
            return None
        if "-" not in text and " to " not in text:
            example = "{} to {}".format(*map(units.show, bounds)) if bounds else "10 to 20"
            raise UnitError(f'"{text}" is no range; write it like "{example}"')
        low, high = units.parse_range(text, kind)
        if bounds:
            _possible(low, *bounds)
            _possible(high, *bounds)
        return low, high

    def _mark(self, setting: str, mark: str, text: str) -> Quantity | None:
        kind, bounds = self._numbers(setting)
        if not kind:
            return None
        if marks.place(mark) is None:
            raise UnitError("a mark is a number or one letter, such as 6, 6.5 or D")
        value = units.parse(text, kind)
        return _possible(value, *bounds) if bounds else value

    def _numbers(self, setting: str) -> tuple[str, tuple[Quantity, Quantity] | None]:
        """Kind and bounds of a setting; "" for one that is unknown, which is noted as such."""
        if setting not in self.settings:
            return "", None
        found = self.settings[setting]
        if found.quantity == "text":
            raise UnitError(f'"{setting}" has no number, so a machine cannot limit it')
        return found.quantity, found.possible

    def _try(self, path: _Path, read: Callable[[], _Value]) -> _Value | None:
        try:
            return read()
        except UnitError as fault:
            self.problems.append(self.item.problem(path, str(fault), "bad-quantity"))
            return None


def _single(name: str, text: str) -> Quantity:
    kind, *ends = QUANTITIES[name]
    least, most = (units.parse(end, kind) for end in ends)
    return _possible(units.parse(text, kind), least, most)


def _possible(value: Quantity, least: Quantity, most: Quantity) -> Quantity:
    if not least.value <= value.value <= most.value:
        span = f"{units.show(least)} to {units.show(most)}"
        raise UnitError(f"{units.show(value)} is not possible; it can be {span}")
    return value


def _in_order(values: Mapping[str, Any]) -> None:
    """Refuse marks of two sorts, and a dial that turns back."""
    kinds = {name.isalpha() for name in values}
    if len(kinds) > 1:
        raise UnitError("the marks of one dial are all numbers or all letters")
    by_place = sorted(values, key=lambda name: marks.place(name) or 0.0)
    steps = [values[b].value - values[a].value for a, b in pairwise(by_place)]
    apart = all(marks.place(a) != marks.place(b) for a, b in pairwise(by_place))
    if not apart or not (all(s > 0 for s in steps) or all(s < 0 for s in steps)):
        raise UnitError("from mark to mark the values must all rise, or all fall")


def _duty(text: str) -> DutyPoint:
    found = _DUTY.fullmatch(text)
    if found is None or not 0 < float(found["percent"]) <= 100:
        raise UnitError(f'cannot read "{text}"; write it like "30 % at 130 A"')
    amps = units.parse(found["amps"], "current")
    if not 0 < amps.value <= _STRONGEST:
        raise UnitError(f"{units.show(amps)} is no rating of a welding machine")
    return DutyPoint(float(found["percent"]), amps.value)
