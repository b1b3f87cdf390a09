"""A case file, YAML or JSON, read into a case; every fault with its line and the nearest word.

All keys are optional, and one without a value counts as left out. What is not known is an error:
a misspelt check that is silently dropped would be a wrong diagnosis. JSON is read as the YAML it
also is, so there is one reader, which runs nothing and is bounded in size and depth.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from weldwhy import entries, yamltree
from weldwhy.case import Case, CaseError, Entry, Measured, Reported, Situated, from_data
from weldwhy.model import RuleBase
from weldwhy.problems import RulesError
from weldwhy.shape import Keys, ListShape, Reader, Shape, keys, optional
from weldwhy.values import text

LEFT_OUT = ("", "null", "~")
"""Values that say "nothing here"."""


@dataclass(frozen=True, slots=True)
class CaseFile:
    """What a case file holds: a case, and free sentences nobody has understood yet."""

    case: Case
    said: tuple[str, ...] = ()


def read(data: bytes, name: str, rules: RuleBase) -> CaseFile:
    """The case in the text of a file called `name`; raises `RulesError` with every problem."""
    tree, problems = yamltree.read(_joined_pairs(data), name)
    reader = Reader(name, list(problems))
    values: dict[str, Any] = {}
    if tree is not None:
        values = shape(rules).read(_without_empty(tree), reader)
    if reader.problems:
        raise RulesError(reader.problems)
    # In one order whatever the file's, so that the same case is the same log.
    found: list[Entry] = [values[key] for key in entries.PLAIN if key in values]
    found += values.get("symptoms", [])
    found += values.get("settings", {}).values()
    found += values.get("answers", {}).values()
    return CaseFile(Case(tuple(found)), tuple(values.get("said", ())))


def kept(data: bytes, name: str, rules: RuleBase) -> CaseFile | None:
    """The case in a file that the program itself kept, with the remedies tried; None if it is none.

    What these rules no longer know is left out. CaseError if its entries mean nothing.
    """
    if b'"entries"' not in data:
        return None
    import json  # few case files are of this kind

    try:
        found = json.loads(data)
    except (ValueError, RecursionError):
        return None
    if not isinstance(found, dict) or "entries" not in found:
        return None
    try:
        case, _ = entries.still_known(rules, from_data(found["entries"]))
    except CaseError as fault:
        raise CaseError(f"{name}: {fault}") from None
    return CaseFile(case)


_PAIR = re.compile(rb"(?<!\\)\\u(d[89ab][0-9a-f]{2})\\u(d[c-f][0-9a-f]{2})", re.IGNORECASE)


def _joined_pairs(data: bytes) -> bytes:
    """The text with JSON's two-part escapes as the marks they mean.

    It is the one thing in JSON that YAML cannot read, and programs write it for every emoji.
    """
    if not data.lstrip().startswith(b"{"):
        return data

    def mark(found: re.Match[bytes]) -> bytes:
        high, low = (int(part, 16) for part in found.groups())
        return chr(0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00)).encode()

    return _PAIR.sub(mark, data)


def shape(rules: RuleBase) -> Keys:
    """The declared form of a case file: what the rules know is what a file may name."""
    return keys(
        "case file",
        optional("process", _process(rules), "the welding process"),
        optional("material", _material(rules), "the metal, by its id or a name people give it"),
        optional("grade", _told(rules, "grade"), "the base metal's standard name"),
        optional("thickness", _thickness(), "any length, a fraction of an inch or a sheet gauge"),
        optional("joint", _told(rules, "joint"), "the kind of joint"),
        optional("position", _told(rules, "position"), "the position of welding"),
        optional("place", _told(rules, "place"), "indoors or outdoors"),
        optional("symptoms", ListShape(_symptom(rules)), "what is wrong with the bead"),
        optional("settings", _settings(rules), "what the dials read, with units"),
        optional("said", ListShape(text(), unique=False), "free sentences, as they were said"),
        optional("answers", _answers(rules), "check id and answer id"),
    )  # fmt: skip


def _process(rules: RuleBase) -> Shape:
    return _one_of(rules.processes, lambda word: entries.answered(rules, "process", word))


def _symptom(rules: RuleBase) -> Shape:
    def take(word: str) -> Entry:
        return Reported(entries.known(word, rules.symptoms, "symptom"))

    return _one_of(rules.symptoms, take)


def _material(rules: RuleBase) -> Shape:
    def take(word: str) -> Entry:
        return Situated("material", entries.material_id(rules, word))

    return Shape("a metal", {"type": "string"}, take, "unknown-material")


def _told(rules: RuleBase, field: str) -> Shape:
    """A word of the work that is answered like a check."""
    return Shape(
        f"a {field}", {"type": "string"}, lambda word: entries.answered(rules, field, word),
        "unknown-word",
    )  # fmt: skip


def _thickness() -> Shape:
    def take(words: str) -> Entry:
        return Situated("thickness", entries.thickness(words))

    return Shape("a thickness with its unit", {"type": ["string", "number"]}, take, "bad-quantity")


def _settings(rules: RuleBase) -> Keys:
    def reading(setting: str) -> Shape:
        def take(words: str) -> Entry:
            return Measured(setting, entries.measured(rules, setting, words))

        wanted: dict[str, Any] = {"type": ["string", "number"]}
        return Shape("a reading with its unit", wanted, take, "bad-quantity")

    each = (optional(s.id, reading(s.id), s.name) for s in rules.settings.values())
    return keys("settings", *each)


def _answers(rules: RuleBase) -> Keys:
    def answer(check: str, answers: Iterable[str]) -> Shape:
        words = [*answers, *entries.PASSES]
        return _one_of(words, lambda word: entries.answered(rules, check, word), "unknown-answer")

    each = (
        optional(check.id, answer(check.id, (a.id for a in check.answers)), check.ask)
        for check in rules.checks.values()
    )
    # the guide's first questions are no checks of the rules, but they are answered like them
    first = {
        "symptom": rules.symptoms,
        "process": rules.processes,
        "group": rules.groups,
        "material": rules.materials,
        "grade": rules.grades,
        **entries.WORDS,
        "job": rules.jobs,
    }
    asked = (optional(name, answer(name, words), f"the {name}") for name, words in first.items())
    return keys("answers", *asked, *each)


def _one_of(
    known: Iterable[str], take: Callable[[str], Entry], check_id: str = "unknown-word"
) -> Shape:
    words = list(known)
    return Shape(f"one of: {', '.join(words)}", {"enum": words}, take, check_id)


def _without_empty(node: yamltree.Node) -> yamltree.Node:
    """The tree without values that say "nothing here"."""
    if isinstance(node, yamltree.List):
        items = [_without_empty(item) for item in node.items if not _is_empty(item)]
        return yamltree.List(items, node.line, node.column)
    if isinstance(node, yamltree.Mapping):
        held = {k: _without_empty(v) for k, v in node.items.items() if not _is_empty(v)}
        return yamltree.Mapping(held, node.keys, node.line, node.column)
    return node


def _is_empty(node: yamltree.Node) -> bool:
    return isinstance(node, yamltree.Text) and node.value.strip() in LEFT_OUT
