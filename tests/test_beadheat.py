"""The heat of a measured bead: its volts, its amps and its travel speed."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.beadheat import bead_heat
from weldwhy.case import Case, Measured, Situated
from weldwhy.interview import Interview
from weldwhy.units import Quantity, convert, parse

RULES = shipped_rules()
KINDS = {"volts": "voltage", "amps": "current", "travel": "speed"}


def heat(process: str = "gmaw", **typed: str) -> Quantity | None:
    return bead_heat(RULES, process, {n: parse(t, KINDS[n]) for n, t in typed.items()}, None)


def test_it_is_the_process_factor_times_power_over_speed() -> None:
    """19 V, 120 A, 6 mm/s with 0.8 (EN 1011-1): 0.304 kJ/mm, arithmetic from the formula."""
    found = heat(volts="19 V", amps="120 A", travel="6 mm/s")
    assert found is not None
    assert found.value == pytest.approx(0.304, rel=0.02)


def test_tig_counts_less_of_its_heat() -> None:
    mig = heat(volts="12 V", amps="100 A", travel="2 mm/s")
    tig = heat("gtaw-dc", volts="12 V", amps="100 A", travel="2 mm/s")
    assert mig is not None
    assert tig is not None
    assert tig.value < mig.value


@pytest.mark.parametrize("missing", ["volts", "amps", "travel"])
def test_without_one_of_the_three_there_is_none(missing: str) -> None:
    typed = {"volts": "19 V", "amps": "120 A", "travel": "6 mm/s"}
    del typed[missing]
    assert heat(**typed) is None


def test_the_amps_of_a_wire_follow_from_its_feed() -> None:
    work = (
        Situated("process", "gmaw"), Situated("material", "mild-steel"),
        Situated("thickness", "1/8 in"), Measured("wire", "0.035 in"),
        Measured("wire_feed", "220 ipm"), Measured("volts", "19 V"), Measured("leg", "1/8 in"),
    )  # fmt: skip
    lines = Interview(RULES, Case(work)).follows
    assert [line.partition(":")[0] for line in lines] == ["travel speed", "heat input"]
    # 125 A x 19 V x 0.8 at the speed in the first line
    speed = parse(lines[0].partition(": ")[2], "speed")
    found = parse(lines[1].partition(": ")[2], "heat")
    assert found.value == pytest.approx(0.8 * 19 * 125 / 1000 / speed.value, rel=0.06)
    assert convert(found, "kJ/in") == pytest.approx(found.value * 25.4)


def test_it_is_told_in_the_units_of_the_travel() -> None:
    for travel, unit in (("14 in/min", "kJ/in"), ("6 mm/s", "kJ/mm")):
        found = heat(volts="19 V", amps="120 A", travel=travel)
        assert found is not None
        assert found.unit == unit
