"""`weldwhy rules ...`: for those who write rules. Check, count, explain, try, and the schemas."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from weldwhy.model import RuleBase
from weldwhy.problems import RulesError, did_you_mean, has_errors
from weldwhy.rulebase import default_folder, load, read, survey
from weldwhy.surroundings import ExitCode, UsageError, environment, own_rules

Task = Callable[[argparse.Namespace], ExitCode]


def check(options: argparse.Namespace) -> ExitCode:
    """Print every problem, one line each; errors are findings, warnings alone are not."""
    from weldwhy.lint import check_survey, counts

    found = survey(_folders(options))
    problems = check_survey(found)
    for problem in problems:
        print(problem)
    errors = sum(problem.level == "error" for problem in problems)
    summary = f"{counts(found)}: {errors} errors, {len(problems) - errors} warnings"
    print(summary, file=sys.stderr if problems else sys.stdout)
    return ExitCode.FINDINGS if has_errors(problems) else ExitCode.FINE


def coverage(options: argparse.Namespace) -> ExitCode:
    """Print what the rules know, counted."""
    from weldwhy.coverage import lines, table

    for line in lines(table(_read(options))):
        print(line)
    return ExitCode.FINE


def explain(options: argparse.Namespace) -> ExitCode:
    """Print all that the rules say of one id, whatever kind of thing has it."""
    from weldwhy.lines import wrapped
    from weldwhy.pages import KINDS, pages

    rules = _read(options)
    found = pages(rules, options.operand)
    if not found:
        known = [name for kind in KINDS for name in getattr(rules, kind)]
        hint = did_you_mean(options.operand, known)
        raise UsageError(f'the rules know nothing called "{options.operand}"{hint}')
    for line in wrapped(found):
        print(line)
    return ExitCode.FINE


def try_case(options: argparse.Namespace) -> ExitCode:
    """Print what the guide makes of a case file, with the reasons for the likeliest causes."""
    from weldwhy.commands_diagnosis import from_file, print_report, with_words
    from weldwhy.interview import Interview

    rules = load(own_rules(options.rules, environment()))
    case, said = from_file(options.operand, rules)
    case, heard = with_words(rules, case, said)
    print_report(Interview(rules, case), heard)
    return ExitCode.FINE


def simulate(options: argparse.Namespace) -> ExitCode:
    """Print how well the guide finds simulated faults, and where the rules are weak."""
    from weldwhy.commands_simulate import run

    rules = load(own_rules(options.rules, environment()))
    if options.operand and options.operand not in rules.symptoms:
        hint = did_you_mean(options.operand, rules.symptoms)
        raise UsageError(f'there is no symptom "{options.operand}"{hint}')
    chosen = [options.operand] if options.operand else list(rules.symptoms)
    run(rules, chosen, options.cases, options.told)
    return ExitCode.FINE


def schema(options: argparse.Namespace) -> ExitCode:
    """Print the JSON Schema of a kind of rule file, of a case file, or of what a command prints."""
    import json

    found = _schemas(options)
    if options.operand not in found:
        hint = did_you_mean(options.operand, found)
        raise UsageError(
            f'there is no schema "{options.operand}"{hint or f"; known: {_list(found)}"}'
        )
    print(json.dumps(found[options.operand](), indent=2))
    return ExitCode.FINE


def _schemas(options: argparse.Namespace) -> Mapping[str, Callable[[], Any]]:
    from weldwhy.schema import FILES, json_schema

    def of_rules(kind: str) -> Callable[[], Any]:
        return lambda: json_schema(kind)

    return {
        **{kind: of_rules(kind) for kind in FILES},
        "case-file": lambda: _case_file_schema(options),
        **{name: _of_output(file) for name, file in OUTPUTS.items()},
    }


def _case_file_schema(options: argparse.Namespace) -> Mapping[str, Any]:
    """The schema of a case file: it names the checks and settings of the rules at hand."""
    from weldwhy.casefile import shape

    rules = load(own_rules(options.rules, environment()))
    about = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A weldwhy case file",
    }
    return {**about, **shape(rules).schema}


OUTPUTS = {"diagnosis": "diagnosis", "setup-json": "setup", "reckoning": "reckoning"}
"""What `--json` prints, by the name its schema is asked for, and the schema's file."""


def _of_output(file: str) -> Callable[[], Any]:
    def read_schema() -> Any:
        import json

        path = Path(__file__).resolve().parent / "schemas" / f"{file}.json"
        return json.loads(path.read_text(encoding="utf-8"))

    return read_schema


def _read(options: argparse.Namespace) -> RuleBase:
    """The rules from their files: the compiled form leaves out what only rule writers want."""
    base, problems = read(_folders(options))
    if base is None:
        raise RulesError(problems)
    return base


def _folders(options: argparse.Namespace) -> list[Path]:
    own = own_rules(options.rules, environment())
    return [default_folder()] if own is None else [default_folder(), own]


def _list(words: Mapping[str, Any]) -> str:
    return ", ".join(words)


TASKS: Mapping[str, Task] = {
    "check": check,
    "coverage": coverage,
    "explain": explain,
    "try": try_case,
    "schema": schema,
    "simulate": simulate,
}
