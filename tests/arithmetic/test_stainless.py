"""Chromium and nickel equivalents, ferrite and martensite of stainless welds."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy.arithmetic import stainless
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.makes import mixed
from weldwhy.metalwork import composition_of

PUBLISHED: dict[str, Any] = yaml.safe_load(
    (Path(__file__).parents[1] / "published" / "formulas-metals.yaml").read_text()
)
MILD = {"C": 0.20, "Si": 0.25, "Mn": 0.9}


def filler(row: str) -> dict[str, float]:
    return composition_of(shipped_rules().tables["stainless-filler"], row)


@pytest.mark.parametrize(
    "row", PUBLISHED["equivalents"], ids=lambda r: f"{r['formula']}-{r['creq']}"
)
def test_equivalents_are_the_published_ones(row: dict[str, Any]) -> None:
    creq, nieq = getattr(stainless, row["formula"])(row["makes"])
    assert (creq, nieq) == (pytest.approx(row["creq"]), pytest.approx(row["nieq"]))


@pytest.mark.parametrize("row", PUBLISHED["ferrite_line"], ids=lambda r: str(r["answer"]))
def test_the_ferrite_number_lies_on_the_published_line(row: dict[str, Any]) -> None:
    found = stainless.ferrite_number(row["creq"], row["nieq"])
    assert found == pytest.approx(row["answer"], abs=0.006)


@pytest.mark.parametrize("row", PUBLISHED["ferrite"]["rows"])
def test_weld_metal_of_a_filler_has_the_ferrite_its_class_is_known_for(row: str) -> None:
    least, most = PUBLISHED["ferrite"]["rows"][row]
    assert least <= stainless.ferrite_number(*stainless.delong(filler(row))) <= most


@pytest.mark.parametrize("row", ["308l", "309l", "316l", "347", "310"])
def test_ferrite_agrees_with_an_older_estimate_from_other_equivalents(row: str) -> None:
    creq, nieq = stainless.schaeffler(filler(row))
    old = PUBLISHED["seferian"]
    percent = max(old["times"] * (creq - old["nickel"] * nieq - old["less"]), 0.0)
    found = stainless.ferrite_number(*stainless.delong(filler(row)))
    assert found == pytest.approx(percent, abs=4.5)


@given(st.floats(16, 27), st.floats(10, 21), st.floats(0, 3))
def test_ferrite_rises_with_chromium_and_falls_with_nickel(
    creq: float, nieq: float, more: float
) -> None:
    found = stainless.ferrite_number(creq, nieq)
    assert found >= 0
    assert stainless.ferrite_number(creq + more, nieq) >= found
    assert stainless.ferrite_number(creq, nieq + more) <= found


def test_ferrite_outside_the_diagram_is_remarked_on() -> None:
    assert stainless.ferrite_number(20, 12).remarks == ()
    assert any("Creq" in line for line in stainless.ferrite_number(30, 12).remarks)
    assert any("Nieq" in line for line in stainless.ferrite_number(26, 25).remarks)
    assert any("ferrite number" in line for line in stainless.ferrite_number(26, 11).remarks)
    assert any("N 0.3" in line for line in stainless.wrc({"Cr": 22, "Ni": 10, "N": 0.3})[0].remarks)


@pytest.mark.parametrize(
    ("row", "dilution", "hard"),
    [("308l", 0.3, True), ("309l", 0.2, False), ("309l", 0.3, False), ("309l", 0.5, True)],
)
def test_mild_steel_melted_into_stainless_turns_hard_from_some_share_on(
    row: str, dilution: float, hard: bool
) -> None:
    creq, nieq = stainless.schaeffler(mixed(MILD, filler(row), dilution))
    assert (nieq < stainless.martensite_below(creq)) == hard


@pytest.mark.parametrize("makes", [{"Cr": -1.0}, {"Ni": float("nan")}, {"Cr": 80.0, "Ni": 30.0}])
@pytest.mark.parametrize("formula", [stainless.schaeffler, stainless.delong, stainless.wrc])
def test_a_composition_that_cannot_be_is_refused(formula: Any, makes: dict[str, float]) -> None:
    with pytest.raises(Impossible):
        formula(makes)


@pytest.mark.parametrize(("creq", "nieq"), [(-1, 10), (float("nan"), 10), (20, float("inf"))])
def test_equivalents_that_cannot_be_are_refused(creq: float, nieq: float) -> None:
    with pytest.raises(Impossible):
        stainless.ferrite_number(creq, nieq)
