"""The command line: which part of the program answers, and how a fault is told.

Output is data and goes to stdout, remarks go to stderr, and an error is one plain line. What a
command needs is imported when it runs, so that a one-shot answer pays for nothing else.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Mapping, Sequence

from weldwhy.options import parser, refuse_dashes
from weldwhy.plaintext import clean
from weldwhy.surroundings import (
    ExitCode,
    UsageError,
    can_show_screens,
    data_folder,
    environment,
    own_rules,
)

MOST_PROBLEMS = 20
"""A file of quite another kind has a fault in every line; nobody reads them all."""

MOST_LETTERS = 2000
"""Letters of the longest error: what was typed may be of any length, and comes back in it."""


def main(arguments: Sequence[str]) -> int:
    """Carry out one command and return its exit code; no fault of the person's is a traceback."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if stream is not None and hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        code = _carried_out(arguments)
        if sys.stdout is not None:
            sys.stdout.flush()
    except BrokenPipeError:
        # Whoever read our output has seen enough.
        _write_no_more()
        return ExitCode.FINE
    except OSError as fault:  # the disk that the output goes to is full
        _write_no_more()
        _complain(f"cannot write the output: {fault.strerror or fault}")
        return ExitCode.USAGE
    except KeyboardInterrupt:
        return ExitCode.INTERRUPTED
    return code


def _write_no_more() -> None:
    """Send what is left of the output nowhere: Python would complain once more on leaving."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)


def _carried_out(arguments: Sequence[str]) -> int:
    from weldwhy.problems import RulesError

    try:
        refuse_dashes(arguments)
        first = arguments[0] if arguments else ""
        options = parser(first if first in COMMANDS else "").parse_args(arguments)
        return COMMANDS[options.command](options)
    except UsageError as fault:
        _complain(str(fault))
    except RulesError as fault:
        for problem in fault.problems[:MOST_PROBLEMS]:
            _complain(str(problem))
        if len(fault.problems) > MOST_PROBLEMS:
            _complain(f"and {len(fault.problems) - MOST_PROBLEMS} more like these")
    except MemoryError:
        _complain("there is not enough memory")
    return ExitCode.USAGE


def _complain(words: str) -> None:
    line = clean(words)
    if len(line) > MOST_LETTERS:  # the end often says how to mend it
        line = f"{line[: MOST_LETTERS // 2]} .. {line[-MOST_LETTERS // 2 :]}"
    print(f"weldwhy: error: {line}", file=sys.stderr)


def _interview(options: argparse.Namespace) -> int:
    """Open the screens, or the same interview in plain lines where screens cannot be shown."""
    from weldwhy.rulebase import load
    from weldwhy.store import Store

    around = environment()
    rules = load(own_rules(options.rules, around))
    store = Store(data_folder(around))
    if options.plain or not can_show_screens(around):
        from weldwhy.plain import run as run_plain

        return run_plain(rules, store, sys.stdin, sys.stdout)
    from weldwhy.tui import run as run_screens

    return int(run_screens(rules, store))


def _diagnose(options: argparse.Namespace) -> int:
    from weldwhy.commands_diagnosis import diagnose

    return diagnose(options)


def _chart(options: argparse.Namespace) -> int:
    from weldwhy.commands_chart import chart

    return chart(options)


def _setup(options: argparse.Namespace) -> int:
    from weldwhy.commands_setup import setup

    return setup(options)


def _reckon(options: argparse.Namespace) -> int:
    from weldwhy.commands_reckon import reckon

    return reckon(options)


def _lookup(options: argparse.Namespace) -> int:
    from weldwhy.commands_lookup import lookup

    return lookup(options)


def _machine(options: argparse.Namespace) -> int:
    from weldwhy.commands_machine import machine

    return machine(options)


def _rules(options: argparse.Namespace) -> int:
    from weldwhy.commands_rules import TASKS

    if not options.task:
        raise UsageError(f"rules needs a task: {', '.join(TASKS)}; see `weldwhy rules --help`")
    return TASKS[options.task](options)


def _info(options: argparse.Namespace) -> int:
    from weldwhy.commands_info import info

    return info(options)


COMMANDS: Mapping[str, Callable[[argparse.Namespace], int]] = {
    "interview": _interview,
    "diagnose": _diagnose,
    "chart": _chart,
    "setup": _setup,
    "reckon": _reckon,
    "lookup": _lookup,
    "machine": _machine,
    "rules": _rules,
    "info": _info,
}
"""What carries out each command that `options` knows."""
