"""Measured settings: what is read, what follows from a bead's size, and how it weighs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import advice, readings
from weldwhy.advice import window
from weldwhy.beadtravel import fillet_section, share_laid
from weldwhy.case import Case, Measured, Reported, Situated
from weldwhy.interview import Interview
from weldwhy.units import Quantity, convert, parse

RULES = shipped_rules()
MIG = (
    Reported("lack-of-side-fusion"), Situated("process", "gmaw"),
    Situated("material", "mild-steel"), Situated("thickness", "1/8 in"),
)  # fmt: skip


def travel(**measured: str) -> float | None:
    """Travel speed in in/min as worked out."""
    found = readings.worked_out(RULES, "gmaw", measured).get("travel")
    return convert(found, "in/min") if isinstance(found, Quantity) else None


def test_the_bead_tells_how_fast_the_gun_moved() -> None:
    """250 ipm of 0.035 in wire, 95 to 97 % of it kept, make 0.23 in3 a minute; a 1/8 in fillet
    holds 0.0078 in2 and a tenth or so more in its round face: 26 to 30 in/min (arithmetic)."""
    found = travel(wire_feed="250 ipm", wire="0.035 in", leg="1/8 in")
    assert found is not None
    assert 26 <= found <= 30


def test_width_and_height_tell_it_too() -> None:
    assert travel(wire_feed="250 ipm", wire="0.035 in", bead_width="6 mm", bead_height="2 mm")


@pytest.mark.parametrize(
    "measured",
    [
        {"wire_feed": "250 ipm", "leg": "1/8 in"},
        {"wire": "0.035 in", "leg": "1/8 in"},
        {"wire_feed": "250 ipm", "wire": "0.035 in"},
        {"wire_feed": "250 ipm", "wire": "0.035 in", "bead_width": "6 mm"},
        {"wire_feed": "fast", "wire": "0.035 in", "leg": "1/8 in"},
    ],
)
def test_too_little_known_tells_nothing(measured: dict[str, str]) -> None:
    assert travel(**measured) is None


def test_a_speed_that_was_told_is_not_worked_out() -> None:
    found = travel(wire_feed="250 ipm", wire="0.035 in", leg="1/8 in", travel="10 in/min")
    assert found == pytest.approx(10)


def test_a_rod_has_no_feed_to_work_it_out_from() -> None:
    found = readings.worked_out(RULES, "smaw", {"wire_feed": "250 ipm", "leg": "1/8 in"})
    assert "travel" not in found


def believed(cause: str, *told: Measured | Situated) -> float:
    return Interview(RULES, Case((*MIG, *told))).belief.probability(cause)


BEAD = (Measured("wire_feed", "220 ipm"), Measured("wire", "0.035 in"))


def test_a_small_bead_speaks_for_fast_travel_and_a_big_one_against_it() -> None:
    plain = believed("travel-fast", *BEAD)
    small = believed("travel-fast", *BEAD, Measured("leg", "2.5 mm"))
    big = believed("travel-fast", *BEAD, Measured("leg", "6 mm"))
    assert small > 1.5 * plain
    assert big < plain
    assert believed("travel-slow", *BEAD, Measured("leg", "8 mm")) > believed("travel-slow", *BEAD)


def test_withdrawing_the_size_withdraws_what_followed_from_it() -> None:
    told = (*BEAD, Measured("leg", "2.5 mm"), Measured("leg", ""))
    assert believed("travel-fast", *told) == pytest.approx(believed("travel-fast", *BEAD))


def test_the_reason_says_that_it_was_worked_out() -> None:
    interview = Interview(RULES, Case((*MIG, *BEAD, Measured("leg", "2.5 mm"))))
    lines = [reason.told for reason in interview.why("travel-fast")]
    assert any(line.startswith("worked out from the bead: travel speed: ") for line in lines)


def test_a_check_that_the_bead_answers_is_not_asked() -> None:
    case = Case((*MIG, *BEAD, Measured("leg", "2.5 mm")))
    window = advice.window(RULES, case, "mild-steel")
    assert "travel-look" in advice.settled(RULES, case, window)


@given(st.floats(0.1, 60), st.floats(0.1, 60))
def test_a_faster_hand_never_speaks_less_for_fast_travel(a: float, b: float) -> None:
    window = advice.window(RULES, Case(MIG), "mild-steel")
    slow, fast = (
        dict(readings.reading(RULES, "travel", Quantity("speed", v, "mm/s"), window).factors)
        for v in sorted((a, b))
    )
    assert slow["travel-fast"] <= fast["travel-fast"]
    assert slow["travel-slow"] >= fast["travel-slow"]


def test_text_is_kept_as_text() -> None:
    found = readings.told(RULES, {"gas": "C25", "volts": "many", "amps": "120 A"})
    assert found == {"gas": "C25", "volts": "many", "amps": parse("120 A", "current")}


def test_a_value_told_again_is_one_reason_and_not_two() -> None:
    plate = (Reported("spatter"), *MIG[1:], Measured("wire", "0.035 in"))
    told = Case((*plate, Measured("volts", "19 V"), Measured("volts", "25 V")))
    reasons = [r for r in Interview(RULES, told).why("volts-high") if r.check_id == "volts"]
    assert [reason.answer_id for reason in reasons] == ["25 V"]
    assert reasons[0].decibans > 0


@pytest.mark.parametrize(
    ("told", "system"),
    [
        ({"wire": "0.9 mm", "leg": "1/8 in"}, "in"),
        ({"leg": "1/8 in", "bead_width": "6 mm"}, "mm"),
        ({"wire_feed": "250 ipm", "leg": "1/8 in", "bead_width": "6 mm"}, "in"),
        ({"volts": "19 V"}, None),
    ],
)
def test_numbers_are_shown_in_the_units_told_most_and_of_equals_the_latest(
    told: dict[str, str], system: str | None
) -> None:
    case = Case().with_(*(Measured(name, text) for name, text in told.items()))
    assert readings.habit(RULES, case) == system


def test_less_of_a_cored_wire_becomes_weld_than_of_its_volume() -> None:
    """The core is lighter than steel, so the gun that laid the bead moved more slowly."""
    kept = RULES.tables["deposition-efficiency"].value("fcaw-g")
    share = share_laid(RULES, "fcaw-g")
    assert share is not None
    assert 0.85 * kept < share < 0.95 * kept


def test_a_rounded_face_holds_more_than_the_triangle_of_its_legs() -> None:
    more = RULES.tables["rounded-face"].value("fillet")
    assert 1.0 < more < 1.3
    assert fillet_section(RULES, 6.0) == pytest.approx(18.0 * more)


@given(st.floats(0.1, 1000.0))
def test_no_reading_weighs_more_than_twenty_times_for_or_against(ipm: float) -> None:
    found = window(RULES, Case(MIG), "mild-steel")
    fed = Quantity("feed", ipm * 0.0254, "ipm")
    factors = readings.reading(RULES, "wire_feed", fed, found).factors
    assert len(factors) == 2
    assert all(1 / 20 <= times <= 20 for _, times in factors)
