"""Texts as the words they are found by, and words brought back that were misspelt."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence

from weldwhy.slips import may_be_misspelt, slips

_WORD = re.compile(r"[a-z0-9]+")


def words_of(text: str) -> list[str]:
    """The words of a text in small letters; an apostrophe joins, every other mark parts.

    >>> words_of("Bird's-nest, 3/32 in")
    ['birds', 'nest', '3', '32', 'in']
    """
    return _WORD.findall(text.lower().replace("'", ""))


FILLERS = frozenset(
    words_of(
        "a an and are as at be but by do does for from has have how i if in is it its my no not of "
        "on or so that the then there this to too very was what when where which why will with"
    )
)
"""Words that tell nothing of what is looked for, once others do."""


def as_typed(text: str) -> str:
    """A name as somebody types it who cares for no hyphen, apostrophe or capital.

    >>> as_typed(" Bird's-nest  of wire")
    'birds nest of wire'
    """
    return " ".join(text.lower().replace("-", " ").replace("_", " ").replace("'", "").split())


def starting(vocabulary: Sequence[str], beginning: str) -> Sequence[str]:
    """The words of a sorted vocabulary that begin like this."""
    first = bisect_left(vocabulary, beginning)
    return vocabulary[first : bisect_left(vocabulary, beginning + "~", first)]


def near_words(vocabulary: Sequence[str], typed: str) -> set[str]:
    """Words of a sorted vocabulary that begin like the word typed but for one slip of the pen."""
    if not may_be_misspelt(typed):
        return set()
    return {word for slip in set(slips(typed)) for word in starting(vocabulary, slip)}
