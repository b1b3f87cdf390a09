"""What a joint and a position change in the targets of a window."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from weldwhy.model import RuleBase, Shift
from weldwhy.units import Target
from weldwhy.windowrows import on_steps


def shifted(
    rules: RuleBase,
    process: str,
    joint: str,
    position: str,
    targets: Mapping[str, Target],
    notes: list[str],
) -> dict[str, Target]:
    """The targets for this joint and position ("" where not known), at steps a welder can set.

    The why of each shift that changed something is added to `notes`.
    """
    moved = dict(targets)
    for shift in _holding(rules, process, joint, position):
        if touched := shift.scale.keys() & moved.keys():
            notes.append(shift.why)
        for setting in touched:
            moved[setting] = _scaled(moved[setting], shift.scale[setting])
    return {name: t if t == targets[name] else on_steps(t) for name, t in moved.items()}


def _holding(rules: RuleBase, process: str, joint: str, position: str) -> Iterator[Shift]:
    """The shifts of this joint and position; one that names both needs both."""
    for shift in rules.shifts.values():
        if (
            process in shift.processes
            and (not shift.joints or joint in shift.joints)
            and (not shift.positions or position in shift.positions)
        ):
            yield shift


def _scaled(target: Target, by: float) -> Target:
    low, best, high = (
        replace(q, value=q.value * by) for q in (target.low, target.best, target.high)
    )
    return Target(low, best, high)
