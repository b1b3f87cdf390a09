"""The reasons for a cause say how each thing was told: as certain, as supposed, or as a guess."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.case import Answered, Case, Entry, Reported, Resembled, Situated, Supposed, Suspected
from weldwhy.interview import Interview
from weldwhy.told import entry_line

RULES = shipped_rules()
START = (Situated("process", "gmaw"), Reported("porosity"))
LOW = ("gas-flow-reading", "low")


def _why(*entries: Entry) -> str:
    guide = Interview(RULES, Case((*START, *entries)))
    return "\n".join(reason.told for reason in guide.why("gas-flow-low"))


def test_a_supposed_answer_is_told_as_not_certain_and_a_given_one_is_not() -> None:
    asked = RULES.checks[LOW[0]].ask
    assert asked in _why(Supposed(*LOW))
    assert "not certain" in _why(Supposed(*LOW))
    assert asked in _why(Answered(*LOW))
    assert "not certain" not in _why(Answered(*LOW))


def test_a_guess_is_told_as_the_persons_own_by_the_name_of_its_cause() -> None:
    assert f"own guess: {RULES.causes['gas-flow-low'].name}" in _why(Suspected("gas-flow-low"))


@pytest.mark.parametrize("symptom", ["porosity", "undercut"])
def test_a_picked_picture_is_told_by_the_name_of_what_it_shows(symptom: str) -> None:
    assert entry_line(RULES, Resembled(symptom)) == f"looks like: {RULES.symptoms[symptom].name}"
