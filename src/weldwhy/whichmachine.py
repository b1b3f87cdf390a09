"""Which machine a command reckons with: that of a file, the person's own, or the usual one."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

from weldwhy.machine import default
from weldwhy.surroundings import UsageError, environment, file_bytes, own_file

if TYPE_CHECKING:
    from weldwhy.model import Machine, RuleBase

MACHINE_FILE = "machine.yaml"
"""The name of the person's own file, in the folder of their cases."""


def machine_for(name: str | None, rules: RuleBase) -> Machine:
    """The machine in a file the person named, else their own, else the one the rules start from.

    A fault in their own file is told on stderr; RulesError for one in a file they named.
    """
    if name is not None:
        from weldwhy.machinefile import read  # brings in the YAML reader

        return read(file_bytes(name), "standard input" if name == "-" else name, rules)
    # the store is a fifth of the time of a one-shot answer, so it is only asked if there is a file
    try:
        own = own_file(environment(), MACHINE_FILE)
    except UsageError:  # no home folder: then there is no machine of one's own either
        return default(rules)
    return _own(rules) if os.path.exists(own) else default(rules)  # noqa: PTH110


def _own(rules: RuleBase) -> Machine:
    from weldwhy.ownmachine import OwnMachine
    from weldwhy.store import Store
    from weldwhy.surroundings import data_folder

    store = Store(data_folder(environment()))
    machine = OwnMachine(rules, store).in_use.machine
    for notice in store.notices:
        print(notice, file=sys.stderr)
    return machine
