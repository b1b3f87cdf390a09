"""`weldwhy diagnose`: one answer from what is told on the command line and in a case file."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence

from weldwhy.case import Case, Entry
from weldwhy.entries import EntryError, answered
from weldwhy.interview import Interview
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode, UsageError, environment, file_bytes, own_rules
from weldwhy.whichmachine import machine_for


def diagnose(options: argparse.Namespace) -> ExitCode:
    """Print what is likely, why, and what comes next, as text or as one JSON object."""
    rules = load(own_rules(options.rules, environment()))
    case, said = told(options, rules)
    machine = machine_for(options.machine, rules)
    interview = Interview(rules, case, options.patience, system=options.units, machine=machine)
    if options.json:
        print_json(interview, said)
    else:
        print_text(interview, said)
    return ExitCode.FINE


def told(options: argparse.Namespace, rules: RuleBase) -> tuple[Case, list[str]]:
    """The case of a case file with the options on top, and the free sentences of both."""
    case, said = Case(), list(options.said)
    if options.case is not None:
        case, in_file = from_file(options.case, rules)
        said = [*in_file, *said]
    found: list[Entry] = []
    if options.process is not None:
        found.append(_answered(rules, "process", options.process, "--process"))
    found += (_answered(rules, "symptom", each, "--symptom") for each in options.symptom)
    for each in options.answer:
        check, equals, answer = each.partition("=")
        if not equals:
            raise UsageError(f"--answer {each}: write it as CHECK=ANSWER")
        found.append(_answered(rules, check.strip(), answer, "--answer"))
    return case.with_(*found), said


def from_file(name: str, rules: RuleBase) -> tuple[Case, list[str]]:
    """The case in a file the person named, and its free sentences."""
    from weldwhy.casefile import read  # brings in the YAML reader

    shown = "standard input" if name == "-" else name
    found = read(file_bytes(name), shown, rules)
    return found.case, list(found.said)


def _answered(rules: RuleBase, check: str, answer: str, option: str) -> Entry:
    try:
        return answered(rules, check, answer)
    except EntryError as fault:
        raise UsageError(f"{option}: {fault}") from None


def print_json(interview: Interview, said: Sequence[str]) -> None:
    """Print the result as data. Free sentences are handed back: nobody understands them yet."""
    import json

    from weldwhy.diagnosis import diagnosis

    json.dump(diagnosis(interview, not_understood=said), sys.stdout, indent=2)
    sys.stdout.write("\n")


def print_text(interview: Interview, said: Sequence[str]) -> None:
    """Print the result in words; what was not understood goes to stderr, for it is a remark."""
    from weldwhy.lines import wrapped
    from weldwhy.report import case_text, not_understood_lines

    for line in not_understood_lines(said):
        print(line, file=sys.stderr)
    for line in wrapped(case_text(interview)):
        print(line)
    step = interview.step
    for answer in step.answers:
        print(f"    --answer {step.id}={answer.id}  ({clean(answer.text)})")
