"""The shapes a value in a rule file can have, declared once and used three ways.

A shape reads a node of the tree and reports *every* problem with its place; it prints its part of
a JSON Schema; and it says in a few words what to write. Mappings hold `Key`s, whose `about` line
is the manual. Values are spoken of in the file's own words: text, list, mapping, number, yes/no.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from weldwhy.problems import Problem, did_you_mean
from weldwhy.yamltree import List, Mapping, Node, Text

JsonSchema = dict[str, Any]

ID = re.compile(r"[a-z0-9]+(?:[-_][a-z0-9]+)*")
_KIND_WORDS = {Text: "text", List: "a list", Mapping: "a mapping"}


@dataclass(frozen=True, slots=True)
class Reference:
    """An id of another item, named at this place; whether it exists is asked later."""

    kind: str
    id: str
    file: str
    line: int
    column: int


@dataclass(slots=True)
class Reader:
    """What one file gave besides its values: problems and references, in file order."""

    file: str
    problems: list[Problem] = field(default_factory=list)
    references: list[Reference] = field(default_factory=list)

    def say(self, node: Node, words: str, check_id: str) -> None:
        """Note an error at `node`."""
        self.problems.append(Problem(self.file, node.line, node.column, "error", words, check_id))

    def refer(self, node: Node, kind: str, name: str) -> None:
        """Note that `node` names an item of `kind`."""
        self.references.append(Reference(kind, name, self.file, node.line, node.column))


@dataclass(frozen=True, slots=True)
class Shape:
    """A single value. `words` says what to write; `take` turns its text into the value.

    `take` gets the trimmed text and returns the value, or raises ValueError with plain words.
    """

    words: str
    schema: JsonSchema
    take: Callable[[str], Any]
    check_id: str = "wrong-value"
    refers: str = ""

    def read(self, node: Node, reader: Reader) -> Any:
        """The value, or None after noting a problem."""
        if not isinstance(node, Text):
            found = _KIND_WORDS[type(node)]
            reader.say(node, f"this must be {self.words}, not {found}", "wrong-kind")
            return None
        text = " ".join(node.value.split())
        if not text:
            reader.say(node, f"nothing is written here; it must be {self.words}", "empty")
            return None
        try:
            value = self.take(text)
        except ValueError as fault:
            reader.say(node, str(fault), self.check_id)
            return None
        if self.refers:
            reader.refer(node, self.refers, _first_part(text))
        return value


@dataclass(frozen=True, slots=True)
class ListShape:
    """Values of one shape in order; at least `least` of them, no value twice if `unique`."""

    of: AnyShape
    least: int = 0
    unique: bool = True

    @property
    def words(self) -> str:
        """What to write."""
        return f"a list, each {self.of.words}"

    @property
    def schema(self) -> JsonSchema:
        """The JSON Schema of such a list."""
        return {"type": "array", "items": self.of.schema, "minItems": self.least}

    def read(self, node: Node, reader: Reader) -> list[Any]:
        """The values that could be read."""
        if isinstance(node, Text):
            hint = f"; write [{node.value}]" if node.value else ""
            reader.say(node, f"this must be a list, not text{hint}", "wrong-kind")
            return []
        if isinstance(node, Mapping):
            reader.say(node, 'this must be a list; begin each part with "- "', "wrong-kind")
            return []
        if len(node.items) < self.least:
            reader.say(node, "this list is empty; it needs at least one part", "empty")
        seen: set[str] = set()
        for item in node.items:
            if self.unique and isinstance(item, Text):
                if item.value in seen:
                    reader.say(item, f'"{item.value}" is in this list twice', "twice-in-list")
                seen.add(item.value)
        return [self.of.read(item, reader) for item in node.items]


@dataclass(frozen=True, slots=True)
class MapShape:
    """A mapping with free keys of one shape to values of another: `{check: answer}`."""

    key: Shape
    value: AnyShape
    least: int = 0

    @property
    def words(self) -> str:
        """What to write."""
        return f"a mapping from {self.key.words} to {self.value.words}"

    @property
    def schema(self) -> JsonSchema:
        """The JSON Schema of such a mapping."""
        return {
            "type": "object",
            "propertyNames": {"type": "string"},
            "additionalProperties": self.value.schema,
            "minProperties": self.least,
        }

    def read(self, node: Node, reader: Reader) -> dict[str, Any]:
        """The pairs that could be read, in file order."""
        if not isinstance(node, Mapping):
            words = f"this must be {self.words}, not {_KIND_WORDS[type(node)]}"
            reader.say(node, words, "wrong-kind")
            return {}
        if len(node.items) < self.least:
            reader.say(node, f"nothing is written here; it must be {self.words}", "empty")
        found = {}
        for name, value in node.items.items():
            key = self.key.read(node.keys[name], reader)
            found[str(key)] = self.value.read(value, reader)
        return found


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a mapping and its line in the manual."""

    name: str
    shape: AnyShape
    about: str
    required: bool = True


@dataclass(frozen=True, slots=True)
class Keys:
    """A mapping with known keys; `noun` says of what, and is often also the key of its id."""

    noun: str
    keys: tuple[Key, ...]

    @property
    def words(self) -> str:
        """What to write."""
        return f"a mapping (see {self.noun})"

    @property
    def schema(self) -> JsonSchema:
        """The JSON Schema: these keys and no others."""
        return {
            "type": "object",
            "properties": {k.name: {**k.shape.schema, "description": k.about} for k in self.keys},
            "required": [key.name for key in self.keys if key.required],
            "additionalProperties": False,
        }

    def read(self, node: Node, reader: Reader) -> dict[str, Any]:
        """The values by key; keys that are absent are absent here too."""
        if not isinstance(node, Mapping):
            found = _KIND_WORDS[type(node)]
            words = f"a {self.noun} must be a mapping (key: value), not {found}"
            reader.say(node, words, "wrong-kind")
            return {}
        name = self._name(node)
        known = {key.name: key.shape for key in self.keys}
        values = {}
        for key, value in node.items.items():
            if key in known:
                values[key] = known[key].read(value, reader)
            else:
                words = f'unknown key "{key}" in {name}{did_you_mean(key, known)}'
                reader.say(node.keys[key], words, "unknown-key")
        for each in self.keys:
            if each.required and each.name not in node.items:
                words = f'{name} lacks the key "{each.name}" ({each.about})'
                reader.say(node, words, "missing-key")
        return values

    def _name(self, node: Mapping) -> str:
        own = node.items.get(self.noun)
        named = isinstance(own, Text) and ID.fullmatch(own.value)
        return f'{self.noun} "{own.value}"' if named and isinstance(own, Text) else self.noun


AnyShape = Shape | ListShape | MapShape | Keys


def keys(noun: str, *declared: Key) -> Keys:
    """A mapping of known keys."""
    return Keys(noun, tuple(declared))


def optional(name: str, shape: AnyShape, about: str) -> Key:
    """A key that may be left out."""
    return Key(name, shape, about, required=False)


def _first_part(found: str) -> str:
    """The id at the head of a source ("id, place") or of a setting with its side ("id too low")."""
    if found.split(",")[0].strip() == "common practice":
        return "common-practice"
    return found.split(",")[0].split(" ")[0]
