"""The case as the engine's log: what is told later replaces or withdraws what was told before."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.case import (
    Answered,
    Case,
    Entry,
    Measured,
    Passed,
    Situated,
    Supposed,
    Suspected,
    Tried,
)
from weldwhy.engine import tuning
from weldwhy.engine.belief import Finding, Fix, LogEntry, Reading
from weldwhy.interview import Interview
from weldwhy.logbook import log_of

RULES = shipped_rules()
START = (
    Situated("process", "gmaw"), Situated("material", "mild-steel"),
    Situated("thickness", "1/8 in"),
)  # fmt: skip


def log(*entries: Entry) -> tuple[LogEntry, ...]:
    case = Case((*START, *entries))
    return log_of(RULES, case, Interview(RULES, case).window)


def test_answers_and_remedies_keep_their_order() -> None:
    made = log(Answered("nozzle-look", "clean"), Tried("draught", "screen-it", "better"))
    assert made == (Finding("nozzle-look", "clean"), Fix("draught", "better"))


def test_dont_know_withdraws_an_answer() -> None:
    assert log(Answered("nozzle-look", "clean"), Passed("nozzle-look", "don't know")) == ()


def test_an_empty_setting_withdraws_it() -> None:
    assert log(Measured("volts", "22 V"), Measured("volts", "")) == ()


def test_a_setting_weighs_on_its_two_faults() -> None:
    (read,) = log(Measured("volts", "26 V"))
    assert isinstance(read, Reading)
    weights = dict(read.factors)
    assert weights["volts-high"] > 1 > weights["volts-low"]


def test_a_grade_weighs_and_can_be_withdrawn() -> None:
    (read,) = log(Situated("grade", "4140"))
    assert isinstance(read, Reading)
    assert dict(read.factors)["hardenable-steel"] > 1
    assert log(Situated("grade", "4140"), Situated("grade", "")) == ()


@pytest.mark.parametrize(
    ("grade", "metal"), [("304", "stainless"), ("Cr 18 Ni 9 C 0.05", "stainless"), ("", "")]
)
def test_a_grade_or_a_composition_tells_the_metal(grade: str, metal: str) -> None:
    case = Case((Situated("process", "gmaw"), Situated("grade", grade)))
    assert Interview(RULES, case).material == metal


def test_a_composition_weighs_as_the_grade_of_that_composition_does() -> None:
    (read,) = log(Situated("grade", "C 0.43 Mn 1 Cr 1.1 Mo 0.25"))
    assert isinstance(read, Reading)
    assert dict(read.factors)["hardenable-steel"] > 2


def test_a_bead_size_adds_the_travel_speed_unless_that_was_told() -> None:
    bead = (Measured("wire_feed", "220 ipm"), Measured("wire", "0.035 in"))
    names = [e.setting for e in log(*bead, Measured("leg", "3 mm")) if isinstance(e, Reading)]
    assert names.count("travel") == 1
    told = log(*bead, Measured("travel", "15 in/min"), Measured("leg", "3 mm"))
    assert [e.setting for e in told if isinstance(e, Reading)].count("travel") == 1


def weighed(*entries: Entry) -> dict[str, float]:
    case = Case((Situated("process", "gmaw"), *entries))
    made = log_of(RULES, case, Interview(RULES, case).window, case.material)
    (read,) = [entry for entry in made if isinstance(entry, Reading) and entry.setting == "gas"]
    return dict(read.factors)


def test_a_gas_that_does_not_suit_the_metal_speaks_for_the_wrong_gas() -> None:
    stainless = Situated("material", "stainless")
    assert weighed(stainless, Measured("gas", "C25"))["wrong-gas"] > 2
    assert weighed(stainless, Measured("gas", "98/2"))["wrong-gas"] < 1
    assert weighed(stainless, Measured("gas", "what was in the shed")) == {}


def test_nothing_is_held_against_a_gas_for_a_metal_that_nobody_told() -> None:
    assert weighed(Measured("gas", "argon")) == {}


def test_a_gas_withdrawn_says_nothing() -> None:
    assert log(Measured("gas", "argon"), Measured("gas", "")) == ()


def test_a_remedy_after_a_sound_bead_says_that_it_was_not_sound_after_all() -> None:
    tried = Tried("draught", "screen-it", "sound"), Tried("flow-low", "raise-it", "no change")
    assert log(*tried) == (Fix("draught", "better"), Fix("flow-low", "no change"))


def test_doubtful_words_and_guesses_weigh_softly() -> None:
    supposed, guess = Supposed("nozzle-look", "spatter"), Suspected("gas-flow-low")
    doubtful, suspected = log(supposed, guess)
    assert doubtful == Finding("nozzle-look", "spatter", tuning.SUPPOSED)
    assert isinstance(suspected, Reading)
    assert suspected.factors == (("gas-flow-low", tuning.GUESSED),)


def test_what_was_answered_outlasts_what_was_supposed() -> None:
    sure, doubtful = Answered("nozzle-look", "clean"), Supposed("nozzle-look", "spatter")
    assert log(sure, doubtful) == (Finding("nozzle-look", "clean"),)
    assert log(doubtful, Passed("nozzle-look", "skip")) == (
        Finding("nozzle-look", "spatter", tuning.SUPPOSED),
    )
