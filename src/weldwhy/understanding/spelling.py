"""Misspelt words brought back to a word of the phrase book."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from weldwhy.slips import may_be_misspelt, slips
from weldwhy.understanding.phrases import Book
from weldwhy.understanding.stems import stem
from weldwhy.understanding.tokens import Token

LONG = 8
"""Letters of a word from which on two slips are looked through."""


def corrected(book: Book, words: Sequence[Token]) -> tuple[Token, ...]:
    """The words, those nobody knows taken for the nearest word of the phrase book."""
    return tuple(_corrected(book, word) for word in words)


def _corrected(book: Book, token: Token) -> Token:
    word = token.word
    if token.weak or not may_be_misspelt(word):
        return token
    if word in book.known or token.stem in book.stems:
        return token
    near = _nearest(book, word)
    return replace(token, stem=stem(near)) if near else token


@lru_cache(maxsize=2048)
def _nearest(book: Book, word: str) -> str:
    """The commonest word of the book at one slip of the pen, or at two if the word is long."""
    found = [near for near in slips(word) if near in book.vocabulary]
    if not found and len(word) >= LONG:
        shorter = _shorter_words(book)
        found = [near for each in _shorter(word) for near in shorter.get(each, ())]
    best = max(
        found, key=lambda near: (near[0] == word[0], book.vocabulary[near], near), default=""
    )
    return best if best[:1] == word[0] or len(word) > 5 else ""


@lru_cache(maxsize=4)
def _shorter_words(book: Book) -> dict[str, tuple[str, ...]]:
    """The long words of the book by what is left of them without one letter."""
    found: dict[str, tuple[str, ...]] = {}
    for word in book.vocabulary:
        if len(word) >= LONG:
            for each in _shorter(word):
                found[each] = (*found.get(each, ()), word)
    return found


def _shorter(word: str) -> Iterator[str]:
    return (word[:place] + word[place + 1 :] for place in range(len(word)))
