"""Carbon equivalents and preheat, against published figures and what must be so in any steel."""

from __future__ import annotations

from math import tanh
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.arithmetic import steel
from weldwhy.arithmetic.bounds import Impossible

PUBLISHED: dict[str, Any] = yaml.safe_load(
    (Path(__file__).parents[1] / "published" / "formulas-metals.yaml").read_text()
)
FORMULAS = (steel.ce_iiw, steel.pcm, steel.cet)
COUNTED = {
    steel.ce_iiw: ("C", "Mn", "Cr", "Mo", "V", "Ni", "Cu"),
    steel.pcm: ("C", "Si", "Mn", "Cu", "Cr", "Ni", "Mo", "V", "B"),
    steel.cet: ("C", "Mn", "Mo", "Cr", "Cu", "Ni"),
}
PERCENT = st.floats(0, 2)
CETS = st.floats(0.2, 0.5)
THICKNESSES = st.floats(10, 90)
HYDROGENS = st.floats(1, 20)
HEATS = st.floats(0.5, 4)
INSIDE = st.tuples(CETS, THICKNESSES, HYDROGENS, HEATS)


@pytest.mark.parametrize("row", PUBLISHED["checks"], ids=lambda r: f"{r['formula']}-{r['answer']}")
def test_a_carbon_equivalent_is_the_published_one(row: dict[str, Any]) -> None:
    found = getattr(steel, row["formula"])(row["makes"])
    assert found == pytest.approx(row["answer"], abs=0.0006)


@pytest.mark.parametrize("row", PUBLISHED["preheat"], ids=lambda r: f"cet-{r['cet']}")
def test_a_preheat_is_the_published_one(row: dict[str, Any]) -> None:
    found = steel.preheat_cet(row["cet"], row["d"], row["hd"], row["q"])
    assert found == pytest.approx(row["answer"], abs=0.6)
    assert found.remarks == ()


@given(inside=INSIDE)
def test_the_preheat_is_the_sum_of_the_parts_that_the_standard_gives(
    inside: tuple[float, float, float, float],
) -> None:
    parts = PUBLISHED["preheat_parts"]
    cet, thickness, hydrogen, heat = inside
    part = parts["cet"]["times"] * cet - parts["cet"]["less"]
    plate = parts["thickness"]
    part += plate["times"] * tanh(thickness / plate["over"]) - plate["less"]
    part += parts["hydrogen"]["times"] * hydrogen ** parts["hydrogen"]["power"]
    part -= parts["hydrogen"]["less"]
    slope = parts["heat"]["times"] * cet - parts["heat"]["less"]
    part += slope * heat - slope
    assert steel.preheat_cet(*inside) == pytest.approx(part, abs=1e-9)


@given(formula=st.sampled_from(FORMULAS), base=st.dictionaries(st.sampled_from(["C", "Mn", "Cr"]),
       PERCENT), more=st.floats(0.01, 1), data=st.data())  # fmt: skip
def test_a_carbon_equivalent_rises_with_each_element_it_counts(
    formula: Any, base: dict[str, float], more: float, data: st.DataObject
) -> None:
    element = data.draw(st.sampled_from(COUNTED[formula]))
    richer = base | {element: base.get(element, 0.0) + more}
    assert formula(richer) > formula(base)


@given(inside=INSIDE, cet=CETS, thickness=THICKNESSES, hydrogen=HYDROGENS)
def test_preheat_rises_with_cet_thickness_and_hydrogen(
    inside: tuple[float, float, float, float], cet: float, thickness: float, hydrogen: float
) -> None:
    c, d, h, q = inside
    base = steel.preheat_cet(*inside)
    assert steel.preheat_cet(max(c, cet), d, h, q) >= base
    assert steel.preheat_cet(c, max(d, thickness), h, q) >= base
    assert steel.preheat_cet(c, d, max(h, hydrogen), q) >= base


@given(inside=INSIDE, heat=HEATS)
def test_preheat_falls_with_heat_input_wherever_the_formula_holds(
    inside: tuple[float, float, float, float], heat: float
) -> None:
    c, d, h, q = inside
    assert steel.preheat_cet(c, d, h, max(q, heat)) <= steel.preheat_cet(*inside)


@given(inside=INSIDE)
def test_within_its_range_the_preheat_is_one_that_a_shop_can_think_of(
    inside: tuple[float, float, float, float],
) -> None:
    found = steel.preheat_cet(*inside)
    assert -200 < found < 360
    assert found.remarks == ()


@pytest.mark.parametrize(
    ("numbers", "named"),
    [
        ((0.6, 20, 5, 1), "CET"),
        ((0.1, 20, 5, 1), "CET"),
        ((0.3, 6, 5, 1), "thickness"),
        ((0.3, 100, 5, 1), "thickness"),
        ((0.3, 20, 30, 1), "hydrogen"),
        ((0.3, 20, 5, 0.3), "heat input"),
        ((0.3, 20, 5, 5), "heat input"),
    ],
)
def test_outside_its_range_the_preheat_says_so(
    numbers: tuple[float, float, float, float], named: str
) -> None:
    assert any(named in remark for remark in steel.preheat_cet(*numbers).remarks)


@pytest.mark.parametrize(
    ("formula", "makes", "named"),
    [
        (steel.ce_iiw, {"C": 0.43, "Mn": 1.0}, "CE: C"),
        (steel.ce_iiw, {"C": 0.08, "Mn": 1.0}, "CE: C"),
        (steel.pcm, {"C": 0.30}, "Pcm: C"),
        (steel.cet, {"C": 0.20, "Mn": 2.5}, "CET: Mn"),
    ],
)
def test_a_steel_outside_a_formula_is_remarked_on(
    formula: Any, makes: dict[str, float], named: str
) -> None:
    assert any(remark.startswith(named) for remark in formula(makes).remarks)


@pytest.mark.parametrize("formula", FORMULAS)
@pytest.mark.parametrize(
    "makes", [{"C": -0.1}, {"C": float("nan")}, {"C": 101.0}, {"C": 60.0, "Mn": 50.0}]
)
def test_a_composition_that_cannot_be_is_refused(formula: Any, makes: dict[str, float]) -> None:
    with pytest.raises(Impossible):
        formula(makes)


@pytest.mark.parametrize(
    "numbers",
    [
        (-0.1, 20, 5, 1), (0.3, 0, 5, 1), (0.3, 20, -1, 1), (0.3, 20, 5, 0),
        (0.3, float("nan"), 5, 1), (0.3, 20, 5, float("inf")),
    ],
)  # fmt: skip
def test_a_preheat_of_numbers_that_cannot_be_is_refused(
    numbers: tuple[float, float, float, float],
) -> None:
    with pytest.raises(Impossible):
        steel.preheat_cet(*numbers)
