"""A metal by grade or composition, and whether it tears as it freezes."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import hotcracks, metalwork
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.steel import ce_iiw
from weldwhy.model import RuleBase

RULES = shipped_rules()


@pytest.mark.parametrize(
    ("text", "grade"),
    [
        ("A36", "a36"),
        ("a-36", "a36"),
        ("1.4301", "304"),
        ("C45", "1045"),
        ("42CrMo4", "4140"),
        ("EN AW-6082", "6082"),
        ("S355J2+N", "s355"),
        ("astm a572 grade 50", ""),
        ("A-572 gr 50", "a572-50"),
        ("12l14", "12l14"),
    ],
)
def test_a_grade_is_known_by_any_of_its_names(text: str, grade: str) -> None:
    if not grade:
        with pytest.raises(metalwork.MetalError, match="unknown metal"):
            metalwork.read(RULES, text)
    else:
        assert metalwork.read(RULES, text).id == grade


@pytest.mark.parametrize(
    "text",
    ["C 0.18 Mn 1.2", "c 0,18 mn 1,2", "C=0.18, Mn=1.2", "C0.18 Mn1.2", "Mn: 1.2 %; C: 0.18 %"],
)
def test_a_composition_is_read_however_it_is_written(text: str) -> None:
    metal = metalwork.read(RULES, text)
    assert metal.makes == {"C": 0.18, "Mn": 1.2}
    assert (metal.id, metal.material) == ("", "mild-steel")


@pytest.mark.parametrize(
    ("text", "material"),
    [
        ("Cr 18 Ni 9 C 0.05", "stainless"),
        ("Al 97 Mg 1 Si 0.6", "aluminium"),
        ("C 0.45 Mn 0.8", "low-alloy-steel"),
        ("Zn 90 Cu 5", ""),
    ],
)
def test_a_composition_tells_the_kind_of_metal(text: str, material: str) -> None:
    assert metalwork.read(RULES, text).material == material


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("C 0.18 Mn", "needs its percent"),
        ("C 0.18 Xx 1", 'unknown element "Xx"'),
        ("C 0.18 C 0.2", "twice"),
        ("C 60 Mn 50", "sum of all elements"),
        ("C 1/0", "divides by zero"),
        ("C 0.18 Mn lots", "Mn: cannot read"),
        ("s335", 'did you mean "s355"?'),
        ("\x1b[31mred", "write a grade"),
        ("", "write a grade"),
    ],
)
def test_what_is_no_metal_is_refused_in_one_plain_line(text: str, hint: str) -> None:
    with pytest.raises(Impossible) as refused:
        metalwork.read(RULES, text)
    assert hint in str(refused.value)
    assert str(refused.value).isprintable()


@given(st.text(max_size=60))
def test_no_text_does_anything_but_name_a_metal_or_be_refused(text: str) -> None:
    said = "read"
    try:
        metalwork.read(RULES, text)
    except Impossible as refused:
        said = str(refused)
    assert said.isprintable()


@given(st.dictionaries(st.sampled_from(sorted(metalwork.ELEMENTS)),
       st.integers(0, 400).map(lambda n: n / 100), min_size=1))  # fmt: skip
def test_a_composition_written_out_reads_back(makes: dict[str, float]) -> None:
    text = " ".join(f"{element} {percent:g}" for element, percent in makes.items())
    assert metalwork.read(RULES, text).makes == makes


def test_every_name_of_a_grade_names_it_alone() -> None:
    for grade in RULES.grades.values():
        for name in (grade.id, grade.name, *grade.also):
            assert metalwork.read(RULES, name).id == grade.id, name


def test_every_grade_is_of_a_known_metal_and_of_known_elements() -> None:
    for grade in RULES.grades.values():
        assert grade.material in RULES.materials
        assert set(grade.makes) <= metalwork.ELEMENTS, grade.id
        steel = metalwork.is_steel(RULES, grade.material)
        assert ("C" in grade.makes) == (steel or grade.material == "stainless"), grade.id
        assert (grade.makes.get("Cr", 0) >= 10.5) == (grade.material == "stainless"), grade.id


def test_a_case_without_a_grade_is_a_common_steel_of_its_kind() -> None:
    known = metalwork.known(RULES, "", "low-alloy-steel")
    mild = metalwork.known(RULES, "", "mild-steel")
    assert known is not None
    assert mild is not None
    assert ce_iiw(known.makes) > 0.45 > ce_iiw(mild.makes)
    assert metalwork.known(RULES, "", "cast-iron") is None
    assert metalwork.known(RULES, "4140", "mild-steel") == metalwork.read(RULES, "4140")


@pytest.mark.parametrize("grade", ["12l14", "303", "2011"])
def test_free_cutting_bar_is_warned_of(grade: str) -> None:
    makes = RULES.grades[grade].makes
    assert hotcracks.free_cutting(RULES, makes)
    assert "Do not weld" in hotcracks.warning(RULES, makes)[0]


def test_no_other_grade_is_taken_for_free_cutting() -> None:
    found = {g.id for g in RULES.grades.values() if hotcracks.free_cutting(RULES, g.makes)}
    assert found == {"12l14", "303", "2011"}


def test_aircraft_alloys_alone_crack_beside_the_bead() -> None:
    alloys = [g for g in RULES.grades.values() if g.material == "aluminium"]
    assert {g.id for g in alloys if hotcracks.beside(RULES, g.makes)} == {"2024", "7075"}


def test_6000_alloys_crack_without_filler_and_5083_and_castings_do_not() -> None:
    likely = {g: hotcracks.likely(RULES, RULES.grades[g].makes) for g in RULES.grades}
    assert likely["6061"]
    assert likely["6063"]
    assert likely["6082"]
    assert not any(likely[g] for g in ("1100", "3003", "5052", "5083", "5086", "356"))


def test_rules_without_the_tables_say_nothing() -> None:
    bare: RuleBase = replace(RULES, tables={})
    makes = dict(RULES.grades["7075"].makes) | {"S": 1.0}
    assert hotcracks.warning(bare, makes) == ()
    assert not hotcracks.beside(bare, makes)
    assert not hotcracks.likely(bare, makes)
    assert metalwork.known(bare, "", "mild-steel") is None


@pytest.mark.parametrize(
    ("makes", "cracks"),
    [
        ({"Cu": 1.6, "Mg": 2.5, "Zn": 5.6}, True),
        ({"Cu": 1.6, "Zn": 5.6}, True),
        ({"Cu": 4.4, "Mg": 1.5}, True),
        ({"Cu": 6.3}, False),
        ({"Mg": 4.5, "Zn": 0.2}, False),
    ],
)
def test_copper_with_magnesium_or_zinc_makes_an_alloy_crack_beside_the_bead(
    makes: dict[str, float], cracks: bool
) -> None:
    assert hotcracks.beside(RULES, makes) is cracks


def test_a_figure_that_is_just_reached_counts_for_its_row() -> None:
    words = RULES.tables["weldability"]
    for row in words.rows:
        assert metalwork.verdict(words, words.value(row)) == row


def test_a_limit_that_is_just_reached_makes_a_metal_free_cutting() -> None:
    for element, (least, *_) in RULES.tables["free-cutting"].rows.items():
        assert hotcracks.free_cutting(RULES, {element: least}) == (element,)
        assert hotcracks.free_cutting(RULES, {element: 0.99 * least}) == ()
