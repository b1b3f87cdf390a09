"""A calculator and what it gives in words, and as data of the shape `schemas/reckoning.json`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.reckon.calculator import (
    HOLDS,
    SOURCE,
    Calculator,
    Input,
    Outcome,
    Output,
    examples,
    shown,
)
from weldwhy.units import Quantity, convert, result_unit


def result_lines(outcome: Outcome, system: str | None) -> list[str]:
    """Cautions first, then one line for each result: "Heat input: 1.23 kJ/mm"."""
    results = [f"{capital(each.name)}: {shown(each, system)}" for each in outcome.outputs]
    return [*(f"CAUTION: {text}" for text in outcome.cautions), *results]


def formula_lines(calculator: Calculator) -> list[str]:
    """Each formula, what it holds for, and where it is from; a blank line between formulas."""
    lines: list[str] = []
    for each in calculator.manual:
        lines += [""] if lines else []
        lines += [*each.says, f"{HOLDS} {each.holds}", f"{SOURCE} {each.source}"]
    return lines


def summary(
    calculator: Calculator, texts: Mapping[str, str], outcome: Outcome, system: str | None
) -> list[str]:
    """Inputs, results, remarks and formulas as plain lines, to be copied."""
    given = [f"{capital(i.name)}: {texts[i.id]}" for i in calculator.inputs if texts.get(i.id)]
    notes = [f"Note: {remark}" for remark in outcome.remarks]
    results = result_lines(outcome, system)
    lines = [capital(calculator.name), *given, "", *results, *notes, ""]
    return lines + formula_lines(calculator)


def input_line(rules: RuleBase, wanted: Input, system: str | None = None) -> str:
    """What an input is, of which kind, and an example or the choices."""
    line = f"{wanted.id}: {wanted.name}; "
    if wanted.choices is not None:
        line += f"one of {', '.join(_named(*each) for each in wanted.choices(rules).items())}"
    else:
        line += f'{wanted.kind}, such as "{wanted.example_in(system)}"'
    return f"{line}; may be left out" if wanted.optional else line


def _named(choice: str, name: str) -> str:
    return choice if name.replace(" ", "-") == choice else f"{choice} ({name})"


def example_call(rules: RuleBase, calculator: Calculator, system: str | None = None) -> str:
    """A command that works, made of the examples."""
    told = examples(rules, calculator, system).items()
    return " ".join(["weldwhy", "reckon", calculator.id, *(f'{i}="{text}"' for i, text in told)])


def data(
    calculator: Calculator, texts: Mapping[str, str], outcome: Outcome, system: str | None
) -> dict[str, Any]:
    """The reckoning as data; quantities in the units of the system."""
    return {
        "calculator": calculator.id,
        "inputs": dict(texts),
        "results": [_result(each, system) for each in outcome.outputs],
        "cautions": list(outcome.cautions),
        "remarks": list(outcome.remarks),
        "formulas": [
            {"says": list(each.says), "holds_for": each.holds, "source": each.source}
            for each in calculator.manual
        ],
    }


def _result(output: Output, system: str | None) -> dict[str, Any]:
    named = {"id": output.id, "name": output.name}
    if isinstance(output.value, str):
        return {**named, "text": output.value}
    if isinstance(output.value, Quantity):
        unit = result_unit(output.value, system)
        return {**named, "value": convert(output.value, unit), "unit": unit}
    return {**named, "value": float(output.value), "unit": ""}


def topics(calculators: Sequence[Calculator]) -> Mapping[str, tuple[Calculator, ...]]:
    """The calculators of each topic, topics in the order of their first calculator."""
    names = dict.fromkeys(each.topic for each in calculators)
    return {name: tuple(c for c in calculators if c.topic == name) for name in names}
