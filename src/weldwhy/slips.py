"""Slips of the pen: what one slip makes of a word, to find the word that was meant."""

from __future__ import annotations

from collections.abc import Iterator

SHORTEST, LONGEST = 4, 40
"""Letters of words that are taken for misspelt ones: too much is near a shorter one, and a longer
one nobody says, while it would have thousands of slips."""
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def may_be_misspelt(word: str) -> bool:
    """Whether it is worth while to look for the word that was meant."""
    return SHORTEST <= len(word) <= LONGEST and word.isascii() and word.isalpha()


def slips(word: str) -> Iterator[str]:
    """Every text that is one letter more, less, other, or two letters changed about, away."""
    for place in range(len(word) + 1):
        left, right = word[:place], word[place:]
        if right:
            yield left + right[1:]
        if len(right) > 1:
            yield left + right[1] + right[0] + right[2:]
        for letter in _LETTERS:
            if right:
                yield left + letter + right[1:]
            yield left + letter + right
