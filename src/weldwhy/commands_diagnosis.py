"""`weldwhy diagnose`: one answer from what is told on the command line and in a case file."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence

from weldwhy.case import Case, CaseError, Entry
from weldwhy.entries import EntryError, answered, in_own_words
from weldwhy.interview import Interview
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode, UsageError, environment, file_bytes, own_rules
from weldwhy.understanding.heard import Heard, Understood
from weldwhy.whichmachine import machine_for


def diagnose(options: argparse.Namespace) -> ExitCode:
    """Print what is likely, why, and what comes next, as a report or as one JSON object."""
    if options.json and options.format is not None:
        raise UsageError("--json and --format do not go together: leave out one of them")
    rules = load(own_rules(options.rules, environment()))
    case, said = told(options, rules)
    case, heard = with_words(rules, case, said, options.units)
    machine = machine_for(options.machine, rules)
    interview = Interview(rules, case, options.patience, system=options.units, machine=machine)
    if options.json:
        print_json(interview, heard)
    else:
        print_report(interview, heard, options.format or "text")
    return ExitCode.FINE


def with_words(
    rules: RuleBase, case: Case, said: Sequence[str], system: str | None = None
) -> tuple[Case, Heard]:
    """The case with the free sentences and what they say, and what was heard in them.

    What they say comes first in the case, so that whatever was told outright counts for more.
    """
    if not said:
        return case, Heard()
    from weldwhy.understanding.hearing import understand

    found: list[Entry] = []
    understood: list[Understood] = []
    rest: list[str] = []
    for text in said:
        heard = understand(rules, text, case.with_(*found), system)
        found += in_own_words(text, heard)
        understood += heard.understood
        rest += heard.not_understood
    return Case((*found, *case.entries)), Heard(tuple(understood), tuple(rest))


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
    """The case in a file the person named, or in one that was kept, and its free sentences."""
    from weldwhy.casefile import kept, read  # brings in the YAML reader

    shown = "standard input" if name == "-" else name
    data = file_bytes(name)
    try:
        found = kept(data, shown, rules) or read(data, shown, rules)
    except CaseError as fault:
        raise UsageError(str(fault)) from None
    return found.case, list(found.said)


def _answered(rules: RuleBase, check: str, answer: str, option: str) -> Entry:
    try:
        return answered(rules, check, answer)
    except EntryError as fault:
        raise UsageError(f"{option}: {fault}") from None


def print_json(interview: Interview, heard: Heard) -> None:
    """Print the result as data, with what was understood of free sentences and what was not."""
    import json

    from weldwhy.diagnosis import diagnosis

    print(json.dumps(diagnosis(interview, heard.understood, heard.not_understood), indent=2))


def print_report(interview: Interview, heard: Heard, form: str = "text") -> None:
    """Print the result in words; what was not understood goes to stderr, for it is a remark.

    Above plain text stands what was understood, below it the options that answer the next question.
    """
    from weldwhy.casereport import case_report
    from weldwhy.lines import wrapped
    from weldwhy.report import not_understood_lines, understood_lines

    for line in not_understood_lines(heard.not_understood):
        print(line, file=sys.stderr)
    if form == "text":
        for line in wrapped(understood_lines(interview.rules, heard.understood)):
            print(line)
    for line in case_report(interview, form):
        print(line)
    step = interview.step
    if step.answers and form == "text":
        print("\nTo go on, add one of these:")
        for answer in step.answers:
            print(f"    --answer {step.id}={answer.id}  ({clean(answer.text)})")
