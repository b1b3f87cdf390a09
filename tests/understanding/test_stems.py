"""Different forms of a word meet, different words do not."""

from __future__ import annotations

import pytest

from weldwhy.understanding.stems import stem


@pytest.mark.parametrize(
    "words",
    [
        "hole holes", "grind ground grinding grinded", "stick sticks sticking stuck",
        "rusty rust rusted", "aluminum aluminium alu ali", "grey gray",
        "slip slips slipping slipped",
        "narrow skinny", "puddle pool", "fire fired firing", "dry dried dries",
        "melt melts melted molten", "wire wires",
    ],
)  # fmt: skip
def test_forms_of_one_word_are_one(words: str) -> None:
    assert len({stem(word) for word in words.split()}) == 1


@pytest.mark.parametrize(
    "words", ["but butt", "site sit", "wire weird", "hot hop", "arc arch", "tip type", "low slow"]
)
def test_other_words_stay_apart(words: str) -> None:
    one, other = words.split()
    assert stem(one) != stem(other)


def test_words_with_digits_stay_as_they_are() -> None:
    assert stem("e6011") == "e6011"
