"""The entries of a case as the engine's log: answers, readings, remedies."""

from __future__ import annotations

from weldwhy import readings
from weldwhy.case import (
    BETTER,
    SOUND,
    Answered,
    Case,
    Measured,
    Passed,
    Situated,
    Supposed,
    Suspected,
    Tried,
)
from weldwhy.engine import tuning
from weldwhy.engine.belief import Finding, Fix, LogEntry, Reading
from weldwhy.model import RuleBase
from weldwhy.windows import Found

GUESS = "guess at "
"""Opens what a reading is called that is the person's own guess at a cause."""


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
        elif isinstance(entry, Supposed):
            log += [] if _answers(log, entry.check) else [_supposed(entry)]
        elif isinstance(entry, Suspected):
            log.append(Reading(f"{GUESS}{entry.cause}", ((entry.cause, tuning.GUESSED),)))
        elif isinstance(entry, Passed):
            given = _answers(log, entry.check)
            log = [e for e in log if e not in given]
        elif isinstance(entry, Tried):
            log = [*_not_sound_after_all(log), Fix(entry.cause, entry.result)]
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


def _not_sound_after_all(log: list[LogEntry]) -> list[LogEntry]:
    """The log before another remedy: a bead that was called sound was only better, it shows."""
    return [Fix(e.cause, BETTER) if isinstance(e, Fix) and e.report == SOUND else e for e in log]


def _answers(log: list[LogEntry], check: str) -> list[LogEntry]:
    """The answers that a person gave to the check, which count for more than supposed ones."""
    return [e for e in log if isinstance(e, Finding) and e.check == check and e.trust == 1.0]


def _supposed(entry: Supposed) -> Finding:
    return Finding(entry.check, entry.answer, tuning.SUPPOSED)


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
