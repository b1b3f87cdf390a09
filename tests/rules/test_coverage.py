"""The table of what the rules know."""

from __future__ import annotations

from pathlib import Path

from tests.replay import shipped_rules

from weldwhy import coverage, rulebase


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
    base = shipped_rules()
    rows = coverage.table(base)
    assert len(rows) == sum(len(symptom.processes) for symptom in base.symptoms.values())


def test_no_cell_is_thin() -> None:
    """Each symptom in each of its processes: four causes, checks to part them, a worked case."""
    base = shipped_rules()
    for row in coverage.table(base):
        assert row.causes >= 4, row
        assert row.checks >= row.causes, row
        assert row.remedies >= row.causes, row
        assert row.cases >= 1, row
        # no publication at hand speaks of loops at the spool: common practice alone
        assert row.sources >= 1 or row.symptom == "birds-nest-at-spool", row


def test_the_whole_trade_is_there() -> None:
    base = shipped_rules()
    assert len(base.symptoms) >= 55
    assert len(base.causes) >= 160
    assert len(base.checks) >= 150
    assert all(cause.remedies for cause in base.causes.values())
    assert all(len(cause.cases) >= 2 for cause in base.causes.values())
