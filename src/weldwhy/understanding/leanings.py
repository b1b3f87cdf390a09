"""What the words of a clause lean towards, when no phrase of the book fits them as a whole.

Each meaning is known by the words of all its phrases. A word that few meanings share, and that
several phrases of one meaning hold, speaks for it; a clause leans to the sum over its words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from math import log

from weldwhy.model import RuleBase
from weldwhy.understanding.phrases import SMALL, book
from weldwhy.understanding.tokens import NOT, Token

LEAST = 0.25
"""Words that speak for a meaning with less are left out: they are everywhere."""
LONG = 4
"""Words of a clause from which on it says more than one thing, and each the less."""
THINNED = 0.03


@dataclass(frozen=True, slots=True)
class Leaning:
    """How far the words from `first` to `last` lean to a meaning.

    `covered` is the score against that of a usual phrase of the meaning, `beside` against the best
    score of any meaning there, `words` how many spoke, `odd` whether only one of the two denies.
    """

    meaning: str
    score: float
    covered: float
    beside: float
    words: int
    first: int
    last: int
    odd: float


@dataclass(frozen=True, slots=True, eq=False)
class Index:
    """Which meanings of one kind a stem speaks for, and how much a usual phrase has of each."""

    speaks: dict[str, tuple[tuple[int, float], ...]]
    meanings: tuple[str, ...]
    usual: tuple[float, ...]
    denies: tuple[float, ...]


@lru_cache(maxsize=8)
def index(rules: RuleBase, kind: str) -> Index:
    """The words of all phrases of one kind of meaning."""
    held: dict[str, list[set[str]]] = {}
    for phrase in book(rules).phrases:
        stems = {part.stem for part in phrase.parts if not part.weak}
        for meaning in phrase.meanings:
            if meaning.startswith(f"{kind} "):
                held.setdefault(meaning.removeprefix(f"{kind} "), []).append(stems)
    counts = [Counter(root for stems in phrases for root in stems) for phrases in held.values()]
    met = Counter(root for count in counts for root in count)
    told = {root: log(max(len(counts), SMALL) / times) for root, times in met.items()}
    speaks: dict[str, list[tuple[int, float]]] = {}
    usual, denies = [], []
    for number, (count, phrases) in enumerate(zip(counts, held.values(), strict=True)):
        worth = {root: told[root] * times / (times + 1) for root, times in count.items()}
        for root, value in worth.items():
            if value >= LEAST and root != NOT:
                speaks.setdefault(root, []).append((number, value))
        usual.append(sum(worth[root] for stems in phrases for root in stems) / len(phrases))
        denies.append(count[NOT] / len(phrases))
    return Index(
        {root: tuple(pairs) for root, pairs in speaks.items()},
        tuple(held), tuple(max(each, 0.5) for each in usual), tuple(denies),
    )  # fmt: skip


def leanings(rules: RuleBase, words: Sequence[Token], kind: str) -> dict[str, Leaning]:
    """The best leaning of the text to each meaning of a kind, where there is any."""
    known = index(rules, kind)
    best: dict[str, Leaning] = {}
    for span in _spans(words):
        for leaning in _of(known, words, span):
            held = best.get(leaning.meaning)
            if held is None or _closer(leaning, held):
                best[leaning.meaning] = leaning
    return best


def _closer(one: Leaning, other: Leaning) -> bool:
    """Whether one scores more than the other, or as much in fewer words."""
    return (one.score, one.first - one.last) > (other.score, other.first - other.last)


def _spans(words: Sequence[Token]) -> Iterator[tuple[int, int]]:
    """Each clause, and each with the next one of its sentence: numbers of first and last word."""
    clauses: list[tuple[int, int, int]] = []
    for _, group in groupby(enumerate(words), key=lambda pair: pair[1].clause):
        numbers = [number for number, _ in group]
        clauses.append((words[numbers[0]].sentence, numbers[0], numbers[-1]))
    for place, (sentence, first, last) in enumerate(clauses):
        yield first, last
        if place + 1 < len(clauses) and clauses[place + 1][0] == sentence:
            yield first, clauses[place + 1][2]


def _of(known: Index, words: Sequence[Token], span: tuple[int, int]) -> Iterator[Leaning]:
    first, last = span
    inside = words[first : last + 1]
    stems = {word.stem for word in inside if not word.weak}
    denied = NOT in stems
    scores: dict[int, float] = {}
    spoke: dict[int, int] = {}
    for root in stems:
        for number, value in known.speaks.get(root, ()):
            scores[number] = scores.get(number, 0.0) + value
            spoke[number] = spoke.get(number, 0) + 1
    thin = 1.0 + THINNED * max(0, len(stems) - LONG)
    top = max(scores.values(), default=1.0)
    for number, score in scores.items():
        yield Leaning(
            known.meanings[number], score / thin, score / thin / known.usual[number], score / top,
            spoke[number], first, last, abs(known.denies[number] - denied),
        )  # fmt: skip
