"""Small words that turn a meaning: a denial, a full stop, a question mark, "still"."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.engine.small import check

from weldwhy.case import (
    Answered,
    Case,
    Entry,
    Hinted,
    Measured,
    Reported,
    Situated,
    Suspected,
    Tried,
)
from weldwhy.rulebase import load
from weldwhy.understanding import manner, tries
from weldwhy.understanding.answers import _denied
from weldwhy.understanding.hearing import telling_of, understand
from weldwhy.understanding.tokens import tokens
from weldwhy.understanding.topic import is_elsewhere

RULES = load()


def _case(process: str, symptom: str) -> Case:
    return Case((Situated("process", process), Reported(symptom)))


POROUS, SURGING = _case("gmaw", "porosity"), _case("gmaw", "feed-surges")


def _told(text: str, case: Case) -> list[Entry]:
    return list(understand(RULES, text, case).entries)


def _tried(text: str, case: Case = POROUS) -> set[tuple[str, str]]:
    return {(e.cause, e.result) for e in _told(text, case) if isinstance(e, Tried)}


# what was tried


def test_what_was_never_done_is_no_remedy_tried() -> None:
    assert ("nozzle-clogged", "no change") in _tried("cleaned the nozzle, no difference")
    assert not _tried("never cleaned the nozzle, no difference")


def test_only_a_denial_close_by_and_in_its_clause_undoes_a_dial_turned() -> None:
    low = ("gas-flow-low", "no change")
    assert low in _tried("turned up the gas, no change")
    assert not _tried("did not turn up the gas, no change")
    words = tokens("windy it is not, turned up the gas")
    turned = next(n for n, word in enumerate(words) if word.word == "turned")
    assert not tries._denied(words, turned)


def test_a_result_far_from_what_was_done_is_not_its_result() -> None:
    far = "and the cat had a good long look at the dog and the bird and the fence " * 3
    assert _tried(f"cleaned the nozzle and {far[:20]} no difference")
    assert not _tried(f"cleaned the nozzle {far} no difference")


def test_a_firm_result_counts_before_a_mere_still() -> None:
    assert _tried("cleaned the nozzle, still spits, then it was much better") == {
        ("nozzle-clogged", "better")
    }
    weak, firm = manner.results("still spitting, no change")
    assert (weak.weak, firm.weak) == (True, False)


def test_a_remedy_of_another_process_was_not_tried() -> None:
    assert ("liner-clogged", "no change") in _tried("changed the liner, no change", SURGING)
    assert not _tried("changed the liner, no change", _case("smaw", "undercut"))


def test_a_dial_set_to_what_it_was_is_not_turned() -> None:
    case = _case("smaw", "undercut")
    turned = Answered("amps-down-try", "better")
    assert turned in _told("150 amps. tried 130 and its better", case)
    for entry in _told("150 amps. tried 150 and its better", case):
        assert not (isinstance(entry, Answered) and entry.check.endswith("-try"))


# guesses and questions


@pytest.mark.parametrize(
    ("text", "guess"), [("the tip is bad, I think", True), ("the tip is bad. I think", False)]
)
def test_a_guess_reaches_back_over_a_comma_and_not_over_a_full_stop(text: str, guess: bool) -> None:
    assert (0 in manner.guesses(text, tokens(text))) is guess


@pytest.mark.parametrize(
    ("text", "asks"),
    [
        ("is the wire rusty?", True), ("wire rusty??", True), ("all the wire looked rusty?", False),
        ("is the wire rusty", False),
    ],
)  # fmt: skip
def test_a_question_begins_as_one_or_doubts_twice(text: str, asks: bool) -> None:
    assert bool(manner.questions(text, tokens(text))) is asks


def test_a_guess_goes_on_after_its_opening_words() -> None:
    assert Suspected("liner-clogged") in _told("He thinks, the liner is clogged", SURGING)


@pytest.mark.parametrize(
    ("text", "cause"),
    [
        ("I think it is not the liner", None), ("I think it is the tip, not the liner", "tip-worn"),
        ("I think it is the liner, not the tip", "liner-clogged"),
    ],
)  # fmt: skip
def test_what_is_denied_is_no_guess(text: str, cause: str | None) -> None:
    guesses = [e.cause for e in _told(text, SURGING) if isinstance(e, Suspected)]
    assert guesses == ([cause] if cause else [])


@pytest.mark.parametrize(
    ("part", "case"), [("nozzle", POROUS), ("liner", SURGING)]
)  # fmt: skip
def test_to_ask_whether_it_is_so_answers_nothing(part: str, case: Case) -> None:
    kinds = {type(entry) for entry in _told(f"is the {part} clogged?", case)}
    assert kinds == {Suspected}


# symptoms that the words only may mean


def test_nothing_is_asked_back_where_a_symptom_is_told() -> None:
    text = "doors open, breeze blowing through"
    assert not any(isinstance(e, Hinted) for e in _told(text, POROUS))


def test_a_symptom_that_the_metal_told_cannot_show_is_not_meant() -> None:
    text = "cast iron crack beside the weld"
    for metal, meant in (("", True), ("aluminium", False)):
        told = _told(text, Case((Situated("process", "gmaw"), Situated("material", metal))))
        found = {e.symptom for e in told if isinstance(e, Hinted | Reported)}
        assert ("cast-iron-crack" in found) is meant


def test_a_few_words_of_no_trade_may_answer_in_a_case_under_way() -> None:
    text = "garage curtains flapping yesterday"
    assert is_elsewhere(telling_of(RULES, text, Case()))
    assert not is_elsewhere(telling_of(RULES, text, POROUS))


# answers


def test_of_two_answers_who_denies_one_means_the_other() -> None:
    two = check("look", "no yes")
    assert _denied(two, "no") == ("yes", 1.0)
    assert _denied(two, "yes") == ("no", 1.0)


def test_of_many_answers_only_the_odd_ones_denied_mean_the_normal_one() -> None:
    many = check("look", "clean clogged worn")
    meant, sure = _denied(many, "worn")
    assert meant == "clean"
    assert 0.5 < sure < 1.0
    assert _denied(many, "clean")[0] == ""
    assert _denied(replace(many, ordered=True), "worn")[0] == ""


# numbers


def _measured(text: str) -> dict[str, str]:
    return {e.setting: e.value for e in _told(text, Case()) if isinstance(e, Measured)}


def test_a_stick_is_a_rod_unless_it_sticks_out() -> None:
    assert _measured("with 2.5 mm stick") == {"rod": "2.5 mm"}
    assert _measured("mig, 15 mm stick out") == {"stick_out": "15 mm"}


def test_amps_beside_a_machine_are_set_only_if_something_says_so() -> None:
    assert _measured("a 180 amp mig") == {}
    assert _measured("ran at 140 amp mig") == {"amps": "140 A"}


def test_a_length_run_is_no_plate_and_a_thick_plate_is() -> None:
    thick = {
        text: [e for e in _told(text, Case()) if e == Situated("thickness", text[5:])]
        for text in ("mig, 1.5 in", "mig, 2 in")
    }
    assert [bool(found) for found in thick.values()] == [True, False]


def test_the_thickness_told_first_stays() -> None:
    told = _told("mig on 5 mm plate", Case((Situated("thickness", "3 mm"),)))
    assert told == [Situated("process", "gmaw")]


@pytest.mark.parametrize(("text", "mix"), [("gas 75/25", True), ("gas 50/30", False)])
def test_two_parts_are_a_gas_only_if_they_make_a_hundred(text: str, mix: bool) -> None:
    assert any(isinstance(e, Measured) and e.setting == "gas" for e in _told(text, POROUS)) is mix


@pytest.mark.parametrize(("size", "known"), [("2.4", True), ("2.7", False)])
def test_a_bare_number_is_a_tungsten_only_in_a_size_that_they_have(size: str, known: bool) -> None:
    text = f"tig, my tungstens vanish, I put in a new {size} and it is gone"
    entries = _told(text, Case())
    assert any(isinstance(e, Measured) and e.setting == "tungsten" for e in entries) is known
