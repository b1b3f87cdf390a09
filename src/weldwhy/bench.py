"""The case on the bench: the log, what the guide thinks of it, and the store that keeps it.

Knows no screen. Every entry is on the disk before the next key is read, so a lost line or a
killed program comes back to the same step.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cached_property
from typing import TYPE_CHECKING

from weldwhy.case import Case, Measured, Situated
from weldwhy.store import StoreError

if TYPE_CHECKING:
    from pathlib import Path

    from weldwhy.case import Entry
    from weldwhy.interview import Interview
    from weldwhy.model import Machine, RuleBase
    from weldwhy.ownmachine import InUse, OwnMachine
    from weldwhy.setupcase import SetupCase
    from weldwhy.store import Preferences, Store

InterviewFactory = Callable[..., "Interview"]
"""Makes what the guide thinks: it is called as `Interview` is."""

Clock = Callable[[], str]
"""The time now in ISO 8601."""


class Bench:
    """Holds the open case. `notices` are plain lines to be shown once."""

    def __init__(
        self, rules: RuleBase, store: Store, interview_factory: InterviewFactory, clock: Clock
    ) -> None:
        self.rules = rules
        self.store = store
        self.preferences: Preferences = store.preferences
        self.case = Case()
        self.notices: list[str] = []
        self._make = interview_factory
        self._clock = clock
        self._interview: Interview | None = None
        self._setup: SetupCase | None = None
        self.left_open = self._known(store.resume())
        self._take_notices()

    @property
    def interview(self) -> Interview:
        """What the guide thinks of the case as it stands."""
        if self._interview is None:
            self._interview = self._make(
                self.rules, self.case, self.patience, system=self.system,
                # one's own is read at once, so that a fault in its file is told at the start
                machine=self.machine if self.case.symptoms or self.store.has_machine else None,
                habit=self.preferences.habit or None,
            )  # fmt: skip
        return self._interview

    @property
    def patience(self) -> str:
        """How eagerly the guide asks."""
        return self.preferences.patience or "normal"

    @property
    def system(self) -> str | None:
        """The unit system to show, None: as given."""
        return self.preferences.units or None

    @cached_property
    def _own(self) -> OwnMachine:
        from weldwhy.ownmachine import OwnMachine  # an empty case does without

        return OwnMachine(self.rules, self.store)

    @property
    def in_use(self) -> InUse:
        """The machine in use, and whether it is the person's."""
        return self._own.in_use

    @property
    def machine(self) -> Machine:
        """The person's machine, or the one the rules start from."""
        return self.in_use.machine

    def change_machine(self, machine: Machine, anew: bool = False) -> None:
        """Take and keep another machine as the person's own; the guide thinks again.

        `anew`: it does not follow from the one before, whose file is kept under another name.
        """
        self._interview = None
        try:
            self._own.keep(machine, anew)
        except StoreError as fault:
            self.notices.append(f"{fault}; the machine is taken until you leave, but not kept")

    def _known(self, left: Case | None) -> Case | None:
        """The case without what these rules do not know, which is said."""
        if left is None:
            return None
        left = self._still_known(left)
        return left if left.entries else None

    def _still_known(self, told: Case) -> Case:
        from weldwhy.entries import still_known  # a new case has nothing that is not known

        known, dropped = still_known(self.rules, told)
        if dropped:
            many = f"{dropped} things told are" if dropped > 1 else "one thing told is"
            self.notices.append(f"{many} not in these rules and left out")
        return known

    def go_on(self) -> None:
        """Take up the case that was left open."""
        if self.left_open is not None:
            self._set(self.left_open)
            self.left_open = None

    def put_away(self) -> None:
        """File the case away with the finished ones and begin an empty one."""
        case = self.left_open or self.case
        if case.entries:
            try:
                self.store.finish(case, self._clock())
            except StoreError as fault:
                self.notices.append(str(fault))
        self.left_open = None
        self._set(Case())

    def new_for(self, symptom_entries: tuple[Entry, ...]) -> None:
        """File the case away and begin one on the same work, with other symptoms."""
        kept = tuple(e for e in self.case.entries if isinstance(e, (Situated, Measured)))
        self.put_away()
        self.record(*symptom_entries, *kept)

    def begin_with(self, *entries: Entry) -> None:
        """File the open case away, if there is one, and begin another with what is known."""
        self.put_away()
        self.record(*entries)

    @property
    def setup(self) -> SetupCase:
        """What is being set up; read from the store when it is first asked for."""
        if self._setup is None:
            left = self.store.setup
            work = self._still_known(left.work)
            shown = left.shown and left.process in self.rules.setups
            self._setup = replace(left, work=work, shown=shown)
            self._take_notices()
        return self._setup

    @setup.setter
    def setup(self, setup: SetupCase) -> None:
        self._setup = setup
        try:
            self.store.setup = setup
        except StoreError as fault:
            self.notices.append(f"{fault}; the set-up goes on, but it is not kept")

    def record(self, *entries: Entry) -> None:
        """Add entries to the case; they are on the disk when this returns."""
        self._set(self.case.with_(*entries))
        self._save()
        self._learn_units()

    def _learn_units(self) -> None:
        """Remember the unit system the person writes in, for what they have not written yet."""
        from weldwhy.readings import habit

        found = habit(self.rules, self.case)
        if found and found != self.preferences.habit:
            self.prefer(habit=found)

    def undo(self) -> None:
        """Take the last entry back."""
        self._set(self.case.undo())
        self._save()

    def prefer(self, **wanted: str | bool | Mapping[str, str]) -> None:
        """Change and keep preferences; the guide thinks again."""
        self.preferences = replace(self.preferences, **wanted)  # type: ignore[arg-type]
        self._interview = None
        try:
            self.store.preferences = self.preferences
        except StoreError as fault:
            self.notices.append(str(fault))

    def save_report(self, lines: list[str], form: str = "text") -> Path | None:
        """Write a page that is in this form; None, and a notice, if that cannot be done."""
        from weldwhy.blocks import ENDINGS  # few sessions save anything

        try:
            return self.store.save_report(lines, self._clock(), ENDINGS[form])
        except StoreError as fault:
            self.notices.append(str(fault))
            return None

    def take_notices(self) -> list[str]:
        """The notices not yet shown."""
        self._take_notices()
        taken, self.notices = self.notices, []
        return taken

    def _take_notices(self) -> None:
        self.notices += self.store.notices
        self.store.notices.clear()

    def _set(self, case: Case) -> None:
        self.case = case
        self._interview = None

    def _save(self) -> None:
        try:
            self.store.save(self.case)
        except StoreError as fault:
            self.notices.append(f"{fault}; the case goes on, but it is not kept")
