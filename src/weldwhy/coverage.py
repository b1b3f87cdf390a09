"""What the rules know and where they are thin: counts for each process and symptom."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from weldwhy.model import Cause, Check, RuleBase


@dataclass(frozen=True, slots=True)
class Row:
    """Counts for one process and symptom. `sources` counts publications, not common practice."""

    process: str
    symptom: str
    causes: int
    checks: int
    remedies: int
    cases: int
    sources: int


HEADINGS = ("process", "symptom", "causes", "checks", "remedies", "cases", "sources")


def table(base: RuleBase) -> tuple[Row, ...]:
    """A row for every process and symptom that belong together, in the order of the rules.

    `cases` are counted only in rules read from their YAML; the compiled form holds none.
    """
    return tuple(
        _row(base, process, symptom.id)
        for process in base.processes
        for symptom in base.symptoms.values()
        if process in symptom.processes
    )


def lines(rows: Sequence[Row]) -> list[str]:
    """The table as plain lines under a line of headings, in columns."""
    cells = [HEADINGS, *(tuple(str(getattr(row, name)) for name in HEADINGS) for row in rows)]
    widths = [max(len(line[place]) for line in cells) for place in range(len(HEADINGS))]
    return ["  ".join(_padded(line, widths)).rstrip() for line in cells]


def _padded(line: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    for place, (text, width) in enumerate(zip(line, widths, strict=True)):
        # The first two columns are words, the others numbers.
        yield text.ljust(width) if place < 2 else text.rjust(width)


def _row(base: RuleBase, process: str, symptom: str) -> Row:
    causes = [
        cause
        for cause in base.causes.values()
        if process in cause.processes and symptom in cause.symptoms
    ]
    checks = [
        check
        for check in base.checks.values()
        if (not check.processes or process in check.processes)
        and (not check.symptoms or symptom in check.symptoms)
        and any(check.id in cause.shows for cause in causes)
    ]
    cases = [
        case
        for cause in causes
        for case in cause.cases
        if case.process == process and case.symptom == symptom
    ]
    return Row(
        process=process,
        symptom=symptom,
        causes=len(causes),
        checks=len(checks),
        remedies=sum(len(cause.remedies) for cause in causes),
        cases=len(cases),
        sources=len(set(_publications(causes, checks))),
    )


def _publications(causes: Sequence[Cause], checks: Sequence[Check]) -> Iterator[str]:
    cited = [cause.source for cause in causes] + [check.source for check in checks]
    cited += [remedy.source for cause in causes for remedy in cause.remedies]
    for source in cited:
        name = source.partition(",")[0].strip()
        if name.replace(" ", "-") != "common-practice":
            yield name
