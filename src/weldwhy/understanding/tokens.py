"""A text cut into words, each with its stem, its place in the text and how far along it is.

"How far along" counts what matters: a content word is one step, a filler word a little, a comma
or the end of a sentence more. So a phrase may have gaps, but not reach into another sentence.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from weldwhy.understanding.stems import stem

NOT = "not"
"""The stem of every word that denies."""

_WORD = re.compile(
    r"(?P<word>w/o?(?![a-z])|[0-9]+(?:[./][0-9]+)+|\.[0-9]+|[^\W_]+(?:['\u2019\u02bc][^\W_]+)*)"
    r"|(?P<end>[.!?\n;]+|\u2026)|(?P<pause>[,:()\[\]/&]|--+|(?<=\s)-(?=\s)|\u2014|\u2013)"
)
_NO = """
no not never none nothing without neither nor nobody nowhere cannot aint nope nah non zero
hardly barely scarcely
"""
_NO_VERBS = """
is are was were do does did has have had ca wo could would should ai must need
"""
_EMPTY_WORDS = """
a an the this that these those it its i im ive id ill my me mine you your we our us he she his
her they them their there theres is are was were be been being am do does did has have had
having of to for from with at in on by as and or so if then than very really quite too also will
would could should can may might must any some about w/ t s re ve ll yes yeah ok hi hello please
thanks help anyone anybody someone because cause cos since while onto into bit lot mean sort
kind thing stuff like here well now what which who how why say says said want let own
"""
_LIGHT_WORDS = """
just only all get got when where one use try see look go make keep put give come every each up
out down back over still always again right whole much more
"""
_OPENING = "but and then so because cos cause although though while since until"
_DENIES = frozenset(_NO.split()) | {
    f"{verb}n{mark}t" for verb in _NO_VERBS.split() for mark in ("", "'")
}
_EMPTY = frozenset(_EMPTY_WORDS.split())
"""Words that count for next to nothing in a phrase."""
_LIGHT = frozenset(_LIGHT_WORDS.split())
"""Words that count for little."""
_JOINS = frozenset(_OPENING.split())
"""Words that open a new clause."""

STEP, WEAK_STEP, JOIN, PAUSE, END = 1.0, 0.35, 0.7, 1.0, 6.0


@dataclass(frozen=True, slots=True)
class Token:
    """One word. `at` tells how far along it stands, `clause` and `sentence` count from 0.

    `weak` words count for little in a phrase, `empty` ones for next to nothing.
    """

    word: str
    stem: str
    start: int
    end: int
    at: float
    clause: int
    sentence: int
    weak: bool
    empty: bool


def tokens(text: str, joined: frozenset[str] = frozenset()) -> tuple[Token, ...]:
    """The words of a text in order; two that are `joined` elsewhere are taken as one word."""
    found: list[Token] = []
    for token in _tokens(text):
        before = found[-1] if found else None
        if (
            before is not None
            and before.clause == token.clause
            and (both := before.word + token.word) in joined
        ):
            found[-1] = replace(
                token, word=both, stem=stem(both), start=before.start, at=before.at, weak=False,
                empty=False,
            )  # fmt: skip
        else:
            found.append(token)
    return tuple(found)


def _tokens(text: str) -> Iterator[Token]:
    at, clause, sentence, seen = 0.0, 0, 0, False
    for found in _WORD.finditer(text):
        if found["word"] is None:
            at += END if found["end"] else PAUSE
            clause += seen
            sentence += seen and bool(found["end"])
            seen = False
            continue
        word = found["word"].lower().replace("\u2019", "'").replace("\u02bc", "'")
        if word in _JOINS:
            at += JOIN
            clause += seen
        seen = True
        root, weak, empty = facts(word)
        at += WEAK_STEP if weak else STEP
        yield Token(word, root, found.start(), found.end(), at, clause, sentence, weak, empty)


def without(words: Sequence[Token], numbers: Collection[int]) -> tuple[Token, ...]:
    """The words, those of these numbers blank: they tell nothing."""
    return tuple(
        replace(word, stem="", weak=True) if number in numbers else word
        for number, word in enumerate(words)
    )


@lru_cache(maxsize=16384)
def facts(word: str) -> tuple[str, bool, bool]:
    """The stem of a word in lower case, and whether it is a weak or even an empty one."""
    if word in _DENIES or word == "w/o":
        return NOT, False, False
    root = stem(word.removesuffix("'s").removesuffix("'d"))
    empty = word in _EMPTY or word.partition("'")[0] in _EMPTY
    return root, empty or word in _LIGHT or root in _LIGHT, empty
