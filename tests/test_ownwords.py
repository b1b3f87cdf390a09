"""The person's own words in the case: kept, clean, bounded, undone last, and never evidence."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy.bench import Bench
from weldwhy.case import (
    LONGEST_TEXT,
    LONGEST_WORDS,
    Answered,
    Case,
    CaseError,
    Entry,
    Measured,
    Reported,
    Said,
    Situated,
    Supposed,
    Told,
    Tried,
    from_data,
    to_data,
)
from weldwhy.casefile import kept
from weldwhy.entries import in_own_words, still_known
from weldwhy.interview import Interview
from weldwhy.plaintext import clean
from weldwhy.store import Store
from weldwhy.understanding.heard import Heard, Understood
from weldwhy.understanding.hearing import LIMIT, understand

RULES = shipped_rules()
TEXT = "mig, bubbles all over, some wind, and my uncle says hello"
HEARD = Heard(
    (
        Understood("mig", Situated("process", "gmaw"), 1.0),
        Understood("bubbles", Reported("porosity"), 0.9),
        Understood("some wind", Supposed("air-movement", "wind"), 0.5),
    ),
    ("and my uncle says hello",),
)
HOSTILE = "\x1b[31mred\x1b[0m \x1b]0;x\x07 \u202e</p><script>x</script>\r\n\x9b2J \ud83d | *a*"
FREE = st.text(max_size=40) | st.just(HOSTILE) | st.text(max_size=9).map(lambda t: t * 2000)


def _told(words: st.SearchStrategy[str]) -> st.SearchStrategy[Told]:
    return st.one_of(
        st.builds(Situated, st.just("thickness"), st.text(max_size=5), words=words),
        st.builds(Reported, st.text(max_size=5), words=words),
        st.builds(Supposed, st.text(max_size=5), st.text(max_size=5), words=words),
        st.builds(Measured, st.text(max_size=5), st.text(max_size=5), words=words),
        st.builds(Tried, st.text(max_size=5), st.text(max_size=5), st.just("better"), words=words),
    )


SAID = st.builds(Said, FREE, st.lists(FREE, max_size=2), st.lists(FREE, max_size=2))
CASES = st.lists(SAID | _told(st.just("")) | _told(FREE), max_size=8).map(
    lambda entries: Case(tuple(entries))
)


def _words(case: Case) -> list[tuple[Said, list[tuple[Entry, str]]]]:
    """Own words with what was taken from them; the words too, which equality leaves out."""
    return [(said, [(e, e.words) for e in taken]) for said, taken in case.own_words]


def _bench(folder: Path) -> Bench:
    return Bench(RULES, Store(folder), Interview, lambda: "2026-11-30T10:00:00+00:00")


# what they are


def test_a_text_stands_before_what_was_taken_from_it() -> None:
    said, *taken = in_own_words(TEXT, HEARD)
    assert said == Said(TEXT, HEARD.not_understood)
    assert taken == list(HEARD.entries)
    assert _words(Case((said, *taken, Reported("spatter")))) == [
        (said, [(u.entry, u.text) for u in HEARD.understood])
    ]


def test_what_was_struck_out_is_no_entry_but_named() -> None:
    said, *taken = in_own_words(TEXT, HEARD, {1})
    assert taken == [HEARD.entries[0], HEARD.entries[2]]
    assert isinstance(said, Said)
    assert said.struck == ("bubbles",)


def test_words_that_still_count_for_something_are_not_called_struck_out() -> None:
    twice = Heard((*HEARD.understood, Understood("bubbles", Supposed("air-movement", "wind"), 0.5)))
    said, *_ = in_own_words(TEXT, twice, {1})
    assert said == Said(TEXT)


def test_what_was_taken_from_no_words_is_taken_from_the_whole_text() -> None:
    _, taken = in_own_words("mig", Heard((Understood("", Situated("process", "gmaw"), 1.0),)))
    assert not isinstance(taken, Said)
    assert taken.words == "mig"


def test_who_strikes_all_of_it_out_has_taken_it_back() -> None:
    assert in_own_words(TEXT, HEARD, {0, 1, 2}) == ()


def test_a_text_of_which_nothing_is_understood_is_kept_all_the_same() -> None:
    assert in_own_words("fuzz", Heard((), ("fuzz",))) == (Said("fuzz", ("fuzz",)),)


@pytest.mark.parametrize("nothing", ["", "  \n", "\x1b[2J\x07", "\u202e"])
def test_a_text_without_anything_to_be_seen_is_none(nothing: str) -> None:
    assert in_own_words(nothing, understand(RULES, nothing)) == ()


def test_the_same_told_in_other_words_is_the_same() -> None:
    assert Reported("porosity", words="bubbles") == Reported("porosity")
    assert Case((Reported("porosity", words="x"),)).symptoms == ("porosity",)


def test_own_words_alone_change_nothing_that_is_believed() -> None:
    work = (Situated("process", "gmaw"), Reported("porosity"), Situated("material", "mild-steel"))
    without, beside = (
        Interview(RULES, Case(case)) for case in (work, (Said("rust, wind", ("rust",)), *work))
    )
    assert without.ranked == beside.ranked
    assert without.step == beside.step
    assert not Interview(RULES, Case((Said("rust, wind"),))).ranked


# clean and bounded


@given(FREE, FREE)
def test_nothing_in_them_can_drive_a_terminal_and_none_is_long(text: str, words: str) -> None:
    said, taken = Said(text, (words,), (words,)), Reported("porosity", words=words)
    for held in (said.text, *said.not_understood, *said.struck, taken.words):
        assert held.isprintable()
        assert clean(held) == held
    assert len(said.text) <= LONGEST_TEXT
    assert all(len(each) <= LONGEST_WORDS for each in (*said.struck, taken.words))


@given(FREE)
def test_to_clean_them_twice_changes_nothing(text: str) -> None:
    once = Said(text, (text,), (text,))
    assert Said(once.text, once.not_understood, once.struck) == once


def test_as_much_is_kept_as_is_read() -> None:
    assert LONGEST_TEXT >= LIMIT
    whole = "so " * (LONGEST_TEXT // 3 - 1) + "so"
    assert Said(whole).text == whole
    longer = Said(f"{whole} much").text
    assert longer.endswith("so ..")
    assert LONGEST_TEXT - 10 < len(longer) <= LONGEST_TEXT
    assert len(Said("x" * 100_000).text) <= LONGEST_TEXT
    assert Said("x" * 100_000).text.startswith("xxx"), "a single word is cut, not dropped"
    # what is not read is marked, even if little of what is read can be seen
    assert Said("hi you" + "\u202e" * 4 * LONGEST_TEXT + "more").text == "hi .."


def test_what_cannot_be_seen_is_nothing_struck_out() -> None:
    said = Said("x", ("", "\x1b[2J", "y"), ("\u202e", "z"))
    assert (said.not_understood, said.struck) == (("y",), ("z",))


# kept


@given(CASES)
def test_a_case_comes_back_from_its_data_with_all_words(case: Case) -> None:
    again = from_data(json.loads(json.dumps(to_data(case))))
    assert again == case
    assert _words(again) == _words(case)
    assert from_data(to_data(case)) == case


@given(CASES)
def test_undo_takes_the_last_entry_and_leaves_the_words_of_the_others(case: Case) -> None:
    left = case.undo()
    assert left.entries == case.entries[:-1]
    if case.entries and isinstance(case.entries[-1], Said):
        assert _words(left) == _words(case)[:-1]
    elif case.own_words:
        texts = [said for said, _ in case.own_words]
        assert [said for said, _ in left.own_words] == texts


def test_what_was_taken_is_undone_one_by_one_and_the_text_last(tmp_path: Path) -> None:
    bench = _bench(tmp_path)
    bench.record(*in_own_words(TEXT, HEARD))
    for left in (3, 2, 1, 0):
        ((said, taken),) = bench.case.own_words
        assert said.text == TEXT
        assert [each.words for each in taken] == [u.text for u in HEARD.understood[:left]]
        assert Store(tmp_path).resume() == bench.case
        bench.undo()
    assert bench.case == Case()


def test_something_else_told_after_an_undo_is_not_taken_for_the_words() -> None:
    case = Case(in_own_words(TEXT, HEARD)).undo().with_(Answered("air-movement", "still"))
    ((_, taken),) = case.own_words
    assert taken == HEARD.entries[:2]


def test_words_live_through_leaving_and_coming_back(tmp_path: Path) -> None:
    first = _bench(tmp_path)
    first.record(*in_own_words(TEXT, HEARD, {1}))
    again = _bench(tmp_path)
    assert again.left_open is not None
    assert again.notices == []
    assert _words(again.left_open) == _words(first.case)
    again.put_away()
    (finished,) = Store(tmp_path).finished()
    assert _words(finished.case) == _words(first.case)


def test_a_kept_case_is_a_case_file_with_its_words(tmp_path: Path) -> None:
    case = Case(in_own_words(TEXT, HEARD, {1}))
    Store(tmp_path).save(case)
    found = kept((tmp_path / "case.json").read_bytes(), "case.json", RULES)
    assert found is not None
    assert _words(found.case) == _words(case)
    assert found.said == (), "what was understood once is not understood again"


def test_a_case_kept_before_there_were_words_still_opens(tmp_path: Path) -> None:
    old = [
        {"entry": "situated", "field": "process", "value": "gmaw"},
        {"entry": "reported", "symptom": "porosity"},
        {"entry": "supposed", "check": "air-movement", "answer": "wind"},
        {"entry": "tried", "cause": "draught", "remedy": "x", "result": "better"},
    ]
    (tmp_path / "case.json").write_text(json.dumps({"version": 1, "entries": old}))
    store = Store(tmp_path)
    found = store.resume()
    assert found is not None
    assert store.notices == []
    assert found.own_words == ()
    assert to_data(found) == old, "and is written as it was"


def test_what_these_rules_do_not_know_goes_and_its_text_stays() -> None:
    gone = Reported("gone", words="oddities")
    case, dropped = still_known(RULES, Case((Said("oddities, mig"), gone, *HEARD.entries[:1])))
    assert dropped == 1
    assert [said.text for said, _ in case.own_words] == ["oddities, mig"]


def test_a_new_case_on_the_same_work_does_not_repeat_the_words(tmp_path: Path) -> None:
    bench = _bench(tmp_path)
    bench.record(*in_own_words(TEXT, HEARD))
    bench.new_for((Reported("spatter"),))
    assert bench.case.own_words == ()
    assert bench.case.process == "gmaw"


# broken


@pytest.mark.parametrize(
    "item",
    [
        {"entry": "said", "text": "x"},
        {"entry": "said", "text": 3, "not_understood": [], "struck": []},
        {"entry": "said", "text": "x", "not_understood": "y", "struck": []},
        {"entry": "said", "text": "x", "not_understood": [["y"]], "struck": []},
        {"entry": "said", "text": "x", "not_understood": [], "struck": {"a": "b"}},
        {"entry": "said", "text": "x", "not_understood": [], "struck": [], "words": "x"},
        {"entry": "reported", "symptom": "porosity", "words": ["x"]},
        {"entry": "reported", "symptom": "porosity", "words": None},
        {"entry": "reported", "symptom": ["porosity"]},
        {"entry": "reported", "words": "x"},
    ],
)
def test_broken_words_are_said_in_one_line(item: dict[str, Any]) -> None:
    with pytest.raises(CaseError) as caught:
        from_data([item])
    assert str(caught.value).startswith("entry 1 of the case")
    assert "\n" not in str(caught.value)


def test_hostile_words_in_a_kept_file_are_cleaned_as_they_are_read() -> None:
    found = from_data(
        [
            {"entry": "said", "text": HOSTILE, "not_understood": [HOSTILE], "struck": [HOSTILE]},
            {"entry": "reported", "symptom": "porosity", "words": HOSTILE * 500},
        ]
    )
    ((said, (taken,)),) = found.own_words
    assert all(each.isprintable() for each in (said.text, *said.not_understood, *said.struck))
    assert taken.words.isprintable()
    assert len(taken.words) <= LONGEST_WORDS
