"""The form of the person's machine: one line for each thing, with where one reads it off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from weldwhy.machinetext import label, values
from weldwhy.model import Machine, RuleBase
from weldwhy.ownmachine import InUse
from weldwhy.tui.cards.card import Card, Choice, text_body
from weldwhy.tui.cards.facts import setting_ids
from weldwhy.tui.cards.form import Field
from weldwhy.unitwords import EXAMPLES

START = "start"
"""The line that takes over another machine."""
CAN = "can."
"""What opens the id of a line that says whether the machine can do a process."""


@dataclass(frozen=True, slots=True)
class Line(Field):
    """A line of the form; `about` says what it is for, and where one reads it off."""

    about: str = ""


NAME = "Any name you like."
NOTE = "Anything you want to remember of it."
RANGES = {
    "volts": ('"13 V to 24 V"', "Least and most volts with wire. On the plate: the line with the "
              "sign of the gun and wire, the numbers with V."),
    "wire_feed": ('"60 ipm to 500 ipm"', "Slowest and fastest wire feed. The manual says it, or "
                  "the scale round the dial."),
    "amps": ('"30 A to 180 A"', "Least and most amps. On the plate: the numbers with A, such as "
             "30 A / 15.5 V to 180 A / 23 V."),
}  # fmt: skip
RANGE_IN = (
    "Only if it reaches more or less here. On the plate: the line with the sign of this process."
)
DUTY = "How long of ten minutes it may weld. On the plate: each percentage X, and I2 below it."
DIAL = (
    "Only if the dial shows marks and no values: two marks or more, numbers or letters, and what "
    "they stand for. Look for a chart inside the door, or in the manual."
)
SINGLE = {
    "supply": ('"230 V"', "Voltage of the socket it is plugged into. On the plate: U1."),
    "breaker": ('"30 A"', "The number on the breaker or fuse of that socket. Read it from outside: "
                "what is behind the cover is an electrician's work."),
    "gun": (EXAMPLES["distance"], "How long the cable of the gun or torch is."),
    "work_lead": (EXAMPLES["distance"], "How long the cable to the work clamp is."),
    "lead": (EXAMPLES["section"], "How much copper is in both leads. It is printed on the cable."),
    "cord": (EXAMPLES["distance"], "How long the extension cord is, if one is in use."),
}  # fmt: skip


def lines(rules: RuleBase, machine: Machine) -> tuple[Line, ...]:
    """The lines of the form, in the order of the plate."""
    told = values(machine, list(rules.settings))

    def line(key: str, example: str, about: str, heading: str = "") -> Line:
        value = told.get(key, "")
        return Line(
            key, label(rules, key), value, value, example=example, none="not told",
            heading=heading, about=about,
        )  # fmt: skip

    found = [line("name", "", NAME), line("note", "", NOTE)]
    found.append(Line(START, "start from another machine", none="pick one"))
    for at, process in enumerate(rules.processes.values()):
        can = "yes" if process.id in machine.processes else "no"
        heading = "What it can do" if not at else ""
        found.append(Line(f"{CAN}{process.id}", process.plain, can, can, heading=heading))
    for at, (key, example, about) in enumerate(_reaches(rules, machine)):
        found.append(line(key, example, about, "What it reaches" if not at else ""))
    for at, (key, (example, about)) in enumerate(SINGLE.items()):
        found.append(line(key, example, about, "Mains and cables" if not at else ""))
    return tuple(found)


def _reaches(rules: RuleBase, machine: Machine) -> Iterator[tuple[str, str, str]]:
    """Key, example and guidance of what the machine reaches, and of its dials."""
    limited = [s.id for s in rules.settings.values() if s.too_little or s.too_much]
    known = [setting for setting in limited if setting in RANGES]
    yield from ((f"limits.{setting}", *RANGES[setting]) for setting in known)
    for process in machine.processes:
        ids = setting_ids(rules, process)
        if "amps" in ids and "wire_feed" not in ids and "amps" in known:
            yield f"limits_in.{process}.amps", RANGES["amps"][0], RANGE_IN
    yield "duty", '"20 % at 180 A, 60 % at 104 A"', DUTY
    for setting in known:
        low, high = RANGES[setting][0].strip('"').split(" to ")
        yield f"dials.{setting}", f'"1 = {low}, 10 = {high}"', DIAL


def whose(in_use: InUse, file: str) -> tuple[str, str]:
    """Whose machine it is, and what to do about it; with its role."""
    if in_use.fault:
        return in_use.fault + " A change here begins a new file.", "caution"
    if in_use.own:
        return f"Yours, kept in {file}.", "dim"
    return "The guide takes this one until you change a line.", "dim"


def start_card(rules: RuleBase, own: bool, where: str) -> Card:
    """The machines of the rules to start from."""
    said = [("Which one is most like yours? It brings all its lines.", "strong")]
    if own:
        said.append(("The file of yours is kept under another name.", "dim"))
    choices = tuple(Choice(each.name, each.id) for each in rules.machines.values())
    leave = Choice("None: leave everything as it is", "", key="0")
    return Card(text_body(said), choices, (leave,), where=where)
