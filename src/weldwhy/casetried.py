"""What was tried in a case, and what put it right, in words: every caution before its remedy."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from weldwhy.case import Entry, Passed, Tried
from weldwhy.casefacts import is_remedy
from weldwhy.report import Once, caution_lines, ended, setting_line
from weldwhy.told import entry_line

if TYPE_CHECKING:
    from weldwhy.advice import Advice
    from weldwhy.interview import Interview
    from weldwhy.model import Cause, Remedy, RuleBase


def tried_lines(interview: Interview, entries: Sequence[Entry], cure: int = -1) -> list[str]:
    """Each remedy tried or passed over, in order, its cautions before it; `cure` stands apart."""
    rules, said, lines = interview.rules, Once(), []
    found = [(n, e) for n, e in enumerate(entries) if is_remedy(rules, e)]
    for number, (place, entry) in enumerate(found, 1):
        remedy = None if place == cure else _remedy(rules, entry)
        cautions = remedy.cautions if remedy else ()
        lines += said.lines(rules.cautions[each] for each in cautions if each in rules.cautions)
        lines.append(f"{number}. {_tried_line(rules, entry, remedy, place == cure)}")
    return lines


def _tried_line(rules: RuleBase, entry: Entry, remedy: Remedy | None, cure: bool) -> str:
    """A remedy with its test bead; the bare words of the log where the rules no longer hold it."""
    if isinstance(entry, Tried) and (remedy or cure):
        name = rules.causes[entry.cause].name if entry.cause in rules.causes else entry.cause
        stop = "STOP: " if remedy and remedy.stop else ""
        do = remedy.do if remedy else 'what stands under "What put it right".'
        return f"Against {name}: {stop}{do} Test bead: {entry.result}."
    if isinstance(entry, Passed):
        return f"Passed over: {entry_line(rules, entry)}"
    return entry_line(rules, entry)


def _remedy(rules: RuleBase, entry: Entry) -> Remedy | None:
    """The remedy that an entry tells of, if the rules still hold it."""
    wanted = entry.remedy if isinstance(entry, Tried) else getattr(entry, "check", "")
    causes = [rules.causes.get(entry.cause)] if isinstance(entry, Tried) else rules.causes.values()
    remedies = (remedy for cause in causes if cause for remedy in cause.remedies)
    return next((remedy for remedy in remedies if remedy.id == wanted), None)


def _advice(interview: Interview, tried: Tried) -> Advice | None:
    """The remedy tried, as the interview advises it; None if the rules no longer hold it."""
    if tried.cause not in interview.rules.causes:
        return None
    found = interview.remedies(tried.cause)
    return next((advice for advice in found if advice.remedy.id == tried.remedy), None)


def cure_lines(interview: Interview, before: Interview, last: Tried) -> list[str]:
    """The remedy that put it right: cautions, what to do, settings as they were then, the bead."""
    bead = f"Test bead: {last.result}."
    advice = _advice(before, last)
    if advice is None:
        return [entry_line(interview.rules, last), bead]
    rows = [setting_line(row) for row in advice.settings if row.yours or row.best]
    call = [f"Call: {ended(advice.remedy.call)}"] if advice.remedy.call else []
    stop = "STOP: " if advice.remedy.stop else ""
    lines = [f"{stop}{advice.remedy.do}", *call, *(f"  {row}" for row in rows)]
    return [*caution_lines(advice.cautions), *lines, bead]


def put_right_before(interview: Interview) -> list[Cause]:
    """Causes whose remedies made the bead better on the way, in order."""
    causes, tried = interview.rules.causes, interview.case.tried
    better = (t.cause for t in tried if t.result == "better" and t.cause != tried[-1].cause)
    return [causes[each] for each in dict.fromkeys(better) if each in causes]
