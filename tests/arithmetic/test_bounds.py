"""A number outside physics is refused, one outside a formula's range is used and remarked on."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.arithmetic.bounds import Impossible, Reckoned, outside, possible, remarks

NUMBERS = st.floats(allow_nan=True, allow_infinity=True)


@given(NUMBERS)
def test_a_number_passes_unchanged_or_is_refused(value: float) -> None:
    try:
        assert possible("travel", value, 0.5, 50, "mm/s") == value
    except Impossible:
        assert not 0.5 <= value <= 50


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 0.0, 50.1])
def test_what_physics_does_not_allow_is_refused_with_bounds_in_both_systems(value: float) -> None:
    with pytest.raises(Impossible) as fault:
        possible("travel", value, 0.5, 50, "mm/s")
    assert str(fault.value).endswith("it can be 0.5 to 50 mm/s (1.181 to 118.1 in/min)")


def test_bounds_without_a_counterpart_in_inches_are_said_once() -> None:
    with pytest.raises(Impossible, match=r"^amps 0 A is not possible; it can be 1 to 600 A$"):
        possible("amps", 0, 1, 600, "A")
    with pytest.raises(Impossible, match=r"^share 2 is not possible; it can be 0 to 1$"):
        possible("share", 2, 0, 1)
    with pytest.raises(Impossible, match=r"it can be 1 A or more$"):
        possible("amps", 0, 1, math.inf, "A")
    with pytest.raises(Impossible, match=r"it can be 0 to 20000 bar \(0 to 290075 psi\)$"):
        possible("pressure", 123456, 0, 20_000, "bar")


def test_temperatures_are_said_on_both_scales() -> None:
    with pytest.raises(Impossible, match=r"it can be -40 to 100 C \(-40 to 212 F\)$"):
        possible("heat of the plate", -274, -40, 100, "C")


@given(NUMBERS)
def test_a_remark_is_made_outside_the_range_and_nowhere_else(value: float) -> None:
    made = outside("volts", value, 10, 40, "V")
    assert bool(made) is not (10 <= value <= 40)
    assert all(line.endswith("lies outside 10 to 40 V, where this holds") for line in made)


@given(NUMBERS)
def test_a_result_is_finite_or_there_is_none(value: float) -> None:
    if math.isfinite(value):
        assert Reckoned(value) == value
    else:
        with pytest.raises(Impossible, match="no finite result"):
            Reckoned(value)


def test_remarks_go_on_to_what_is_worked_out_from_a_result_and_none_is_said_twice() -> None:
    one = Reckoned(1.0, ("a", "b"), ("b",))
    two = Reckoned(one + 1, ("c",), remarks(one, 3.0, one))
    assert two.remarks == ("c", "a", "b")
    assert remarks(one, two) == ("a", "b", "c")
    assert remarks(2.0) == ()
