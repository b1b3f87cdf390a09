"""Wire, rods and weld metal: round trips, worked examples, and what cannot be."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.anyfloat import FLOATS, refused_or_finite
from tests.arithmetic.powerfigures import example

from weldwhy.arithmetic import stock
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.melting import deposition

MASS, SIZE, RHO = st.floats(0.01, 50), st.floats(0.6, 5), st.floats(2.5, 8)


def test_the_weld_metal_of_a_metre_is_that_of_the_worked_example() -> None:
    inputs, grams = example("mass-6")
    assert 1000 * stock.weld_metal(**inputs) == pytest.approx(grams, abs=0.5)


def test_the_rounded_face_comes_on_top() -> None:
    assert stock.weld_metal(18, 1, 7.85, 0.1) == pytest.approx(1.1 * stock.weld_metal(18, 1, 7.85))


@given(MASS, SIZE, RHO)
def test_the_mass_comes_back_from_the_length_of_wire(mass: float, size: float, rho: float) -> None:
    length = stock.wire_left(mass, size, rho)
    assert stock.wire_mass(length, size, rho) == pytest.approx(mass)


def test_a_small_spool_of_thin_steel_wire_holds_a_kilometre_and_more() -> None:
    """5 kg / (7.85 g/cm3 x 0.503 mm2): 1267 m of 0.8 mm."""
    assert stock.wire_left(5, 0.8, 7.85) == pytest.approx(1267, abs=1)


def test_a_winding_of_one_layer_is_its_turns_end_to_end() -> None:
    """A layer of square array, 40 turns of 1 mm round 100 mm: 40 x pi x 101 mm."""
    length = stock.wire_wound(102, 100, 40, 1, pi / 4)
    assert length == pytest.approx(40 * pi * 101 / 1000, rel=1e-9)


@given(st.floats(50, 200), st.floats(0, 100), st.floats(10, 100), SIZE)
def test_a_fuller_spool_holds_more_wire(
    inner: float, depth: float, width: float, size: float
) -> None:
    less = stock.wire_wound(inner + depth, inner, width, size, 0.7)
    assert stock.wire_wound(inner + depth + 1, inner, width, size, 0.7) > less
    assert stock.wire_wound(inner + depth, inner, width, size * 1.1, 0.7) <= less


def test_a_spool_wider_inside_than_outside_is_refused() -> None:
    with pytest.raises(Impossible, match="100 mm outside and 120 mm inside"):
        stock.wire_wound(100, 120, 40, 1, 0.7)


def test_no_winding_is_denser_than_wires_can_lie() -> None:
    with pytest.raises(Impossible, match="packing"):
        stock.wire_wound(180, 100, 40, 1, 0.95)


@given(MASS, st.floats(0.3, 1))
def test_more_is_bought_than_ends_in_the_weld(mass: float, share: float) -> None:
    bought = stock.filler_needed(mass, share)
    assert bought * share == pytest.approx(mass)
    assert bought >= mass


@given(MASS, st.floats(0.9, 1.6), st.floats(2, 15), st.floats(0.7, 1))
def test_two_ways_to_the_arc_time_agree(
    mass: float, size: float, feed: float, share: float
) -> None:
    """By what is laid down in an hour, and by the length of wire and its feed."""
    by_rate = stock.arc_minutes(mass, deposition(feed, size, 7.85, share))
    wire = stock.wire_left(stock.filler_needed(mass, share), size, 7.85)
    assert stock.feed_minutes(wire, feed) == pytest.approx(by_rate)


# Rods


def test_a_rod_gives_what_was_burnt_of_its_core() -> None:
    """pi/4 x 3.2^2 x 300 mm of steel is 18.9 g."""
    assert 1000 * stock.rod_metal(3.2, 350, 50, 7.85, 1) == pytest.approx(18.94, abs=0.01)


@given(st.floats(0.01, 20), st.floats(2, 5), st.floats(0.8, 1.7))
def test_the_rods_do_for_the_weld_and_one_less_does_not(
    mass: float, size: float, recovery: float
) -> None:
    each = stock.rod_metal(size, 350, 50, 7.85, recovery)
    count = stock.rods_needed(mass, each)
    assert float(count).is_integer()
    assert count * each >= mass * (1 - 1e-6)
    assert (count - 1) * each < mass


def test_longer_stubs_take_more_rods() -> None:
    short, long = (stock.rod_metal(3.2, 350, stub, 7.85, 1) for stub in (40, 80))
    assert stock.rods_needed(1, long) > stock.rods_needed(1, short)


def test_a_stub_as_long_as_the_rod_is_refused_and_an_odd_one_remarked_on() -> None:
    with pytest.raises(Impossible, match="leaves nothing"):
        stock.rod_metal(3.2, 350, 350, 7.85, 1)
    assert stock.rod_metal(3.2, 350, 150, 7.85, 1).remarks
    assert not stock.rod_metal(3.2, 350, 50, 7.85, 1).remarks


@given(st.data())
def test_no_float_gives_a_nonsense_result(data: st.DataObject) -> None:
    for formula, count in (
        (stock.wire_left, 3),
        (stock.wire_mass, 3),
        (stock.wire_wound, 5),
        (stock.feed_minutes, 2),
        (stock.weld_metal, 4),
        (stock.filler_needed, 2),
        (stock.arc_minutes, 2),
        (stock.rod_metal, 5),
        (stock.rods_needed, 2),
    ):
        refused_or_finite(formula, *(data.draw(FLOATS) for _ in range(count)))
