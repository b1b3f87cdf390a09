"""The table of what the rules know."""

from __future__ import annotations

from pathlib import Path

from weldwhy import coverage, rulebase

from .conftest import SHIPPED


def test_it_counts_by_process_and_symptom(sound: Path) -> None:
    base, _ = rulebase.read([sound])
    assert base is not None
    (row,) = coverage.table(base)
    assert row == coverage.Row(
        "gmaw", "porosity", causes=3, checks=2, remedies=3, cases=6, sources=1
    )


def test_its_lines_stand_in_columns(sound: Path) -> None:
    base, _ = rulebase.read([sound])
    assert base is not None
    assert coverage.lines(coverage.table(base)) == [
        "process  symptom   causes  checks  remedies  cases  sources",
        "gmaw     porosity       3       2         3      6        1",
    ]


def test_it_has_a_row_for_every_symptom_that_a_process_can_have() -> None:
    base, _ = rulebase.read([SHIPPED])
    assert base is not None
    rows = coverage.table(base)
    assert len(rows) == sum(len(symptom.processes) for symptom in base.symptoms.values())
    assert all(row.causes >= 2 and row.checks >= 2 for row in rows)
