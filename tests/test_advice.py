"""Corrective settings: yours, try, allowed; and how a measured setting weighs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import advice
from weldwhy.case import Case, Measured, Reported, Situated
from weldwhy.interview import Interview

RULES = shipped_rules()


def case(**settings: str) -> Case:
    made = Case().with_(
        Reported("spatter"), Situated("process", "gmaw"), Situated("material", "mild-steel"),
        Situated("thickness", "3 mm"), Measured("wire", "0.035 in"),
    )  # fmt: skip
    return made.with_(*(Measured(name, value) for name, value in settings.items()))


def row(made: Case, cause: str, setting: str, system: str | None = None) -> tuple[str, ...]:
    found = Interview(RULES, made, system=system).remedies(cause)[0].settings
    s = next(each for each in found if each.setting == setting)
    return s.yours, s.best, s.low, s.high


def test_22_volts_on_3_mm_steel_gets_a_number_an_instructor_would_give() -> None:
    assert row(case(volts="22 V"), "volts-high", "volts") == ("22 V", "19 V", "17.5 V", "20.5 V")
    ranked = Interview(RULES, case(volts="22 V", wire_feed="250 ipm")).ranked
    assert ranked[0].cause.id == "volts-high"


def test_a_setting_inside_its_window_is_left_alone_unless_it_is_the_fault() -> None:
    made = case(volts="22 V", wire_feed="250 ipm")
    assert row(made, "volts-high", "wire_feed")[:2] == ("250 ipm", "250 ipm")
    assert row(made, "wire-feed-high", "wire_feed")[1] != "250 ipm"


def test_numbers_come_in_the_persons_own_units() -> None:
    made = case(wire_feed="350 ipm")
    assert row(made, "wire-feed-high", "wire_feed")[0].endswith("ipm")
    assert all(t.endswith("m/min") for t in row(made, "wire-feed-high", "wire_feed", "mm"))


def test_without_a_window_there_are_no_numbers() -> None:
    made = Case().with_(Reported("spatter"), Situated("process", "gmaw"))
    assert row(made, "volts-high", "volts") == ("", "", "", "")


@given(st.floats(5, 60), st.floats(5, 60))
def test_the_further_above_the_window_the_more_it_speaks_for_too_high(a: float, b: float) -> None:
    low, high = sorted((a, b))
    found = [
        advice.factors(RULES, made, advice.window(RULES, made))
        for made in (case(volts=f"{low:.2f} V"), case(volts=f"{high:.2f} V"))
    ]
    assert found[0]["volts-high"] <= found[1]["volts-high"]
    assert found[0]["volts-low"] >= found[1]["volts-low"]
    assert all(0.05 <= weight <= 20.0 for each in found for weight in each.values())


def test_a_setting_in_the_middle_speaks_against_both_its_faults() -> None:
    made = case(volts="19 V")
    found = advice.factors(RULES, made, advice.window(RULES, made))
    assert found["volts-high"] == pytest.approx(found["volts-low"])
    assert found["volts-high"] < 1.0


def test_a_withdrawn_setting_says_nothing() -> None:
    made = case(volts="22 V").with_(Measured("volts", ""))
    assert "volts-high" not in advice.factors(RULES, made, advice.window(RULES, made))
    before = Interview(RULES, case()).belief.weights
    assert Interview(RULES, made).belief.weights == before


def test_a_measured_setting_closes_the_question_about_it() -> None:
    asked = {check.id for check in Interview(RULES, case()).open_checks}
    closed = {check.id for check in Interview(RULES, case(volts="22 V")).open_checks}
    assert asked - closed == {"volts-set"}
