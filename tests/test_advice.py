"""Corrective settings: yours, try, allowed; and how a measured setting weighs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import advice, readings
from weldwhy.advice import SettingAdvice
from weldwhy.case import Case, Measured, Reported, Situated, Tried
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


def test_a_preheat_carries_no_note_about_the_amps() -> None:
    made = Case().with_(
        Reported("cold-crack"), Situated("process", "smaw"), Situated("joint", "fillet"),
        Situated("material", "low-alloy-steel"), Situated("grade", "4140"),
        Situated("thickness", "1/2 in"), Measured("rod", "1/8 in E7018"), Measured("amps", "130 A"),
    )  # fmt: skip
    rows = [
        each
        for remedy in Interview(RULES, made).remedies("preheat-missing")
        for each in remedy.settings
    ]
    notes = {each.setting: each.note for each in rows}
    assert "fillet" in notes["amps"]
    assert "fillet" not in notes["preheat"]


def test_without_a_window_there_are_no_numbers() -> None:
    made = Case().with_(Reported("spatter"), Situated("process", "gmaw"))
    assert row(made, "volts-high", "volts") == ("", "", "", "")


def factors(volts: str) -> dict[str, float]:
    made = case(volts=volts)
    read = readings.told(RULES, made.measured)
    window = advice.window(RULES, made, made.material)
    found = readings.reading(RULES, "volts", read["volts"], window)
    return dict(found.factors)


@given(st.floats(5, 60), st.floats(5, 60))
def test_the_further_above_the_window_the_more_it_speaks_for_too_high(a: float, b: float) -> None:
    low, high = (factors(f"{volts:.2f} V") for volts in sorted((a, b)))
    assert low["volts-high"] <= high["volts-high"]
    assert low["volts-low"] >= high["volts-low"]
    assert all(0.05 <= weight <= 20.0 for each in (low, high) for weight in each.values())


def test_a_setting_in_the_middle_speaks_against_both_its_faults() -> None:
    found = factors("19 V")
    assert found["volts-high"] == pytest.approx(found["volts-low"])
    assert found["volts-high"] < 1.0


def test_a_withdrawn_setting_says_nothing() -> None:
    made = case(volts="22 V").with_(Measured("volts", ""))
    assert Interview(RULES, made).belief.weights == Interview(RULES, case()).belief.weights


def test_a_corrected_setting_counts_as_if_it_had_been_right_at_once() -> None:
    made = case(volts="22 V").with_(Measured("volts", "19 V"))
    assert (
        Interview(RULES, made).belief.weights == Interview(RULES, case(volts="19 V")).belief.weights
    )


def test_a_dial_read_again_after_its_remedy_speaks_of_the_new_state() -> None:
    """19 V after turning down from 22 V does not unsay that 22 V was too high."""
    tried = case(volts="22 V").with_(Tried("volts-high", "lower-volts", "better"))
    again = tried.with_(Measured("volts", "19 V"))
    before, after = Interview(RULES, tried).belief, Interview(RULES, again).belief
    assert after.probability("volts-high") < before.probability("volts-high")
    assert Interview(RULES, again).remedies("volts-high")[0].settings[0].yours == "19 V"


def test_a_reading_is_a_reason_with_its_own_weight() -> None:
    reasons = Interview(RULES, case(volts="23 V")).why("volts-high")
    assert [(r.check_id, r.answer_id) for r in reasons] == [("volts", "23 V")]
    assert reasons[0].decibans > 5


def test_a_measured_setting_closes_the_question_about_it() -> None:
    asked = {check.id for check in Interview(RULES, case()).open_checks}
    closed = {check.id for check in Interview(RULES, case(volts="22 V")).open_checks}
    assert asked - closed == {"volts-set"}


def test_a_range_without_width_is_said_in_words() -> None:
    made = SettingAdvice("amps", "amps", "", "160 A", "160 A", "160 A")
    assert made.allowed == "no more and no less"
    assert SettingAdvice("amps", "amps", "", "120 A", "100 A", "140 A").allowed == "100 A to 140 A"
    assert SettingAdvice("amps", "amps", "120 A", "", "", "").allowed == ""
