"""Phrases found in the words of a text, with gaps and in any order, each with how well it fits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from weldwhy.understanding.phrases import Book, Part, Phrase
from weldwhy.understanding.stems import stem
from weldwhy.understanding.tokens import NOT, Token

REACH = 5.5
"""How far from the most telling word of a phrase the others may stand."""
SCOPE = 4.6
"""How far a word that denies reaches forward."""
NEAR = 2.5
"""How far a word that denies may stand from the word it denies in a phrase."""
LOOSENESS, CROSSING = 0.10, 0.06
"""What each step of gap costs, and each clause that is left."""
COVERING = 1.5
"""How sharply a fit falls with what is missing of the phrase."""
LEAST_COVERED = 0.62
TELLING = 1.9
"""Worth of words from which a phrase stands by itself."""
SEVERAL = 1.2
"""The same of several words that are all there: "wire will not come"."""
OTHER_FORM = 0.66
"""What a single word is worth in another form: "splash" for "splashing"."""
LONE = 0.5
"""What one telling word of several is worth: "morning" for "empty the next morning"."""
NEARLY_ALL = 0.8
"""A phrase that denies is itself from this share on: "wire will not come" has few telling words."""
TURNED = 0.85
"""What two words are worth that stand apart and the other way about."""
LEAST = 0.3
"""Fits below this are not looked at."""


GOES_ON = frozenset(
    stem(word) for word in ["stop", "quit", "rid", "know", "sure", "understand", "matter", "wonder"]
)
"""Words after "not" that leave a thing as it is: "it will not stop spitting"."""
ASKING = frozenset(("why", "how", "what", "where", "when", "if", "whether"))
"""Words before which "not" ends: "cannot see why it spits"."""


@dataclass(frozen=True, slots=True, eq=False)
class Match:
    """A phrase in the text: the numbers of its words, how well it fits, whether it is denied."""

    phrase: Phrase
    words: tuple[int, ...]
    fit: float
    denied: bool
    worth: float
    covered: float

    @property
    def first(self) -> int:
        """Number of its first word."""
        return self.words[0]

    @property
    def last(self) -> int:
        """Number of its last word."""
        return self.words[-1]


def going_on(words: Sequence[Token]) -> Iterator[int]:
    """The numbers of the words that say only that a thing goes on: "will not stop" spitting."""
    for number, word in enumerate(words[:-2]):
        after, verb = words[number + 1 : number + 3]
        if word.stem == NOT and after.stem in GOES_ON and verb.word.endswith("ing"):
            yield from (number, number + 1)


def matches(book: Book, words: Sequence[Token]) -> Iterator[Match]:
    """Every phrase of the book that fits somewhere in the words, once for the same words."""
    places: dict[str, list[int]] = {}
    for number, word in enumerate(words):
        places.setdefault(word.stem, []).append(number)
    seen: set[tuple[int, tuple[int, ...]]] = set()
    for root, held in places.items():
        for number in book.by_stem.get(root, ()):
            for place in held:
                match = _match(book.phrases[number], root, place, places, words)
                if match is not None and (number, match.words) not in seen:
                    seen.add((number, match.words))
                    yield match


def _match(
    phrase: Phrase, root: str, place: int, places: dict[str, list[int]], words: Sequence[Token]
) -> Match | None:
    """The phrase around one of its words, or None if too little of it is there."""
    centre = words[place].at
    found: dict[int, Part] = {}
    gained = 0.0
    for part in phrase.parts:
        if part.stem == root and place not in found:
            number = place
        else:
            near = [
                (abs(words[n].at - centre), n)
                for n in places.get(part.stem, ())
                if n not in found and n != place and abs(words[n].at - centre) <= REACH
            ]
            if not near:
                if part.stem == NOT:
                    return None
                continue
            number = min(near)[1]
        gained += part.worth
        found[number] = part
    covered = gained / phrase.total
    if covered < LEAST_COVERED:
        return None
    chosen = tuple(sorted(found))
    if phrase.denied and not _denies_alike(phrase, found, words):
        return None
    kept = [n for n in chosen if not words[n].weak] or list(chosen)
    loose = max(0.0, words[kept[-1]].at - words[kept[0]].at - phrase.span)
    crossed = words[kept[-1]].clause - words[kept[0]].clause
    enough = min(TELLING, max(phrase.total, SEVERAL)) if phrase.strong > 1 else TELLING
    fit = covered**COVERING * min(1.0, gained / enough)
    fit /= 1.0 + LOOSENESS * loose + CROSSING * crossed
    if len([n for n in kept if words[n].stem != NOT]) == 1:
        fit *= _as_written(found, kept, words) * _lone(phrase, covered)
    elif len(kept) == 2 and loose > 0.5 and list(found) != sorted(found):
        fit *= TURNED
    if fit < LEAST:
        return None
    return Match(phrase, chosen, fit, _denied(phrase, chosen, words), gained, covered)


def _lone(phrase: Phrase, covered: float) -> float:
    """What a phrase is worth of which one telling word is there, besides one that denies."""
    denies = any(part.stem == NOT for part in phrase.parts)
    return LONE if phrase.strong > 1 and not (denies and covered >= NEARLY_ALL) else 1.0


def _denies_alike(phrase: Phrase, found: dict[int, Part], words: Sequence[Token]) -> bool:
    """Whether in the text the same word is denied as in the phrase, right before it."""
    denies = [n for n, part in found.items() if part.stem == NOT]
    after = [n for n, part in found.items() if part.stem == phrase.denied]
    return any(
        b - a > 0 and words[a].clause == words[b].clause and words[b].at - words[a].at <= NEAR
        for a in denies
        for b in after
    )


def _as_written(found: dict[int, Part], kept: Sequence[int], words: Sequence[Token]) -> float:
    """How far one word alone can be trusted: less where another form of it is meant."""
    for number in kept:
        typed, meant = words[number].word, found[number].word
        if words[number].stem != NOT and typed.rstrip("s") != meant.rstrip("s"):
            return OTHER_FORM
    return 1.0


def _denied(phrase: Phrase, chosen: Sequence[int], words: Sequence[Token]) -> bool:
    """Whether an odd number of words deny what the phrase says."""
    content = [n for n in chosen if not words[n].weak and words[n].stem != NOT] or list(chosen)
    first, last = content[0], content[-1]
    near = words[first].at - SCOPE
    count = 0
    for number in range(last - 1, -1, -1):
        word = words[number]
        if word.clause < words[first].clause or word.at < near:
            break
        if word.word in ASKING:
            break
        if word.stem == NOT and number not in chosen and words[number + 1].stem not in GOES_ON:
            count += 1
    return count % 2 == 1
