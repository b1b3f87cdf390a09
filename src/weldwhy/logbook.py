"""The entries of a case as the engine's log: answers, readings, remedies."""

from __future__ import annotations

from weldwhy import readings
from weldwhy.case import Answered, Case, Measured, Passed, Situated, Tried
from weldwhy.engine.belief import Finding, Fix, LogEntry, Reading
from weldwhy.model import RuleBase
from weldwhy.windows import Found


def log_of(
    rules: RuleBase, case: Case, found: Found | None, material: str = ""
) -> tuple[LogEntry, ...]:
    """What the engine is told, in the order in which it was told. Withdrawn things are left out.

    `material` is the metal as far as it is known, not as it is assumed.
    """
    log: list[LogEntry] = []
    so_far: dict[str, str] = {}
    for entry in case.entries:
        if isinstance(entry, Answered):
            log.append(Finding(entry.check, entry.answer))
        elif isinstance(entry, Passed):
            log = [e for e in log if not (isinstance(e, Finding) and e.check == entry.check)]
        elif isinstance(entry, Tried):
            log.append(Fix(entry.cause, entry.result))
        elif isinstance(entry, Situated) and entry.field == "grade":
            log = [e for e in log if not _reads(e, "grade")]
            log += [_grade(rules, case)] if entry.value else []
        elif isinstance(entry, Measured):
            so_far[entry.setting] = entry.value
            if entry.setting == "gas" and entry.value:
                log.append(readings.gas_reading(rules, case.process, material, entry.value))
            else:
                log = _measured(rules, case.process, log, entry, so_far, found)
    return tuple(log)


def _grade(rules: RuleBase, case: Case) -> Reading:
    from weldwhy import gradeweights  # few cases tell a grade, so few pay for its arithmetic

    return Reading("grade", gradeweights.weights(rules, case))


def _measured(
    rules: RuleBase, process: str, log: list[LogEntry], entry: Measured, so_far: dict[str, str],
    found: Found | None,
) -> list[LogEntry]:  # fmt: skip
    """The log with a setting as measured, and with the travel speed that follows from it."""
    known = readings.worked_out(rules, process, {s: v for s, v in so_far.items() if v})
    follows = entry.setting in readings.BEAD and not so_far.get("travel")
    for setting in [entry.setting, *(["travel"] if follows else [])]:
        if setting in known:
            log.append(readings.reading(rules, setting, known[setting], found))
        else:
            log = [e for e in log if not _reads(e, setting)]
    return log


def _reads(entry: LogEntry, setting: str) -> bool:
    return isinstance(entry, Reading) and entry.setting == setting
