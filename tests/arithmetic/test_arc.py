"""Volts, heat and transfer of an arc: published examples, and what physics demands."""

from __future__ import annotations

from math import inf, nan
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.anyfloat import FLOATS, refused_or_finite
from tests.arithmetic.published import answer, examples

from weldwhy.arithmetic import arc, droop, heatflow
from weldwhy.arithmetic.bounds import Impossible

VOLTS, AMPS, TRAVEL = st.floats(10, 40), st.floats(10, 600), st.floats(0.5, 50)
PLATE = (720.0, 5.0, 25.0, 1510.0, 0.0044)


@pytest.mark.parametrize("each", examples("arc_energy"), ids=lambda e: e["id"])
def test_arc_energy_is_as_published(each: dict[str, Any]) -> None:
    inputs = each["inputs"]
    assert arc.arc_energy(inputs["U"], inputs["I"], inputs["v"]) * 1000 == pytest.approx(
        answer(each)
    )


@pytest.mark.parametrize("each", examples("heat_input"), ids=lambda e: e["id"])
def test_heat_input_is_as_published(each: dict[str, Any]) -> None:
    inputs = each["inputs"]
    travel = inputs["v"] if "v" in inputs else inputs["v_mm_min"] / 60
    heat = arc.heat_input(inputs["U"], inputs["I"], travel, inputs["k"])
    assert heat == pytest.approx(answer(each), rel=1e-9)


@pytest.mark.parametrize("each", examples("heat_input_asme"), ids=lambda e: e["id"])
def test_the_american_heat_input_is_as_published(each: dict[str, Any]) -> None:
    inputs = each["inputs"]
    assert arc.heat_input_asme(inputs["U"], inputs["I"], inputs["S_in_min"]) == pytest.approx(
        answer(each)
    )


@given(VOLTS, AMPS, TRAVEL)
def test_the_american_form_is_arc_energy_in_other_units(u: float, i: float, v: float) -> None:
    assert arc.heat_input_asme(u, i, v * 60 / 25.4) == pytest.approx(
        arc.arc_energy(u, i, v) * 25_400
    )


@given(VOLTS, AMPS, TRAVEL, st.floats(1.01, 2))
def test_heat_rises_with_volts_and_amps_and_falls_with_travel(
    u: float, i: float, v: float, more: float
) -> None:
    heat = arc.heat_input(u, i, v, 0.8)
    assert arc.heat_input(u * more, i, v, 0.8) > heat
    assert arc.heat_input(u, i * more, v, 0.8) > heat
    assert arc.heat_input(u, i, v * more, 0.8) < heat


@given(VOLTS, AMPS, TRAVEL)
def test_nothing_is_said_of_ordinary_settings(u: float, i: float, v: float) -> None:
    assert arc.heat_input(u, i, v, 0.8).remarks == ()


@pytest.mark.parametrize(
    ("numbers", "named"),
    [((5, 100, 5), "volts"), ((20, 5, 5), "amps"), ((20, 100, 0.3), "travel"),
     ((60, 100, 5), "volts"), ((20, 700, 5), "amps"), ((20, 100, 60), "travel")],
)  # fmt: skip
def test_a_number_outside_the_range_is_named_once(
    numbers: tuple[float, float, float], named: str
) -> None:
    (said,) = arc.heat_input(*numbers, 0.8).remarks
    assert said.startswith(named)


@pytest.mark.parametrize("numbers", [(0, 100, 5), (20, 0, 5), (20, 100, 0), (20, nan, 5)])
def test_what_cannot_be_is_refused(numbers: tuple[float, float, float]) -> None:
    with pytest.raises(Impossible):
        arc.heat_input(*numbers, 0.8)


@pytest.mark.parametrize("factor", [0, 1.1, -0.8])
def test_a_factor_is_a_share(factor: float) -> None:
    with pytest.raises(Impossible, match="process factor"):
        arc.heat_input(20, 100, 5, factor)


def test_no_more_power_is_found_in_the_work_than_the_arc_has() -> None:
    assert arc.arc_efficiency(1608, 12, 200) == pytest.approx(0.67)
    with pytest.raises(Impossible, match="0 to 2400 W"):
        arc.arc_efficiency(2401, 12, 200)


def test_a_line_of_volts_is_said_to_end_at_600_amps() -> None:
    assert not arc.load_volts(600, 14, 0.05).remarks
    assert arc.load_volts(601, 14, 0.05).remarks


# Transfer


@pytest.mark.parametrize(
    ("amps", "spray", "short", "how"),
    [
        (100, 165, 175, "short circuit"),
        (170, 165, 175, "short circuit"),
        (170, 165, 0, "spray"),
        (165, 165, 150, "spray"),
        (160, 165, 150, "globular"),
        (400, inf, 175, "globular"),
        (90, 95, 0, "globular"),
    ],
)
def test_transfer_goes_by_amps(amps: float, spray: float, short: float, how: str) -> None:
    assert arc.transfer(amps, spray, short) == how


@given(FLOATS, FLOATS, FLOATS)
def test_transfer_is_one_of_three_or_refused(amps: float, spray: float, short: float) -> None:
    try:
        how = arc.transfer(amps, spray, short)
    except Impossible:
        return
    assert how in ("short circuit", "globular", "spray")


# Heat in the plate


@pytest.mark.parametrize("each", examples("melting_energy"), ids=lambda e: e["id"])
def test_melting_energy_is_as_published(each: dict[str, Any]) -> None:
    found = heatflow.melting_energy(each["inputs"]["Tm_K"])
    assert found == pytest.approx(answer(each), abs=0.005)


@pytest.mark.parametrize("each", examples("power_to_melt"), ids=lambda e: e["id"])
def test_the_power_that_melts_a_fillet_is_as_published(each: dict[str, Any]) -> None:
    inputs = each["inputs"]
    power = heatflow.power_to_melt(
        inputs["A"], inputs["v"], inputs["f1"], inputs["f2"], inputs["Um"]
    )
    assert power == pytest.approx(answer(each), rel=0.001)


@pytest.mark.parametrize("each", examples("melted_area"), ids=lambda e: e["id"])
def test_the_melted_area_is_as_published(each: dict[str, Any]) -> None:
    inputs = each["inputs"]
    area = heatflow.melted_area(
        inputs["U"], inputs["I"], inputs["v"], inputs["f1"], inputs["f2"], inputs["Um"]
    )
    assert area == pytest.approx(answer(each))


@given(VOLTS, AMPS, TRAVEL)
def test_the_power_for_the_melted_area_is_that_of_the_arc(u: float, i: float, v: float) -> None:
    area = heatflow.melted_area(u, i, v, 0.8, 0.5, 10)
    assert heatflow.power_to_melt(area, v, 0.8, 0.5, 10) == pytest.approx(u * i)


@pytest.mark.parametrize("each", examples("peak_temperature"), ids=lambda e: e["id"])
def test_the_peak_temperature_is_as_published(each: dict[str, Any]) -> None:
    assert heatflow.peak_temperature(each["inputs"]["Y"], *PLATE) == pytest.approx(
        answer(each), abs=1
    )


@pytest.mark.parametrize("each", examples("heated_width"), ids=lambda e: e["id"])
def test_the_heated_width_is_as_published(each: dict[str, Any]) -> None:
    assert heatflow.heated_width(each["inputs"]["Tp"], *PLATE) == pytest.approx(
        answer(each), abs=0.05
    )


@given(st.floats(0, 50), st.floats(100, 3000), st.floats(1, 20))
def test_the_width_undoes_the_peak_temperature(y: float, heat: float, thick: float) -> None:
    plate = (heat, thick, *PLATE[2:])
    peak = heatflow.peak_temperature(y, *plate)
    if peak > 30:  # nearer to the cold plate a hair of heat is a mile
        assert heatflow.heated_width(peak, *plate) == pytest.approx(y, rel=1e-6, abs=1e-6)


@given(st.floats(0, 100), st.floats(0.01, 50))
def test_metal_further_away_stays_cooler(y: float, further: float) -> None:
    near = heatflow.peak_temperature(y, *PLATE)
    assert heatflow.peak_temperature(y + further, *PLATE) < near <= 1510.0001


def test_plate_as_hot_as_its_melting_point_is_refused() -> None:
    with pytest.raises(Impossible, match="1505 C cannot be welded"):
        heatflow.peak_temperature(3, 720, 5, 1505, 1510, 0.0044)


# A drooping source


def test_an_arc_settles_where_both_lines_cross() -> None:
    amps = droop.working_amps(80, 200, 20, 0.04)
    assert 80 - 80 / 200 * amps == pytest.approx(20 + 0.04 * amps)


@given(st.floats(40, 100), st.floats(50, 500), st.floats(1, 5), st.floats(0.1, 3))
def test_a_longer_arc_draws_fewer_amps(opens: float, shorts: float, mm: float, far: float) -> None:
    near, long = (droop.arc_length_volts(each, 20, 2) for each in (mm, mm + far))
    assert droop.working_amps(opens, shorts, long, 0) < droop.working_amps(opens, shorts, near, 0)


def test_an_arc_that_needs_more_volts_than_there_are_goes_out() -> None:
    with pytest.raises(Impossible, match="goes out"):
        droop.working_amps(50, 200, 50, 0)


@given(st.data())
def test_no_float_gives_a_nonsense_result(data: st.DataObject) -> None:
    for formula, count in (
        (arc.load_volts, 3),
        (arc.arc_energy, 3),
        (arc.heat_input, 4),
        (arc.heat_input_asme, 3),
        (arc.arc_efficiency, 3),
        (heatflow.melting_energy, 1),
        (heatflow.melted_area, 6),
        (heatflow.power_to_melt, 5),
        (heatflow.peak_temperature, 6),
        (heatflow.heated_width, 6),
        (droop.arc_length_volts, 3),
        (droop.working_amps, 4),
    ):
        refused_or_finite(formula, *(data.draw(FLOATS) for _ in range(count)))
