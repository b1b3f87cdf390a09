"""Classes of wire and rod named in a text, which tell the process."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from weldwhy.model import RuleBase
from weldwhy.understanding.tokens import Token

_CLASS = re.compile(r"(?:er|e)?(?:[0-9]{3,4}[a-z]{0,3}|[0-9]{2,3}[a-z]{1,3}[0-9]?)")


def named(rules: RuleBase, words: Sequence[Token]) -> Iterator[tuple[int, tuple[str, ...]]]:
    """The number of each word that names a filler, and the processes that filler is for."""
    held = _processes(rules)
    for number, word in enumerate(words):
        if _CLASS.fullmatch(word.word):
            found = held.get(_bare(word.word))
            if found:
                yield number, found


@lru_cache(maxsize=4)
def _processes(rules: RuleBase) -> dict[str, tuple[str, ...]]:
    found: dict[str, dict[str, None]] = {}
    for filler in rules.fillers.values():
        bare = _bare(filler.name.lower().partition("-")[0])
        found.setdefault(bare, {}).update(dict.fromkeys(filler.processes))
    return {bare: tuple(held) for bare, held in found.items()}


def _bare(word: str) -> str:
    return word.removeprefix("er").removeprefix("e")
