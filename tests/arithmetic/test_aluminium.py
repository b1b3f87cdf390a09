"""Aluminium beads: what dilution makes of them, and where they crack."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.arithmetic.aluminium import crack_sensitivity, magnesium_silicide, mixed
from weldwhy.arithmetic.bounds import Impossible

PEAKS = {"Si": (0.5, 1.0, 2.0), "Mg": (1.0, 2.0, 3.0), "Mg2Si": (0.5, 2.0, 4.0)}
A6061 = {"Si": 0.6, "Mg": 1.0, "Cu": 0.28}
PARTS = st.dictionaries(st.sampled_from(["Si", "Mg", "Cu", "Mn"]), st.floats(0, 12), max_size=4)


@given(base=PARTS, filler=PARTS, dilution=st.floats(0, 1))
def test_each_part_of_a_mixture_lies_between_base_and_filler(
    base: dict[str, float], filler: dict[str, float], dilution: float
) -> None:
    weld = mixed(base, filler, dilution)
    assert set(weld) == set(base) | set(filler)
    for each, percent in weld.items():
        ends = sorted((base.get(each, 0.0), filler.get(each, 0.0)))
        assert ends[0] - 1e-9 <= percent <= ends[1] + 1e-9


def test_no_dilution_is_the_filler_and_full_dilution_the_base() -> None:
    assert mixed(A6061, {"Si": 5.0}, 0.0)["Si"] == 5.0
    assert mixed(A6061, {"Si": 5.0}, 1.0) == A6061


@pytest.mark.parametrize("dilution", [-0.1, 1.1, float("nan")])
def test_a_dilution_that_cannot_be_is_refused(dilution: float) -> None:
    with pytest.raises(Impossible, match="dilution"):
        mixed(A6061, {}, dilution)


def test_magnesium_silicide_is_bound_by_the_scarcer_part() -> None:
    assert magnesium_silicide({"Mg": 1.0, "Si": 5.0}) == pytest.approx(1.578, abs=0.001)
    assert magnesium_silicide({"Mg": 5.0, "Si": 1.0}) == pytest.approx(2.731, abs=0.001)
    assert magnesium_silicide({"Mg": 5.0}) == 0.0


@pytest.mark.parametrize(
    ("makes", "least", "most"),
    [
        ({"Si": 0.8}, 1, 1),
        ({"Si": 0.1}, 0.2, 0.2),
        ({"Si": 5.0}, 0, 0),
        ({"Mg": 1.5}, 1, 1),
        ({"Mg": 2.5}, 0.5, 0.5),
        ({"Mg": 5.0}, 0, 0),
        (A6061, 1, 1),
        (mixed(A6061, {"Si": 5.2}, 0.5), 0, 0),
        (mixed(A6061, {"Si": 5.2}, 0.9), 0.6, 1),
        ({}, 0, 0),
    ],
)
def test_cracking_peaks_where_published_curves_do(
    makes: dict[str, float], least: float, most: float
) -> None:
    assert least - 1e-9 <= crack_sensitivity(makes, PEAKS) <= most + 1e-9


@given(makes=PARTS, more=st.floats(0, 3))
def test_sensitivity_is_a_share_and_more_silicon_past_its_peak_never_adds_to_it(
    makes: dict[str, float], more: float
) -> None:
    rich = makes | {"Si": 2.0 + more}
    assert 0 <= crack_sensitivity(makes, PEAKS) <= 1
    assert float(crack_sensitivity(rich, PEAKS)) == 0.0


@pytest.mark.parametrize("peak", [(0.0, 1.0, 2.0), (1.0, 0.5, 2.0), (1.0, 2.0, 2.0)])
def test_a_peak_that_does_not_rise_is_refused(peak: tuple[float, float, float]) -> None:
    with pytest.raises(Impossible, match="peak of Si"):
        crack_sensitivity(A6061, {"Si": peak})


def test_a_composition_that_cannot_be_is_refused() -> None:
    with pytest.raises(Impossible):
        crack_sensitivity({"Si": -1.0}, PEAKS)
