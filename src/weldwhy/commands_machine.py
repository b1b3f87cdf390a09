"""`weldwhy machine`: your machine in words, and the way to tell the guide about it."""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Iterator
from pathlib import Path

from weldwhy.entries import EntryError, known
from weldwhy.lines import safe, wrapped
from weldwhy.machine import default
from weldwhy.machinefile import MachineError, begun_from, changed, read
from weldwhy.machinetext import as_data, label, values
from weldwhy.model import Machine, RuleBase
from weldwhy.ownmachine import InUse, OwnMachine
from weldwhy.rulebase import load
from weldwhy.store import Store, StoreError
from weldwhy.surroundings import ExitCode, UsageError, data_folder, environment, own_rules

YOURS = "This is your own machine."
NOT_YOURS = "The guide takes this machine until you tell it yours."
CHANGE = (
    'To change it: weldwhy machine --set supply="230 V"',
    "The other keys: weldwhy machine --help",
)


def machine(options: argparse.Namespace) -> ExitCode:
    """Make the changes asked for, which are then on the disk, and print the machine in use."""
    rules = load(own_rules(options.rules, environment()))
    file = None if options.file is None else Path(options.file)
    if file is not None and (options.start or options.set):
        _may_be_replaced(file)
    store = Store(data_folder(environment()), file)
    try:
        in_use = _in_file(options, rules, store)
        if options.start or options.set:
            in_use = _changed(options, rules, store, in_use.machine)
    except (EntryError, MachineError, StoreError) as fault:
        raise UsageError(str(fault)) from None
    for notice in store.notices:
        print(notice, file=sys.stderr)
    if options.json:
        _print_json(rules, in_use, store.machine_file)
    else:
        for line in wrapped(safe(_lines(rules, in_use, store.machine_file))):
            print(line)
    return ExitCode.FINE


def _may_be_replaced(file: Path) -> None:
    """UsageError for a folder or a device that the person named: it is not ours to move aside."""
    if os.path.exists(file) and not os.path.isfile(file):  # noqa: PTH110, PTH113 - never raise
        raise UsageError(f'"{file}" is no file')


def _in_file(options: argparse.Namespace, rules: RuleBase, store: Store) -> InUse:
    """The machine before any change. RulesError if the file is broken and is to be used."""
    data = None if options.start else store.machine_text()
    if data is not None:
        return InUse(read(data, str(store.machine_file), rules), own=True)
    if options.file and not (options.start or options.set):
        raise UsageError(f'there is no file "{options.file}"')
    return InUse(default(rules))


def _changed(options: argparse.Namespace, rules: RuleBase, store: Store, made: Machine) -> InUse:
    """The machine with every change, once it is kept."""
    if options.start:
        made = begun_from(rules.machines[known(options.start, rules.machines, "machine")])
    for each in options.set:
        key, equals, value = each.partition("=")
        if not equals:
            raise MachineError(f"--set {each}: write it as KEY=VALUE")
        try:
            made = changed(rules, made, key.strip(), value)
        except MachineError as fault:
            raise MachineError(f"--set {key.strip()}: {fault}") from None
    own = OwnMachine(rules, store)
    store.notices.clear()  # a file that is replaced need not be mended
    own.keep(made, anew=bool(options.start))
    return own.in_use


def _print_json(rules: RuleBase, in_use: InUse, file: Path) -> None:
    """Print the keys of the file as data, whose the machine is, and where the file is."""
    data = as_data(in_use.machine, list(rules.settings))
    found = {"own": in_use.own, "file": str(file), "machine": data}
    print(json.dumps(found, indent=2))


def _lines(rules: RuleBase, in_use: InUse, file: Path) -> Iterator[str]:
    """The machine in words."""
    told = values(in_use.machine, list(rules.settings))
    yield told.pop("name")
    yield YOURS if in_use.own else NOT_YOURS
    yield f"{'Its' if in_use.own else 'Your'} file: {file}" + " (not there yet)" * (not in_use.own)
    yield ""
    processes = (rules.processes[each].plain for each in in_use.machine.processes)
    told["processes"] = ", ".join(processes)
    for key, value in told.items():
        yield f"{label(rules, key)}: {value}"
    yield ""
    yield from CHANGE
