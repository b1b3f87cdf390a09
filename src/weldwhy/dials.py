"""Settings and operating windows from the values of rule files: texts become quantities here.

A target can only be read with its setting at hand, which says what kind of quantity it is.
"""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy import units
from weldwhy.model import Setting, Window, WindowRow
from weldwhy.problems import Problem
from weldwhy.survey import Item, tuples

_Path = tuple[str | int, ...]


def setting(item: Item) -> tuple[Setting, list[Problem]]:
    """A setting with the bounds of a sane entry."""
    data = item.data
    kind, texts = data["quantity"], data.get("possible", [])
    possible, fault = None, ""
    if texts and (kind == "text" or len(texts) != 2):
        fault = "write two values, lowest first; none where quantity is text"
    elif texts:
        try:
            possible = (units.parse(texts[0], kind), units.parse(texts[1], kind))
            fault = "" if possible[0].value < possible[1].value else "the lowest comes first"
        except units.UnitError as error:
            fault = str(error)
    problems = [item.problem(("possible",), fault, "bad-quantity")] if fault else []
    words = data.get("too_little", ""), data.get("too_much", "")
    return Setting(item.id, data["name"], kind, possible, *words), problems


def window(item: Item, settings: Mapping[str, Setting]) -> tuple[Window, list[Problem]]:
    """An operating window, with every target that could not be read as a problem."""
    data, problems = item.data, list[Problem]()

    def targets(texts: Mapping[str, str], *path: str | int) -> dict[str, units.Target]:
        return _targets(item, settings, texts, path, problems)

    made = Window(
        id=item.id,
        name=data["name"],
        size_of=data["size_of"],
        source=data["source"],
        consumable=data.get("consumable", ""),
        transfer=data.get("transfer", ""),
        inductance=data.get("inductance", ""),
        note=data.get("note", ""),
        targets=targets(data.get("targets", {}), "targets"),
        outdoors=targets(data.get("outdoors", {}), "outdoors"),
        rows=tuple(
            WindowRow(
                thickness=_length(row.get("thickness")),
                size=_length(row.get("size")),
                targets=targets(row["targets"], "rows", place, "targets"),
            )
            for place, row in enumerate(data.get("rows", []))
        ),
        **tuples(data, "processes", "materials", "gas", "positions"),
    )
    return made, problems


def _targets(
    item: Item,
    settings: Mapping[str, Setting],
    texts: Mapping[str, str],
    path: _Path,
    problems: list[Problem],
) -> dict[str, units.Target]:
    found = {}
    for name, text in texts.items():
        kind = settings[name].quantity if name in settings else ""
        try:
            if kind == "text":
                raise units.UnitError(f'"{name}" is set in words, so it has no target')
            if kind:  # else an unknown id, which is noted as such
                found[name] = units.parse_target(text, kind)
        except units.UnitError as fault:
            problems.append(item.problem((*path, name), str(fault), "bad-target"))
    return found


def _length(text: str | None) -> units.Quantity | None:
    return None if text is None else units.parse(text, "length")
