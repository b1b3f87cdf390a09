"""The bench remembers what the person writes in, and shows that until they choose otherwise."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.replay import shipped_rules

from weldwhy.bench import Bench
from weldwhy.case import Measured, Reported, Situated
from weldwhy.interview import Interview
from weldwhy.store import Store

RULES = shipped_rules()
WORK = (Reported("spatter"), Situated("process", "gmaw"), Situated("material", "mild-steel"))


def bench(folder: Path) -> Bench:
    return Bench(RULES, Store(folder), Interview, lambda: "2026-11-25T10:30:00+00:00")


@pytest.mark.parametrize(("typed", "system"), [("3 mm", "mm"), ("1/8 in", "in"), ("11 ga", "in")])
def test_the_units_a_person_writes_in_are_remembered_for_the_next_case(
    tmp_path: Path, typed: str, system: str
) -> None:
    bench(tmp_path).record(*WORK, Situated("thickness", typed))
    later = bench(tmp_path)
    later.put_away()
    later.record(*WORK)
    assert later.interview.system == system


def test_what_is_written_in_this_case_comes_before_what_was_written_in_others(
    tmp_path: Path,
) -> None:
    bench(tmp_path).record(*WORK, Situated("thickness", "3 mm"))
    later = bench(tmp_path)
    later.put_away()
    later.record(*WORK, Situated("thickness", "1/8 in"))
    assert later.interview.system == "in"


def test_units_that_were_chosen_come_before_all(tmp_path: Path) -> None:
    made = bench(tmp_path)
    made.prefer(units="in")
    made.record(*WORK, Situated("thickness", "3 mm"), Measured("wire_feed", "6 m/min"))
    assert made.interview.system == "in"


def test_before_anything_was_written_numbers_are_as_the_rules_have_them(tmp_path: Path) -> None:
    made = bench(tmp_path)
    made.record(*WORK)
    assert made.interview.system is None


def test_a_target_is_told_in_the_unit_of_the_persons_own_value(tmp_path: Path) -> None:
    """Millimetres for the plate and inches a minute for the wire: each stays as it is written."""
    made = bench(tmp_path)
    made.record(
        *WORK, Situated("thickness", "3 mm"), Measured("wire", "0.9 mm"),
        Measured("wire_feed", "350 ipm"),
    )  # fmt: skip
    advices = made.interview.remedies("wire-feed-high")
    shown = {s.setting: s.best for advice in advices for s in advice.settings}
    assert shown["wire_feed"].endswith("ipm")
