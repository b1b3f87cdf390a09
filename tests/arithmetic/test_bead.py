"""Fillets, beads and the travel speed they tell: published figures, round trips, and shapes."""

from __future__ import annotations

from math import hypot
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.anyfloat import FLOATS, refused_or_finite
from tests.arithmetic.published import ALL, answer, examples

from weldwhy.arithmetic import bead
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.melting import deposition

LEG, FEED, SIZE = st.floats(1, 40), st.floats(1, 20), st.floats(0.6, 2.4)


@pytest.mark.parametrize("each", examples("fillet_throat"), ids=lambda e: e["id"])
def test_the_throat_is_as_published(each: dict[str, Any]) -> None:
    assert bead.fillet_throat(each["inputs"]["leg"]) == pytest.approx(answer(each), abs=0.006)


@pytest.mark.parametrize("each", examples("fillet_area"), ids=lambda e: e["id"])
def test_the_area_is_that_of_the_formula(each: dict[str, Any]) -> None:
    leg = each["inputs"]["leg"]
    assert bead.fillet_area(leg, leg) == pytest.approx(answer(each))


@pytest.mark.parametrize("each", examples("fillet_mass"), ids=lambda e: e["id"])
def test_the_mass_of_a_metre_is_that_of_the_formula(each: dict[str, Any]) -> None:
    leg, rho = each["inputs"]["leg"], each["inputs"]["rho"]
    assert bead.fillet_area(leg, leg) * rho == pytest.approx(answer(each), abs=0.5)


@given(LEG)
def test_the_leg_comes_back_from_its_throat(leg: float) -> None:
    assert bead.fillet_leg(bead.fillet_throat(leg)) == pytest.approx(leg)


@given(LEG)
def test_the_leg_comes_back_from_its_area(leg: float) -> None:
    assert bead.leg_of_area(bead.fillet_area(leg, leg)) == pytest.approx(leg)


@given(LEG, LEG)
def test_the_throat_stands_square_on_the_face(leg: float, other: float) -> None:
    """Twice the area is throat times face, whatever the legs."""
    face = hypot(leg, other)
    throat = bead.fillet_throat(leg, other)
    assert throat * face == pytest.approx(2 * bead.fillet_area(leg, other))
    assert throat < min(leg, other)


def test_legs_that_are_very_unequal_are_remarked_on() -> None:
    assert not bead.fillet_area(6, 8.9).remarks
    assert "shorter" in bead.fillet_area(6, 9).remarks[0]


def test_a_bead_holds_less_than_its_box_and_more_than_its_triangle() -> None:
    assert 8 * 2 / 2 < bead.bead_area(8, 2) < 8 * 2


def test_a_bead_taller_than_half_its_width_is_remarked_on() -> None:
    assert not bead.bead_area(8, 4).remarks
    assert bead.bead_area(8, 4.1).remarks


# Travel


@pytest.mark.parametrize("each", ALL["weldx"], ids=lambda e: f"{e['shape']}-{e['thickness']}")
def test_the_speed_that_fills_a_groove_is_that_of_the_library(each: dict[str, Any]) -> None:
    assert bead.travel_for_area(each["area"], 6, 0.9, 1) == pytest.approx(each["travel"], rel=2e-6)


@given(st.floats(2, 100), FEED, SIZE, st.floats(0.5, 1))
def test_the_area_comes_back_from_its_speed(
    area: float, feed: float, size: float, share: float
) -> None:
    travel = bead.travel_for_area(area, feed, size, share)
    assert bead.area_for_travel(travel, feed, size, share) == pytest.approx(area)


@given(LEG, FEED, SIZE, st.floats(1.01, 3))
def test_a_bigger_bead_was_welded_slower_and_a_faster_feed_moves_faster(
    leg: float, feed: float, size: float, more: float
) -> None:
    area = bead.fillet_area(leg, leg)
    travel = bead.travel_for_area(area, feed, size, 0.95)
    assert bead.travel_for_area(area * more, feed, size, 0.95) < travel
    assert bead.travel_for_area(area, feed * more, size, 0.95) > travel


@given(LEG, FEED, SIZE)
def test_what_is_laid_down_in_an_hour_is_the_weld_of_an_hour(
    leg: float, feed: float, size: float
) -> None:
    """Section x travel x density is the deposition rate."""
    area = bead.fillet_area(leg, leg)
    travel = bead.travel_for_area(area, feed, size, 0.95)
    grams_an_hour = area * travel * 3600 / 1000 * 7.85
    assert grams_an_hour / 1000 == pytest.approx(deposition(feed, size, 7.85, 0.95))


def test_arc_time_is_length_over_speed() -> None:
    assert bead.travel_minutes(3, 5) == pytest.approx(10)


@pytest.mark.parametrize("leg", [0, -1, 1e6])
def test_a_leg_that_cannot_be_is_refused(leg: float) -> None:
    with pytest.raises(Impossible, match="leg"):
        bead.fillet_area(leg, 6)


@given(st.data())
def test_no_float_gives_a_nonsense_result(data: st.DataObject) -> None:
    for formula, count in (
        (bead.fillet_throat, 2),
        (bead.fillet_leg, 1),
        (bead.leg_of_area, 1),
        (bead.fillet_area, 2),
        (bead.bead_area, 2),
        (bead.travel_for_area, 4),
        (bead.area_for_travel, 4),
        (bead.travel_minutes, 2),
    ):
        refused_or_finite(formula, *(data.draw(FLOATS) for _ in range(count)))
