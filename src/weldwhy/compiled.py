"""The checked rules as JSON, for a quick start: written into the wheel, read instead of the YAML.

Its key is the SHA-256 of the rule files it was made from, with the number of its own form. It
holds no worked cases, which only those need who check the rules. A file that is missing, made
from other rules, of another form or not readable is no error: the YAML is read then.
"""
# pathlib alone would be a tenth of the time of a one-shot answer, so it is not used here.
# ruff: noqa: PTH116, PTH118, PTH123, PTH202

from __future__ import annotations

import gc
import json
import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from typing import Any

from weldwhy.model import (
    Answer,
    Cause,
    Caution,
    Check,
    DutyPoint,
    Gas,
    Job,
    Lens,
    Machine,
    Material,
    Process,
    Remedy,
    RuleBase,
    Setting,
    Shift,
    Source,
    Symptom,
    Table,
    Window,
    WindowRow,
)
from weldwhy.units import Quantity, Target

NAME = "compiled.json"
# Goes up whenever a field of the model or the meaning of one changes; a test watches the fields.
FORM = 6
# An installer writes the files of one wheel within seconds of each other. A rule file changed
# later than that makes the files be read and compared in full.
_WRITTEN_TOGETHER = 10.0

_Data = dict[str, Any]
_Quantity = tuple[str, float, str]


def dump(base: RuleBase, folder: str) -> str:
    """The JSON text for the rule base that was read from `folder`."""
    slim = {name: replace(cause, cases=()) for name, cause in base.causes.items()}
    whole = replace(base, causes=slim)
    content = {
        "form": FORM,
        "key": key(folder),
        "sizes": {name: os.path.getsize(path) for name, path in _sources(folder)},
        "base": {each.name: _plain(getattr(whole, each.name)) for each in fields(whole)},
    }
    return json.dumps(content, ensure_ascii=True, separators=(",", ":"))


def load(folder: str) -> RuleBase | None:
    """The rule base compiled from exactly the files in `folder`, or None."""
    path = os.path.join(folder, NAME)
    # A hundred thousand values are made that all stay: to look among them for garbage again and
    # again would take as long as making them.
    collecting = gc.isenabled()
    gc.disable()
    try:
        with open(path, encoding="ascii") as file:
            content = json.load(file)
        if content["form"] != FORM or not _unchanged(folder, path, content):
            return None
        return _base(content["base"])
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
    finally:
        if collecting:
            gc.enable()


def key(folder: str) -> str:
    """SHA-256 over the names and contents of the rule files in `folder`."""
    import hashlib  # slow to import, and seldom needed

    whole = hashlib.sha256()
    for name, path in _sources(folder):
        with open(path, "rb") as file:
            data = file.read()
        whole.update(f"{name}\0{len(data)}\0".encode())
        whole.update(data)
    return whole.hexdigest()


def _unchanged(folder: str, path: str, content: _Data) -> bool:
    """Whether the files are those it was made from; in doubt they are read and compared."""
    latest = os.stat(path).st_mtime + _WRITTEN_TOGETHER
    sizes = {}
    doubtful = False
    for name, source in _sources(folder):
        found = os.stat(source)
        sizes[name] = found.st_size
        doubtful = doubtful or found.st_mtime > latest
    if sizes != content["sizes"]:
        return False
    return not doubtful or key(folder) == content["key"]


def _sources(folder: str, inside: str = "") -> Iterator[tuple[str, str]]:
    """Name inside the folder, and path, of every YAML file under it, in a fixed order."""
    with os.scandir(os.path.join(folder, inside)) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        name = f"{inside}/{entry.name}" if inside else entry.name
        if entry.is_dir():
            yield from _sources(folder, name)
        elif name.endswith(".yaml"):
            yield name, entry.path


def _plain(value: Any) -> Any:
    """`value` in JSON's terms: a quantity is a list, a model value its fields by name.

    Fields that hold their default are left out; the text gets a third shorter.
    """
    if isinstance(value, Quantity | Target):
        return [_plain(getattr(value, each.name)) for each in fields(value)]
    if is_dataclass(value):
        held = {each: getattr(value, each.name) for each in fields(value)}
        return {
            each.name: _plain(held[each])
            for each in held
            if held[each] not in ((), {}) and held[each] != each.default
        }
    if isinstance(value, Mapping):
        return {name: _plain(each) for name, each in value.items()}
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    return value


def _base(data: _Data) -> RuleBase:
    def each(name: str, make: Callable[..., Any]) -> _Data:
        return {key: make(**tupled(held)) for key, held in data[name].items()}

    return RuleBase(
        processes=each("processes", Process),
        symptoms=each("symptoms", Symptom),
        causes=each("causes", _cause),
        checks=each("checks", _check),
        cautions=each("cautions", Caution),
        sources=each("sources", Source),
        materials=each("materials", Material),
        settings=each("settings", _setting),
        windows=each("windows", _window),
        jobs=each("jobs", Job),
        lenses=each("lenses", Lens),
        families=data["families"],
        groups=data["groups"],
        likelihoods=data["likelihoods"],
        grades=Lazy(data["grades"], "grade"),
        gases=each("gases", Gas),
        fillers=Lazy(data["fillers"], "filler"),
        tables=each("tables", _table),
        shifts=each("shifts", Shift),
        setups=Lazy(data["setups"], "setup"),
        machines=each("machines", _machine),
    )


def tupled(data: _Data) -> _Data:
    """The fields of a model value: JSON knows only lists where the model holds tuples."""
    for name, value in data.items():
        if type(value) is list:
            data[name] = tuple(value)
    return data


def _cause(remedies: Sequence[_Data] = (), shows: _Data | None = None, **data: Any) -> Cause:
    made = tuple(Remedy(**tupled(each)) for each in remedies)
    return Cause(remedies=made, shows=shows or {}, **data)


def _check(answers: Sequence[_Data], **data: Any) -> Check:
    return Check(answers=tuple(Answer(**each) for each in answers), **data)


def _setting(possible: tuple[_Quantity, _Quantity] | None = None, **data: Any) -> Setting:
    if possible is None:
        return Setting(**data)
    return Setting(possible=(Quantity(*possible[0]), Quantity(*possible[1])), **data)


def _window(rows: Sequence[_Data] = (), **data: Any) -> Window:
    data["rows"] = tuple(_row(**row) for row in rows)
    for name in ("targets", "outdoors"):
        data[name] = target_map(data.get(name, {}))
    return Window(**data)


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


def _table(rows: _Data, **data: Any) -> Table:
    return Table(rows={name: tuple(row) for name, row in rows.items()}, **data)


class Lazy(Mapping[str, Any]):
    """Items that are made when one is first asked for: to find a fault, none of these is.

    `kind` is the function of `setupcompiled` that makes them.
    """

    def __init__(self, data: _Data, kind: str) -> None:
        self._data = data
        self._kind = kind
        self._made: dict[str, Any] = {}

    def __getitem__(self, name: str) -> Any:
        if name not in self._made:
            from weldwhy import setupcompiled  # brings in what most commands never need

            self._made[name] = getattr(setupcompiled, self._kind)(tupled(self._data[name]))
        return self._made[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._data)

    def __len__(self) -> int:
        return len(self._data)


def _machine(
    limits: _Data | None = None, limits_in: _Data | None = None, dials: _Data | None = None,
    duty: Sequence[_Data] = (), **data: Any,
) -> Machine:  # fmt: skip
    for name in ("supply", "breaker", "gun", "work_lead", "lead", "cord"):
        if data.get(name) is not None:
            data[name] = Quantity(*data[name])
    return Machine(
        limits=_ranges(limits or {}),
        limits_in={process: _ranges(held) for process, held in (limits_in or {}).items()},
        dials={
            name: {mark: Quantity(*value) for mark, value in marks.items()}
            for name, marks in (dials or {}).items()
        },
        duty=tuple(DutyPoint(**point) for point in duty),
        **data,
    )


def _ranges(data: _Data) -> dict[str, tuple[Quantity, Quantity]]:
    return {name: (Quantity(*low), Quantity(*high)) for name, (low, high) in data.items()}
