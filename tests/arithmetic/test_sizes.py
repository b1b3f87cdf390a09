"""Gauges and sizes: the tables of the rules against the statute, the trade and each other."""

from __future__ import annotations

from math import pi
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.anyfloat import FLOATS, refused_or_finite
from tests.arithmetic.powerfigures import ALL
from tests.replay import shipped_rules

from weldwhy.arithmetic import sizes
from weldwhy.arithmetic.bounds import Impossible
from weldwhy.unitwords import GAUGE, WIRE_NAMES, aluminium_gauge, awg_section

TABLES = shipped_rules().tables
STATUTE, TRADE, ZINC = 40.0, 41.82, 0.15625
"""lb/ft2: an inch of wrought iron, an inch of steel, and the zinc of both sides (2.5 oz)."""
SHEETS = ("steel", "statute", "stainless", "galvanised", "aluminium")
NAMED = ("wire", "rod", "filler-rod", "tungsten")


def inches(sheet: str) -> dict[int, float]:
    """Thickness by gauge, of one of the tables of the rules."""
    table = TABLES[f"sheet-{sheet}"]
    return {int(row.removesuffix(" ga")): table.value(row) for row in table.rows}


@pytest.mark.parametrize("each", ALL["statute"], ids=lambda e: f"{e['gauge']}ga")
def test_the_statute_is_the_published_one(each: dict[str, Any]) -> None:
    assert inches("statute")[each["gauge"]] == pytest.approx(each["inch"], abs=1e-6)
    assert each["inch"] * 25.4 == pytest.approx(each["mm"])
    assert sizes.sheet_thickness(each["pounds"], STATUTE) == pytest.approx(each["inch"])


@pytest.mark.parametrize("each", ALL["trade"], ids=lambda e: f"{e['gauge']}ga")
def test_the_trade_gauge_is_the_published_one(each: dict[str, Any]) -> None:
    assert inches("steel")[each["gauge"]] == each["inch"]


def test_the_trade_table_is_the_one_that_typed_gauges_are_read_by() -> None:
    assert inches("steel") == GAUGE


@pytest.mark.parametrize("gauge", sorted(GAUGE))
def test_trade_stainless_and_galvanised_follow_from_the_statutes_weight(gauge: int) -> None:
    """So the rows that were not seen in print are held by those that were."""
    by_law = inches("statute")[gauge]
    weight = by_law * STATUTE
    assert sizes.sheet_thickness(weight, TRADE) == pytest.approx(inches("steel")[gauge], abs=6e-5)
    assert inches("stainless")[gauge] == pytest.approx(by_law, abs=6e-5)
    if gauge in inches("galvanised"):
        zinc = sizes.sheet_thickness(weight, TRADE, ZINC)
        assert zinc == pytest.approx(inches("galvanised")[gauge], abs=6e-5)


@pytest.mark.parametrize("gauge", sorted(GAUGE))
def test_aluminium_follows_the_wire_gauge(gauge: int) -> None:
    assert inches("aluminium")[gauge] == pytest.approx(aluminium_gauge(gauge), abs=6e-5)
    assert sizes.gauge_diameter(gauge) / 25.4 == pytest.approx(aluminium_gauge(gauge))


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_higher_gauge_is_a_thinner_sheet(sheet: str) -> None:
    table = inches(sheet)
    assert sorted(table, reverse=True) == sorted(table, key=table.__getitem__)


@pytest.mark.parametrize("each", ALL["wires"], ids=lambda e: str(e["awg"]))
def test_the_wire_gauge_is_the_published_one(each: dict[str, Any]) -> None:
    inch = sizes.gauge_diameter(each["awg"]) / 25.4
    assert inch == pytest.approx(each["inch"], abs=5e-5)
    assert (1000 * inch) ** 2 == pytest.approx(each["cmil"], rel=1e-4)


@given(st.integers(-3, 40))
def test_the_wire_gauge_is_that_which_typed_sections_are_read_by(number: int) -> None:
    radius = sizes.gauge_diameter(number) / 2
    assert pi * radius**2 == pytest.approx(awg_section(number))


@pytest.mark.parametrize("name", NAMED)
def test_each_name_tells_its_size_in_both_systems(name: str) -> None:
    """They agree within 6 %: 0.052 in goes for 1.4 mm, and 3/32 in rods for 2.5 mm."""
    table = TABLES[f"{name}-sizes"]
    for row in table.rows:
        inch, mm = row.removesuffix(" mm)").split(" in (")
        top, _, bottom = inch.partition("/")
        assert float(mm) == table.value(row, "size")
        assert float(top) / float(bottom or 1) == pytest.approx(table.value(row, "inch"), abs=5e-5)
        assert table.value(row, "inch") * 25.4 == pytest.approx(float(mm), rel=0.06)


def test_wire_has_the_names_by_which_it_is_typed() -> None:
    table = TABLES["wire-sizes"]
    listed = {(table.value(row, "size"), table.value(row, "inch")) for row in table.rows}
    assert set(WIRE_NAMES) <= listed


@given(st.sampled_from(NAMED), st.floats(0.98, 1.02))
def test_a_size_measured_nearly_right_is_found(name: str, off: float) -> None:
    table = TABLES[f"{name}-sizes"]
    known = {row: table.value(row, "size") for row in table.rows}
    for row, size in known.items():
        assert sizes.nearest(size * off, known) == row


def test_the_least_size_that_is_enough_is_found_and_none_when_there_is_none() -> None:
    known = {"thick": 30.0, "thin": 10.0, "middling": 20.0}
    assert sizes.least_enough(10, known) == "thin"
    assert sizes.least_enough(10.1, known) == "middling"
    assert sizes.least_enough(31, known) == ""


def test_a_cups_number_counts_sixteenths() -> None:
    assert sizes.cup_bore(8) == pytest.approx(12.7)


def test_nothing_is_nearest_among_nothing() -> None:
    with pytest.raises(Impossible, match="no sizes"):
        sizes.nearest(1, {})


@given(st.data())
def test_no_float_gives_a_nonsense_result(data: st.DataObject) -> None:
    numbers = [data.draw(FLOATS) for _ in range(3)]
    refused_or_finite(sizes.sheet_thickness, *numbers)
    refused_or_finite(sizes.gauge_diameter, numbers[0])
    refused_or_finite(sizes.cup_bore, numbers[0])
