"""YAML text to a tree of text, lists and mappings that knows its lines and columns.

Only the parser's events are used: nothing is constructed, so nothing in a file can run. Every
plain value stays the text that was typed (`030`, `yes`, `12:30` and `1_000` mean just that).
What people need not write (anchors, aliases, tags, several documents) is refused, and size,
depth and number of values are bounded. This is the only module that imports the YAML reader.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NoReturn, TypeAlias

import yaml
from yaml import events as happened

from weldwhy.plaintext import hidden, name_of
from weldwhy.problems import Problem
from weldwhy.yamlfaults import syntax_problem

try:
    from yaml import CSafeLoader as _Loader
except ImportError:  # a PyYAML built without its C part: slower, otherwise the same
    from yaml import SafeLoader as _Loader  # type: ignore[assignment]

MAX_BYTES = 1_000_000
MAX_DEPTH = 20
MAX_NODES = 50_000


@dataclass(slots=True)
class Text:
    """A value or key as typed. `line` and `column` count from 1."""

    value: str
    line: int
    column: int


@dataclass(slots=True)
class List:
    """Values in order."""

    items: list[Node]
    line: int
    column: int


@dataclass(slots=True)
class Mapping:
    """Values by key, in file order; `keys` holds each key with its own place."""

    items: dict[str, Node]
    keys: dict[str, Text]
    line: int
    column: int


Node: TypeAlias = Text | List | Mapping


def read(data: bytes, file: str) -> tuple[Node | None, list[Problem]]:
    """The tree of one YAML text, and every problem met; no tree when it could not be read.

    An empty text is an empty mapping. Duplicate keys are problems; the first one is kept.
    """
    text, problems = _decode(data, file)
    if text is None:
        return None, problems
    builder = _Builder(file)
    try:
        node = builder.document(_Loader(text))
    except (yaml.YAMLError, ValueError, OverflowError) as fault:
        # The last two: an escape such as "\UFFFFFFFF" that the slower parser hands on unchecked.
        return None, [*builder.problems, syntax_problem(fault, file, text)]
    except _RefusedError:
        return None, builder.problems
    return node, builder.problems


def place(node: Node, *path: str | int) -> Text | List | Mapping:
    """The node whose mark best shows `path`: the key where there is one, as far as it exists.

    `place(tree, "shows", "nozzle-look")` is the key `nozzle-look`, not its value.
    """
    shown: Node = node
    for step in path:
        if isinstance(node, Mapping) and isinstance(step, str) and step in node.items:
            shown, node = node.keys[step], node.items[step]
        elif isinstance(node, List) and isinstance(step, int) and step < len(node.items):
            shown = node = node.items[step]
        else:
            break
    return shown


def _decode(data: bytes, file: str) -> tuple[str | None, list[Problem]]:
    if len(data) > MAX_BYTES:
        words = f"the file is over {MAX_BYTES // 1000} kB; split it into smaller files"
        return None, [Problem(file, 0, 0, "error", words, "file-size")]
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as fault:
        line = data.count(b"\n", 0, fault.start) + 1
        column = fault.start - (data.rfind(b"\n", 0, fault.start) + 1) + 1
        words = "this is not UTF-8 text; save the file as UTF-8"
        return None, [Problem(file, line, column, "error", words, "file-encoding")]
    text = text.removeprefix("\ufeff")
    found = hidden(text)
    if found is None:
        return text, []
    line, column = text.count("\n", 0, found) + 1, found - text.rfind("\n", 0, found)
    words = f"hidden mark {name_of(text[found])} here; delete it"
    return None, [Problem(file, line, column, "error", words, "hidden-mark")]


class _RefusedError(Exception):
    """Reading stops here: going on could cost without bound, or would only repeat itself."""


class _Builder:
    """Turns the parser's events into nodes, with an eye on depth and number.

    `around` holds the lists and mappings around the place reached, `keys` the key in each of them
    that awaits its value. A loop and not a recursion: it takes about as long as the parser itself.
    """

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.around: list[List | Mapping] = []
        self.keys: list[Text | None] = []
        self.count = 0

    def document(self, parser: Any) -> Node:
        """The tree of the whole text. `parser` gives events and then None."""
        root: Node | None = None
        node: Node
        while (event := parser.get_event()) is not None:
            kind = type(event)
            if kind is happened.ScalarEvent:
                node = self._text(event)
            elif kind in _ENDS:
                node, _ = self.around.pop(), self.keys.pop()
            elif kind in _STARTS:
                self._start(kind, event)
                continue
            elif kind is happened.AliasEvent:
                node = _at(event)
                self._note(node, f'alias "*{event.anchor}"; write the value out again', "alias")
            else:
                if kind is happened.DocumentStartEvent and root is not None:
                    self._stop(_at(event), _SECOND, "many-documents")
                continue
            if self.around:
                self._hang(node)
            else:
                root = node
        return Mapping({}, {}, 1, 1) if root is None else root

    def _text(self, event: Any) -> Text:
        mark = event.start_mark
        node = Text(event.value, mark.line + 1, mark.column + 1)
        if event.tag is not None or event.anchor is not None:
            self._marked(event)
        if not node.value.isprintable() and (found := hidden(node.value)) is not None:
            # A quoted text can write a control character as an escape.
            words = f"hidden mark {name_of(node.value[found])} in this text; leave it out"
            self._note(node, words, "hidden-mark")
            node.value = ""
        return node

    def _start(self, kind: type, event: Any) -> None:
        at = _at(event)
        if event.tag is not None or event.anchor is not None:
            self._marked(event)
        if len(self.around) >= MAX_DEPTH:
            self._stop(at, f"more than {MAX_DEPTH} levels deep", "too-deep")
        listed = kind is happened.SequenceStartEvent
        self.around.append(
            List([], at.line, at.column) if listed else Mapping({}, {}, at.line, at.column)
        )
        self.keys.append(None)

    def _hang(self, node: Node) -> None:
        """Hang a finished node in the innermost list or mapping around it."""
        self.count += 1
        if self.count > MAX_NODES:
            self._stop(node, f"more than {MAX_NODES} values in one file; split it", "file-size")
        parent = self.around[-1]
        if type(parent) is Mapping:
            key = self.keys[-1]
            if key is None:
                self.keys[-1] = self._key(parent, node)
                return
            self.keys[-1] = None
            # What is wrong with a key was noted when it was met. Of duplicates the first stays.
            if key.value in parent.keys:
                parent.items.setdefault(key.value, node)
        elif type(parent) is List:
            parent.items.append(node)

    def _key(self, parent: Mapping, node: Node) -> Text:
        if type(node) is not Text:
            self._note(node, "a key must be one word or text", "wrong-kind")
            return Text("", node.line, node.column)
        first = parent.keys.setdefault(node.value, node)
        if first is not node:
            words = f'key "{node.value}" is here twice; the first is at line {first.line}'
            self._note(node, words, "duplicate-key")
        return node

    def _marked(self, event: Any) -> None:
        if event.anchor is not None:
            self._note(_at(event), f'anchor "&{event.anchor}"; leave it out', "alias")
        if event.tag is not None and event.tag != "!":
            words = f'tag "{event.tag}"; leave it out, values are plain text'
            self._note(_at(event), words, "tag")

    def _note(self, at: Node, words: str, check_id: str) -> None:
        self.problems.append(Problem(self.file, at.line, at.column, "error", words, check_id))

    def _stop(self, at: Node, words: str, check_id: str) -> NoReturn:
        self._note(at, words, check_id)
        raise _RefusedError


def _at(event: Any) -> Text:
    """An empty text where the event begins."""
    return Text("", event.start_mark.line + 1, event.start_mark.column + 1)


_ENDS = {happened.SequenceEndEvent, happened.MappingEndEvent}
_STARTS = {happened.SequenceStartEvent, happened.MappingStartEvent}
_SECOND = 'a second document starts here ("---"); use one file for each'
