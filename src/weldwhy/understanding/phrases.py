"""The phrase book: everything that the rules know people say, with how much each word tells."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import log
from typing import NamedTuple

from weldwhy.model import RuleBase
from weldwhy.understanding.rightwords import right_words
from weldwhy.understanding.tokens import NOT, STEP, WEAK_STEP, facts

EMPTY_WORTH, WEAK_WORTH, ALONE_WORTH = 0.1, 0.35, 0.9
"""What "the" counts for, what "keeps" does, and what it does beside one other word only."""
_WORDS = re.compile(r"w/o?(?![a-z])|[0-9]+(?:[./][0-9]+)+|\.[0-9]+|[a-z0-9]+(?:'[a-z0-9]+)*")
SHORTEST_JOINED = 7
"""Letters of a word from which on it is looked for as two words."""
SMALL = 40
"""So many meanings a small book is taken to have, that its words tell something."""
LEAST_WORTH, MOST_WORTH = 0.6, 3.2


class Part(NamedTuple):
    """One word of a phrase: as written, its stem, and what it is worth."""

    word: str
    stem: str
    worth: float
    weak: bool


class Phrase(NamedTuple):
    """One thing that people say: its meanings and its words.

    `strong` is how many of them tell something, `span` how far they reach, `denied` the stem that
    stands after a word that denies ("come" in "wire will not come"), "" if none does.
    """

    words: str
    meanings: tuple[str, ...]
    parts: tuple[Part, ...]
    span: float
    total: float
    strong: int
    denied: str


@dataclass(frozen=True, slots=True, eq=False)
class Book:
    """All phrases, found by their most telling word, and the words that need no correction."""

    phrases: tuple[Phrase, ...]
    by_stem: dict[str, tuple[int, ...]]
    vocabulary: dict[str, int]
    stems: frozenset[str]
    known: frozenset[str]
    joined: frozenset[str]


@lru_cache(maxsize=4)  # rules are equal only to themselves
def book(rules: RuleBase) -> Book:
    """The phrase book of these rules."""
    meanings: dict[str, dict[str, None]] = {}
    for words, meaning in _said(rules):
        meanings.setdefault(words, {})[meaning] = None
    joined = _joined(meanings)
    cut = {words: _cut(words, joined) for words in meanings}
    met: dict[str, set[str]] = {}
    for words, held in meanings.items():
        for word in cut[words]:
            met.setdefault(facts(word)[0], set()).update(held)
    everything = len({meaning for held in meanings.values() for meaning in held})
    worth = {root: _worth(everything, len(held)) for root, held in met.items()}
    made: dict[tuple[str, bool], Part] = {}
    phrases = [
        _phrase(words, tuple(held), cut[words], worth, made)
        for words, held in meanings.items()
        if any(not weak and root != NOT for root, weak, _ in map(facts, cut[words]))
    ]
    by_stem: dict[str, list[int]] = {}
    for number, phrase in enumerate(phrases):
        for root in _anchors(phrase):
            by_stem.setdefault(root, []).append(number)
    vocabulary: dict[str, int] = {}
    for words in meanings:
        for word in words.split():
            if word.isalpha() and len(word) > 3:
                vocabulary[word] = vocabulary.get(word, 0) + 1
    return Book(
        tuple(phrases),
        {root: tuple(numbers) for root, numbers in by_stem.items()},
        vocabulary,
        frozenset(met),
        right_words(rules) | vocabulary.keys(),
        joined,
    )


def _anchors(phrase: Phrase) -> tuple[str, ...]:
    """The two most telling words of a phrase: if one is missing, the other finds it."""
    best = second = 0.0
    first, next_ = "", ""
    for part in phrase.parts:
        if part.weak or part.stem in (NOT, first):
            continue
        if part.worth > best:
            first, next_, best, second = part.stem, first, part.worth, best
        elif part.worth > second:
            next_, second = part.stem, part.worth
    return (first, next_) if next_ else (first,)


def _joined(meanings: Iterable[str]) -> frozenset[str]:
    """Words that the book also writes as two, such as "fluxcore" and "pinholes"."""
    single = {word for words in meanings for word in words.split() if word.isalpha()}
    pairs = {a + b for words in meanings for a, b in pairwise(words.split()) if a.isalpha()}
    return frozenset(each for each in single & pairs if len(each) >= SHORTEST_JOINED)


def _cut(words: str, joined: frozenset[str]) -> list[str]:
    """The words of a phrase; the weak ones are held once each."""
    found: list[str] = []
    for word in _WORDS.findall(words):
        if found and found[-1] + word in joined:
            found[-1] += word
        else:
            found.append(word)
    if len(set(found)) < len(found):
        found = [w for n, w in enumerate(found) if not facts(w)[1] or w not in found[:n]]
    return found


def _phrase(
    words: str, meanings: tuple[str, ...], cut: list[str], worth: dict[str, float],
    made: dict[tuple[str, bool], Part],
) -> Phrase:  # fmt: skip
    """The phrase of these words, given what each stem is worth; `made` holds the parts so far."""
    # in "keeps sticking" the weak word makes the phrase, in "sticks to the cold plate" it does not
    alone = sum(not facts(word)[1] and facts(word)[0] != NOT for word in cut) == 1
    parts, total, strong = [], 0.0, 0
    span = gap = 0.0
    denies, denied = False, ""
    for word in cut:
        part = made.get((word, alone))
        if part is None:
            part = made[word, alone] = _part(word, alone, worth)
        parts.append(part)
        total += part.worth
        gap += WEAK_STEP if part.weak else STEP
        if not part.weak:
            span, gap = span + gap if strong else 0.0, 0.0
            strong += 1
            denied = denied or (part.stem if denies else "")
            denies = part.stem == NOT
    return Phrase(words, meanings, tuple(parts), span, total, strong, denied)


def _part(word: str, alone: bool, worth: dict[str, float]) -> Part:
    """A word of a phrase that has one telling word only, or more."""
    root, weak, empty = facts(word)
    weak_worth = ALONE_WORTH if alone else WEAK_WORTH
    return Part(word, root, EMPTY_WORTH if empty else weak_worth if weak else worth[root], weak)


def _worth(everything: int, met: int) -> float:
    return min(MOST_WORTH, max(LEAST_WORTH, log(max(everything, SMALL) / met) * 0.6))


def _said(rules: RuleBase) -> Iterator[tuple[str, str]]:
    """Every phrase, in lower case, with its meaning."""
    for meaning, phrases in rules.said.items():
        if not meaning.startswith("beside "):
            yield from ((phrase, meaning) for phrase in phrases)
    for name, symptom in rules.symptoms.items():
        for words in (*names_in(symptom.name), *symptom.also):
            yield words.lower(), f"symptom {name}"
    for name, material in rules.materials.items():
        for words in (material.name, *material.also):
            yield words.lower(), f"material {name}"
    for name, cause in rules.causes.items():
        for words in names_in(cause.name):
            yield words.lower(), f"cause {name}"


def names_in(text: str) -> Iterator[str]:
    """A name without its bracket, and what stands in the bracket."""
    bare, bracket, rest = text.partition("(")
    yield bare.strip()
    if bracket:
        yield rest.strip(" )")
