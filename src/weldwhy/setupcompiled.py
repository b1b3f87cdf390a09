"""Grades, fillers and set-ups from the compiled rules, made when one is first asked for."""

from __future__ import annotations

from typing import Any

from weldwhy.compiled import target_map, tupled
from weldwhy.setupmodel import (
    Filler,
    GasChoice,
    Grade,
    Part,
    Setup,
    SetupStep,
    SizeChoice,
    Standing,
    Suiting,
    TestBead,
    When,
)
from weldwhy.units import Quantity

_Data = dict[str, Any]
_LINES: dict[str, type[Any]] = {
    "suits": Suiting, "parts": Part, "checklist": SetupStep, "test_beads": TestBead,
    "gases": GasChoice, "sizes": SizeChoice, "cautions": Standing,
}  # fmt: skip


def grade(data: _Data) -> Grade:
    """A base metal."""
    return Grade(**data)


def filler(data: _Data) -> Filler:
    """A class of wire, rod or filler rod."""
    return Filler(**data)


def setup(data: _Data) -> Setup:
    """How a process is set up."""
    lines = {
        name: tuple(_line(made_of, each) for each in data.get(name, ()))
        for name, made_of in _LINES.items()
    }
    return Setup(**data | lines)


def _line(made_of: type[Any], data: _Data) -> Any:
    values = dict(data)
    when = When(**tupled(dict(values.pop("when", {}))))
    if "size" in values:
        values["size"] = Quantity(*values["size"])
    if "flow" in values:
        values["flow"] = target_map({"flow": values["flow"]})["flow"]
    return made_of(when=when, **tupled(values))
