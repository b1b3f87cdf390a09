"""The single values of rule files: text, ids, words, numbers, yes/no, quantities, sources.

Each function declares one; reading it gives the value or a problem in plain words.
"""

from __future__ import annotations

import re

from weldwhy import units
from weldwhy.problems import did_you_mean
from weldwhy.shape import ID, JsonSchema, Shape
from weldwhy.unitwords import EXAMPLES

_NUMBER = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,9})?")


def text(words: str = "text") -> Shape:
    """Any text on one line; line ends inside it become spaces."""
    return Shape(words, {"type": ["string", "number", "boolean"]}, str)


def phrase() -> Shape:
    """Words as people say them, in small letters; what a text is searched for."""
    return pattern(
        "words in small letters, without marks, 60 letters at most",
        "(?=.*[a-z0-9])[a-z0-9%./' -]{2,60}", "looks like a sponge",
    )  # fmt: skip


def in_short(most: int) -> Shape:
    """Text that a wall chart has room for: at most so many letters."""
    return pattern(f"text of at most {most} letters", f".{{1,{most}}}", "Let it cool, then grind.")


def new_id(noun: str) -> Shape:
    """The id of the item itself."""
    return Shape(f"the id of the {noun}", _id_schema(), _as_id, "bad-id")


def ref(kind: str) -> Shape:
    """The id of an item of `kind`, which must exist somewhere in the rule base."""
    return Shape(f"the id of a {kind}", _id_schema(), _as_id, "bad-id", kind)


def cited() -> Shape:
    """A source: "common practice", or a source id, a comma and the place in it."""
    words = '"common practice", or a source id and the place after a comma'
    return Shape(words, {"type": "string"}, str, refers="source")


def word(*known: str, called: str = "") -> Shape:
    """One of a few words; `called` names them where the list itself would be too long."""

    def take(found: str) -> str:
        if found not in known:
            raise ValueError(f'"{found}" is not a word for this{did_you_mean(found, known)}')
        return found

    words = called or f"one of: {', '.join(known)}"
    return Shape(words, {"enum": list(known)}, take, "unknown-word")


def number(low: float, high: float) -> Shape:
    """A plain number between bounds, both allowed."""

    def take(found: str) -> float:
        if not _NUMBER.fullmatch(found):
            raise ValueError(f'"{found}" is not a number; write it like 0.5 or 12')
        if not low <= float(found) <= high:
            raise ValueError(f"{found} is outside {low:g} to {high:g}")
        return float(found)

    schema = {"type": "number", "minimum": low, "maximum": high}
    return Shape(f"a number from {low:g} to {high:g}", schema, take, "bad-number")


def yes_no() -> Shape:
    """Yes or no, in those words."""

    def take(found: str) -> bool:
        if found not in ("yes", "no"):
            raise ValueError(f'"{found}" must be yes or no')
        return found == "yes"

    return Shape("yes or no", {"enum": ["yes", "no", True, False]}, take, "unknown-word")


def quantity(kind: str) -> Shape:
    """A number with its unit; the value is the text, known to be good."""

    def take(found: str) -> str:
        units.parse(found, kind)
        return found

    words = f"a {kind} with its unit, such as {EXAMPLES[kind].split(',')[0].split(' or ')[0]}"
    return Shape(words, {"type": "string"}, take, "bad-quantity")


def pattern(words: str, matches: str, example: str, refers: str = "") -> Shape:
    """Text of a fixed form; what precedes its first blank or comma may name an item."""
    form = re.compile(matches)

    def take(found: str) -> str:
        if not form.fullmatch(found):
            raise ValueError(f'"{found}" must be {words}, such as "{example}"')
        return found

    schema = {"type": "string", "pattern": f"^(?:{matches})$", "examples": [example]}
    return Shape(words, schema, take, refers=refers)


def _as_id(found: str) -> str:
    if len(found) > 60 or not ID.fullmatch(found):
        raise ValueError(f'"{found}" is not an id; use small letters, digits and "-"')
    return found


def _id_schema() -> JsonSchema:
    return {"type": "string", "pattern": f"^{ID.pattern}$"}
