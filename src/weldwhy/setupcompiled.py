"""What few commands need, from the compiled rules: made when one is first asked for."""

from __future__ import annotations

from typing import Any

from weldwhy.compiled import tupled
from weldwhy.model import (
    DutyPoint,
    Gas,
    Lens,
    Machine,
    Picture,
    Shift,
    Table,
    Term,
    Window,
    WindowRow,
)
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
from weldwhy.units import Quantity, Target

_Data = dict[str, Any]
_Quantity = tuple[str, float, str]
_LINES: dict[str, type[Any]] = {
    "suits": Suiting, "parts": Part, "checklist": SetupStep, "test_beads": TestBead,
    "gases": GasChoice, "sizes": SizeChoice, "cautions": Standing,
}  # fmt: skip


def grade(data: _Data) -> Grade:
    """A base metal."""
    return Grade(**data)


def picture(data: _Data) -> Picture:
    """The drawing of a symptom."""
    return Picture(**data)


def term(data: _Data) -> Term:
    """A word of the trade."""
    return Term(**data)


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


def gas(data: _Data) -> Gas:
    """A shielding gas."""
    return Gas(**data)


def shift(data: _Data) -> Shift:
    """What a joint or a position changes."""
    return Shift(**data)


def lens(data: _Data) -> Lens:
    """A lens shade."""
    return Lens(**data)


def window(data: _Data) -> Window:
    """An operating window."""
    rows = tuple(_row(**row) for row in data.get("rows", ()))
    maps = {name: target_map(data.get(name, {})) for name in ("targets", "outdoors")}
    return Window(**{**data, "rows": rows, **maps})


def _row(
    targets: _Data, thickness: _Quantity | None = None, size: _Quantity | None = None
) -> WindowRow:
    return WindowRow(
        None if thickness is None else Quantity(*thickness),
        None if size is None else Quantity(*size),
        target_map(targets),
    )


def target_map(data: _Data) -> dict[str, Target]:
    """Targets by setting id."""
    return {
        name: Target(Quantity(*low), Quantity(*best), Quantity(*high))
        for name, (low, best, high) in data.items()
    }


def table(data: _Data) -> Table:
    """A table of figures."""
    return Table(**{**data, "rows": {name: tuple(row) for name, row in data["rows"].items()}})


def machine(data: _Data) -> Machine:
    """A machine, what it reaches and the marks of its dials."""
    made = dict(data)
    for name in ("supply", "breaker", "gun", "work_lead", "lead", "cord"):
        if made.get(name) is not None:
            made[name] = Quantity(*made[name])
    made["limits"] = _ranges(made.get("limits", {}))
    made["limits_in"] = {p: _ranges(held) for p, held in made.get("limits_in", {}).items()}
    made["dials"] = {
        name: {mark: Quantity(*value) for mark, value in marks.items()}
        for name, marks in made.get("dials", {}).items()
    }
    made["duty"] = tuple(DutyPoint(**point) for point in made.get("duty", ()))
    return Machine(**made)


def _ranges(data: _Data) -> dict[str, tuple[Quantity, Quantity]]:
    return {name: (Quantity(*low), Quantity(*high)) for name, (low, high) in data.items()}
