"""What was told in a case, sorted: what was seen, the work, own words, settings, the rest; sources.

Every entry stands in one of these or in what was tried; a kind of entry that is not known here is
told with the rest, so that no report leaves anything out.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import TYPE_CHECKING

from weldwhy import told, units
from weldwhy.case import (
    SITUATION,
    Case,
    Entry,
    Hinted,
    Measured,
    Passed,
    Reported,
    Resembled,
    Said,
    Situated,
    Supposed,
    Tried,
)
from weldwhy.readings import told as read
from weldwhy.report import source_text
from weldwhy.units import Quantity

if TYPE_CHECKING:
    from weldwhy.interview import Interview
    from weldwhy.model import Cause, RuleBase

WITHDRAWN, AS_BEFORE, NOT_TOLD, NOT_KNOWN = "withdrawn", "as before", "not told", "not known"
HEADING = ("setting", "before", "after", "allowed range")


def seen(rules: RuleBase, case: Case) -> list[str]:
    """The symptoms as told, with their ISO 6520-1 numbers, and where they were noticed."""
    found = [e for e in case.entries if isinstance(e, (Reported, Resembled))]
    lines = []
    for entry in dict.fromkeys(found):
        symptom = rules.symptoms.get(entry.symptom)
        number = f"; ISO 6520-1: {symptom.iso_6520_1}" if symptom and symptom.iso_6520_1 else ""
        lines.append(told.entry_line(rules, entry) + number)
    return lines + _situation(rules, case, ("group",))


def work(rules: RuleBase, case: Case) -> list[str]:
    """Process, metal, thickness, joint and the like, each as last told."""
    return _situation(rules, case, [name for name in SITUATION if name != "group"])


def _situation(rules: RuleBase, case: Case, names: Sequence[str]) -> list[str]:
    values = ((name, case.told(name)) for name in names)
    return [
        told.entry_line(rules, Situated(name, value)) for name, value in values if value is not None
    ]


def own_words(rules: RuleBase, case: Case) -> list[str]:
    """Each text in the person's own words, then what was made of it and what was not.

    Every line begins with words of the guide or a quote, so that no text can pass for a caution.
    """
    lines = []
    for said, taken in case.own_words:
        lines.append(f'"{said.text}"')
        for entry in taken:
            doubt = ", not certain" if isinstance(entry, Hinted | Supposed) else ""
            lines.append(f'from "{entry.words}"{doubt}: {told.in_short(rules, entry)}')
        lines += [f'not understood, so not counted: "{words}"' for words in said.not_understood]
        lines += [f'struck out, so not counted: "{words}"' for words in said.struck]
    return lines


def answers(rules: RuleBase, case: Case) -> list[str]:
    """Everything told that is no symptom, work, setting, own words or remedy, in order."""
    elsewhere = (Said, Situated, Reported, Resembled, Hinted, Measured)
    return [
        told.entry_line(rules, entry)
        for entry in case.entries
        if not isinstance(entry, elsewhere) and not is_remedy(rules, entry)
    ]


def is_remedy(rules: RuleBase, entry: Entry) -> bool:
    """Whether the entry tells of a remedy: tried, or passed over."""
    if isinstance(entry, Passed):
        return entry.check not in (*rules.checks, *SITUATION, "symptom")
    return isinstance(entry, Tried)


def settings(interview: Interview) -> list[tuple[str, ...]]:
    """The settings as a table, the heading first: before, after, and where they should lie.

    Before is what was told first; after is what was told last, if it differs from that or was told
    after a remedy. What was told once, after the last remedy, is not known from before. Empty if
    no setting was told.
    """
    rows = [tuple(_row(interview, name)) for name in _measured(interview.case)]
    return [HEADING, *rows] if rows else []


def _measured(case: Case) -> list[str]:
    """The settings told, each once, in the order of their first telling."""
    return list(dict.fromkeys(e.setting for e in case.entries if isinstance(e, Measured)))


def _row(interview: Interview, name: str) -> Iterator[str]:
    first, *others = values = _values(interview.case, name)
    last = values[-1]
    advised = interview.setting(name)
    if not others and last.remedies and last.remedies == len(interview.case.tried):
        before, after = NOT_TOLD, _shown(interview, name, last.value)
    else:
        before = _shown(interview, name, first.value)
        changed = others and (last.value != first.value or last.remedies)
        after = _shown(interview, name, last.value) if changed else AS_BEFORE
    yield from (advised.name, before, after, advised.allowed or NOT_KNOWN)


@dataclass(frozen=True, slots=True)
class _Value:
    """A value told of a setting, and how many remedies had been tried by then."""

    value: str
    remedies: int


def _values(case: Case, name: str) -> list[_Value]:
    """The values told of a setting, in order."""
    found, tried = [], 0
    for entry in case.entries:
        tried += isinstance(entry, Tried)
        if isinstance(entry, Measured) and entry.setting == name:
            found.append(_Value(entry.value, tried))
    return found


def _shown(interview: Interview, name: str, value: str) -> str:
    if not value:
        return WITHDRAWN
    known = read(interview.rules, {name: value})[name]
    return units.show(known, interview.shown.asked) if isinstance(known, Quantity) else value


def setting_notes(interview: Interview) -> list[str]:
    """What was assumed for the allowed ranges, each remark once."""
    told_of = (interview.setting(name) for name in _measured(interview.case))
    return list(dict.fromkeys(each.note for each in told_of if each.note and each.allowed))


def sources(interview: Interview, causes: Iterable[Cause]) -> list[str]:
    """Where the causes told of and tried, the symptoms and the checks come from, each once."""
    rules, case = interview.rules, interview.case
    symptoms = [rules.symptoms[s].source for s in case.symptoms if s in rules.symptoms]
    tried = [rules.causes[t.cause] for t in case.tried if t.cause in rules.causes]
    told_of = [[c.source, *(r.source for r in c.remedies)] for c in (*causes, *tried)]
    checks = [rules.checks[c].source for c in case.answers if c in rules.checks]
    window = interview.window
    windows = [window.window.source] if window and case.measured else []
    cited = [*chain.from_iterable(told_of), *symptoms, *checks, *windows]
    singly = (one for each in cited for one in _singly(rules, each))
    return list(dict.fromkeys(source_text(rules, one) for one in singly if one))


def _singly(rules: RuleBase, cited: str) -> list[str]:
    """The citations of a text that may name several; a remark behind one stays with it."""
    parts = [part.strip() for part in cited.split(";")]
    names = [part.partition(",")[0].strip().replace(" ", "-") for part in parts]
    return parts if all(name in rules.sources for name in names) else [cited]
