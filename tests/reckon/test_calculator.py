"""What is typed into a calculator is read or refused in one line, and results are finite."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

import pytest

from weldwhy.arithmetic.bounds import Reckoned, possible, remarks
from weldwhy.model import RuleBase
from weldwhy.reckon.calculator import (
    Calculator,
    Given,
    Input,
    Outcome,
    Output,
    ReckonError,
    by_id,
    examples,
    given,
    reckon,
    shown,
)
from weldwhy.units import Quantity

RULES = RuleBase({}, {}, {}, {})
METALS = {"mild-steel": "mild steel", "aluminium": "aluminium"}


def heat(volts: float, travel: float) -> Reckoned:
    """Heat of a made-up arc.

    Q = 100 U / v: U volts, v travel,
    in the units of nobody.

    Holds for: tests.

    Source: nowhere.
    """
    possible("travel", travel, 0.5, 50, "mm/s")
    return Reckoned(100 * volts / travel, ["it is made up"])


def _work(rules: RuleBase, inputs: Given) -> Outcome:
    if inputs.word("metal") == "aluminium":
        raise KeyError("aluminium")
    times = inputs.number("times") if "times" in inputs else 1.0
    made = heat(inputs.quantity("volts").value, inputs.number("travel"))
    return Outcome(
        (
            Output("heat", "heat", Quantity("heat", made * times, "kJ/mm")),
            Output("ratio", "ratio", times),
            Output("word", "word", inputs.word("note") or "none"),
        ),
        remarks(made),
    )


CALCULATOR = Calculator(
    "made-up", "made-up heat", "arc", "Heat of a made-up arc.",
    (
        Input("volts", "volts at the arc", "voltage", "20 V"),
        Input("travel", "travel speed", "speed", "5 mm/s"),
        Input("metal", "metal", "choice", "mild-steel", True, lambda rules: METALS),
        Input("times", "times", "number", "2", True),
        Input("note", "note", "text", "a word", True),
    ),
    _work, (heat,),
)  # fmt: skip


def _results(system: str | None = None, **texts: str) -> list[str]:
    outcome = reckon(RULES, CALCULATOR, texts, system)
    return [shown(each, system) for each in outcome.outputs]


def test_inputs_are_read_by_their_kind_and_may_be_left_out_if_optional() -> None:
    assert _results(volts="20 V", travel="5 mm/s") == ["400 kJ/mm", "1", "none"]
    assert _results(volts="20", travel="5 mm/s", times="1/2", note=" two  words ") == [
        "200 kJ/mm",
        "0.5",
        "two words",
    ]
    assert _results("in", volts="20 V", travel="5 mm/s")[0] == "10200 kJ/in"


def test_a_choice_is_taken_by_id_or_name_in_any_letters() -> None:
    for metal in ("mild-steel", "Mild Steel", " MILD-STEEL "):
        found = given(RULES, CALCULATOR, {"volts": "1", "travel": "1 mm/s", "metal": metal})
        assert found.word("metal") == "mild-steel"


@pytest.mark.parametrize(
    ("texts", "words"),
    [
        ({"travel": "5 mm/s"}, 'volts at the arc is missing; write it like volts="20 V"'),
        ({"volts": "  ", "travel": "5 mm/s"}, "volts at the arc is missing"),
        ({"volts": "20 V", "travel": "fast"}, 'travel speed: cannot read "fast"'),
        ({"volts": "20 V", "travel": "5"}, "needs its unit"),
        ({"volts": "20 V", "travel": "5 mm/s", "metal": "mild stel"}, 'mean "mild steel"?'),
        ({"volts": "20 V", "travel": "5 mm/s", "metal": "glass"}, "known: mild-steel, aluminium"),
        ({"volts": "20 V", "travel": "5 mm/s", "times": "2 V"}, "write a plain number"),
        ({"volts": "20 V", "travl": "5 mm/s"}, 'no input "travl"; did you mean "travel"?'),
        ({"volts": "20 V", "travel": "0 mm/s"}, "travel 0 mm/s is not possible"),
        ({"volts": "20 V", "travel": "5 mm/s", "metal": "aluminium"}, "no figure for aluminium"),
        ({"volts": "2\x1b[31m0", "travel": "5 mm/s"}, "cannot read"),
    ],
)
def test_what_cannot_be_worked_is_one_plain_line(texts: Mapping[str, str], words: str) -> None:
    with pytest.raises(ReckonError) as fault:
        reckon(RULES, CALCULATOR, texts)
    assert words in str(fault.value)
    assert str(fault.value).isprintable()


@pytest.mark.parametrize("value", [math.nan, math.inf, Quantity("heat", math.inf, "kJ/mm")])
def test_a_result_that_is_not_finite_is_never_given(value: float | Quantity) -> None:
    outcome = Outcome((Output("heat", "heat", value),))
    made = Calculator("bad", "bad", "arc", "", (), lambda rules, inputs: outcome)
    with pytest.raises(ReckonError, match="heat: these numbers give no finite result"):
        reckon(RULES, made, {})


def test_remarks_come_with_the_results() -> None:
    assert reckon(RULES, CALCULATOR, {"volts": "1", "travel": "1 mm/s"}).remarks == (
        "it is made up",
    )


@pytest.mark.parametrize(
    ("travel", "wanted", "system"),
    [("5 mm/s", None, "mm"), ("12 ipm", None, "in"), ("12 ipm", "mm", "mm")],
)
def test_results_are_wanted_in_the_system_asked_for_or_else_in_that_of_the_inputs(
    travel: str, wanted: str | None, system: str
) -> None:
    found = given(RULES, CALCULATOR, {"volts": "20 V", "travel": travel}, wanted)
    assert found.system == system


def test_volts_alone_tell_no_system() -> None:
    volts, travel = Quantity("voltage", 20.0, "V"), Quantity("speed", 5.0, "mm/s")
    assert Given({"volts": volts, "note": "x"}).system is None
    mixed = Given({"travel": travel, "leg": Quantity("length", 6.35, "in"), "volts": volts})
    assert mixed.system == "mm", "the first of a draw"
    assert mixed.preferring(["leg"]).system == "in"
    assert mixed.preferring(["volts"]).system == "mm"


def test_an_example_is_shown_in_the_units_of_the_shop() -> None:
    travel, metal = CALCULATOR.inputs[1], CALCULATOR.inputs[2]
    assert [travel.example_in(each) for each in (None, "mm", "in")] == [
        "5 mm/s",
        "5 mm/s",
        "12 in/min",
    ]
    assert metal.example_in("in") == "mild-steel"


def test_examples_are_of_what_is_needed_and_no_more_than_a_result_takes() -> None:
    assert examples(RULES, CALCULATOR, "in") == {"volts": "20 V", "travel": "12 in/min"}

    def fussy(rules: RuleBase, inputs: Given) -> Outcome:
        if "times" not in inputs:
            raise ReckonError("times is missing")
        return _work(rules, inputs)

    made = replace(CALCULATOR, work=fussy)
    assert list(examples(RULES, made)) == ["volts", "travel", "metal", "times"]


def test_a_docstring_is_told_apart_into_formula_range_and_source() -> None:
    (formula,) = CALCULATOR.manual
    assert formula.says == (
        "Heat of a made-up arc.",
        "Q = 100 U / v: U volts, v travel, in the units of nobody.",
    )
    assert (formula.holds, formula.source) == ("tests.", "nowhere.")


def test_a_calculator_is_found_by_id_and_a_near_one_named() -> None:
    assert by_id([CALCULATOR], "made-up") is CALCULATOR
    with pytest.raises(ReckonError, match='unknown calculator "madeup"; did you mean "made-up"'):
        by_id([CALCULATOR], "madeup")
