"""A machine as the text of its file, each quantity as it was typed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from fractions import Fraction
from typing import Any

from weldwhy import units
from weldwhy.model import Machine, RuleBase
from weldwhy.units import Quantity

REMARK = "# My welding machine: the guide holds its targets to what stands here."
"""The first line of the file."""

_PLAIN = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9_ %./()+-]*[A-Za-z0-9_%./()+-])?")
"""Texts that need no quotes anywhere in YAML; alone on a line they may have commas too."""
_SMALLEST_PARTS = 999
"""The largest number below the line of a fraction that can be typed."""


def as_data(machine: Machine, order: Sequence[str]) -> dict[str, Any]:
    """The keys of the file with their texts; what was not told is left out.

    `order` are the ids of settings in the order they are to stand in.
    """

    def ranges(limits: Mapping[str, tuple[Quantity, Quantity]]) -> dict[str, str]:
        return {name: typed_range(*limits[name]) for name in order if name in limits}

    own = {process: ranges(limits) for process, limits in machine.limits_in.items()}
    found: dict[str, Any] = {
        "name": machine.name,
        "processes": list(machine.processes),
        "limits": ranges(machine.limits),
        "limits_in": {process: limits for process, limits in own.items() if limits},
        "duty": [f"{point.percent:g} % at {_decimal(point.amps)} A" for point in machine.duty],
        "dials": {
            name: {mark: typed(value) for mark, value in machine.dials[name].items()}
            for name in order
            if machine.dials.get(name)
        },
    }
    for each in fields(machine):
        value = getattr(machine, each.name)
        if isinstance(value, Quantity):
            found[each.name] = typed(value)
    found["note"] = machine.note
    return {name: value for name, value in found.items() if value}


def values(machine: Machine, order: Sequence[str]) -> dict[str, str]:
    """The key of each single value of the file, as `machinefile.changed` takes it, and its text."""
    found: dict[str, str] = {}
    for key, value in as_data(machine, order).items():
        if key in ("limits", "dials"):
            found |= {f"{key}.{setting}": _typed_list(each) for setting, each in value.items()}
        elif key == "limits_in":
            for process, ranges in value.items():
                found |= {f"{key}.{process}.{setting}": each for setting, each in ranges.items()}
        else:
            found[key] = _typed_list(value)
    return found


def _typed_list(value: Any) -> str:
    """Several texts, or marks with what they stand for, on one line."""
    if isinstance(value, Mapping):
        return ", ".join(f"{mark} = {each}" for mark, each in value.items())
    return value if isinstance(value, str) else ", ".join(value)


LABELS = {
    "name": "name",
    "processes": "can do",
    "duty": "duty cycle",
    "supply": "mains voltage",
    "breaker": "breaker or fuse",
    "gun": "cable of gun or torch",
    "work_lead": "work lead",
    "lead": "section of the leads",
    "cord": "extension cord",
    "note": "note",
}
"""What the keys of one value are called."""


def label(rules: RuleBase, key: str) -> str:
    """What a key of `values` is called: "amps", "amps, stick", "marks for volts"."""
    first, *rest = key.split(".")
    if not rest:
        return LABELS[first]
    setting = rules.settings[rest[-1]].name
    if first == "dials":
        return f"marks for {setting}"
    return f"{setting}, {rules.processes[rest[0]].plain}" if len(rest) == 2 else setting


def typed(q: Quantity) -> str:
    """The quantity in its own unit, such that reading it gives exactly the same again."""
    shown = units.show(q)
    number = units.convert(q, q.unit)
    part = Fraction(number).limit_denominator(_SMALLEST_PARTS)
    whole, rest = divmod(part.numerator, part.denominator)
    fraction = f"{whole} {rest}/{part.denominator} {q.unit}" if rest else f"{whole} {q.unit}"
    for each in (shown, f"{_decimal(number)} {q.unit}", fraction.removeprefix("0 ")):
        if _reads_as(each, q):
            return each
    return shown


def typed_range(low: Quantity, high: Quantity) -> str:
    """A range as it is typed."""
    return f"{typed(low)} to {typed(high)}"


def written(data: Mapping[str, Any]) -> str:
    """The text of the file with these keys."""
    return "\n".join([REMARK, *_lines(data)]) + "\n"


def _lines(data: Mapping[str, Any]) -> Iterator[str]:
    for name, value in data.items():
        deep = isinstance(value, Mapping) and any(isinstance(v, Mapping) for v in value.values())
        if deep:
            yield f"{name}:"
            yield from (f"  {key}: {_inline(each)}" for key, each in value.items())
        elif isinstance(value, str) and _PLAIN.fullmatch(value.replace(",", "")):
            yield f"{name}: {value}"
        elif value:
            yield f"{name}: {_inline(value)}"


def _inline(value: Any) -> str:
    """A value on one line."""
    if isinstance(value, Mapping):
        pairs = (f"{_scalar(str(key))}: {_inline(each)}" for key, each in value.items())
        return f"{{{', '.join(pairs)}}}"
    if isinstance(value, Sequence) and not isinstance(value, str):
        return f"[{', '.join(_inline(each) for each in value)}]"
    return _scalar(str(value))


def _scalar(text: str) -> str:
    if _PLAIN.fullmatch(text):
        return text
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def _decimal(number: float) -> str:
    """A number with up to six places and no needless noughts."""
    return f"{number:.6f}".rstrip("0").rstrip(".")


def _reads_as(text: str, q: Quantity) -> bool:
    try:
        return units.parse(text, q.kind) == q
    except units.UnitError:
        return False
