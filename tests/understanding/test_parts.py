"""The parts of the understanding by themselves: clauses, negation, results, figures, spelling."""

from __future__ import annotations

import pytest
from tests.engine.small import base, cause, check

from weldwhy.case import BETTER, NO_CHANGE, WORSE
from weldwhy.model import RuleBase
from weldwhy.understanding import manner, matching, spelling
from weldwhy.understanding.figures import figures
from weldwhy.understanding.matching import Match, going_on, matches
from weldwhy.understanding.phrases import book
from weldwhy.understanding.sizes import sized
from weldwhy.understanding.spelling import corrected
from weldwhy.understanding.tokens import tokens


def _rules() -> RuleBase:
    made = base([cause("rust", 8.0, {"metal": {"yes": 0.9}})], [check("metal", off=0.05)])
    said = {
        "answer metal yes": ("rusty plate", "wire will not feed", "keeps sticking", "splashing"),
        "answer metal no": ("shiny plate",),
    }
    return type(made)(made.processes, made.symptoms, made.causes, made.checks, said=said)


RULES = _rules()


def _found(text: str) -> dict[str, Match]:
    return {m.phrase.words: m for m in matches(book(RULES), corrected(book(RULES), tokens(text)))}


def test_commas_sentences_and_joining_words_part_clauses() -> None:
    words = tokens("one two, three but four. five")
    assert [word.clause for word in words] == [0, 0, 1, 2, 2, 3]
    assert [word.sentence for word in words] == [0, 0, 0, 0, 0, 1]


def test_a_phrase_is_found_with_gaps_and_the_other_way_about() -> None:
    assert _found("the plate was really quite rusty")["rusty plate"].fit > 0.7
    assert _found("rusty old plate")["rusty plate"].fit < _found("rusty plate")["rusty plate"].fit


def test_a_phrase_does_not_reach_into_another_sentence() -> None:
    assert "rusty plate" not in _found("it is rusty. new spool of wire. the plate lies there")


@pytest.mark.parametrize(
    ("text", "denied"),
    [
        ("rusty plate", False),
        ("no rusty plate", True),
        ("the plate isn't rusty", True),
        ("plate isnt rusty", True),
        ("not a rusty plate, never", True),
        ("it is not that there is no rusty plate", False),
        ("no idea, rusty plate", False),
        ("hardly a rusty plate", True),
        ("cannot tell why the plate gets rusty", False),
    ],
)
def test_an_odd_number_of_denials_in_the_clause_denies(text: str, denied: bool) -> None:
    assert _found(text)["rusty plate"].denied is denied


def test_a_phrase_that_denies_wants_the_same_word_denied() -> None:
    assert not _found("the wire wont feed")["wire will not feed"].denied
    assert "wire will not feed" not in _found("wire feeds, not a hiss")
    assert "wire will not feed" not in _found("wire feeds")


def test_a_lone_word_counts_less_in_another_form() -> None:
    assert (
        _found("a splash back")["splashing"].fit < 0.7 < _found("it is splashing")["splashing"].fit
    )


def test_one_word_of_a_phrase_of_several_is_worth_little() -> None:
    assert "rusty plate" not in _found("it is rusty")
    assert matching.LONE < 0.6


def test_words_that_only_say_that_it_goes_on_are_known() -> None:
    words = tokens("it will not stop spitting but the gas will not stop")
    assert [words[n].word for n in going_on(words)] == ["not", "stop"]


def test_a_tig_d_thing_is_tig() -> None:
    assert tokens("tig'd")[0].stem == tokens("tig")[0].stem


def test_a_weak_word_counts_where_it_makes_the_phrase() -> None:
    assert _found("it keeps sticking")["keeps sticking"].fit > 0.9
    assert all(match.fit < 0.7 for match in _found("a sticking").values())


@pytest.mark.parametrize("typed", ["rsuty plate", "ruty plate", "rustyy plate"])
def test_a_slip_is_put_right_but_no_common_word(typed: str) -> None:
    assert "rusty plate" in _found(typed)
    assert "rusty plate" not in _found("dusty place")


@pytest.mark.parametrize(
    ("text", "result"),
    [
        ("no difference", NO_CHANGE), ("it didn't help", NO_CHANGE), ("did nothing", NO_CHANGE),
        ("made no odds", NO_CHANGE), ("just as bad", NO_CHANGE), ("still spitting", NO_CHANGE),
        ("got worse", WORSE), ("made it worse!", WORSE),
        ("helped a bit", BETTER), ("much better", BETTER), ("no more trouble", BETTER),
        ("it runs lovely", BETTER), ("no better", NO_CHANGE),
        ("and it didn't do it", BETTER), ("it did not come back", BETTER),
        ("that did not do any good", NO_CHANGE), ("did not do it any good", NO_CHANGE),
        ("it smoothed out", BETTER), ("now it lights every time", BETTER),
        ("the bead went on like glass", BETTER),
    ],
)  # fmt: skip
def test_a_result_is_read_from_its_words(text: str, result: str) -> None:
    assert [each.result for each in manner.results(text)][:1] == [result]


def test_broken_like_glass_is_no_praise() -> None:
    assert manner.smooth("it went on like glass")
    assert not manner.smooth("it broke like glass")
    assert not manner.results("it broke like glass")


@pytest.mark.parametrize(
    ("text", "guess"),
    [
        ("i think it is the liner", True), ("must be the gas", True), ("maybe its the tip", True),
        ("could it be the tip", True), ("the tip, I reckon", True), ("the tip is worn", False),
    ],
)  # fmt: skip
def test_a_guess_is_told_from_a_fact(text: str, guess: bool) -> None:
    assert (0 in manner.guesses(text, tokens(text))) is guess


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("18.2 volts", [("18.2", "voltage")]), ("1/8 inch", [("1/8", "length")]),
        ("half inch plate", [("1/2", "length")]), ("17 and a half volts", [("17.5", "voltage")]),
        ("6.3 m/min", [("6.3", "feed")]), ("12 l/min", [("12", "flow")]),
        ("75/25 gas", [("75/25", "")]), ("$40 wire", []), ("er70s-6", []),
        ("3 weeks", [("3", "other")]),
    ],
)  # fmt: skip
def test_a_number_is_read_with_its_unit(text: str, wanted: list[tuple[str, str]]) -> None:
    assert [(figure.text, figure.kind) for figure in figures(text)] == wanted


def test_no_slips_are_looked_for_in_what_is_too_long_to_be_a_word(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    looked: list[str] = []

    def nearest(_book: object, word: str) -> str:
        looked.append(word)
        return ""

    monkeypatch.setattr(spelling, "_nearest", nearest)
    corrected(book(RULES), tokens(f"{'a' * 6000} plaet"))
    assert looked == ["plaet"]


def test_no_number_makes_it_fail() -> None:
    for text in ("1/0 in", "0/0", "9 9/0 inch", "." * 50, "1,2,3,4", "½ inch", "١٢ volts"):
        for figure in figures(text):
            assert figure.value >= 0
            sized(RULES, figure, f"{figure.text} in", figure.value * 25.4, "gmaw")
