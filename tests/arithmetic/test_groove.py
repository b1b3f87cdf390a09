"""Sections of grooves against an outside library and against each other, and passes."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.anyfloat import FLOATS, refused_or_finite
from tests.arithmetic.published import ALL

from weldwhy.arithmetic import groove
from weldwhy.arithmetic.bounds import Impossible

THICK, GAP, ANGLE = st.floats(2, 40), st.floats(0, 6), st.floats(1, 60)


@pytest.mark.parametrize("each", ALL["weldx"], ids=lambda e: f"{e['shape']}-{e['thickness']}")
def test_the_section_is_that_of_the_library(each: dict[str, Any]) -> None:
    section = groove.bevel_area if each["shape"].endswith("bevel") else groove.groove_area
    double = each["shape"].startswith("double")
    area = section(each["thickness"], each["gap"], each["face"], each["angle"], double)
    assert area == pytest.approx(each["area"], abs=1e-6)


@given(THICK, GAP)
def test_a_groove_without_an_angle_is_square(thickness: float, gap: float) -> None:
    assert groove.groove_area(thickness, gap, 1, 0, False) == pytest.approx(gap * thickness)


@given(THICK, GAP, ANGLE)
def test_a_v_is_two_bevels_of_half_its_angle(thickness: float, gap: float, angle: float) -> None:
    one_plate = groove.bevel_area(thickness, 0, 1, angle / 2, False)
    both = groove.groove_area(thickness, gap, 1, angle, False)
    assert both == pytest.approx(gap * thickness + 2 * one_plate)


@given(THICK, ANGLE)
def test_a_groove_from_both_sides_takes_half_the_filler(thickness: float, angle: float) -> None:
    for section in (groove.groove_area, groove.bevel_area):
        single = section(thickness, 0, 0, angle, False)
        assert section(thickness, 0, 0, angle, True) == pytest.approx(single / 2)


@given(THICK, GAP, ANGLE, st.floats(0.1, 1.5))
def test_a_root_face_saves_filler_and_a_gap_and_an_angle_cost_it(
    thickness: float, gap: float, angle: float, more: float
) -> None:
    area = groove.groove_area(thickness, gap, 0.1, angle, False)
    assert groove.groove_area(thickness, gap, 0.1 + more, angle, False) < area
    assert groove.groove_area(thickness, gap + more, 0.1, angle, False) > area
    assert groove.groove_area(thickness, gap, 0.1, angle + more, False) > area


def test_a_root_face_as_thick_as_the_plate_leaves_only_the_gap() -> None:
    assert groove.groove_area(10, 2, 10, 60, False) == pytest.approx(20)
    with pytest.raises(Impossible, match="root face 11 mm"):
        groove.groove_area(10, 2, 11, 60, False)


@pytest.mark.parametrize(
    ("section", "usual", "wide"), [(groove.groove_area, 90, 91), (groove.bevel_area, 60, 61)]
)
def test_an_angle_wider_than_anybody_cuts_is_remarked_on(
    section: Any, usual: float, wide: float
) -> None:
    assert not section(10, 2, 2, usual, False).remarks
    assert "angle" in section(10, 2, 2, wide, False).remarks[0]


def test_reinforcement_is_a_share_on_top() -> None:
    assert groove.with_reinforcement(50, 0.1) == pytest.approx(55)
    assert not groove.with_reinforcement(50, 0.3).remarks
    assert groove.with_reinforcement(50, 0.31).remarks


@pytest.mark.parametrize(
    ("area", "one", "count"), [(18, 18, 1), (18.1, 18, 2), (0.1 + 0.2, 0.1, 3), (60, 20, 3)]
)
def test_passes_are_whole_and_enough(area: float, one: float, count: int) -> None:
    assert groove.passes(area, one) == float(count)


@given(st.floats(1, 500), st.floats(1, 50))
def test_passes_fill_the_section_and_one_less_does_not(area: float, one: float) -> None:
    count = groove.passes(area, one)
    assert (count - 1) * one < area * (1 + 1e-8)
    assert area <= count * one * (1 + 1e-8)


def test_a_thousand_passes_are_refused() -> None:
    with pytest.raises(Impossible, match="larger"):
        groove.passes(1001, 1)


@given(st.data(), st.booleans())
def test_no_float_gives_a_nonsense_result(data: st.DataObject, double: bool) -> None:
    for formula in (groove.groove_area, groove.bevel_area):
        refused_or_finite(formula, *(data.draw(FLOATS) for _ in range(4)), double)
    for pair in (groove.with_reinforcement, groove.passes):
        refused_or_finite(pair, data.draw(FLOATS), data.draw(FLOATS))
