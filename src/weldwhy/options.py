"""What can be asked on the command line: every command with its options and help texts."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, NoReturn

from weldwhy import __version__
from weldwhy.surroundings import UsageError

PATIENCE = ("thorough", "normal", "brisk")
UNITS = ("in", "mm")
CHART_FORMATS = ("text", "markdown", "html")
PAGE_FORMATS = (*CHART_FORMATS, "svg")
DEEPEST_CHART = 12
MOST_CASES, MOST_TOLD = 100_000, 4


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints are one plain line."""

    def error(self, message: str) -> NoReturn:
        raise UsageError(f"{message}; see `{self.prog} --help`")


def refuse_dashes(arguments: Sequence[str]) -> None:
    """UsageError for `--option=--`: argparse would give the option a list for its value."""
    for each in arguments:
        option, equals, value = each.partition("=")
        if option.startswith("--") and equals and value == "--":
            raise UsageError(f"argument {option}: a value is needed")


def parser(only: str = "") -> argparse.ArgumentParser:
    """Every command with its options; the help texts are the manual of the command line.

    With `only`, that one command: a tenth of a one-shot answer would go into the others.
    """
    top = _Parser(
        prog="weldwhy",
        description="Find out why a weld is bad and how to put it right. "
        "Without a command, the screens open.",
        epilog="Exit codes: 0 fine, 1 findings, 2 wrong usage or unreadable rules, "
        "130 interrupted.",
        allow_abbrev=False,
    )
    top.add_argument("--version", action="version", version=f"weldwhy {__version__}")
    top.add_argument("--plain", action="store_true", help="numbered lines instead of screens")
    _add_rules_folder(top, default=None)
    top.set_defaults(command="interview")
    # Without `prog` it would be worked out by formatting a usage text, which takes a while.
    commands = top.add_subparsers(
        title="commands", metavar="COMMAND", prog="weldwhy", parser_class=_Parser
    )
    for name, add in ADD.items():
        if only in ("", name):
            add(commands)
    return top


if TYPE_CHECKING:
    Commands = argparse._SubParsersAction[_Parser]  # argparse gives the type no public name


def _add_rules_folder(
    command: argparse.ArgumentParser, default: str | None = argparse.SUPPRESS
) -> None:
    # Only the top has a default: a command's own would undo a --rules given before its name.
    command.add_argument(
        "--rules",
        metavar="FOLDER",
        default=default,
        help="your own rules on top of those that come with the program "
        "(default: $WELDWHY_RULES, else the folder `rules` beside your cases)",
    )


def _add_diagnose(commands: Commands) -> None:
    diagnose = commands.add_parser(
        "diagnose",
        help="one answer: what is likely, why, and what to do next",
        description="Tell what is known, get the likeliest causes and the next step.",
        allow_abbrev=False,
    )
    add = diagnose.add_argument
    add("--case", metavar="FILE", help="a case file, YAML or JSON; - reads standard input")
    add("--said", metavar="TEXT", action="append", default=[], help="a free sentence")
    add(
        "--answer",
        metavar="CHECK=ANSWER",
        action="append",
        default=[],
        help="the answer to a check; dont-know and skip are answers too",
    )
    add("--symptom", metavar="ID", action="append", default=[], help="what is wrong with the bead")
    add("--process", metavar="ID", help="the welding process")
    add("--machine", metavar="FILE", help="the file of a machine (default: yours)")
    add("--patience", choices=PATIENCE, default="normal", help="how many questions are welcome")
    add("--units", choices=UNITS, help="show numbers in inches or millimetres (default: as told)")
    add("--format", choices=CHART_FORMATS, help="of the report; default: text")
    add("--json", action="store_true", help="print one JSON object instead of a report")
    _add_rules_folder(diagnose)
    diagnose.set_defaults(command="diagnose")


def _add_setup(commands: Commands) -> None:
    setup = commands.add_parser(
        "setup",
        help="before the first bead: the process, the hook-up, and what to set",
        description="Say what is to be welded; get how to set up for it, with a checklist. "
        "Without --process: the best one, and how the others suit.",
        allow_abbrev=False,
    )
    add = setup.add_argument
    add("--material", metavar="METAL", required=True, help='such as "mild steel"')
    add("--thickness", metavar="SIZE", required=True, help='such as "1/8 in", "16 ga" or "3 mm"')
    add("--process", metavar="ID", help="the welding process")
    add("--grade", metavar="GRADE", help="the metal by its standard name, such as 1045")
    add("--wire", metavar="SIZE", help='the wire you have, such as "0.035 in"')
    add("--rod", metavar="SIZE", help='the rod, or filler rod, you have, such as "1/8 in"')
    add("--class", metavar="CLASS", dest="consumable", help="its class, such as E6013")
    add("--tungsten", metavar="SIZE", help='the tungsten you have, such as "3/32 in"')
    add("--gas", metavar="GAS", help='the gas you have, such as C25 or "82 Ar 18 CO2"')
    add("--joint", metavar="WORD", help="butt, fillet, lap, corner or edge")
    add("--position", metavar="WORD", help="flat, horizontal, vertical up and the like")
    add("--place", metavar="WORD", help="indoors or outdoors")
    add("--job", metavar="ID", help="what the weld is for")
    add("--machine", metavar="FILE", help="the file of a machine (default: yours)")
    add("--units", choices=UNITS, help="show numbers in inches or millimetres (default: as told)")
    add("--format", choices=CHART_FORMATS, default="text", help="of the sheet; default: text")
    add("--json", action="store_true", help="print one JSON object")
    _add_rules_folder(setup)
    setup.set_defaults(command="setup")


def _add_chart(commands: Commands) -> None:
    chart = commands.add_parser(
        "chart",
        help="one page for the wall: a symptom in one process, or all of them as a book",
        description="Print a page for the wall: what to check, from the top down, and what to put "
        "right. With --all, every page as one book; with --depth, the guide as a full tree.",
        allow_abbrev=False,
    )
    add = chart.add_argument
    add("symptom", metavar="SYMPTOM", nargs="?", default="", help="the id of a symptom")
    add("--all", action="store_true", help="all symptoms, as one book to print")
    add("--process", metavar="ID", help="the welding process")
    add("--format", choices=PAGE_FORMATS, default="text", help="default: text")
    add(
        "--depth", type=_whole(DEEPEST_CHART), metavar="N",
        help="print the full tree instead, of so many steps at most",
    )  # fmt: skip
    _add_rules_folder(chart)
    chart.set_defaults(command="chart")


def _add_reckon(commands: Commands) -> None:
    reckon = commands.add_parser(
        "reckon",
        help="the calculators: heat input, gas left, duty cycle and the like",
        description="Work something out. Without a name, list the calculators; without inputs, "
        "say what the calculator needs.",
        allow_abbrev=False,
    )
    add = reckon.add_argument
    add("calculator", metavar="NAME", nargs="?", default="", help="the id of a calculator")
    add("inputs", metavar="INPUT=VALUE", nargs="*", help='such as volts="18.5 V"')
    add("--units", choices=UNITS, help="inches or millimetres (default: as the inputs are given)")
    add("--json", action="store_true", help="print one JSON object")
    _add_rules_folder(reckon)
    reckon.set_defaults(command="reckon")


def _add_lookup(commands: Commands) -> None:
    lookup = commands.add_parser(
        "lookup",
        help="a page of what the rules know: a symptom, a cause, a check, a word of the trade",
        description="Print the page of a symptom, cause, check, remedy, word, process, metal, "
        "gas, filler, setting or calculator. Without a term, say what there is to look up.",
        epilog="Where several are meant equally well they are listed, and the exit code is 1.",
        allow_abbrev=False,
    )
    add = lookup.add_argument
    add("term", metavar="TERM", nargs="*", help='an id, a name or a phrase, such as "duty cycle"')
    add(
        "--list", metavar="KIND", nargs="?", const="", default=None,
        help="list everything of one kind, such as symptom; without one, the kinds",
    )  # fmt: skip
    add("--units", choices=UNITS, help="show numbers in inches or millimetres")
    _add_rules_folder(lookup)
    lookup.set_defaults(command="lookup")


def _add_machine(commands: Commands) -> None:
    machine = commands.add_parser(
        "machine",
        help="your machine: what it reaches, so that every target fits it",
        description="Print the machine the guide reckons with, in words; with --from or --set, "
        "tell it yours first.",
        epilog="Keys: name, processes, duty, supply, breaker, gun, work_lead, lead, cord, note; "
        'limits.amps="30 A to 180 A", limits_in.smaw.amps="20 A to 160 A", '
        'dials.volts="1 = 13 V, 10 = 24 V". Nothing after "=" takes a value away.',
        allow_abbrev=False,
    )
    add = machine.add_argument
    add("--from", dest="start", metavar="ID", help="start from a machine of the rules")
    add(
        "--set", metavar="KEY=VALUE", action="append", default=[],
        help='change one thing, such as supply="230 V"; may be given several times',
    )  # fmt: skip
    add("--file", metavar="FILE", help="another file than the one beside your cases")
    add("--json", action="store_true", help="print one JSON object")
    _add_rules_folder(machine)
    machine.set_defaults(command="machine")


def _whole(most: int, least: int = 1) -> Callable[[str], int]:
    """The type of an option that takes a whole number in these bounds."""

    def read(text: str) -> int:
        # cut, since nobody is to wait for a number of a million digits
        if not text.isascii() or not text.isdigit() or not least <= int(text[:9]) <= most:
            raise argparse.ArgumentTypeError(f"a whole number from {least} to {most} is needed")
        return int(text[:9])

    return read


def _add_rules(commands: Commands) -> None:
    rules = commands.add_parser(
        "rules",
        help="check, explain and try the rules",
        description="Work on the rules: what the guide knows.",
        allow_abbrev=False,
    )
    rules.set_defaults(command="rules", task="")
    tasks = rules.add_subparsers(
        title="tasks", metavar="TASK", prog="weldwhy rules", parser_class=_Parser
    )
    known = {
        "check": ("every problem in the rules, one line each", ""),
        "coverage": ("what the rules know, counted by symptom and process", ""),
        "explain": ("all that the rules say of one id", "ID"),
        "try": ("what the guide makes of a case file", "CASE"),
        "schema": ("the JSON Schema of one kind of file", "KIND"),
    }
    for name, (about, operand) in known.items():
        task = tasks.add_parser(name, help=about, description=about, allow_abbrev=False)
        if operand:
            task.add_argument("operand", metavar=operand)
        _add_rules_folder(task)
        task.set_defaults(task=name)
    _add_simulate(tasks)


def _add_simulate(tasks: Commands) -> None:
    about = "how well the guide finds simulated faults, by symptom"
    task = tasks.add_parser("simulate", help=about, description=about, allow_abbrev=False)
    add = task.add_argument
    add("operand", metavar="SYMPTOM", nargs="?", default="", help="one symptom; default: all")
    add(
        "--cases", type=_whole(MOST_CASES), default=20, metavar="N",
        help="cases for each process of a symptom; default: 20",
    )  # fmt: skip
    add(
        "--told", type=_whole(MOST_TOLD, least=0), default=0, metavar="N",
        help=f"odd things told before any question, at most {MOST_TOLD}; default: 0",
    )  # fmt: skip
    _add_rules_folder(task)
    task.set_defaults(task="simulate")


def _add_info(commands: Commands) -> None:
    info = commands.add_parser("info", help="versions, folders and counts", allow_abbrev=False)
    _add_rules_folder(info)
    info.set_defaults(command="info")


ADD: Mapping[str, Callable[[Commands], None]] = {
    "diagnose": _add_diagnose,
    "chart": _add_chart,
    "setup": _add_setup,
    "reckon": _add_reckon,
    "lookup": _add_lookup,
    "machine": _add_machine,
    "rules": _add_rules,
    "info": _add_info,
}
"""What adds each command, in the order of the help."""
