"""The checked rules as JSON, for a quick start: written into the wheel, read instead of the YAML.

Its first line says what it was made from: the SHA-256 of the rule files, and the number of its own
form. Then comes a line for each part of the rule base, which is read when that part is first asked
for, and its items are made one by one as they are wanted: the first screen needs a tenth of them.
It holds no worked cases, which only those need who check the rules. A file that is missing,
damaged, made from other rules or of another form is no error: the YAML is read then.
"""
# pathlib alone would be a tenth of the time of a one-shot answer, so it is not used here.
# ruff: noqa: PTH116, PTH118, PTH123, PTH202

from __future__ import annotations

import gc
import json
import os
from binascii import crc32
from collections.abc import Callable, ItemsView, Iterator, Mapping, Sequence, ValuesView
from dataclasses import fields, is_dataclass, replace
from typing import Any

from weldwhy.model import (
    Answer,
    Cause,
    Caution,
    Check,
    Job,
    Material,
    Process,
    Remedy,
    RuleBase,
    Setting,
    Source,
    Symptom,
)
from weldwhy.units import Quantity, Target

NAME = "compiled.jsonl"
# Goes up whenever a field of the model or the meaning of one changes; a test watches the fields.
FORM = 7
# An installer writes the files of one wheel within seconds of each other. A rule file changed
# later than that makes the files be read and compared in full.
_WRITTEN_TOGETHER = 10.0

_Data = dict[str, Any]
_Quantity = tuple[str, float, str]


def dump(base: RuleBase, folder: str) -> str:
    """The text for the rule base that was read from `folder`."""
    slim = {name: replace(cause, cases=()) for name, cause in base.causes.items()}
    whole = replace(base, causes=slim)
    parts = _parts()
    lines = "\n".join(_text(_plain(getattr(whole, name))) for name in parts)
    head = {
        "form": FORM,
        "key": key(folder),
        "sizes": {name: os.path.getsize(path) for name, path in _sources(folder)},
        "parts": parts,
        "sum": crc32(lines.encode("ascii")),
    }
    return f"{_text(head)}\n{lines}"


def _parts() -> list[str]:
    return [each.name for each in fields(RuleBase)]


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))


def load(folder: str) -> RuleBase | None:
    """The rule base compiled from exactly the files in `folder`, or None."""
    path = os.path.join(folder, NAME)
    try:
        with open(path, "rb") as file:
            first, _, rest = file.read().partition(b"\n")
        head = json.loads(first)
        if head["form"] != FORM or head["sum"] != crc32(rest):
            return None
        # the sum does not cover the first line; a part less would be rules without it
        if head["parts"] != _parts() or not _unchanged(folder, path, head):
            return None
        lines = rest.split(b"\n")
        return RuleBase(**{n: Part(n, line) for n, line in zip(_parts(), lines, strict=True)})
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None


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


def _item(kind: type[Any]) -> Callable[[_Data], Any]:
    """Makes an item whose fields are plain values and lists of them."""
    return lambda data: kind(**tupled(data))


def _later(name: str) -> Callable[[_Data], Any]:
    """Makes an item with a function of `setupcompiled`, which most commands never need."""

    def made(data: _Data) -> Any:
        from weldwhy import setupcompiled

        return getattr(setupcompiled, name)(tupled(data))

    return made


_MAKERS: dict[str, Callable[[Any], Any]] = {
    "processes": _item(Process),
    "symptoms": _item(Symptom),
    "causes": lambda data: _cause(**tupled(data)),
    "checks": lambda data: _check(**tupled(data)),
    "cautions": _item(Caution),
    "sources": _item(Source),
    "materials": _item(Material),
    "settings": lambda data: _setting(**tupled(data)),
    "jobs": _item(Job),
    "families": str,
    "groups": str,
    "likelihoods": float,
    "said": tuple,
    **{
        f"{name}{'es' if name == 'gas' else 's'}": _later(name)
        for name in (
            "window", "grade", "gas", "filler", "table", "shift", "setup", "machine", "picture",
            "term",
        )
    },
    "lenses": _later("lens"),
}  # fmt: skip
"""What makes an item of each part of the rule base out of its JSON."""


class Part(Mapping[str, Any]):
    """A part of the rule base: its line is read when it is first looked at, its items as wanted."""

    def __init__(self, name: str, line: bytes) -> None:
        self._line = line
        self._make = _MAKERS[name]
        self._read: _Data | None = None
        self._made: _Data = {}

    @property
    def _data(self) -> _Data:
        if self._read is None:
            self._read = _without_collecting(lambda: json.loads(self._line))
            self._line = b""
        return self._read

    def __getitem__(self, name: str) -> Any:
        found = self._made.get(name)
        if found is None:
            found = self._made[name] = self._make(self._data[name])
            self._data[name] = None  # its JSON is of no more use, only its name is
        return found

    def __contains__(self, name: object) -> bool:
        return name in self._data

    def __iter__(self) -> Iterator[str]:
        return iter(self._data)

    def __len__(self) -> int:
        return len(self._data)

    def values(self) -> ValuesView[Any]:
        """All items, in the order of the rule files."""
        return self._all().values()

    def items(self) -> ItemsView[str, Any]:
        """All items by id, in the order of the rule files."""
        return self._all().items()

    def _all(self) -> _Data:
        if len(self._made) < len(self._data):
            self._made = _without_collecting(lambda: {name: self[name] for name in self._data})
        return self._made


def _without_collecting(make: Callable[[], _Data]) -> _Data:
    """What `make` gives. It makes thousands of values that all stay: to look among them for
    garbage again and again would take as long as making them."""
    collecting = gc.isenabled()
    gc.disable()
    try:
        return make()
    finally:
        if collecting:
            gc.enable()
