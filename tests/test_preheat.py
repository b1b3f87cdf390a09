"""The preheat a case wants, and what a grade alone says of a fault."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import gradeweights, preheat
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.steel import ce_iiw, cet, preheat_cet
from weldwhy.case import Case, Measured, Situated
from weldwhy.metalwork import is_steel, read
from weldwhy.units import Quantity, Target

RULES = shipped_rules()
PUBLISHED: dict[str, Any] = yaml.safe_load(
    (Path(__file__).parent / "published" / "formulas-metals.yaml").read_text()
)
STEELS = [grade.id for grade in RULES.grades.values() if is_steel(RULES, grade.material)]


def case(grade: str = "", material: str = "", process: str = "smaw", **measured: str) -> Case:
    told = [Situated("process", process), Situated("material", material), Situated("grade", grade)]
    return Case().with_(*told, *(Measured(name, value) for name, value in measured.items()))


def wanted(told: Case, millimetres: float | None, heat: float | None = None) -> Target:
    thickness = None if millimetres is None else Quantity("length", millimetres, "mm")
    found = preheat.target(RULES, told, thickness, heat)
    assert found is not None
    return found


def weights(grade: str) -> dict[str, float]:
    return dict(gradeweights.weights(RULES, case(grade)))


def test_thin_mild_steel_needs_no_preheat_and_thick_hard_steel_does() -> None:
    for grade in ("1018", "a36", "s235", "1008"):
        assert wanted(case(grade, rod="1/8 in 7018"), 6.0).low.value <= 20
    for grade in ("1045", "4140", "5160", "tool-steel-o1", "rail-steel"):
        assert wanted(case(grade, rod="1/8 in 7018"), 25.0).low.value >= 150


def test_within_the_formula_its_own_figure_is_wanted() -> None:
    found = wanted(case("s355", process="gmaw", wire="0.035 in ER70S-6"), 20.0, 1.2)
    expected = preheat_cet(cet(RULES.grades["s355"].makes), 20.0, 5.0, 1.2)
    assert found.low.value == pytest.approx(float(expected))
    assert found.low.value < found.best.value < found.high.value == 250


def test_a_low_hydrogen_rod_wants_less_preheat_than_one_not_known() -> None:
    dry = wanted(case("s355", rod="1/8 in 7018"), 25.0)
    any_rod = wanted(case("s355"), 25.0)
    cellulose = wanted(case("s355", rod="1/8 in 6010"), 25.0)
    assert dry.low.value < any_rod.low.value <= cellulose.low.value


def test_thicker_metal_never_wants_less_and_more_heat_never_more() -> None:
    dry = {"rod": "1/8 in 7018"}
    for grade in STEELS:
        told = case(grade, **dry)
        lows = [wanted(told, thick).low.value for thick in (2, 6, 10, 15, 25)]
        assert lows == sorted(lows), grade
        heats = [wanted(told, 15.0, heat).low.value for heat in (0.5, 1.0, 2.0, 4.0)]
        assert heats == sorted(heats, reverse=True), grade


def test_where_the_least_lies_above_the_hottest_there_is_no_number() -> None:
    """Quenched and tempered plate with a rod of unknown hydrogen: neither end would be right."""
    thick = Quantity("length", 50.0, "mm")
    assert preheat.target(RULES, case("a514"), thick, None) is None
    for grade in STEELS:
        for rod in ("1/8 in 7018", "1/8 in 6010", ""):
            found = preheat.target(RULES, case(grade, rod=rod), thick, None)
            assert found is None or found.low.value <= found.best.value <= found.high.value


def test_plate_below_the_formula_is_said_to_need_none_and_never_reckoned_in_silence() -> None:
    need = preheat.need(RULES, read(RULES, "S355"), 6.0, 8.0, 1.0)
    assert not need.due
    at_ten = preheat_cet(cet(RULES.grades["s355"].makes), 10.0, 8.0, 1.0)
    assert any(f"At 10 mm it would ask for {at_ten:.0f} C" in line for line in need.remarks)


def test_steel_beyond_the_formula_is_taken_from_a_table_and_says_so() -> None:
    need = preheat.need(RULES, read(RULES, "C 0.5 Mn 1"), 20.0, 5.0, 1.0)
    assert need.least >= 200
    assert any("more than the formula holds for" in line for line in need.remarks)
    soft = preheat.need(RULES, read(RULES, "C 0.08 Mn 0.5"), 50.0, 5.0, 1.0)
    assert not soft.due
    assert any("less than the formula holds for" in line for line in soft.remarks)


def test_hydrogen_beyond_the_formula_is_held_to_its_most_and_says_so() -> None:
    most = preheat.need(RULES, read(RULES, "S355"), 20.0, 20.0, 1.0)
    more = preheat.need(RULES, read(RULES, "S355"), 20.0, 40.0, 1.0)
    assert more.least == most.least
    assert any("taken as 20" in line for line in more.remarks)
    with pytest.raises(Impossible):
        preheat.need(RULES, read(RULES, "4140"), 20.0, 400.0, 1.0)


def test_heat_and_hydrogen_beyond_the_formula_never_earn_less_preheat() -> None:
    steel = read(RULES, "S355")
    most = preheat.need(RULES, steel, 50.0, 8.0, 4.0)
    more = preheat.need(RULES, steel, 50.0, 8.0, 10.0)
    assert more.least == most.least
    assert any("taken as 4" in line for line in more.remarks)
    none = preheat.need(RULES, steel, 50.0, 0.0, 1.0)
    assert none.least == preheat.need(RULES, steel, 50.0, 1.0, 1.0).least
    assert any("taken as 1" in line for line in none.remarks)


def test_a_grade_with_a_row_of_its_own_never_gets_less_than_the_formula_asks_for() -> None:
    metal = read(RULES, "4130")
    thick = preheat.need(RULES, metal, 25.0, 8.0, 1.0)
    assert thick.least == pytest.approx(float(preheat_cet(cet(metal.makes), 25.0, 8.0, 1.0)))
    thin = preheat.need(RULES, metal, 6.0, 8.0, 1.0)
    assert thin.least == RULES.tables["preheat-group"].value("4130", "thick")


def test_thin_plate_with_much_carbon_is_warmed_all_the_same() -> None:
    hard = preheat.need(RULES, read(RULES, "C 0.40 Mn 0.8"), 6.0, 8.0, 1.0)
    assert hard.due
    assert hard.least >= 100
    assert any("0.4 % carbon" in line for line in hard.remarks)


def test_what_is_taken_for_hydrogen_is_no_less_than_any_process_leaves() -> None:
    table = RULES.tables["hydrogen"]
    assert table.value("any") == max(table.value(row) for row in table.rows)


@given(
    st.sampled_from([*RULES.grades, ""]), st.sampled_from([*RULES.materials, ""]),
    st.floats(0.3, 300), st.none() | st.floats(0.1, 6), st.sampled_from([*RULES.processes, ""]),
)  # fmt: skip
def test_a_target_is_in_order_whatever_is_known(
    grade: str, material: str, thickness: float, heat: float | None, process: str
) -> None:
    told = case(grade, material, process)
    found = preheat.target(RULES, told, Quantity("length", thickness, "mm"), heat)
    if found is not None:
        assert found.low.value <= found.best.value <= found.high.value
        assert {q.kind for q in (found.low, found.best, found.high)} == {"temperature"}


def test_nothing_is_wanted_where_nothing_is_known() -> None:
    thick = Quantity("length", 20.0, "mm")
    assert preheat.target(RULES, case(), thick, None) is None
    assert preheat.target(RULES, case(material="cast-iron"), thick, None) is None
    assert preheat.target(RULES, case("s355"), None, None) is None
    assert preheat.target(replace(RULES, tables={}), case("s355"), thick, None) is None


def test_stainless_and_aluminium_want_no_preheat_but_a_limit_between_beads() -> None:
    for material in ("stainless", "aluminium"):
        found = wanted(case(material=material), None)
        assert found.low.value <= 20
        assert found.high.value <= 150


@pytest.mark.parametrize("material", PUBLISHED["interpass"]["ranges"])
def test_interpass_limits_lie_in_the_published_ranges(material: str) -> None:
    least, most = PUBLISHED["interpass"]["ranges"][material]
    found = preheat.interpass(RULES, "", material)
    assert found is not None
    assert least <= found <= most


@pytest.mark.parametrize("grade", PUBLISHED["carbon_equivalent_limits"]["rows"])
def test_a_structural_grade_keeps_to_its_standards_carbon_equivalent(grade: str) -> None:
    limit = PUBLISHED["carbon_equivalent_limits"]["rows"][grade]
    assert limit - 0.03 <= ce_iiw(RULES.grades[grade].makes) <= limit + 1e-9


def test_every_row_of_the_metal_tables_that_names_a_metal_names_one_there_is() -> None:
    known = {*RULES.grades, *RULES.materials}
    for name in ("preheat-group", "interpass", "steel-taken"):
        assert set(RULES.tables[name].rows) <= known, name
    assert set(RULES.tables["hydrogen"].rows) <= {*RULES.processes, "any"}


def test_the_weight_tables_name_causes_there_are() -> None:
    for name in ("cutting-weight", "aluminium-weight"):
        assert set(RULES.tables[name].columns) <= set(RULES.causes)
    assert set(RULES.tables["steel-weight"].columns[1:]) <= set(RULES.causes)


def test_hard_steel_makes_hardening_likelier_and_soft_steel_a_quarter() -> None:
    for grade in ("4140", "1045", "5160"):
        assert weights(grade)["hardenable-steel"] > 4
        assert weights(grade)["preheat-missing"] > 2
    for grade in ("1008", "1010", "s235"):
        assert weights(grade)["hardenable-steel"] == pytest.approx(0.25)


def test_the_weight_of_hardening_rises_with_the_carbon_equivalent() -> None:
    order = sorted(STEELS, key=lambda grade: ce_iiw(RULES.grades[grade].makes))
    found = [weights(grade)["hardenable-steel"] for grade in order]
    assert found == sorted(found)


def test_an_aluminium_grade_weighs_on_what_cracks_it() -> None:
    for grade in ("2024", "7075", "2011"):
        assert weights(grade)["crack-prone-aluminium"] > 5
    assert weights("6061")["crack-prone-aluminium"] < 1 < weights("6061")["aluminium-no-filler"]
    assert weights("5083")["aluminium-no-filler"] < 1
    assert "hardenable-steel" not in weights("6061")


def test_free_cutting_bar_is_likely_unfit_and_other_bar_seldom() -> None:
    for grade in ("12l14", "303"):
        assert weights(grade)["base-metal-unsuitable"] > 5
    assert weights("1018")["base-metal-unsuitable"] < 1


def test_a_weight_is_held_within_twenty_times() -> None:
    table = RULES.tables["cutting-weight"]
    wild = replace(table, rows={"free-cutting": (900.0,), "ordinary": (0.0,)})
    rules = replace(RULES, tables={**RULES.tables, "cutting-weight": wild})
    assert dict(gradeweights.weights(rules, case("303")))["base-metal-unsuitable"] == 20
    assert dict(gradeweights.weights(rules, case("304")))["base-metal-unsuitable"] == 1 / 20


def test_no_grade_or_no_tables_weighs_nothing() -> None:
    assert gradeweights.weights(RULES, case(material="mild-steel")) == ()
    assert gradeweights.weights(RULES, case("no-such-grade")) == ()
    assert gradeweights.weights(replace(RULES, tables={}), case("4140")) == ()


@pytest.mark.parametrize(
    ("grade", "rod", "side"),
    [
        ("304", "1/8 in E310-16", "more"),
        ("304", "1/8 in E308L-16", "less"),
        ("316l", "3/32 in 316L", "less"),
    ],
)
def test_the_ferrite_of_a_stainless_bead_speaks_for_or_against_its_filler(
    grade: str, rod: str, side: str
) -> None:
    """A bead without ferrite (310) cracks as it freezes, one with 3 to 10 FN does not."""
    times = dict(gradeweights.weights(RULES, case(grade, rod=rod)))["stainless-filler-wrong"]
    assert times > 2 if side == "more" else times < 0.6


def test_a_filler_that_is_not_known_says_nothing_of_ferrite() -> None:
    for rod in ("", "1/8 in", "1/8 in E7018"):
        assert "stainless-filler-wrong" not in dict(
            gradeweights.weights(RULES, case("304", rod=rod))
        )


def test_only_causes_of_the_rules_are_named() -> None:
    none = replace(RULES, causes={})
    for grade in ("12l14", "1045", "7075"):
        assert gradeweights.weights(RULES, case(grade))
        assert gradeweights.weights(none, case(grade)) == ()


def test_thick_plate_with_more_carbon_still_goes_by_the_formula() -> None:
    metal = read(RULES, "C 0.36 Mn 0.6 Si 0.2")
    found = preheat.need(RULES, metal, 20.0, 5.0, 1.2)
    assert found.least == pytest.approx(float(preheat_cet(cet(metal.makes), 20.0, 5.0, 1.2)))


def test_hydrogen_is_that_of_the_process_where_no_class_is_told() -> None:
    careful = RULES.tables["hydrogen"]
    for process in ("gmaw", "gtaw-dc", "smaw"):
        assert preheat.hydrogen(RULES, case(process=process)) == careful.value(process)
    assert preheat.hydrogen(RULES, case(process="other")) == careful.value("any")


def test_thin_goes_up_to_its_own_limit() -> None:
    """1045 is thin up to 12 mm by its row of the table."""
    lows = [wanted(case("1045", rod="1/8 in 7018"), thick).low.value for thick in (12.0, 12.1)]
    assert lows == [150, 200]
