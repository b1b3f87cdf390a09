"""What a picture of a case's operating window shows: targets, own settings, the machine's ends."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from weldwhy import readings
from weldwhy.advice import read_thickness, window
from weldwhy.machine import limit
from weldwhy.thicknesses import Neighbour, neighbours
from weldwhy.tui.cards.windowpicture import SIZE, picture
from weldwhy.tui.cards.windowview import AMPS, FEED, VOLTS, View
from weldwhy.tui.rows import Row
from weldwhy.units import Quantity, Target, parse
from weldwhy.windows import distance

if TYPE_CHECKING:
    from weldwhy.advice import SettingAdvice
    from weldwhy.case import Case
    from weldwhy.interview import Interview
    from weldwhy.model import Machine, RuleBase
    from weldwhy.setup import Plan

DRAWN = (VOLTS, FEED, AMPS)
"""The settings a picture can show."""


def drawing_of(interview: Interview, settings: Sequence[SettingAdvice], letters: bool) -> list[Row]:
    """The picture for these settings; no rows where none of them can be drawn."""
    found = interview.within_reach
    if found is None or not set(DRAWN) & {each.setting for each in settings}:
        return []
    rules, case = interview.rules, interview.case
    elsewhere = neighbours(rules, case, interview.material, found.window)
    view = _view(rules, case, interview.machine, found.targets, elsewhere)
    yours = _numbers(rules, case)
    tries = {s: q for s, q in yours.items() if _fits(q, found.targets.get(s))}
    tries |= {s: q for s in DRAWN if (q := _advised(rules, s, settings))}
    view = replace(view, yours=yours, tries=tries, system=interview.system)
    return picture(view, SIZE, letters)


def _fits(q: Quantity, target: Target | None) -> bool:
    """Whether a setting is in its range, so that it stays while another one is changed."""
    return target is not None and abs(distance(q, target)) <= 1.0


def _advised(rules: RuleBase, name: str, settings: Sequence[SettingAdvice]) -> Quantity | None:
    """What the table says to try, as a quantity."""
    best = next((each.best for each in settings if each.setting == name), "")
    return parse(best, rules.settings[name].quantity) if best else None


def drawing_of_plan(
    rules: RuleBase, plan: Plan, case: Case, machine: Machine, letters: bool
) -> list[Row]:
    """The picture for a plan; `case` is the work as the plan sets it up."""
    found = window(rules, case, case.material)
    elsewhere = neighbours(rules, case, case.material, found.window) if found else ()
    view = _view(rules, case, machine, plan.targets, elsewhere)
    return picture(replace(view, system=plan.system), SIZE, letters)


def _view(
    rules: RuleBase,
    case: Case,
    machine: Machine | None,
    targets: Mapping[str, Target],
    elsewhere: Sequence[Neighbour],
) -> View:
    ends = {s: limit(machine, case.process, s) for s in DRAWN} if machine else {}
    return View(
        targets=targets,
        names={name: setting.name for name, setting in rules.settings.items()},
        thickness=read_thickness(case.thickness),
        elsewhere=elsewhere,
        reach={setting: reach for setting, reach in ends.items() if reach},
    )


def _numbers(rules: RuleBase, case: Case) -> dict[str, Quantity]:
    """The settings told that can be drawn."""
    told = readings.told(rules, case.measured)
    return {s: q for s, q in told.items() if s in DRAWN and isinstance(q, Quantity)}
