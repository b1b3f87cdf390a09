"""`weldwhy reckon`: the calculators, what each needs and gives, and the formulas behind it."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable, Mapping, Sequence

from weldwhy.lines import wrapped
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.reckon import wording
from weldwhy.reckon.calculator import Calculator, ReckonError, by_id, given, work
from weldwhy.reckon.catalogue import CALCULATORS
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode, UsageError, environment, own_rules

INDENT = "  "


def reckon(options: argparse.Namespace) -> ExitCode:
    """List the calculators; with a name, say what it needs; with inputs too, work it out."""
    if not options.calculator:
        if options.json:
            raise UsageError("--json needs the name of a calculator and its inputs")
        _print(_list_lines())
        return ExitCode.FINE
    rules = load(own_rules(options.rules, environment()))
    try:
        calculator = by_id(CALCULATORS, options.calculator)
        if options.inputs or options.json:
            _work(rules, calculator, _texts(options.inputs), options)
        else:
            _print(_manual_lines(rules, calculator, options.units))
    except ReckonError as fault:
        raise UsageError(str(fault)) from None
    return ExitCode.FINE


def _texts(inputs: Sequence[str]) -> Mapping[str, str]:
    """The inputs as typed, by id."""
    texts: dict[str, str] = {}
    for each in inputs:
        name, equals, text = each.partition("=")
        if not equals or not name.strip():
            raise UsageError(f'cannot read "{each[:40]}"; write it as NAME=VALUE')
        if name.strip() in texts:
            raise UsageError(f'"{name.strip()[:40]}" is given twice')
        texts[name.strip()] = text.strip()
    return texts


def _work(
    rules: RuleBase,
    calculator: Calculator,
    texts: Mapping[str, str],
    options: argparse.Namespace,
) -> None:
    inputs = given(rules, calculator, texts, options.units)
    outcome = work(rules, calculator, inputs)
    if options.json:
        import json

        made = wording.data(calculator, texts, outcome, inputs.system)
        print(json.dumps(made, indent=2))
        return
    for line in wrapped(f"note: {remark}" for remark in outcome.remarks):
        print(line, file=sys.stderr)
    _print(wording.result_lines(outcome, inputs.system))
    _print(["", *wording.formula_lines(calculator)])


def _list_lines() -> Iterable[str]:
    """Every calculator in a line of its own, by topic."""
    wide = max(len(each.id) for each in CALCULATORS)
    for topic, calculators in wording.topics(CALCULATORS).items():
        yield f"{capital(topic)}:"
        for each in calculators:
            yield f"{INDENT}{each.id:<{wide}}  {each.name}"
    yield ""
    yield "`weldwhy reckon NAME` says what a calculator needs."


def _manual_lines(rules: RuleBase, calculator: Calculator, system: str | None) -> Iterable[str]:
    """What a calculator needs, an example, and the formulas it rests on."""
    yield f"{capital(calculator.name)}: {calculator.about}"
    yield ""
    yield "It needs:"
    for each in calculator.inputs:
        yield INDENT + wording.input_line(rules, each, system)
    yield ""
    yield "Such as:"
    yield INDENT + wording.example_call(rules, calculator, system)
    yield ""
    yield from wording.formula_lines(calculator)


def _print(lines: Iterable[str]) -> None:
    for line in wrapped(lines):
        print(line)
