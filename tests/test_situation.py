"""What the work is decides what is advised: place, grade, heat, the metal itself."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy import advice
from weldwhy.case import Case, Entry, Measured, Reported, Situated
from weldwhy.casereport import case_text
from weldwhy.interview import Interview
from weldwhy.units import Target
from weldwhy.windows import Found

RULES = shipped_rules()
MIG = (Situated("process", "gmaw"), Situated("material", "mild-steel"))
PLATE = (*MIG, Situated("thickness", "1/8 in"), Measured("wire", "0.035 in"))


def window(*entries: Entry) -> Found:
    case = Case(entries)
    found = advice.window(RULES, case, Interview(RULES, case).material)
    assert found is not None
    return found


def preheat(*entries: Entry) -> Target:
    return window(*entries).targets["preheat"]


def test_outdoors_the_gas_flow_is_higher() -> None:
    inside, outside = (
        window(*PLATE, Situated("place", place)).targets["gas_flow"].best.value
        for place in ("indoors", "outdoors")
    )
    assert outside > inside


def test_a_hard_grade_asks_for_a_preheat_and_its_remedy_shows_it() -> None:
    work = (
        Reported("cold-crack"), Situated("process", "smaw"), Situated("grade", "4140"),
        Situated("thickness", "1/2 in"), Measured("rod", "1/8 in 7018"),
    )  # fmt: skip
    assert preheat(*work).low.value >= 150
    advices = Interview(RULES, Case(work)).remedies("preheat-missing")
    shown = [row for each in advices for row in each.settings if row.setting == "preheat"]
    assert shown
    assert all(row.best for row in shown)


def test_the_heat_of_the_measured_bead_lowers_the_preheat() -> None:
    """By the formula of EN 1011-2 (from memory) more heat input asks for less preheat."""
    work = (
        Situated("process", "gmaw"), Situated("grade", "s355"), Situated("thickness", "25 mm"),
        Measured("wire", "0.045 in ER70S-6"), Measured("volts", "22 V"), Measured("amps", "200 A"),
    )  # fmt: skip
    fast = preheat(*work, Measured("travel", "7 mm/s"))
    slow = preheat(*work, Measured("travel", "1.5 mm/s"))
    assert slow.low.value < fast.low.value


@pytest.mark.parametrize("metal", ["magnesium", "unknown-cast"])
def test_a_metal_that_is_not_for_a_small_shop_stops_the_case(metal: str) -> None:
    told = (Reported("porosity"), Situated("process", "gtaw-ac"), Situated("material", metal))
    step = Interview(RULES, Case(told)).step
    assert step.kind == "stop"
    assert step.call
    # a grade told besides must not hide it, whichever came first
    for order in ((*told, Situated("grade", "321")), (Situated("grade", "321"), *told)):
        assert Interview(RULES, Case(order)).step.kind == "stop"


def test_units_written_in_the_case_come_before_the_habit() -> None:
    told = Case((Reported("spatter"), *MIG, Situated("thickness", "1/8 in")))
    assert Interview(RULES, told, habit="mm").system == "in"
    assert Interview(RULES, Case((Reported("spatter"), *MIG)), habit="mm").system == "mm"


def test_what_follows_from_the_bead_stands_in_the_report() -> None:
    work = (
        Reported("spatter"), *PLATE, Measured("volts", "19 V"), Measured("wire_feed", "220 ipm"),
        Measured("leg", "1/8 in"),
    )  # fmt: skip
    lines = case_text(Interview(RULES, Case(work)))
    at = lines.index("From the bead:")
    assert "travel speed" in lines[at + 1]
    assert "heat input" in lines[at + 2]


def test_the_volts_say_which_feed_they_are_for_and_nothing_else_does() -> None:
    work = (
        Reported("spatter"), *PLATE, Measured("volts", "22 V"), Measured("wire_feed", "250 ipm"),
    )  # fmt: skip
    advices = Interview(RULES, Case(work)).remedies("volts-high")
    notes = {row.setting: row.note for each in advices for row in each.settings}
    assert "The volts are those for 250 ipm." in notes["volts"]
    assert "250 ipm" not in notes["wire_feed"]
