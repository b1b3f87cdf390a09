"""Whether a text is about welding at all."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from weldwhy.model import RuleBase
from weldwhy.understanding.rightwords import everyday_words
from weldwhy.understanding.telling import Telling
from weldwhy.understanding.tokens import facts

LONG = 8
"""A text of so many telling words is about something else, if few of them are of the trade."""
ENOUGH = 2
"""Words of the trade that make a text one about welding."""
_LETTERS = re.compile(r"[a-z]+")


def is_elsewhere(telling: Telling) -> bool:
    """Whether the text uses no word of the trade, or is long and hardly uses one.

    In a case that is under way a few words without one may answer what was asked.
    """
    told = {word.stem for word in telling.words if not word.weak}
    used = len(told & trade_words(telling.rules))
    if len(told) >= LONG:
        return used < ENOUGH
    return not used and any(map(str.isalpha, told)) and not telling.case.symptoms


@lru_cache(maxsize=4)  # rules are equal only to themselves
def trade_words(rules: RuleBase) -> frozenset[str]:
    """The stems of the words that name things in the rules, everyday words left out."""
    words = {word for name in _names(rules) for word in _LETTERS.findall(name.lower())}
    everyday = {facts(word)[0] for word in everyday_words()}
    kept = (facts(word) for word in words)
    return frozenset(root for root, weak, _ in kept if not weak and root not in everyday)


def _names(rules: RuleBase) -> Iterator[str]:
    for term in rules.terms.values():
        yield from (term.name, *term.also)
    for symptom in rules.symptoms.values():
        yield from (symptom.name, *symptom.also)
    for material in rules.materials.values():
        yield from (material.name, *material.also)
    for setting in rules.settings.values():
        yield setting.name
    for name in rules.processes:
        yield from rules.said.get(f"process {name}", ())
