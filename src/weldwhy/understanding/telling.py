"""One text as it is told: its words, the phrases that fit, and how things are said in it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from weldwhy.case import Case, Entry
from weldwhy.model import RuleBase
from weldwhy.understanding import manner
from weldwhy.understanding.heard import Understood
from weldwhy.understanding.leanings import Leaning
from weldwhy.understanding.matching import Match
from weldwhy.understanding.tokens import Token

ABLE = frozenset(("will", "can", "could", "would"))
UNABLE = frozenset(
    ("wont", "won't", "cant", "can't", "cannot", "couldnt", "couldn't", "wouldnt", "wouldn't")
)
"""Words that tell, before "not" or by themselves, that a thing will not go."""
ALL = 0.99
"""From this share on a phrase is covered."""
MOST = 0.99
"""Highest confidence: words are never certain."""


@dataclass(frozen=True, slots=True)
class Said:
    """One meaning of one phrase that fits."""

    what: str
    match: Match
    fit: float

    @property
    def exact(self) -> float:
        """How well it fits if it is of several telling words that are all there, else 0."""
        phrase = self.match.phrase
        several = phrase.strong > 1 or " " in phrase.words
        return self.fit if several and self.match.covered >= ALL else 0.0

    def exact_in(self, names: Collection[str]) -> float:
        """How well it fits if it is one of these names and all there, else 0."""
        named = self.match.phrase.words in names and self.match.covered >= ALL
        return self.fit if named else 0.0

    @property
    def strength(self) -> float:
        """What it is ranked by: how well it fits, and how much its words tell."""
        return self.fit * self.match.worth


@dataclass
class Telling:
    """A text in a case; `used` gathers the numbers of the words that something was made of."""

    rules: RuleBase
    case: Case
    text: str
    words: Sequence[Token]
    found: Sequence[Match]
    system: str | None = None
    used: set[int] = field(default_factory=set)

    @cached_property
    def by_kind(self) -> dict[str, list[Said]]:
        """Every meaning of every match under its kind, the strongest first."""
        kinds: dict[str, list[Said]] = {}
        for match in self.found:
            for meaning in match.phrase.meanings:
                kind, _, what = meaning.partition(" ")
                kinds.setdefault(kind, []).append(Said(what, match, match.fit))
        for held in kinds.values():
            held.sort(key=lambda said: (-said.strength, said.match.first, said.what))
        return kinds

    def said(self, kind: str) -> Sequence[Said]:
        """What phrases of one kind say, the strongest first."""
        return self.by_kind.get(kind, ())

    @cached_property
    def guessed(self) -> frozenset[int]:
        """The clauses that are guesses."""
        return manner.guesses(self.text, self.words)

    @cached_property
    def asked(self) -> frozenset[int]:
        """The clauses that ask whether something is so."""
        return manner.questions(self.text, self.words)

    @cached_property
    def results(self) -> tuple[manner.Result, ...]:
        """What came of things."""
        return manner.results(self.text)

    @cached_property
    def praise(self) -> frozenset[int]:
        """The numbers of the words that liken good welding to something; they are no fault."""
        return frozenset(n for part in manner.smooth(self.text) for n in self.between(*part))

    def is_guess(self, match: Match) -> bool:
        """Whether a phrase is part of a guess."""
        return self.words[match.last].clause in self.guessed

    def is_inability(self, match: Match) -> bool:
        """Whether a denied match says what will not go: "will not fuse" is no "no fault there"."""
        clause = self.words[match.first].clause
        mine = [word.word for word in self.words if word.clause == clause]
        pairs = zip(["", *mine], mine, strict=False)
        return any(word in UNABLE or (word == "not" and prior in ABLE) for prior, word in pairs)

    def telling(self, numbers: Iterable[int]) -> set[int]:
        """Those of the words that are not mere filling."""
        return {n for n in numbers if not self.words[n].weak}

    def between(self, start: int, end: int) -> tuple[int, ...]:
        """The numbers of the words in a part of the text."""
        return tuple(n for n, word in enumerate(self.words) if start <= word.start < end)

    def made(self, source: Sequence[int], entry: Entry, confidence: float) -> Understood:
        """An entry with the words it came from, which are used now."""
        self.used.update(source)
        start, end = self.words[source[0]].start, self.words[source[-1]].end
        return Understood(self.text[start:end], entry, round(min(confidence, MOST), 2))


def source_of(said: Said | None, lean: Leaning | None) -> tuple[int, ...]:
    """The numbers of the words that speak for something: of its phrase, else of the clause."""
    if said is not None:
        return said.match.words
    return tuple(range(lean.first, lean.last + 1)) if lean is not None else ()
