"""Gases, grades, fillers, tables and set-ups from the values of their files."""

from __future__ import annotations

from typing import Any

from weldwhy import units
from weldwhy.model import Gas, Shift, Table
from weldwhy.problems import Problem
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
from weldwhy.survey import Data, Item, tuples


def grade(item: Item) -> Grade:
    """A base metal by its standard name."""
    return Grade(id=item.id, **_without_id(item.data, "grade") | tuples(item.data, "also"))


def gas(item: Item) -> Gas:
    """A shielding gas."""
    return Gas(id=item.id, **_without_id(item.data, "gas") | tuples(item.data, "also"))


def filler(item: Item) -> Filler:
    """A class of wire, rod or filler rod."""
    lists = tuples(item.data, "processes", "materials", "electrode", "positions", "grades")
    return Filler(id=item.id, **_without_id(item.data, "filler") | lists)


def shift(item: Item) -> Shift:
    """What a joint or a position changes."""
    lists = tuples(item.data, "processes", "joints", "positions")
    return Shift(id=item.id, **_without_id(item.data, "shift") | lists)


def table(item: Item) -> tuple[Table, list[Problem]]:
    """A table, with every row whose length is not that of the columns as a problem."""
    data = item.data
    columns = tuple(data["columns"])
    problems = [
        item.problem(
            ("rows", name), f"{len(row)} figures for {len(columns)} columns", "table-row"
        )
        for name, row in data["rows"].items()
        if len(row) != len(columns)
    ]  # fmt: skip
    made = Table(
        id=item.id,
        name=data["name"],
        columns=columns,
        units=tuple(data["columns"].values()),
        rows={name: tuple(row) for name, row in data["rows"].items()},
        source=data["source"],
        note=data.get("note", ""),
    )
    return made, problems


def setup(item: Item) -> Setup:
    """How one process is set up."""
    data = item.data
    return Setup(
        id=item.id,
        gun=data["gun"],
        clamp=data["clamp"],
        holder=data["holder"],
        note=data.get("note", ""),
        source=data["source"],
        suits=tuple(_line(Suiting, each) for each in data["suits"]),
        gases=tuple(_line(GasChoice, each) for each in data.get("gases", [])),
        sizes=tuple(_line(SizeChoice, each) for each in data.get("sizes", [])),
        cautions=tuple(_line(Standing, each) for each in data.get("cautions", [])),
        parts=tuple(_line(Part, each) for each in data["parts"]),
        checklist=tuple(_line(SetupStep, each) for each in data["checklist"]),
        test_beads=tuple(_line(TestBead, each) for each in data["test_beads"]),
    )


_WHEN = ("materials", "joints", "positions", "places", "above", "below")


def _line(made_of: type[Any], data: Data) -> Any:
    """A line of a set-up, its conditions put into a `When`."""
    own = {name: value for name, value in data.items() if name not in _WHEN}
    if "cautions" in own:
        own["cautions"] = tuple(own["cautions"])
    if "size" in own:
        own["size"] = units.parse(own["size"], "length")
    if "flow" in own:
        own["flow"] = units.parse_target(own["flow"], "flow")
    when = When(
        **tuples(data, "materials", "joints", "positions", "places"),
        above=_millimetres(data.get("above")),
        below=_millimetres(data.get("below")),
    )
    return made_of(when=when, **own)


def _millimetres(text: str | None) -> float | None:
    return None if text is None else units.parse(text, "length").value


def _without_id(data: Data, kind: str) -> Data:
    return {name: value for name, value in data.items() if name != kind}
