"""A shop's own closed cases shift base rates, gently, and the shift can be worked out by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.engine.small import base, cause

from weldwhy.engine.belief import replay
from weldwhy.engine.history import LEAST, MOST, Closed, multipliers
from weldwhy.engine.network import network_for


def test_by_hand() -> None:
    """Two cases, one confirmed, half expected in each: (2 + 1) / (2 + 1) = 1; see Gelman et al."""
    cases = [Closed(("a",), {"a": 0.5, "b": 0.5}), Closed(("b",), {"a": 0.5, "b": 0.5})]
    assert multipliers(cases) == {"a": 1.0, "b": 1.0}
    again = [*cases, Closed(("a",), {"a": 0.5, "b": 0.5})]
    assert multipliers(again)["a"] == pytest.approx((2 + 2) / (2 + 1.5))


def test_a_cause_that_is_often_in_play_and_never_found_sinks_but_not_out_of_sight() -> None:
    cases = [Closed(("a",), {"a": 0.1, "b": 0.9})] * 90
    found = multipliers(cases)
    assert found["b"] == LEAST
    assert found["a"] == MOST


def test_old_habits_fade() -> None:
    steady = [Closed(("a",), {"a": 0.2})] * 99
    halved = multipliers([*steady, Closed(("a",), {"a": 0.2})])
    assert halved["a"] == pytest.approx((2 + 50) / (2 + 10))


def test_no_history_shifts_nothing() -> None:
    assert multipliers([]) == {}


@given(st.lists(st.tuples(st.sampled_from("ab"), st.floats(0.0, 1.0)), max_size=30))
def test_multipliers_stay_in_their_bounds(cases: list[tuple[str, float]]) -> None:
    found = multipliers(Closed((name,), {"a": p, "b": 1.0 - p}) for name, p in cases)
    assert all(LEAST <= value <= MOST for value in found.values())


def test_a_multiplier_moves_its_cause_and_only_within_its_class_of_sets() -> None:
    rules = base([cause(n) for n in "abc"], [])
    plain = network_for(rules, "p", ("bad",))
    moved = network_for(rules, "p", ("bad",), multipliers=(("a", 4.0),))
    assert replay(moved, ()).probability("a") > replay(plain, ()).probability("a")
    for size in (1, 2):
        shares = [
            sum(w for s, w in zip(n.sets, n.start) if len(s) == size and s != (-1,))
            for n in (plain, moved)
        ]
        assert shares[0] == pytest.approx(shares[1], abs=1e-12)
