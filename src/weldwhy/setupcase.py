"""What is being set up: the work as told, the process whose plan is open, and the steps done.

The work is the log of a case without a symptom, so that it can go on as one.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any

from weldwhy.case import SITUATION, Case, CaseError, Entry, Measured, Situated, from_data, to_data
from weldwhy.units import show

if TYPE_CHECKING:
    from weldwhy.model import RuleBase
    from weldwhy.setup import Plan

DIALS = ("volts", "wire_feed", "amps")
"""What a plan sets at the machine; without any of these it has no numbers.

A gas flow is not among them: what was meant to flow has yet to be read at the gauge, and so do
stick-out and travel at the gun.
"""


@dataclass(frozen=True, slots=True)
class SetupCase:
    """`done` holds the ticked steps of the plan of `process`, by their text, as they were ticked.

    `shown`: that plan is open.
    """

    work: Case = field(default_factory=Case)
    process: str = ""
    done: tuple[str, ...] = ()
    shown: bool = False

    def told(self, *entries: Entry) -> SetupCase:
        """With more told of the work; what was ticked was for other work."""
        return replace(self, work=self.work.with_(*entries), done=(), shown=False)

    def opened(self, process: str) -> SetupCase:
        """With the plan of a process open; another plan has steps of its own."""
        done = self.done if process == self.process else ()
        return replace(self, process=process, done=done, shown=True)

    def closed(self, finished: bool = False) -> SetupCase:
        """With the plan closed; once it is finished, its ticks are of no more use."""
        return replace(self, done=() if finished else self.done, shown=False)

    def ticked(self, step: str) -> SetupCase:
        """With the step done, or not done after all."""
        if step in self.done:
            return replace(self, done=tuple(each for each in self.done if each != step))
        return replace(self, done=(*self.done, step))


def to_mapping(setup: SetupCase) -> dict[str, Any]:
    """The set-up as plain data."""
    return {
        "entries": to_data(setup.work), "process": setup.process,
        "done": list(setup.done), "shown": setup.shown,
    }  # fmt: skip


def from_mapping(data: Mapping[str, Any]) -> SetupCase:
    """The set-up written by `to_mapping`; CaseError in one plain line if it is not one."""
    work = from_data(data.get("entries"))
    process, done, shown = data.get("process"), data.get("done"), data.get("shown")
    if not isinstance(process, str) or not isinstance(shown, bool):
        raise CaseError("process must be a text, and shown true or false")
    if not isinstance(done, list) or not all(isinstance(step, str) for step in done):
        raise CaseError("done must be a list of texts")
    return SetupCase(work, process, tuple(done), shown)


def size_setting(rules: RuleBase, process: str) -> str:
    """The setting whose size a process is set up by: wire, rod or tungsten; "" if not known."""
    own = (w.size_of for w in rules.windows.values() if process in w.processes)
    return next(own, "")


def handed_on(rules: RuleBase, work: Case, plan: Plan) -> tuple[Entry, ...]:
    """All that is known of the work once it is set up by the plan, as entries of a case."""
    told = {name: work.told(name) for name in SITUATION} | {"process": plan.process}
    entries: list[Entry] = [Situated(name, value) for name, value in told.items() if value]
    named = size_setting(rules, plan.process)
    own = work.measured  # what the person told goes before what is usual
    measured = {named: own.get(named) or _consumable(plan)} if named else {}
    if plan.gas is not None:
        measured["gas"] = own.get("gas") or plan.gas[0].name
    feeds = "wire_feed" in plan.targets  # such a machine has no dial for amps
    for setting in DIALS:
        if setting in plan.targets and not (feeds and setting == "amps"):
            measured[setting] = show(plan.targets[setting].best, plan.system)
    entries += [Measured(name, value) for name, value in measured.items() if value]
    return tuple(entries)


def _consumable(plan: Plan) -> str:
    """The size, and the class where it is that of the same thing: "0.035 in ER70S-6"."""
    size = show(plan.size, plan.system) if plan.size else ""
    own = plan.filler is not None and plan.filler.kind != "filler rod"
    return f"{size} {plan.filler.name}".strip() if plan.filler and own else size
