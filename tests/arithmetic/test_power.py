"""Duty, supply and leads: published figures, and what must hold whatever the machine."""

from __future__ import annotations

from math import pi, sqrt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.anyfloat import FLOATS, refused_or_finite
from tests.arithmetic.powerfigures import ALL, example
from tests.replay import shipped_rules

from weldwhy.arithmetic import duty as minutes
from weldwhy.arithmetic import leads, power
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.sizes import gauge_diameter

PLATE = [(30.0, 130.0), (20.0, 180.0)]
AMPS = st.floats(10, 400)
PERCENT = st.floats(5, 100)
LENGTH, SECTION, RHO = st.floats(1, 100), st.floats(0.5, 120), st.floats(0.015, 0.03)
ROUNDING = 1e-9


@st.composite
def plates(draw: st.DrawFn) -> list[minutes.Rating]:
    """Up to four ratings, the percent falling as the amps rise."""
    percents = draw(st.lists(st.integers(5, 100), min_size=1, max_size=4, unique=True))
    amps = draw(
        st.lists(st.integers(20, 400), min_size=len(percents), max_size=len(percents), unique=True)
    )
    falling = zip(sorted(percents, reverse=True), sorted(amps), strict=True)
    return [(float(percent), float(at)) for percent, at in falling]


# Duty


@pytest.mark.parametrize("name", ["we017", "duty-140"])
def test_the_duty_is_that_of_the_worked_example(name: str) -> None:
    inputs, answer = example(name)
    assert minutes.duty_at(**inputs) == pytest.approx(answer, abs=0.05)


def test_the_amps_for_a_duty_are_those_of_the_worked_example() -> None:
    inputs, answer = example("we018")
    assert minutes.amps_at(**inputs) == pytest.approx(answer, abs=0.5)


def test_amps_above_the_rating_are_not_allowed_whatever_the_formula_says() -> None:
    inputs, _ = example("we017")
    (remark,) = minutes.duty_at(**inputs).remarks
    assert "above the rated 200 A: do not use" in remark
    assert not minutes.duty_at(200, 60, 200).remarks
    assert minutes.amps_at(30, 60, 200).remarks


@given(AMPS, PERCENT, AMPS)
def test_amps_come_back_from_their_duty(amps: float, percent: float, rated: float) -> None:
    duty = minutes.duty_at(amps, percent, rated)
    if 0.1 <= duty < 100:
        assert minutes.amps_at(duty, percent, rated) == pytest.approx(amps)


def test_at_a_rating_the_duty_is_the_rated_one() -> None:
    assert [float(minutes.duty_between(amps, PLATE)) for _, amps in PLATE] == [30.0, 20.0]


def test_between_two_ratings_the_careful_law_counts() -> None:
    """30 % at 130 A says 22.5 % at 150 A, 20 % at 180 A says 28.8 %."""
    assert minutes.duty_between(150, PLATE) == pytest.approx(30 * (130 / 150) ** 2)


def test_the_law_of_the_lower_rating_never_undercuts_the_next_rating() -> None:
    """At 175 A the first rating alone says 16.6 %, but the plate allows 20 % even at 180 A."""
    assert float(minutes.duty_between(175, PLATE)) == 20


@given(plates(), AMPS, st.floats(1, 3))
def test_more_amps_never_allow_more_duty(
    plate: list[minutes.Rating], amps: float, more: float
) -> None:
    less = minutes.duty_between(amps * more, plate)
    assert less <= minutes.duty_between(amps, plate) + ROUNDING


@given(plates(), AMPS)
def test_between_ratings_the_duty_is_never_above_either_square_law(
    plate: list[minutes.Rating], amps: float
) -> None:
    duty = minutes.duty_between(amps, plate)
    below = [p for p in plate if p[1] <= amps]
    above = [p for p in plate if p[1] > amps]
    assert duty <= min((p[0] for p in below), default=100)
    if below and above:
        laws = [minutes.duty_at(amps, *p) for p in (below[-1], above[0])]
        assert duty <= max(*laws, above[0][0]) + ROUNDING
        assert duty >= above[0][0]


@given(plates(), PERCENT)
def test_the_amps_for_a_duty_have_that_duty_and_a_few_more_have_not(
    plate: list[minutes.Rating], percent: float
) -> None:
    amps = minutes.amps_between(percent, plate)
    assert minutes.duty_between(amps, plate) >= percent * (1 - ROUNDING)
    assert minutes.duty_between(amps * 1.001, plate) < percent


@pytest.mark.parametrize(
    "plate", [[], [(30, 130), (40, 180)], [(30, 130), (20, 130)], [(30, 130), (30, 180)]]
)
def test_ratings_that_cannot_both_be_are_refused(plate: list[minutes.Rating]) -> None:
    with pytest.raises(Impossible, match=r"rating|cannot both be"):
        minutes.duty_between(150, plate)
    with pytest.raises(Impossible, match=r"rating|cannot both be"):
        minutes.amps_between(50, plate)


def test_arc_and_rest_make_ten_minutes() -> None:
    assert minutes.rest_minutes(38.4) == pytest.approx(10 - 3.84)
    assert float(minutes.rest_minutes(100)) == 0


# Supply


def test_what_is_drawn_is_what_comes_out_over_what_is_lost() -> None:
    """20 V x 150 A is 3 kW at the arc; at 0.75 and 0.8 that is 5 kVA, 25 A from 200 V."""
    assert power.apparent_power(20, 150, 0.75, 0.8) == pytest.approx(5)
    assert power.supply_amps(20, 150, 200, 0.75, 0.8) == pytest.approx(25)


@given(AMPS, st.floats(100, 480), st.floats(0.3, 1), st.floats(0.3, 1))
def test_power_is_neither_made_nor_lost_on_the_way(
    amps: float, supply: float, efficiency: float, factor: float
) -> None:
    drawn = power.supply_amps(25, amps, supply, efficiency, factor)
    assert drawn * supply * efficiency * factor == pytest.approx(25 * amps)
    assert drawn * supply / 1000 == pytest.approx(
        power.apparent_power(25, amps, efficiency, factor)
    )


@given(AMPS, PERCENT)
def test_steady_amps_heat_as_much_in_ten_minutes(amps: float, duty: float) -> None:
    assert minutes.effective_amps(amps, duty) ** 2 == pytest.approx(amps**2 * duty / 100)


def test_a_sine_peaks_above_what_the_meter_shows() -> None:
    assert power.peak_volts(80) == pytest.approx(80 * sqrt(2))


# Leads


def _warm() -> float:
    """The resistivity that the rules give for a warm lead."""
    at_20, rise, stranding, warm = shipped_rules().tables["copper"].rows["lead"]
    return leads.copper(warm, at_20, rise, stranding)


@pytest.mark.parametrize("each", ALL["ohms"], ids=lambda e: str(e["awg"]))
def test_a_lead_has_the_ohms_of_the_code_within_one_percent(each: dict[str, Any]) -> None:
    """One ampere through 1000 ft one way loses twice the ohms of 1000 ft."""
    section = pi / 4 * gauge_diameter(each["awg"]) ** 2
    ohms = leads.cable_drop(1000 * 0.3048, 1, section, _warm()) / 2
    assert ohms == pytest.approx(each["ohm"], rel=0.01)


def test_cold_solid_copper_has_the_published_constant() -> None:
    (published,) = ALL["copper"]
    circular_mil = pi / 4 * 0.0254**2
    resistivity = published["ohm_cmil_per_foot"] * circular_mil / 0.3048
    assert leads.copper(20, 0.01724, 0.00393, 1) == pytest.approx(resistivity, rel=1e-3)


def test_the_drop_is_that_of_the_worked_example() -> None:
    inputs, answer = example("drop-5m")
    assert leads.cable_drop(**inputs) == pytest.approx(answer, abs=0.005)


@given(LENGTH, AMPS, SECTION, RHO)
def test_the_section_comes_back_from_its_drop(
    length: float, amps: float, section: float, rho: float
) -> None:
    drop = leads.cable_drop(length, amps, section, rho)
    if 0.01 <= drop <= 500:
        assert leads.section_for(length, amps, drop, rho) == pytest.approx(section)


@given(LENGTH, AMPS, SECTION, RHO, st.floats(1.01, 2))
def test_longer_thinner_and_warmer_leads_lose_more(
    length: float, amps: float, section: float, rho: float, more: float
) -> None:
    drop = leads.cable_drop(length, amps, section, rho)
    assert leads.cable_drop(length * more, amps, section, rho) > drop
    assert leads.cable_drop(length, amps * more, section, rho) > drop
    assert leads.cable_drop(length, amps, section / more, rho) > drop
    assert leads.copper(75, 0.01724, 0.00393, 1.02) > leads.copper(20, 0.01724, 0.00393, 1.02)


@given(st.data())
def test_no_float_gives_a_nonsense_result(data: st.DataObject) -> None:
    for formula, count in (
        (minutes.duty_at, 3),
        (minutes.amps_at, 3),
        (minutes.rest_minutes, 1),
        (power.supply_amps, 5),
        (power.apparent_power, 4),
        (minutes.effective_amps, 2),
        (leads.copper, 4),
        (power.peak_volts, 1),
        (leads.cable_drop, 4),
        (leads.section_for, 4),
    ):
        refused_or_finite(formula, *(data.draw(FLOATS) for _ in range(count)))
    plate = [(data.draw(FLOATS), data.draw(FLOATS)) for _ in range(2)]
    for between in (minutes.duty_between, minutes.amps_between):
        refused_or_finite(lambda number, law=between: law(number, plate), data.draw(FLOATS))
