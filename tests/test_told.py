"""What a person told, put back into words."""

from __future__ import annotations

from weldwhy.told import SHORTEST, question


def test_the_sentence_that_asks_is_told_with_the_one_it_leans_on() -> None:
    asked = "Look at the cooled tungsten. Bright and silvery, or blue, purple, black?"
    assert question(asked) == asked
    cut = "Break it open. Where in it does the slag lie? Use a lens."
    assert question(cut) == "Break it open. Where in it does the slag lie?"


def test_of_a_long_check_only_the_question_is_told() -> None:
    long = "Pull the plug, open the feeder, and look at each roll with a lamp, in and out of it."
    asked = "Which of the rolls is worn, and is its groove that of the wire?"
    assert question(f"{long} {asked}") == asked


def test_a_bare_question_keeps_what_it_leans_on() -> None:
    ask = "Look at the metal for a hand's width round the joint, and at the back. What is on it?"
    told = "Look at the metal for a hand's width round the joint .. What is on it?"
    assert question(ask) == told


def test_what_is_too_long_is_cut_between_words_at_a_comma_if_there_is_one() -> None:
    long = (
        "How was each pass cleaned before the next went over it, and the last one at the very end?"
    )
    assert question(long) == "How was each pass cleaned before the next went over it .."
    plain = "word " * 40
    assert question(plain).endswith("word ..")
    assert len(question(plain)) <= SHORTEST + 3
