"""The search: names before phrases before texts, slips of the pen forgiven, any text taken."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.lookup.index import ALSO, EXACT, MOST, SAID, SLIP, STARTS, TEXT, index
from weldwhy.lookup.things import Ref, things
from weldwhy.lookup.words import near_words, starting, words_of

from .rules import every, shipped


def _first(text: str, kind: str = "") -> Ref:
    return index(shipped()).search(text, kind)[0].ref


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("poro", Ref("symptom", "porosity")),
        ("Undercut", Ref("symptom", "undercut")),
        ("birds nest", Ref("symptom", "birds-nest")),
        ("swiss cheese", Ref("symptom", "porosity")),  # a phrase that people say
        ("gas flow too l", Ref("cause", "gas-flow-low")),
        ("e7018", Ref("filler", "e7018")),
        ("dcep", Ref("term", "dcep")),
        ("6061", Ref("grade", "6061")),
        ("duty cy", Ref("term", "duty-cycle")),
        ("C25", Ref("gas", "c25")),
    ],
)
def test_a_thing_is_found_by_its_name_however_it_is_begun(typed: str, found: Ref) -> None:
    assert _first(typed) == found


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("porositty", "porosity"), ("prosity", "porosity"), ("undrecut", "undercut"),
        ("burnbcak", "burnback"), ("spater", "spatter"),
    ],
)  # fmt: skip
def test_one_slip_of_the_pen_is_forgiven(typed: str, found: str) -> None:
    hits = index(shipped()).search(typed)
    assert Ref("symptom", found) in [hit.ref for hit in hits[:3]]


def test_what_had_to_be_put_right_comes_after_all_that_fits() -> None:
    hits = index(shipped()).search("porositty")
    assert all(hit.rank >= SLIP for hit in hits)
    assert all(hit.rank < SLIP for hit in index(shipped()).search("porosity"))


def test_names_come_before_other_names_phrases_and_texts() -> None:
    for typed in ("gas", "arc", "spatter", "liner", "cold", "preheat"):
        ranks = [hit.rank for hit in index(shipped()).search(typed)]
        assert ranks == sorted(ranks)
        assert ranks[0] <= STARTS


def test_everything_but_sentences_is_found_exactly_by_its_own_name() -> None:
    known = things(shipped())
    for ref in every():
        if ref.kind not in ("check", "remedy", "caution", "source"):
            hits = {hit.ref: hit.rank for hit in index(shipped()).search(known.name(ref))}
            assert hits.get(ref) == EXACT, ref


def test_everything_is_found_by_its_id() -> None:
    for ref in every():
        assert ref in index(shipped()).whole(ref.id), ref


def test_a_kind_alone_can_be_searched() -> None:
    hits = index(shipped()).search("gas", "filler")
    assert {hit.ref.kind for hit in hits} <= {"filler"}


def test_a_sentence_finds_what_has_most_of_its_words() -> None:
    hits = index(shipped()).search("the weld came out full of bubbles, I give up xyzzy")
    assert Ref("symptom", "porosity") in [hit.ref for hit in hits[:5]]


def test_a_sentence_of_which_less_than_half_is_known_finds_nothing() -> None:
    assert index(shipped()).search("porosity")
    assert index(shipped()).search("porosity zzqqxx qqxxzz xxzzqq") == []


def test_a_word_that_only_phrases_have_counts_as_a_phrase() -> None:
    (hit,) = index(shipped()).search("accumulator")
    assert hit.rank == SAID


def test_of_several_words_the_one_found_worst_counts() -> None:
    (hit,) = [h for h in index(shipped()).search("undercut grinder") if h.ref.id == "undercut"]
    assert hit.rank == TEXT


def test_a_word_in_a_text_counts_least() -> None:
    (hit,) = [h for h in index(shipped()).search("grinder") if h.ref.id == "undercut"]
    assert hit.rank == TEXT > ALSO


@given(st.text(max_size=70))
def test_any_text_finds_known_things_or_nothing(text: str) -> None:
    hits = index(shipped()).search(text)
    assert len(hits) <= MOST
    assert len({hit.ref for hit in hits}) == len(hits)
    assert all(hit.ref in things(shipped()) for hit in hits)
    assert all(isinstance(word, str) for word in index(shipped()).nearest(text))


@given(st.data())
def test_any_beginning_of_a_name_finds_the_thing(data: st.DataObject) -> None:
    """Unless so much begins like this that the list is full."""
    named = [r for r in every() if r.kind in ("symptom", "cause", "term", "gas", "filler")]
    ref = data.draw(st.sampled_from(named))
    name = things(shipped()).name(ref)
    begun = name[: data.draw(st.integers(1, len(name)))]
    hits = index(shipped()).search(begun)
    assert not words_of(begun) or len(hits) == MOST or ref in [hit.ref for hit in hits]


def test_a_digit_goes_on_only_where_a_name_does() -> None:
    known = index(shipped())
    assert known.continues("e7")
    assert known.continues("stainless 3")
    assert known.continues(" 6")
    assert not known.continues("porosity1")
    assert known.search("5213")  # a number of ISO 6520-1, which stands in texts only
    assert not known.continues("5213")
    assert not known.continues("")


@given(st.text("abcdefgh", min_size=1, max_size=4))
def test_a_beginning_is_found_as_by_looking_at_every_word(begun: str) -> None:
    words = sorted(["a", "abc", "abd", "b", "bad", "cab", "cabbage", "dead", "head", "heads"])
    assert list(starting(words, begun)) == [word for word in words if word.startswith(begun)]


def test_short_words_and_numbers_are_not_put_right() -> None:
    words = ["arc", "arm", "undercut"]
    assert near_words(words, "arx") == set()
    assert near_words(words, "7018") == set()
    assert near_words(words, "undecut") == {"undercut"}
