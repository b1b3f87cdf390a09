"""Lens shades against the published table (tests/published/lenses.yaml), amp by amp."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from tests.replay import shipped_rules

from weldwhy.case import Case, Measured, Reported, Situated
from weldwhy.interview import Interview
from weldwhy.lens import lightest

ROWS: list[dict[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "published" / "lenses.yaml").read_text()
)["rows"]
PROCESSES = {"smaw": ["smaw"], "wire": ["gmaw", "fcaw-s", "fcaw-g"], "tig": ["gtaw-dc", "gtaw-ac"]}


@pytest.mark.parametrize("row", ROWS, ids=lambda r: f"{r['process']}-{r['from']}-{r['to']}")
def test_the_shade_of_every_published_row(row: dict[str, Any]) -> None:
    for process in PROCESSES[row["process"]]:
        for amps in range(row["from"] + 1, row["to"]):
            lens = lightest(shipped_rules(), process, float(amps))
            assert lens is not None
            assert lens.shade == row["shade"]


def test_where_rows_meet_the_darker_holds_and_an_unknown_current_gets_the_darkest() -> None:
    at_limit = lightest(shipped_rules(), "smaw", 160.0)
    unknown = lightest(shipped_rules(), "smaw", None)
    assert at_limit is not None
    assert at_limit.shade == 10
    assert unknown is not None
    assert unknown.shade == 11


def test_no_shade_is_named_outside_the_table() -> None:
    assert lightest(shipped_rules(), "gmaw", 900.0) is None
    assert lightest(shipped_rules(), "", 100.0) is None


def test_the_interview_says_the_shade_for_its_own_current() -> None:
    case = Case().with_(Reported("spatter"), Situated("process", "smaw"))
    assert "11" in Interview(shipped_rules(), case).lens
    assert "shade 8" in Interview(shipped_rules(), case.with_(Measured("amps", "100 A"))).lens
