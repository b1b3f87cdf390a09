"""The calculators of metals: known metals land on the right side, and warnings come first."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.replay import shipped_rules

from weldwhy.metalwork import composition_of
from weldwhy.model import RuleBase
from weldwhy.reckon.alloys import stainless_fillers, uses
from weldwhy.reckon.calculator import Calculator, Outcome, ReckonError, by_id, reckon
from weldwhy.reckon.metals import CALCULATORS
from weldwhy.units import Quantity

RULES = shipped_rules()
ALLOYS = [grade.id for grade in RULES.grades.values() if grade.material == "aluminium"]
WELDABLE = [alloy for alloy in ALLOYS if alloy not in ("2011", "2024", "7075")]


def ask(calculator: str, rules: RuleBase = RULES, **texts: str) -> Outcome:
    return reckon(rules, by_id(CALCULATORS, calculator), texts)


def text(outcome: Outcome, name: str) -> str:
    return str(next(each.value for each in outcome.outputs if each.id == name))


def number(outcome: Outcome, name: str) -> float:
    value = next(each.value for each in outcome.outputs if each.id == name)
    return value.value if isinstance(value, Quantity) else float(value)


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda each: each.id)
def test_the_examples_of_a_calculator_work(calculator: Calculator) -> None:
    outcome = reckon(RULES, calculator, {i.id: i.example for i in calculator.inputs})
    assert outcome.outputs
    assert all(line.isascii() for line in outcome.remarks)


@pytest.mark.parametrize(
    ("metal", "words"),
    [
        ("1008", "no preheat"),
        ("1018", "no preheat"),
        ("A36", "no preheat"),
        ("S355", "take the chill off"),
        ("A514", "preheat it"),
        ("1045", "written procedure"),
        ("4140", "written procedure"),
        ("C 0.18 Mn 1.2", "no preheat"),
    ],
)
def test_the_carbon_equivalent_says_what_a_known_steel_asks_for(metal: str, words: str) -> None:
    assert words in text(ask("carbon-equivalent", metal=metal), "verdict")


def test_free_cutting_bar_is_warned_of_before_anything_else() -> None:
    assert "Do not weld" in ask("carbon-equivalent", metal="12L14").remarks[0]
    assert "not for welding" in text(ask("carbon-equivalent", metal="12L14"), "verdict")
    stainless = ask("stainless-ferrite", base="303", filler="308l")
    assert "Do not weld" in stainless.remarks[0]
    assert "not for welding" in text(stainless, "verdict")


@pytest.mark.parametrize("metal", ["304", "6061", "Cr 18 Ni 8 C 0.05", "Mn 1.2", "wood"])
def test_carbon_equivalents_are_refused_for_what_is_no_steel(metal: str) -> None:
    with pytest.raises(ReckonError):
        ask("carbon-equivalent", metal=metal)


def test_thin_mild_steel_needs_no_preheat_and_4140_does() -> None:
    thin = ask("preheat", metal="1018", thickness="6 mm", hydrogen="E7018")
    assert text(thin, "preheat").startswith("none as a rule")
    hard = ask("preheat", metal="4140", thickness="20 mm", hydrogen="E7018")
    assert number(hard, "preheat") >= 200
    assert number(hard, "interpass") > number(hard, "preheat")


def test_cautions_and_the_procedure_come_before_everything_else_where_preheat_is_due() -> None:
    found = ask("preheat", metal="4140", thickness="20 mm")
    assert found.cautions == tuple(RULES.cautions[each].text for each in ("hot-metal", "fire"))
    assert "certified welder" in found.remarks[0]
    assert ask("preheat", metal="1018", thickness="6 mm").cautions == ()


def test_preheat_above_the_limit_between_beads_is_said_and_no_limit_is_told() -> None:
    thick = ask("preheat", metal="A514", thickness="50 mm", hydrogen="E6010")
    assert [each.id for each in thick.outputs] == ["preheat"]
    assert any("less hydrogen" in line for line in thick.remarks)
    dry = ask("preheat", metal="A514", thickness="25 mm", hydrogen="E7018")
    assert number(dry, "preheat") < number(dry, "interpass")


def test_what_was_taken_for_granted_is_said() -> None:
    bare = ask("preheat", metal="S355", thickness="20 mm").remarks
    assert any("Hydrogen is taken as" in line for line in bare)
    assert any("Heat input is taken as" in line for line in bare)
    full = ask("preheat", metal="S355", thickness="20 mm", hydrogen="5", heat="1.5 kJ/mm").remarks
    assert not any("taken as" in line for line in full)


def test_a_filler_class_stands_for_its_hydrogen() -> None:
    dry = ask("preheat", metal="S355", thickness="20 mm", hydrogen="7018")
    told = ask("preheat", metal="S355", thickness="20 mm", hydrogen="8")
    assert number(dry, "preheat") == number(told, "preheat")
    with pytest.raises(ReckonError, match="filler class"):
        ask("preheat", metal="S355", thickness="20 mm", hydrogen="some")


@pytest.mark.parametrize("metal", ["304", "6061"])
def test_stainless_and_aluminium_get_no_preheat_and_a_limit_between_beads(metal: str) -> None:
    outcome = ask("preheat", metal=metal, thickness="6 mm")
    assert text(outcome, "preheat").startswith("none")
    assert number(outcome, "interpass") <= 150


def test_304_with_308l_is_sound_and_a_fully_austenitic_weld_is_not() -> None:
    sound = ask("stainless-ferrite", base="304", filler="308l")
    assert 3 <= number(sound, "ferrite") <= 10
    assert text(sound, "verdict") == "sound"
    assert "crack" in text(ask("stainless-ferrite", base="310", filler="310"), "verdict")


def test_309l_joins_stainless_to_mild_steel_better_than_308l() -> None:
    right = ask("stainless-ferrite", base="304", other="A36", filler="309l")
    wrong = ask("stainless-ferrite", base="304", other="A36", filler="308l")
    assert text(right, "verdict") == "sound"
    assert number(wrong, "ferrite") < 3
    hard = ask("stainless-ferrite", base="A36", filler="308l")
    assert "martensite" in text(hard, "verdict")


def test_more_mild_steel_in_the_weld_leaves_less_ferrite() -> None:
    found = [
        number(ask("stainless-ferrite", base="A36", other="304", filler="309l",
                   dilution=f"{share} %"), "ferrite")
        for share in (10, 20, 30)
    ]  # fmt: skip
    assert found == sorted(found, reverse=True)


def test_mild_steel_melted_alone_is_no_stainless_weld() -> None:
    with pytest.raises(ReckonError, match="no stainless weld"):
        ask("stainless-ferrite", base="A36", filler="none")
    for ferritic in ("409", "430"):
        with pytest.raises(ReckonError, match="not austenitic"):
            ask("stainless-ferrite", base=ferritic, filler="none")
    with pytest.raises(ReckonError, match="no steel"):
        ask("stainless-ferrite", base="6061", filler="308l")
    with pytest.raises(ReckonError, match="no aluminium"):
        ask("aluminium-filler", base="304", use="general")


def test_6061_cracks_without_filler_and_not_with_4043() -> None:
    outcome = ask("aluminium-filler", base="6061", use="general")
    assert text(outcome, "filler") == "4043"
    assert text(outcome, "alone").startswith("high")
    assert text(outcome, "cracking").startswith("low")


@pytest.mark.parametrize(
    ("base", "use", "filler"),
    [
        ("5083", "general", "5356"),
        ("5083", "strength", "5183"),
        ("5052", "general", "5356"),
        ("5052", "heat", "5554"),
        ("6061", "anodising", "5356"),
        ("6061", "heat", "4043"),
        ("3003", "general", "4043"),
        ("1100", "anodising", "1100"),
        ("356", "general", "4043"),
        ("5083", "heat", "none"),
        ("7075", "general", "none"),
        ("2024", "strength", "none"),
        ("2011", "general", "none"),
    ],
)
def test_the_filler_is_the_one_of_common_practice(base: str, use: str, filler: str) -> None:
    assert text(ask("aluminium-filler", base=base, use=use), "filler") == filler


def test_no_filler_rich_in_magnesium_is_named_for_a_hot_weld_nor_a_grey_one_for_anodising() -> None:
    table = RULES.tables["aluminium-filler"]
    for base in ALLOYS:
        for use, spoilt, most in (("heat", "Mg", 3.0), ("anodising", "Si", 1.0)):
            outcome = ask("aluminium-filler", base=base, use=use)
            named = [text(outcome, "filler")]
            if named != ["none"]:
                named += text(outcome, "others").split(", ")
            for row in set(named) - {"none"}:
                assert composition_of(table, row)[spoilt] <= most, (base, use, row)


@pytest.mark.parametrize("base", WELDABLE)
def test_every_weldable_alloy_has_a_filler_for_general_use(base: str) -> None:
    assert text(ask("aluminium-filler", base=base, use="general"), "filler") != "none"


def test_an_alloy_that_must_not_be_welded_says_why_first() -> None:
    assert ask("aluminium-filler", base="7075", use="sea").remarks[0].startswith("Not for arc")


def test_choices_come_from_the_tables() -> None:
    assert set(uses(RULES)) == {"general", "strength", "bending", "anodising", "sea", "heat"}
    assert stainless_fillers(RULES)["308l"] == "308L"


def test_rules_without_a_table_are_refused_in_one_plain_line() -> None:
    bare = replace(RULES, tables={})
    with pytest.raises(ReckonError, match="the rules have no figure"):
        ask("carbon-equivalent", rules=bare, metal="C 0.2 Mn 1")
