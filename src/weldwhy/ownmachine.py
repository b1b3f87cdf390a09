"""Whose machine is in use: the person's own from its file, or the one the rules start from.

The file is looked at again whenever it is asked for, since people change it by hand. What they
wrote themselves is never written over: it is kept under another name.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from weldwhy.machine import default
from weldwhy.model import Machine
from weldwhy.plaintext import clean
from weldwhy.problems import RulesError
from weldwhy.store import StoreError

if TYPE_CHECKING:
    from weldwhy.model import RuleBase
    from weldwhy.store import Store

OWN = "own"
"""The id of the person's own machine."""

HAND_WRITTEN = "it was written by hand"
UNREADABLE = "it cannot be read"
BEGUN_ANEW = "another machine was begun"


@dataclass(frozen=True, slots=True)
class InUse:
    """The machine in use; `own` if it is the person's. `fault` says why theirs is not used."""

    machine: Machine
    own: bool = False
    fault: str = ""


class OwnMachine:
    """The machine in use. A fault in its file is told once, in the store's notices."""

    def __init__(self, rules: RuleBase, store: Store) -> None:
        self._rules = rules
        self._store = store
        self._seen: bytes | str | None = None
        self._in_use = InUse(default(rules))
        self._look_again()

    @property
    def in_use(self) -> InUse:
        """The machine as the file has it now."""
        self._look_again()
        return self._in_use

    def keep(self, machine: Machine, anew: bool = False) -> None:
        """Take a machine as the person's own and write its file.

        `anew`: it does not follow from the one before, whose file is kept then. StoreError if it
        could not be written; it is in use all the same.
        """
        from weldwhy.machinefile import text

        written = text(machine, self._rules)
        aside = self._aside(anew)
        self._in_use = InUse(replace(machine, id=OWN), own=True)
        try:
            self._store.save_machine(written, aside)
        finally:
            self._seen = self._look()

    def _look_again(self) -> None:
        found = self._look()
        if found != self._seen:
            self._seen, self._in_use = found, self._read(found)
            if self._in_use.fault:
                self._store.notices.append(self._in_use.fault)

    def _look(self) -> bytes | str | None:
        """What is in the file now; words if it cannot be read."""
        try:
            return self._store.machine_text()
        except StoreError as fault:
            return str(fault)

    def _read(self, data: bytes | str | None) -> InUse:
        usual = default(self._rules)
        if data is None:
            return InUse(usual)
        meanwhile = f'Until it is mended, "{usual.name}" is taken.'
        if isinstance(data, str):
            return InUse(usual, fault=clean(f"{data}. {meanwhile}"))
        from weldwhy.machinefile import read  # brings in the YAML reader

        name = str(self._store.machine_file)
        try:
            return InUse(read(data, name, self._rules), own=True)
        except RulesError as fault:
            first, others = fault.problems[0], len(fault.problems) - 1
            place = f"{name}, line {first.line}" if first.line else name
            more = f" ({others} more like it)" if others else ""
            return InUse(usual, fault=clean(f"{place}: {first.words}{more}. {meanwhile}"))

    def _aside(self, anew: bool) -> str:
        """Why the file that is there must not be written over; "" if it may be."""
        from weldwhy.machinefile import by_hand

        found = self._look()
        if found is None:
            return ""
        if isinstance(found, str):
            return UNREADABLE
        if anew:
            return BEGUN_ANEW
        return HAND_WRITTEN if by_hand(self._rules, found) else ""
