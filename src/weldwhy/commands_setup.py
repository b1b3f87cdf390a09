"""`weldwhy setup`: which process, how it is hooked up, what to set and check before the arc."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterator

from weldwhy import gases
from weldwhy.case import Case, Entry, Measured, Situated
from weldwhy.consumables import same_class
from weldwhy.entries import EntryError, answered, known, measured, thickness
from weldwhy.model import Machine, RuleBase
from weldwhy.problems import did_you_mean
from weldwhy.rulebase import load
from weldwhy.setup import Plan, Refusal, plan, plans, refusal
from weldwhy.setupdata import refused, setups
from weldwhy.setupsheet import refusal_lines, setup_sheet
from weldwhy.surroundings import ExitCode, UsageError, environment, own_rules
from weldwhy.whichmachine import machine_for

WORK = ("grade", "joint", "position", "place", "job")
"""What may be told of the work besides metal and thickness."""
SIZES = ("wire", "rod", "tungsten")


def setup(options: argparse.Namespace) -> ExitCode:
    """Print the set-up of a process, or of the best one and how the others suit; or why none."""
    rules = load(own_rules(options.rules, environment()))
    machine = machine_for(options.machine, rules)
    try:
        case = _told(rules, options)
        if options.process is not None:
            known(options.process, rules.setups, "process")
    except EntryError as fault:
        raise UsageError(str(fault)) from None
    found = _found(rules, case, machine, options)
    if isinstance(found, Refusal):
        _refuse(found, options.json)
        return ExitCode.FINDINGS
    if not found:
        raise UsageError(f'"{machine.name}" can do no process that the rules set up')
    if options.json:
        _print_json(setups(rules, found))
    else:
        best, *others = found
        for line in setup_sheet(rules, best, case, machine, options.format, others):
            print(line)
    return ExitCode.FINE


def _found(
    rules: RuleBase, case: Case, machine: Machine, options: argparse.Namespace
) -> tuple[Plan, ...] | Refusal:
    if options.process is None:
        return plans(rules, case, machine, options.units)
    return refusal(rules, case) or (plan(rules, case, machine, options.process, options.units),)


def _told(rules: RuleBase, options: argparse.Namespace) -> Case:
    """What the options say of the work, as a case; EntryError for what cannot be meant."""
    return Case().with_(*_situation(rules, options), *_measured(rules, options))


def _situation(rules: RuleBase, options: argparse.Namespace) -> Iterator[Entry]:
    material = answered(rules, "material", options.material)
    told = [answered(rules, name, word) for name in WORK if (word := getattr(options, name))]
    for entry in told:
        grade = entry.value if isinstance(entry, Situated) and entry.field == "grade" else ""
        if grade in rules.grades:
            material = _of_grade(rules, grade, material)
    yield material
    yield Situated("thickness", thickness(options.thickness, options.units))
    yield from told


def _of_grade(rules: RuleBase, grade: str, material: Entry) -> Entry:
    """The metal that the grade belongs to; a grade says more than the name of a metal.

    EntryError where the name says what no grade can, such as a coat of zinc or a metal that
    burns: that must not get lost.
    """
    named = rules.materials[rules.grades[grade].material]
    found = Situated("material", named.id)
    if found != material:
        told = rules.materials.get(material.value) if isinstance(material, Situated) else None
        if told is not None and all(each.material != told.id for each in rules.grades.values()):
            raise EntryError(
                f"{rules.grades[grade].name} is {named.name}, but the metal told is {told.name}; "
                "tell one of the two"
            )
        print(f"{rules.grades[grade].name} is {named.name}: taken so.", file=sys.stderr)
    return found


def _measured(rules: RuleBase, options: argparse.Namespace) -> Iterator[Entry]:
    told = {name: text for name in SIZES if (text := getattr(options, name))}
    sizes = {name: measured(rules, name, text, options.units) for name, text in told.items()}
    if options.consumable:
        name = _consumed(rules, options.consumable)
        sizes[name] = " ".join([*([sizes[name]] if name in sizes else []), options.consumable])
    yield from (Measured(name, text) for name, text in sizes.items())
    if options.gas:
        if gases.read(rules, options.gas) is None:
            raise EntryError(_unknown_gas(rules, options.gas))
        yield Measured("gas", measured(rules, "gas", options.gas))


def _consumed(rules: RuleBase, asked: str) -> str:
    """Whether a class is one of wire or of rods; EntryError if the rules do not know it."""
    named = [each for each in rules.fillers.values() if same_class(asked, each.name)]
    if not named:
        known(asked, dict.fromkeys(each.name for each in rules.fillers.values()), "class")
    return "wire" if any(each.kind in ("solid wire", "cored wire") for each in named) else "rod"


def _unknown_gas(rules: RuleBase, asked: str) -> str:
    names = [name for gas in rules.gases.values() for name in (gas.id, gas.name, *gas.also)]
    return f'unknown gas "{asked[:40]}"{did_you_mean(asked, names)}'


def _refuse(found: Refusal, as_json: bool) -> None:
    if as_json:
        _print_json(refused(found))
        return
    from weldwhy.lines import wrapped

    for line in wrapped(refusal_lines(found)):
        print(line)


def _print_json(data: dict[str, object]) -> None:
    print(json.dumps(data, indent=2))
