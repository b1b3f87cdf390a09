"""Why a cause is believed: what was told for and against it, and what would change that."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy import told
from weldwhy.case import Case, Supposed, Suspected
from weldwhy.engine import explain
from weldwhy.engine.belief import Finding, Fix, Log
from weldwhy.engine.choice import Value
from weldwhy.engine.network import Network
from weldwhy.logbook import GUESS
from weldwhy.model import RuleBase
from weldwhy.readings import worked_out
from weldwhy.units import Quantity, show


@dataclass(frozen=True, slots=True)
class Reason:
    """What one thing told did for (+) or against (-) a cause, in decibans."""

    check_id: str
    answer_id: str
    decibans: float
    told: str


def reasons(
    rules: RuleBase, case: Case, network: Network, log: Log, cause_id: str, system: str | None
) -> tuple[Reason, ...]:
    """What was told for and against the cause, strongest first; below 1 deciban left out."""
    weighed = explain.weights_of_evidence(network, log, cause_id)
    found = [_reason(rules, case, w, system) for w in weighed if abs(w.decibans) >= explain.SHOWN]
    return tuple(sorted(found, key=lambda reason: -abs(reason.decibans)))


def _reason(rules: RuleBase, case: Case, weight: explain.Weight, system: str | None) -> Reason:
    entry = weight.entry
    if isinstance(entry, Finding):
        line = told.answer_line(rules, entry.check, entry.answer)
        if entry.trust < 1.0:
            line = told.entry_line(rules, Supposed(entry.check, entry.answer))
        return Reason(entry.check, entry.answer, weight.decibans, line)
    if isinstance(entry, Fix):
        line = f'tried a remedy for "{rules.causes[entry.cause].name}": {entry.report}'
        return Reason(entry.cause, entry.report, weight.decibans, line)
    if entry.setting.startswith(GUESS):
        guess = entry.setting.removeprefix(GUESS)
        line = told.entry_line(rules, Suspected(guess))
        return Reason(guess, "suspected", weight.decibans, line)
    if entry.setting == "grade":
        line = f"grade: {told.situation(rules, 'grade', case.grade)}"
        return Reason(entry.setting, case.grade, weight.decibans, line)
    known = worked_out(rules, case.process, case.measured).get(entry.setting, "")
    value = show(known, system) if isinstance(known, Quantity) else known
    how = "measured" if entry.setting in case.measured else "worked out from the bead"
    line = f"{how}: {told.setting_line(rules, entry.setting, value)}"
    return Reason(entry.setting, value, weight.decibans, line)


def mind_changers(
    rules: RuleBase, network: Network, leader: str, values: tuple[Value, ...]
) -> tuple[str, ...]:
    """Answers that would put another cause before the leader, in words."""
    lines = []
    for turn in explain.turns(network, leader, values):
        check = rules.checks[turn.check]
        text = next(answer.text for answer in check.answers if answer.id == turn.answer)
        lines.append(f'{check.ask} "{text}": then {rules.causes[turn.cause].name} leads.')
    return tuple(lines)
