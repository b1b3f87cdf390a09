"""Every calculator works on its example, says what it rests on, and survives whatever is typed."""

from __future__ import annotations

import math
from collections.abc import Mapping

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import given as drawn
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy.arithmetic.bounds import Impossible
from weldwhy.reckon.calculator import (
    Calculator,
    Input,
    Outcome,
    ReckonError,
    examples,
    given,
    reckon,
    shown,
)
from weldwhy.reckon.catalogue import CALCULATORS
from weldwhy.tui.cards.card import PER_WINDOW
from weldwhy.units import Quantity, convert, parse
from weldwhy.unitwords import BASE, WORTH

SYSTEMS = (None, "in", "mm")
EACH = pytest.mark.parametrize("calculator", CALCULATORS, ids=[each.id for each in CALCULATORS])


def _outcome(
    calculator: Calculator, texts: Mapping[str, str], system: str | None = None
) -> Outcome | str:
    """The outcome, or the line that refuses; anything else that is raised fails the test.

    Not by `reckon`, which would make a KeyError of ours a fault of the rules.
    """
    try:
        return calculator.work(shipped_rules(), given(shipped_rules(), calculator, texts, system))
    except (Impossible, ReckonError) as fault:
        return str(fault)


def _check(outcome: Outcome) -> None:
    """Numbers are finite, words and remarks are sentences or names that can be printed."""
    assert outcome.outputs
    assert len({each.id for each in outcome.outputs}) == len(outcome.outputs)
    for each in outcome.outputs:
        number = each.value.value if isinstance(each.value, Quantity) else each.value
        assert isinstance(number, str) or math.isfinite(number), each
        for system in SYSTEMS:
            text = shown(each, system)
            assert text
            assert text.isascii()
            assert text.isprintable()
            assert "nan" not in text.split()
            assert "inf" not in text.split()
    for remark in outcome.remarks:
        assert len(remark.split()) > 2, f"no sentence: {remark!r}"
        assert remark.isascii()
        assert remark.isprintable()


def test_ids_and_names_are_unique() -> None:
    for names in ([c.id for c in CALCULATORS], [c.name for c in CALCULATORS]):
        assert len(set(names)) == len(names)


def test_the_topics_have_a_digit_each_and_so_have_the_calculators_of_a_topic() -> None:
    topics = [each.topic for each in CALCULATORS]
    assert len(set(topics)) <= PER_WINDOW
    assert all(topics.count(topic) <= PER_WINDOW for topic in topics)


@EACH
def test_a_calculator_says_what_it_is_and_rests_on_formulas(calculator: Calculator) -> None:
    assert calculator.name
    assert calculator.topic
    assert calculator.about.endswith(".")
    assert calculator.formulas
    for formula in calculator.manual:
        assert all((formula.says, formula.holds, formula.source))


@EACH
def test_inputs_are_of_a_known_kind_and_their_examples_can_be_read(calculator: Calculator) -> None:
    assert 0 < len(calculator.inputs) <= PER_WINDOW, "an input has a digit"
    assert len({each.id for each in calculator.inputs}) == len(calculator.inputs)
    for each in calculator.inputs:
        assert each.kind in (*BASE, "number", "text", "choice")
        assert (each.choices is not None) is (each.kind == "choice")
        assert each.example or each.optional
        assert "=" not in each.id
        if each.choices:
            assert not each.example or each.example in each.choices(shipped_rules())


@EACH
@pytest.mark.parametrize("system", SYSTEMS)
def test_the_example_works(calculator: Calculator, system: str | None) -> None:
    _check(reckon(shipped_rules(), calculator, examples(shipped_rules(), calculator), system))
    _check(
        reckon(shipped_rules(), calculator, examples(shipped_rules(), calculator, system), system)
    )


@EACH
def test_an_example_lies_where_its_formulas_hold(calculator: Calculator) -> None:
    outcome = reckon(shipped_rules(), calculator, examples(shipped_rules(), calculator))
    assert not [each for each in outcome.remarks if each.endswith("where this holds")]


@EACH
def test_each_optional_input_can_be_given_with_the_example_of_the_rest(
    calculator: Calculator,
) -> None:
    """A pair may need each other, so one that is refused alone is given with all of them."""
    texts = examples(shipped_rules(), calculator)
    everything = {each.id: each.example for each in calculator.inputs if each.example}
    for each in calculator.inputs:
        if each.optional and each.example:
            try:
                _check(reckon(shipped_rules(), calculator, {**texts, each.id: each.example}))
            except ReckonError:
                _check(reckon(shipped_rules(), calculator, everything))


@EACH
def test_every_choice_can_be_taken_with_the_example_of_the_rest(calculator: Calculator) -> None:
    """A pair of choices may be refused, such as a metal that a process does not weld."""
    texts = examples(shipped_rules(), calculator)
    for each in calculator.inputs:
        choices = each.choices(shipped_rules()) if each.choices else {}
        made = [_outcome(calculator, {**texts, each.id: choice}) for choice in choices]
        taken = [outcome for outcome in made if isinstance(outcome, Outcome)]
        for outcome in taken:
            _check(outcome)
        assert 2 * len(taken) >= len(choices), f"{each.id}: most of its choices are refused"


NUMBERS = st.one_of(
    st.sampled_from(["0", "0.000001", "1", "999999999"]),
    st.decimals(0, 10, places=3).map(str),
    st.integers(0, 999_999).map(str),
)


@st.composite
def typed(draw: st.DrawFn, wanted: Input) -> str:
    """Something that can be typed into one input: sensible, odd or absurd, mostly readable."""
    if wanted.choices is not None:
        return draw(st.sampled_from(list(wanted.choices(shipped_rules()))))
    if wanted.kind == "text":
        element = st.from_regex(r"[A-Z][a-z]? ?[0-9.,]{1,6}", fullmatch=True)
        return draw(
            st.just(wanted.example) | st.lists(element).map(" ".join) | st.text(max_size=20)
        )
    if wanted.kind == "number":
        return draw(st.just(wanted.example) | NUMBERS)
    if draw(st.booleans()):
        example = parse(wanted.example, wanted.kind)
        factor = draw(st.floats(0.01, 30))
        plain = {"ga": "in", "AWG": "mm2"}.get(example.unit, example.unit)
        return f"{convert(example, plain) * factor:.4f} {plain}"
    unit = draw(st.sampled_from(["", *WORTH[wanted.kind]]))
    return f"{draw(NUMBERS)} {unit}"


@st.composite
def filled_in(draw: st.DrawFn, calculator: Calculator) -> Mapping[str, str]:
    texts = {}
    for each in calculator.inputs:
        if each.optional and draw(st.booleans()):
            continue
        keep = each.example and draw(st.booleans())
        texts[each.id] = each.example if keep else draw(typed(each))
    return texts


@EACH
@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@drawn(data=st.data())
def test_whatever_is_typed_gives_finite_results_or_one_plain_line(
    calculator: Calculator, data: st.DataObject
) -> None:
    texts = data.draw(filled_in(calculator))
    system = data.draw(st.sampled_from(SYSTEMS))
    outcome = _outcome(calculator, texts, system)
    if isinstance(outcome, Outcome):
        _check(outcome)
    else:
        assert outcome.isprintable()
        assert "nan" not in outcome.split()
