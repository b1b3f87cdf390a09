"""`weldwhy chart`: the guide for one symptom as a fixed tree, to print for the wall."""

from __future__ import annotations

import argparse

from weldwhy.entries import EntryError, known
from weldwhy.rulebase import load
from weldwhy.surroundings import ExitCode, UsageError, environment, own_rules


def chart(options: argparse.Namespace) -> ExitCode:
    """Print the tree of a symptom in one process, or in each where it happens."""
    from weldwhy.chart import build
    from weldwhy.sheet import sheet

    rules = load(own_rules(options.rules, environment()))
    try:
        symptom = rules.symptoms[known(options.symptom, rules.symptoms, "symptom")]
        if options.process is not None:
            known(options.process, rules.processes, "process")
    except EntryError as fault:
        raise UsageError(str(fault)) from None
    if options.process is not None and options.process not in symptom.processes:
        raise UsageError(f"{symptom.name} is not met with {options.process}")
    wanted = symptom.processes if options.process is None else (options.process,)
    if options.format == "html" and len(wanted) > 1:
        raise UsageError("a page of HTML holds one process: name it with --process")
    for place, process in enumerate(wanted):
        tree = build(rules, symptom.id, process, options.depth)
        lines = sheet(rules, tree, options.format)
        for line in ["", *lines] if place else lines:
            print(line)
    return ExitCode.FINE
