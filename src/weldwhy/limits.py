"""Targets held to what a machine reaches, with what to change where it does not reach far enough.

Pure. A setting of which the machine says nothing keeps its target.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from weldwhy import machine as reach
from weldwhy.model import Machine, RuleBase
from weldwhy.units import Quantity, Target, show
from weldwhy.windowrows import on_steps
from weldwhy.windows import Found, distance

STILL_GOOD = 0.5
"""How far from the best place to the end of its range (1) a setting is still no cause to change
wire, rod or process."""

_Reach = tuple[Quantity, Quantity]


def fit(
    rules: RuleBase, found: Found, machine: Machine, process: str, system: str | None = None
) -> Found:
    """`found` with every target inside what the machine gives in this process.

    A target that lies outside as a whole becomes the nearest value the machine reaches. `beyond`
    then says where the machine ends and what to change, also where the nearest value is far from
    the best place. With fewer amps than wanted the wire feed falls alike. `system` ("in", "mm",
    None: as told) is for the numbers in those sentences.
    """
    targets, beyond = dict(found.targets), dict(found.beyond)
    for setting, target in found.targets.items():
        ends = reach.limit(machine, process, setting)
        if ends is None:
            continue
        targets[setting] = held = _held(target, ends)
        outside = target.high.value < ends[0].value or target.low.value > ends[1].value
        far = outside or abs(distance(held.best, target)) > STILL_GOOD
        if far and setting not in beyond:
            beyond[setting] = _sentence(rules, setting, target, ends, system)
    targets |= _fed(found.targets, targets)
    return replace(found, targets=targets, beyond=beyond)


def _held(target: Target, ends: _Reach) -> Target:
    """The target inside the ends, each of its places in the unit it had."""
    least, most = ends

    def inside(q: Quantity) -> Quantity:
        return replace(q, value=min(max(q.value, least.value), most.value))

    return Target(inside(target.low), inside(target.best), inside(target.high))


def _fed(wanted: Mapping[str, Target], held: Mapping[str, Target]) -> dict[str, Target]:
    """The wire feed for the amps there are: a wire fed for more than those stubs on the plate."""
    feed, want = held.get("wire_feed"), wanted.get("amps")
    if feed is None or want is None or held["amps"].best.value >= want.best.value:
        return {}
    share = held["amps"].best.value / want.best.value
    ends = (replace(q, value=q.value * share) for q in (feed.low, feed.best, feed.high))
    return {"wire_feed": on_steps(Target(*ends))}


def _sentence(
    rules: RuleBase, setting: str, target: Target, ends: _Reach, system: str | None
) -> str:
    """Where the machine ends on the side of the best place, and what to change."""
    least, most = ends
    low_enough = least.value <= target.best.value
    told = rules.settings.get(setting)
    if low_enough:
        where, change = f"ends at {show(most, system)}", told.too_little if told else ""
    else:
        where, change = f"starts at {show(least, system)}", told.too_much if told else ""
    return f"This machine {where}; {change}" if change else f"This machine {where}."
