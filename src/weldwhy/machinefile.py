"""The file of a person's own machine: read, changed, and written as one writes it by hand.

Its keys are those of a machine of the rules without the id, and it is read as the rules are:
nothing runs, size and depth are bounded, and every fault has its line and the nearest word.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from weldwhy import machinebuild, yamltree
from weldwhy.machinetext import as_data, written
from weldwhy.model import Machine, RuleBase
from weldwhy.ownmachine import OWN
from weldwhy.problems import Problem, RulesError, did_you_mean
from weldwhy.setupforms import MACHINE_KEYS
from weldwhy.shape import ListShape, Reader, Reference, keys
from weldwhy.survey import Item

FORM = keys("machine", *MACHINE_KEYS)
"""The declared form of the file."""

LONGEST = 2000
"""Letters of the longest value: every key would wait for a name of a whole page."""


class MachineError(ValueError):
    """A change that cannot be made; str() is one plain line that says how to mend it."""


def read(data: bytes, name: str, rules: RuleBase) -> Machine:
    """The machine in the text of a file called `name`; raises `RulesError` with every problem."""
    tree, problems = yamltree.read(data, name)
    reader = Reader(name, list(problems))
    values = {} if tree is None else FORM.read(tree, reader)
    reader.problems += _unknown(reader.references, rules)
    if reader.problems or not isinstance(tree, yamltree.Mapping):
        raise RulesError(reader.problems)
    item = Item("machine", OWN, name, tree, values)
    made, faults = machinebuild.machine(item, rules.settings)
    if faults:
        raise RulesError(faults)
    return made


def text(machine: Machine, rules: RuleBase) -> str:
    """The file of a machine; reading it gives the machine again, with the id of one's own."""
    return written(as_data(machine, list(rules.settings)))


def changed(rules: RuleBase, machine: Machine, key: str, value: str) -> Machine:
    """One's own machine with another value under a key of the file; MachineError refuses it.

    A key inside another is written with a point: `limits.amps`, `limits_in.smaw.amps`,
    `dials.volts`. An empty value takes the key away. Lists are typed with commas, a dial as
    "1 = 13 V, 10 = 24 V".
    """
    if len(value) > LONGEST:
        raise MachineError(f"it is too long; write it in {LONGEST} letters at most")
    own = machine if machine.id == OWN else begun_from(machine)
    data = as_data(own, list(rules.settings))
    _put(data, _path(rules, key), value)
    try:
        return read(written(data).encode(), "", rules)
    except UnicodeEncodeError:  # a byte of the command line that is no letter in its encoding
        raise MachineError("it holds a sign that cannot be kept; use plain letters") from None
    except RulesError as fault:
        raise MachineError(fault.problems[0].words) from None


def begun_from(machine: Machine) -> Machine:
    """A machine of the rules as the start of one's own; what is noted of it stays behind."""
    return replace(machine, id=OWN, note="")


def by_hand(rules: RuleBase, data: bytes) -> bool:
    """Whether a file holds more than its machine as this program writes it: remarks, or faults."""
    try:
        return text(read(data, "", rules), rules).encode() != data
    except RulesError:
        return True


def _unknown(references: list[Reference], rules: RuleBase) -> list[Problem]:
    """Processes and settings that the rules do not know."""
    words: Mapping[str, Mapping[str, Any]] = {
        "process": rules.processes, "setting": rules.settings,
    }  # fmt: skip
    return [
        Problem(
            named.file, named.line, named.column, "error",
            f'no {named.kind} "{named.id}"{did_you_mean(named.id, words[named.kind])}',
            "unknown-id",
        )
        for named in references
        if named.id not in words[named.kind]
    ]  # fmt: skip


_COMMA = re.compile(r",(?!(?<=[0-9],)[0-9])")
"""A comma between things; one between two digits is inside a number."""
_NESTED = {"limits": 2, "limits_in": 3, "dials": 2}
"""How many parts the key of a single value has, where that is more than one."""


def _path(rules: RuleBase, key: str) -> list[str]:
    """The parts of a key, each known; MachineError says what is wrong with it."""
    known = {each.name: each.shape for each in MACHINE_KEYS}
    first, *rest = path = key.split(".")
    if first not in known:
        raise MachineError(f'unknown key "{first}"{did_you_mean(first, known)}')
    if len(path) != _NESTED.get(first, 1):
        example = {"limits": "limits.amps", "limits_in": "limits_in.smaw.amps"}
        wanted = example.get(first, "dials.volts" if first == "dials" else first)
        raise MachineError(f'"{key}" is no key of one value; write it like {wanted}')
    kinds: list[Mapping[str, object]] = [rules.processes, rules.settings]
    for part, words in zip(rest, kinds[-len(rest) :]):
        if part not in words:
            raise MachineError(f'unknown "{part}" in "{key}"{did_you_mean(part, words)}')
    return path


def _put(data: dict[str, Any], path: list[str], value: str) -> None:
    """Write a value into the data of a file, or take it away if it is empty."""
    *around, last = path
    for part in around:
        data = data.setdefault(part, {})
    value = " ".join(value.split())
    shape = {each.name: each.shape for each in MACHINE_KEYS}[path[0]]
    if not value:
        data.pop(last, None)
    elif path[0] == "dials":
        data[last] = _dial(value)
    elif isinstance(shape, ListShape):
        data[last] = [part for each in _COMMA.split(value) if (part := each.strip())]
    else:
        data[last] = value


def _dial(value: str) -> dict[str, str]:
    """The marks in "1 = 13 V, 10 = 24 V"."""
    found: dict[str, str] = {}
    for each in _COMMA.split(value):
        mark, equals, stands_for = (part.strip() for part in each.partition("="))
        if not (mark and equals and stands_for):
            raise MachineError(f'cannot read "{each.strip()}"; write it like "1 = 13 V, 10 = 24 V"')
        if mark in found:
            raise MachineError(f'the mark "{mark}" is here twice')
        found[mark] = stands_for
    return found
