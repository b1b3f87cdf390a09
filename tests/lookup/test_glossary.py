"""The words of the trade: enough of them, short, and none that a symptom's page explains."""

from __future__ import annotations

import re

from .rules import shipped

LEAST = 110


def test_there_are_enough_words() -> None:
    assert len(shipped().terms) >= LEAST


def test_a_meaning_is_two_sentences_at_most_and_ends_like_one() -> None:
    for term in shipped().terms.values():
        ends = re.findall(r"[.!?](?= |$)", term.means)
        assert 1 <= len(ends) <= 2, term.id
        assert term.means.endswith("."), term.id


def test_no_word_is_the_name_of_a_symptom() -> None:
    names = {symptom.name.partition(" (")[0].lower() for symptom in shipped().symptoms.values()}
    assert not names & {term.name.lower() for term in shipped().terms.values()}


def test_no_two_words_share_a_name() -> None:
    seen: dict[str, str] = {}
    for term in shipped().terms.values():
        for name in {term.name.lower(), *(other.lower() for other in term.also)}:
            assert name not in seen, f"{term.id} and {seen[name]} are both called {name}"
            seen[name] = term.id


def test_every_word_sees_something_unless_another_sees_it() -> None:
    seen = {name for term in shipped().terms.values() for name in term.see}
    for term in shipped().terms.values():
        assert term.see or term.id in seen, term.id
