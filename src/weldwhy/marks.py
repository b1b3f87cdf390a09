"""Marks on a dial, numbers or letters: where each stands in the order, and back to words."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable

_NUMBER = re.compile(r"[0-9]{1,3}(?:\.[0-9]{1,2})?")
_BETWEEN = re.compile(r"between ([A-Z]) and ([A-Z])")
FINE = 20
"""A dial with more marks than this is set to whole marks, one with fewer to halves."""


def place(mark: str) -> float | None:
    """Where a mark stands: 6.5 for "6.5", 4 for "D" or "d". None for what is no mark.

    >>> place("6.5"), place("d"), place("high")
    (6.5, 4.0, None)
    """
    if _NUMBER.fullmatch(mark):
        return float(mark)
    if len(mark) == 1 and mark.isascii() and mark.isalpha():
        return float(ord(mark.upper()) - ord("A") + 1)
    return None


def are_letters(marks: Iterable[str]) -> bool:
    """Whether the marks of a dial are letters."""
    return all(mark.isalpha() for mark in marks)


def about(where: float, letters: bool, span: float = 0.0) -> str:
    """A place between marks in words, to half a mark; to a whole one where `span` is over FINE.

    >>> about(6.4, False), about(4.6, True), about(4.1, True)
    ('about 6.5', 'between D and E', 'about D')
    """
    step = 0.5 if span <= FINE else 1.0
    where = math.floor(where / step + 0.5) * step
    if not letters:
        return f"about {where:g}"
    if where % 1:
        return f"between {_letter(where - 0.5)} and {_letter(where + 0.5)}"
    return f"about {_letter(where)}"


def read_about(words: str) -> float | None:
    """The place that words of `about`, or a mark alone, stand for; None for anything else.

    >>> read_about("between D and E"), read_about("about 6.5"), read_about("9"), read_about("")
    (4.5, 6.5, 9.0, None)
    """
    found = _BETWEEN.fullmatch(words)
    if found:
        return sum(ord(letter) - ord("A") + 1 for letter in found.groups()) / 2
    return place(words.removeprefix("about "))


def _letter(where: float) -> str:
    return chr(ord("A") + round(where) - 1)
