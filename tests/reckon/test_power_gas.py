"""The calculators of power, gas, stock and sizes, worked as a person would, on shipped rules."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.arithmetic.powerfigures import ALL
from tests.reckon.results import in_unit, value
from tests.replay import shipped_rules

from weldwhy.arithmetic import leads
from weldwhy.reckon import gas, power, sizes, stock
from weldwhy.reckon.calculator import Outcome, ReckonError, reckon

RULES = shipped_rules()
CALCULATORS = {each.id: each for part in (power, gas, stock, sizes) for each in part.CALCULATORS}
ASKED_FOR = (
    "duty-cycle", "supply-current", "lead-drop", "cord-drop", "lead-size", "open-circuit",
    "tungsten-size", "cup-and-flow", "gas-left", "co2-left", "wire-left", "rods-needed", "enough",
    "sheet-gauge",
)  # fmt: skip
AMPS, METRES = st.integers(20, 250), st.integers(1, 60)


def work(name: str, system: str | None = None, **texts: str) -> Outcome:
    return reckon(RULES, CALCULATORS[name], texts, system)


def said(outcome: Outcome) -> str:
    return " ".join(outcome.remarks)


def test_every_calculator_that_was_promised_is_there() -> None:
    assert set(ASKED_FOR) <= set(CALCULATORS)


# Duty and supply

PLATE = {"rated": "30 %", "rated_amps": "130 A", "second": "20 %", "second_amps": "180 A"}


def test_the_duty_lies_between_the_two_ratings_of_the_plate() -> None:
    found = work("duty-cycle", amps="150 A", **PLATE)
    assert value(found, "duty") == pytest.approx(22.5, abs=0.1)
    assert value(found, "arc") + value(found, "rest") == pytest.approx(10)


def test_the_order_of_the_ratings_does_not_matter() -> None:
    turned = {"rated": "20 %", "rated_amps": "180 A", "second": "30 %", "second_amps": "130 A"}
    one, other = (work("duty-cycle", amps="150 A", **plate) for plate in (PLATE, turned))
    assert one.outputs == other.outputs


def test_above_the_plate_it_says_do_not() -> None:
    above = work("duty-cycle", amps="200 A", **PLATE)
    assert "do not use the machine so" in said(above)
    assert value(above, "duty").startswith("none")
    assert not {"arc", "rest"} & {each.id for each in above.outputs}
    assert "do not use" not in said(work("duty-cycle", amps="180 A", **PLATE))


def test_a_short_duty_earns_no_more_amps_than_the_plate_allows() -> None:
    assert value(work("duty-cycle", amps="150 A", wanted="5 %", **PLATE), "allowed") == 180


def test_half_a_rating_is_refused() -> None:
    with pytest.raises(ReckonError, match="second rating"):
        work("duty-cycle", amps="150 A", rated="30 %", rated_amps="130 A", second="20 %")


SUPPLY = {"volts": "20 V", "amps": "150 A", "supply": "230 V", "machine": "inverter"}


def test_the_breaker_is_the_next_size_and_left_to_an_electrician() -> None:
    """20 V x 150 A / (230 V x 0.85 x 0.7) is 21.9 A."""
    found = work("supply-current", **SUPPLY)
    assert value(found, "supply_amps") == pytest.approx(21.9, abs=0.05)
    assert value(found, "north_america") == value(found, "europe") == "25 A"
    assert "plate on the machine" in found.remarks[0]
    assert "licensed electrician" in found.remarks[0]


@given(st.integers(20, 400), st.sampled_from(["north-america", "europe"]))
def test_no_breaker_is_smaller_than_what_is_drawn(amps: int, place: str) -> None:
    found = work("supply-current", **{**SUPPLY, "amps": f"{amps} A"})
    drawn, size = value(found, "supply_amps"), value(found, place.replace("-", "_"))
    table = RULES.tables[f"breaker-{place}"]
    if size.endswith("electrician"):
        assert drawn > max(table.value(row) for row in table.rows)
    else:
        assert table.value(size) >= drawn
        assert not [row for row in table.rows if drawn <= table.value(row) < table.value(size)]


def test_the_plates_own_figures_count_before_the_kind_of_machine() -> None:
    found = work("supply-current", **SUPPLY, efficiency="0.5", power_factor="1")
    assert value(found, "supply_amps") == pytest.approx(20 * 150 / 230 / 0.5)


def test_a_transformer_draws_more_than_an_inverter_and_power_factor_correction_saves() -> None:
    kinds = ("inverter with power-factor correction", "inverter", "transformer")
    amps = [value(work("supply-current", **{**SUPPLY, "machine": k}), "supply_amps") for k in kinds]
    assert amps == sorted(amps)


def test_thirty_percent_of_duty_heats_the_wiring_like_just_over_half_the_amps() -> None:
    found = work("supply-current", **SUPPLY, duty="30 %")
    assert value(found, "steady") / value(found, "supply_amps") == pytest.approx(0.3**0.5)


# Leads and cords


def _ohms() -> float:
    at_20, rise, stranding, warm = RULES.tables["copper"].rows["lead"]
    return leads.copper(warm, at_20, rise, stranding)


@given(AMPS, METRES)
def test_the_lead_to_take_loses_little_and_stays_cool(amps: int, metres: int) -> None:
    text = value(work("lead-size", length=f"{metres} m", amps=f"{amps} A"), "sizes")
    table = RULES.tables["lead-sizes"]
    for size in text.split(" or "):
        if size in table.rows:
            section = table.value(size, "section")
            assert leads.cable_drop(metres, amps, section, _ohms()) <= 4 * (1 + 1e-9)
            assert table.value(size, "carries") >= amps


@given(AMPS, METRES)
def test_one_lead_smaller_would_not_do(amps: int, metres: int) -> None:
    text = value(work("lead-size", length=f"{metres} m", amps=f"{amps} A"), "sizes")
    table = RULES.tables["lead-sizes"]
    for size in text.split(" or "):
        if size not in table.rows:
            continue
        system = size.split(" ")[1]
        for row in (r for r in table.rows if r.endswith(system)):
            section = table.value(row, "section")
            if section < table.value(size, "section"):
                lost = leads.cable_drop(metres, amps, section, _ohms())
                assert lost > 4 or table.value(row, "carries") < amps


def test_a_gauge_and_its_square_millimetres_lose_the_same() -> None:
    """2 AWG is 33.6 mm2, and 25 ft 7.62 m."""
    gauge = work("lead-drop", length="25 ft", amps="150 A", section="2 AWG")
    metric = work("lead-drop", length="7.62 m", amps="150 A", section="33.63 mm2")
    assert value(gauge, "lost") == pytest.approx(value(metric, "lost"), rel=1e-3)


def test_a_work_lead_of_its_own_length_counts_once() -> None:
    even = work("lead-drop", length="10 m", amps="150 A", section="25 mm2")
    uneven = work("lead-drop", length="15 m", work_lead="5 m", amps="150 A", section="25 mm2")
    assert value(even, "lost") == pytest.approx(value(uneven, "lost"))


def test_long_leads_and_thin_leads_are_warned_of() -> None:
    assert "shorter or thicker" in said(
        work("lead-drop", length="30 m", amps="150 A", section="25 mm2")
    )
    assert "gets hot" in said(work("lead-drop", length="1 m", amps="150 A", section="10 mm2"))
    fine = said(work("lead-drop", length="3 m", amps="150 A", section="25 mm2"))
    assert "shorter or thicker" not in fine
    assert "gets hot" not in fine


def test_every_gauge_of_lead_and_cord_has_its_section() -> None:
    for name in ("lead-sizes", "cord-sizes"):
        table = RULES.tables[name]
        for row in table.rows:
            typed = work("lead-drop", length="1 m", amps="10 A", section=row)
            listed = leads.cable_drop(1, 10, table.value(row, "section"), _ohms())
            assert value(typed, "lost") == pytest.approx(listed, rel=2e-3), row


CORD = {"length": "30 m", "amps": "16 A", "section": "2.5 mm2", "supply": "230 V"}


def test_what_is_lost_in_a_cord_is_missing_at_the_machine() -> None:
    found = work("cord-drop", **CORD)
    assert value(found, "lost") + value(found, "left") == pytest.approx(230)
    assert value(found, "share") == pytest.approx(100 * value(found, "lost") / 230)


def test_the_longest_cord_loses_just_the_limit() -> None:
    longest = value(work("cord-drop", **CORD), "longest")
    found = work("cord-drop", **{**CORD, "length": f"{longest:.3f} m"})
    assert value(found, "share") == pytest.approx(5, abs=1e-3)


def test_half_the_volts_quadruple_what_a_cord_loses_of_them() -> None:
    """The same machine on 115 V draws twice the amps from half the volts."""
    high = work("cord-drop", **CORD)
    low = work("cord-drop", **{**CORD, "supply": "115 V", "amps": "32 A"})
    assert value(low, "share") == pytest.approx(4 * value(high, "share"))


def test_a_cord_too_long_or_too_thin_is_warned_of() -> None:
    far = said(work("cord-drop", **{**CORD, "length": "80 m"}))
    assert "the arc grows weak. Take 6.0 mm2 or 10 AWG." in far
    thin = work("cord-drop", **{**CORD, "length": "3 m", "amps": "20 A", "section": "16 AWG"})
    assert "gets hot" in thin.remarks[0]
    assert "electrician" in said(thin)


# Open-circuit volts


@pytest.mark.parametrize("each", ALL["open_circuit"], ids=lambda e: e["id"])
@pytest.mark.parametrize("kind", ["ac", "dc"])
def test_the_open_circuit_limit_is_the_published_one(each: dict[str, Any], kind: str) -> None:
    most = each[kind]
    for volts, verdict in ((most, "within"), (most + 1, "above")):
        found = work("open-circuit", volts=f"{volts} V", current=kind)
        assert value(found, "rule_1") == f"{verdict} the {most} V allowed"
        assert found.cautions == (RULES.cautions["electric-shock"].text,)


# Tungsten and cup


@pytest.mark.parametrize("each", ALL["tungsten"], ids=lambda e: e["id"])
@pytest.mark.parametrize("polarity", ["dcen", "dcep", "ac-unbalanced", "ac-balanced"])
def test_a_tungsten_carries_what_is_published(each: dict[str, Any], polarity: str) -> None:
    table = RULES.tables["tungsten-amps"]
    (row,) = (row for row in table.rows if table.value(row, "size") == each["size"])
    ours = [table.value(row, f"{polarity} {end}") for end in ("from", "to")]
    assert ours == (each[polarity] or [0, 0])


@given(st.integers(5, 500), st.sampled_from(["dcen", "dcep", "ac-unbalanced", "ac-balanced"]))
def test_the_tungsten_for_some_amps_carries_them_and_a_thinner_one_does_not(
    amps: int, polarity: str
) -> None:
    table = RULES.tables["tungsten-amps"]
    most = {row: table.value(row, f"{polarity} to") for row in table.rows}
    try:
        row = value(work("tungsten-size", amps=f"{amps} A", polarity=polarity), "size")
    except ReckonError:
        assert max(most.values()) < amps
        return
    assert most[row] >= amps
    size = table.value(row, "size")
    assert all(most[r] < amps for r in table.rows if table.value(r, "size") < size)


def test_torch_on_plus_needs_a_far_thicker_tungsten() -> None:
    sizes = [work("tungsten-size", amps="20 A", polarity=p) for p in ("dcen", "dcep")]
    assert [value(each, "size")[:3] for each in sizes] == ["0.5", "1.6"]


@pytest.mark.parametrize("each", ALL["cups"], ids=lambda e: e["id"])
def test_cup_and_flow_for_aluminium_are_those_of_the_textbook(each: dict[str, Any]) -> None:
    found = work(
        "cup-and-flow", amps="150 A", polarity="ac-balanced", thickness=f"{each['thickness']} mm"
    )
    assert value(found, "textbook_bore") == each["bore"]
    assert value(found, "textbook_flow") == each["argon"]


def test_helium_needs_about_the_published_multiple_of_argon() -> None:
    ours = RULES.tables["helium-flow"].value("helium")
    ratios = [each["helium"] / each["argon"] for each in ALL["cups"]]
    assert ours == pytest.approx(sum(ratios) / len(ratios), rel=0.05)
    flows = [
        value(work("cup-and-flow", amps="120 A", polarity="dcen", gas=name), "flow_low")
        for name in ("argon", "helium")
    ]
    assert flows[1] == pytest.approx(ours * flows[0])


def test_no_gas_that_burns_the_tungsten_is_offered() -> None:
    (wanted,) = (i for i in CALCULATORS["cup-and-flow"].inputs if i.id == "gas")
    assert wanted.choices is not None
    offered = wanted.choices(RULES)
    assert "argon" in offered
    assert all(not {"co2", "oxygen"} & set(RULES.gases[name].parts) for name in offered)


def test_a_tungsten_too_thin_for_the_amps_is_warned_of() -> None:
    found = work("cup-and-flow", amps="200 A", polarity="dcen", tungsten="1/16 in")
    assert "150 A at most" in found.remarks[0]


def test_the_flow_of_a_cup_agrees_with_the_operating_windows() -> None:
    """The best flow of every TIG window lies in the range for the tungsten of each of its rows."""
    for window in RULES.windows.values():
        if window.size_of != "tungsten" or "helium" in window.gas:
            continue
        for row in window.rows:
            assert row.size is not None
            found = work(
                "cup-and-flow", amps="20 A", polarity="dcen", tungsten=f"{row.size.value:.2f} mm"
            )
            best = window.targets["gas_flow"].best.value
            assert value(found, "flow_low") <= best <= value(found, "flow_high"), window.id


# Gas


def test_a_full_cylinder_holds_the_gas_that_it_is_sold_by() -> None:
    found = work("gas-left", gas="argon", cylinder="80 ft3", pressure="2200 psi")
    assert in_unit(found, "left", "ft3") == pytest.approx(80)
    assert value(found, "share") == pytest.approx(100)


def test_bar_and_psi_litres_and_cubic_feet_tell_the_same() -> None:
    common = {"gas": "c25", "cylinder": "20 L"}
    metric = work("gas-left", **common, pressure="100 bar", temperature="25 C", flow="12 L/min")
    inches = work(
        "gas-left", **common, pressure="1450.38 psi", temperature="77 F", flow="25.43 cfh"
    )
    for name in ("left", "usable", "lasts"):
        assert value(metric, name) == pytest.approx(value(inches, name), rel=1e-3)


def test_a_warm_cylinder_shows_more_pressure_for_the_same_gas() -> None:
    common = {"gas": "argon", "cylinder": "50 L", "pressure": "150 bar"}
    cold, hot = (work("gas-left", **common, temperature=t) for t in ("0 C", "40 C"))
    assert value(hot, "left") < 0.87 * value(cold, "left")


def test_the_reserve_is_not_counted_and_an_empty_cylinder_lasts_no_time() -> None:
    common = {"gas": "argon", "cylinder": "20 L", "flow": "10 L/min"}
    found = work("gas-left", **common, pressure="100 bar", reserve="20 bar")
    assert value(found, "usable") < 0.82 * value(found, "left")
    assert value(work("gas-left", **common, pressure="5 bar"), "lasts") == 0


def test_more_gas_than_a_cylinder_holds_is_doubted() -> None:
    common = {"gas": "argon", "cylinder": "20 L"}
    assert "more than a full one" in said(work("gas-left", **common, pressure="300 bar"))
    assert "more than a full one" not in said(work("gas-left", **common, pressure="200 bar"))


def test_another_cylinder_needs_its_volume() -> None:
    with pytest.raises(ReckonError, match="volume is missing"):
        work("gas-left", gas="argon", cylinder="other", pressure="100 bar")
    own = work("gas-left", gas="argon", cylinder="other", volume="20 L", pressure="100 bar")
    listed = work("gas-left", gas="argon", cylinder="20 L", pressure="100 bar")
    assert value(own, "left") == value(listed, "left")


@pytest.mark.parametrize("pressure", ["55 bar", "800 psi"])
def test_the_gauge_of_liquid_co2_is_not_believed(pressure: str) -> None:
    with pytest.raises(ReckonError, match="weigh the cylinder"):
        work("gas-left", gas="co2", cylinder="10 L", pressure=pressure)
    with pytest.raises(ReckonError, match="weigh the cylinder"):
        work("co2-gauge", pressure=pressure, volume="10 L")


def test_co2_by_weight_is_the_same_in_pounds() -> None:
    metric = work("co2-left", weight="22 kg", empty="16 kg", flow="12 L/min")
    pounds = work("co2-left", weight="48.502 lb", empty="35.274 lb", flow="25.427 cfh")
    assert value(metric, "left") == pytest.approx(6 * 534, rel=2e-3)
    assert value(pounds, "lasts") == pytest.approx(value(metric, "lasts"), rel=1e-3)


def test_a_cylinder_lighter_than_empty_is_refused() -> None:
    with pytest.raises(ReckonError, match="less than when empty"):
        work("co2-left", weight="15 kg", empty="16 kg")


def test_co2_gas_without_liquid_is_little() -> None:
    """10 L of gas at 40 bar are a sixth of what 6 kg of liquid give."""
    found = work("co2-gauge", pressure="40 bar", volume="10 L")
    assert 500 < value(found, "left") < 600
    assert value(found, "usable") < value(found, "left")
    assert "colder cylinder" in said(found)
    assert "change the cylinder soon" in said(found)


@pytest.mark.parametrize(
    ("name", "texts"),
    [
        ("gas-left", {"gas": "argon", "cylinder": "20 L", "pressure": "100 bar"}),
        ("co2-left", {"weight": "22 kg", "empty": "16 kg"}),
        ("co2-gauge", {"pressure": "20 bar", "volume": "10 L"}),
    ],
)
def test_whoever_goes_to_a_cylinder_is_told_to_chain_it_first(
    name: str, texts: dict[str, str]
) -> None:
    assert work(name, **texts).cautions == (RULES.cautions["cylinder"].text,)


# Stock

SPOOL = {"wire": "gmaw mild-steel", "size": "0.8 mm", "mass": "3 kg", "empty": "0.3 kg"}


def test_wire_by_weight_is_the_same_in_pounds_and_inches() -> None:
    metric = work("wire-left", **SPOOL, feed="6 m/min")
    weight = {"mass": "6.6139 lb", "empty": "0.6614 lb", "size": "0.0315 in"}
    inches = work("wire-left", **{**SPOOL, **weight}, feed="236.2 ipm")
    for name in ("length", "lasts"):
        assert value(metric, name) == pytest.approx(value(inches, name), rel=1e-3)


def test_a_cored_wire_is_longer_and_an_aluminium_wire_much_longer_for_its_weight() -> None:
    wires = ("gmaw mild-steel", "fcaw-s mild-steel", "gmaw aluminium")
    found = [value(work("wire-left", **{**SPOOL, "wire": wire}), "length") for wire in wires]
    assert found == sorted(found)
    assert found[2] == pytest.approx(found[0] * 7.85 / 2.7)


def test_every_wire_has_a_density_and_an_efficiency() -> None:
    for row in RULES.tables["wire-weight"].rows:
        process, _, metal = row.partition(" ")
        assert metal in RULES.tables["density"].rows
        assert process in RULES.tables["deposition-efficiency"].rows


def test_a_spool_lighter_than_empty_is_refused() -> None:
    with pytest.raises(ReckonError, match="less than when empty"):
        work("wire-left", **{**SPOOL, "mass": "0.2 kg"})


def test_a_winding_weighs_what_its_metal_weighs() -> None:
    """pi/4 (18^2 - 10^2) x 4.5 cm3 at 0.72, of steel: 4.5 kg, whatever the wire."""
    winding = {"outer": "180 mm", "inner": "100 mm", "width": "45 mm"}
    for size in ("0.6 mm", "0.045 in"):
        found = work("wire-wound", wire="gmaw mild-steel", size=size, **winding)
        assert value(found, "mass") == pytest.approx(4.475, abs=0.01)


JOB = {"wire": "gmaw mild-steel", "size": "0.8 mm", "length": "10 m"}


def test_a_leg_and_its_section_take_the_same_wire() -> None:
    leg, section = (work("enough", **JOB, weld=weld) for weld in ("6 mm", "18 mm2"))
    assert value(leg, "wire") == value(section, "wire")
    assert value(leg, "metal") == pytest.approx(18 * 10 * 7.85 * 1.1 / 1000)
    assert value(leg, "wire") == pytest.approx(value(leg, "metal") / 0.95)


def test_a_quarter_inch_fillet_is_read_as_one() -> None:
    inches = work("enough", **{**JOB, "length": "32.808 ft"}, weld="1/4 in")
    metric = work("enough", **JOB, weld="6.35 mm")
    assert value(inches, "wire") == pytest.approx(value(metric, "wire"), rel=1e-4)


@given(st.integers(1, 60), st.integers(1, 50))
def test_the_spool_is_enough_just_when_it_holds_the_wire(metres: int, hundreds: int) -> None:
    spool = hundreds / 10
    found = work("enough", **{**JOB, "length": f"{metres} m"}, weld="5 mm", spool=f"{spool} kg")
    verdict = "enough" if spool >= value(found, "wire") else "short by"
    assert value(found, "spool").startswith(verdict)


@given(st.integers(1, 60), st.integers(1, 50))
def test_the_cylinder_is_enough_just_when_it_holds_the_gas(metres: int, hundreds: int) -> None:
    job = {**JOB, "length": f"{metres} m", "weld": "5 mm", "feed": "6 m/min", "flow": "12 L/min"}
    found = work("enough", **job, gas=f"{hundreds}00 L")
    verdict = "enough" if 100 * hundreds >= value(found, "gas") else "short by"
    assert value(found, "cylinder").startswith(verdict)
    assert value(found, "gas") == pytest.approx(12 * 1.15 * value(found, "arc"))


def test_the_gas_cannot_be_told_without_the_wire_feed() -> None:
    with pytest.raises(ReckonError, match="wire feed"):
        work("enough", **JOB, weld="6 mm", flow="12 L/min")


@pytest.mark.parametrize("weld", ["6", "six mm", "20 mm3", "20 sq"])
def test_a_weld_that_cannot_be_read_gets_a_line_that_helps(weld: str) -> None:
    with pytest.raises(ReckonError, match="leg of a fillet"):
        work("enough", **JOB, weld=weld)


RODS = {"weld": "6 mm", "length": "1 m", "size": "3.2 mm", "metal": "mild-steel"}


@pytest.mark.parametrize("metal", ["aluminium", "stainless"])
def test_a_mild_steel_rod_is_refused_for_a_metal_it_is_not_for(metal: str) -> None:
    with pytest.raises(ReckonError, match="7018 rods are not for"):
        work("rods-needed", **{**RODS, "metal": metal}, rod="7018")


def test_iron_powder_in_the_covering_saves_rods() -> None:
    counts = [
        float(value(work("rods-needed", **RODS, rod=rod), "rods")) for rod in ("6010", "7024")
    ]
    assert counts == [10, 6]


def test_a_rod_is_as_long_as_usual_for_its_size_unless_said() -> None:
    usual, said_so, short = (
        value(work("rods-needed", **RODS, rod="7018", **more), "each")
        for more in ({}, {"rod_length": "350 mm"}, {"rod_length": "300 mm"})
    )
    assert usual == said_so > short


# Sizes


def test_one_gauge_number_is_five_thicknesses() -> None:
    found = work("sheet-gauge", size="16 ga")
    inches = {each.id: in_unit(found, each.id, "in") for each in found.outputs}
    assert inches == pytest.approx(
        {
            "steel": 0.0598,
            "stainless": 0.0625,
            "galvanised": 0.0635,
            "aluminium": 0.0508,
            "statute": 0.0625,
        }
    )


@pytest.mark.parametrize("text", ["1.52 mm", "0.0598 in"])
def test_a_thickness_has_its_gauge_on_each_sheet(text: str) -> None:
    found = work("sheet-gauge", size=text)
    assert value(found, "steel").startswith("16 ga")
    assert value(found, "aluminium").startswith("15 ga")


def test_a_gauge_that_a_sheet_has_not_is_refused_with_those_it_has() -> None:
    with pytest.raises(ReckonError, match="8 ga to 30 ga"):
        work("sheet-gauge", size="5 ga", sheet="galvanised")
    assert {each.id for each in work("sheet-gauge", size="5 ga").outputs} == {
        "steel", "stainless", "aluminium", "statute",
    }  # fmt: skip


def test_a_thickness_far_from_every_gauge_gets_none() -> None:
    found = work("sheet-gauge", size="20 mm")
    assert {each.value for each in found.outputs} == {"no gauge is near that"}


def test_a_tungsten_too_thin_for_its_cup_table_is_still_held_to_its_own_amps() -> None:
    found = work("cup-and-flow", amps="50 A", polarity="dcen", tungsten="0.5 mm")
    assert value(found, "tungsten") == "0.5 mm (0.020 in)"
    assert "carries 20 A at most" in said(found)
    with pytest.raises(ReckonError, match="the thickest is 4"):
        work("cup-and-flow", amps="100 A", polarity="dcen", tungsten="20 mm")


def test_helium_gets_the_helium_flow_of_the_textbook() -> None:
    texts = {"amps": "100 A", "polarity": "ac-balanced", "thickness": "3 mm"}
    flows = [
        value(work("cup-and-flow", **texts, gas=g), "textbook_flow") for g in ("argon", "helium")
    ]
    assert flows == [4.5, 9.5]


def test_hydrogen_and_nitrogen_are_no_gases_for_aluminium() -> None:
    for gas_for_other_work in ("ar-h2-5", "nitrogen"):
        with pytest.raises(ReckonError):
            work("cup-and-flow", amps="100 A", polarity="ac-balanced", gas=gas_for_other_work)
    assert work("cup-and-flow", amps="100 A", polarity="dcen", gas="ar-h2-5").outputs


def test_a_rod_measured_in_inches_has_its_metric_name() -> None:
    assert value(work("size-name", size="3/32 in", sold="rod"), "name") == "3/32 in (2.5 mm)"
    assert value(work("size-name", size="3/32 in", sold="filler-rod"), "name") == "3/32 in (2.4 mm)"


def test_a_size_that_nobody_sells_is_remarked_on() -> None:
    assert "measure again" in said(work("size-name", size="8 mm", sold="wire"))
    assert not work("size-name", size="0.9 mm", sold="wire").remarks
