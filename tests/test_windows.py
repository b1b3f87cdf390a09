"""The operating windows: what is common practice, what follows from formulas, what is published."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from weldwhy import rulebase, units
from weldwhy.consumables import read, same_class, same_gas
from weldwhy.model import RuleBase, Window, WindowRow
from weldwhy.units import Quantity, Target, parse
from weldwhy.windows import Found, distance, find

PUBLISHED = yaml.safe_load((Path(__file__).parent / "published" / "settings.yaml").read_text())
KINDS = {"amps": "current", "volts": "voltage", "wire_feed": "feed", "gas_flow": "flow"}
UNITS = {"amps": "A", "volts": "V", "wire_feed": "ipm", "gas_flow": "cfh"}


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    base = rulebase.survey([rulebase.default_folder()]).base
    assert base.windows, "no windows were read"
    return base


def seek(
    rules: RuleBase, process: str, metal: str, thickness: str = "", place: str = "", **typed: str
) -> Found:
    thick = parse(thickness, "length") if thickness else None
    found = find(rules, process, metal, thick, typed, place)
    assert found is not None
    return found


def bounds(target: Target, unit: str) -> tuple[float, float, float]:
    low, best, high = (units.convert(q, unit) for q in (target.low, target.best, target.high))
    return round(low, 3), round(best, 3), round(high, 3)


def rows(rules: RuleBase, *windows: str) -> Iterator[tuple[Window, WindowRow]]:
    for name in windows or rules.windows:
        for row in rules.windows[name].rows:
            yield rules.windows[name], row


# Common practice


@pytest.mark.parametrize(
    ("process", "metal", "place", "low", "high"),
    [
        ("gmaw", "mild-steel", "indoors", 20, 30),
        ("gmaw", "mild-steel", "outdoors", 30, 40),
        ("gmaw", "stainless", "indoors", 20, 30),
        ("gtaw-dc", "mild-steel", "indoors", 15, 20),
        ("gtaw-dc", "stainless", "indoors", 15, 20),
        ("gtaw-ac", "aluminium", "indoors", 15, 20),
    ],
)
def test_gas_flow_is_what_shops_use(
    rules: RuleBase, process: str, metal: str, place: str, low: float, high: float
) -> None:
    flow = bounds(seek(rules, process, metal, place=place).targets["gas_flow"], "cfh")
    assert (flow[0], flow[2]) == (low, high)


def test_18_gauge_with_gasless_wire_starts_near_15_volts_and_160_ipm(rules: RuleBase) -> None:
    found = seek(rules, "fcaw-s", "mild-steel", "18 ga", wire="0.030 in E71T-11")
    assert bounds(found.targets["volts"], "V")[1] == 15
    assert bounds(found.targets["wire_feed"], "ipm")[1] == 160
    assert "gas_flow" not in found.targets
    assert "label" in found.window.note, "the wire's own label is the authority"


def test_18_gauge_with_solid_wire_and_gas_runs_near_17_volts_and_up_to_300_ipm(
    rules: RuleBase,
) -> None:
    found = seek(rules, "gmaw", "mild-steel", "18 ga", wire="0.030 in ER70S-6", gas="C25")
    assert bounds(found.targets["volts"], "V")[1] == 17
    assert bounds(found.targets["wire_feed"], "ipm")[2] == 300


def test_eighth_inch_steel_with_035_wire_runs_near_19_volts_and_120_amps(rules: RuleBase) -> None:
    found = seek(rules, "gmaw", "mild-steel", "1/8 in", wire="0.035 in", gas="C25")
    assert bounds(found.targets["volts"], "V") == (17.5, 19, 20.5)
    assert bounds(found.targets["amps"], "A")[1] == pytest.approx(120, abs=5)


def test_16_gauge_stainless_by_tig_takes_40_to_70_amps(rules: RuleBase) -> None:
    found = seek(rules, "gtaw-dc", "stainless", "16 ga", tungsten="1/16 in", gas="pure argon")
    low, _, high = bounds(found.targets["amps"], "A")
    assert (low, high) == (40, 70)


def test_an_eighth_6013_on_eighth_inch_steel_runs_100_to_135_amps(rules: RuleBase) -> None:
    """Practice is followed where the thickness is known, and the note tells of the table."""
    found = seek(rules, "smaw", "mild-steel", "1/8 in", rod="1/8 in 6013")
    low, _, high = bounds(found.targets["amps"], "A")
    assert (low, high) == (100, 135)
    assert "80 to 130 A" in found.window.note


def test_carbon_dioxide_takes_two_volts_more(rules: RuleBase) -> None:
    mixed, alone = (
        rules.windows[name].rows for name in ("mig-steel-short-c25", "mig-steel-short-co2")
    )
    for one, other in zip(mixed, alone, strict=True):
        assert (one.thickness, one.size) == (other.thickness, other.size)
        assert other.targets["volts"].best.value - one.targets["volts"].best.value == 2
        assert other.targets["wire_feed"] == one.targets["wire_feed"]


# Formulas


def melted(amps: float, size: float, slope: float, heating: float, reach: float = 9.5) -> float:
    """Wire melted in ipm: Lesnewich's law with constants for 1.2 mm, scaled to `size` in mm."""
    section = (1.2 / size) ** 2
    return (slope * section * amps + heating * section**2 * reach * amps**2) * 60 / 25.4


def test_short_circuit_volts_follow_the_amps(rules: RuleBase) -> None:
    """14 + 0.042 A, within 1.5 V, for argon with 25 % CO2."""
    for _, row in rows(rules, "mig-steel-short-c25"):
        amps, volts = row.targets["amps"].best.value, row.targets["volts"]
        assert volts.best.value == pytest.approx(14 + 0.042 * amps, abs=0.5)
        assert volts.high.value - volts.best.value == volts.best.value - volts.low.value == 1.5


@pytest.mark.parametrize(
    ("window", "slope", "heating"),
    [
        ("mig-steel-short-c25", 0.29, 5.25e-5),
        ("mig-stainless-short-trimix", 0.25, 1.0e-4),
        ("mig-aluminium-argon", 0.75, 0.0),
    ],
)
def test_wire_feed_melts_at_the_amps_given(
    rules: RuleBase, window: str, slope: float, heating: float
) -> None:
    """Within 15 % at the best place, 20 % at the ends; the law and constants are from memory."""
    for _, row in rows(rules, window):
        assert row.size is not None
        for end, slack in (("low", 0.2), ("best", 0.15), ("high", 0.2)):
            amps = getattr(row.targets["amps"], end).value
            feed = units.convert(getattr(row.targets["wire_feed"], end), "ipm")
            assert feed == pytest.approx(melted(amps, row.size.value, slope, heating), rel=slack), (
                row
            )


def test_wider_gasless_wire_lays_down_as_much_as_narrow(rules: RuleBase) -> None:
    laid: dict[float, list[float]] = {}
    for _, row in rows(rules, "gasless-steel"):
        assert row.size is not None
        assert row.thickness is not None
        feed = row.targets["wire_feed"].best.value
        laid.setdefault(row.thickness.value, []).append(feed * row.size.value**2)
    for amounts in laid.values():
        assert max(amounts) <= 1.05 * min(amounts)


# Publications


def span(text: str | float) -> tuple[float, float]:
    low, _, high = str(text).partition("-")
    return float(low), float(high or low)


def agrees(target: Target, name: str, published: str | float) -> bool:
    """A published number lies in our range; with a published range, our best place lies in it or
    our range holds all of it. Feed and flow, which hang on much else, need only overlap."""
    low, best, high = bounds(target, UNITS[name])
    least, most = span(published)
    if name in ("wire_feed", "gas_flow"):
        return low <= most and least <= high
    return (low <= least and most <= high) or (least < most and least <= best <= most)


def targets_for(rules: RuleBase, fact: dict[str, Any]) -> list[dict[str, Target]]:
    """What our window says for a fact: one situation, or every row of a size."""
    window = rules.windows[fact["window"]]
    if "thickness" in fact:
        kept = {window.size_of: fact.get("size", ""), "gas": (window.gas or ("",))[0]}
        if window.size_of == "rod":
            kept["rod"] += f" {window.consumable.split('/')[0]}"
        found = find(
            rules, window.processes[0], window.materials[0],
            parse(fact["thickness"], "length"), kept, "indoors",
        )  # fmt: skip
        assert found is not None
        assert found.window == window
        return [dict(found.targets)]
    size = parse(fact["size"], "length").value
    same = [row for row in window.rows if row.size and abs(row.size.value / size - 1) < 0.01]
    whole = [row for row in same if row.thickness is None] or same
    return [{**window.targets, **row.targets} for row in whole]


def ids(facts: list[dict[str, Any]]) -> list[str]:
    return [f"{fact['entry']}-{fact.get('window', '')}" for fact in facts]


@pytest.mark.parametrize("fact", PUBLISHED["settings"], ids=ids(PUBLISHED["settings"]))
def test_settings_agree_with_publications_or_say_why_not(
    rules: RuleBase, fact: dict[str, Any]
) -> None:
    told = targets_for(rules, fact)
    assert told
    agreeing = [
        agrees(targets[name], name, fact[name]) if name in targets else False
        for targets in told
        for name in UNITS
        if name in fact
    ]
    assert all(agreeing) != ("why" in fact), told


@pytest.mark.parametrize("fact", PUBLISHED["limits"], ids=ids(PUBLISHED["limits"]))
def test_whole_windows_keep_published_limits_or_say_why_not(
    rules: RuleBase, fact: dict[str, Any]
) -> None:
    name = next(name for name in UNITS if name in fact)
    least, most = span(fact[name])
    best = [bounds(row.targets[name], UNITS[name])[1] for _, row in rows(rules, fact["window"])]
    assert (least <= min(best) and max(best) <= most) != ("why" in fact)


@pytest.mark.parametrize("fact", PUBLISHED["gas_flows"], ids=ids(PUBLISHED["gas_flows"]))
def test_gas_flows_agree_with_publications_or_say_why_not(
    rules: RuleBase, fact: dict[str, Any]
) -> None:
    target = rules.windows[fact["window"]].targets["gas_flow"]
    assert agrees(target, "gas_flow", fact["gas_flow"]) != ("why" in fact)


@pytest.mark.parametrize("fact", PUBLISHED["tungstens"], ids=ids(PUBLISHED["tungstens"]))
def test_no_tungsten_is_given_more_than_it_bears(rules: RuleBase, fact: dict[str, Any]) -> None:
    size = parse(fact["size"], "length")
    asked = [
        row.targets["amps"].high.value
        for window, row in rows(rules)
        if window.size_of == "tungsten" and row.size == size
    ]
    assert asked
    assert max(asked) <= fact["most"]


def test_every_publication_named_in_the_facts_is_a_known_source(rules: RuleBase) -> None:
    facts = [fact for group in PUBLISHED.values() for fact in group]
    assert {fact["source"].partition(",")[0] for fact in facts} <= set(rules.sources)


# Properties

THICK = st.floats(0.5, 15)
SITUATIONS = [
    ("gmaw", "mild-steel"), ("gmaw", "stainless"), ("gmaw", "aluminium"), ("gmaw", ""),
    ("fcaw-s", "mild-steel"), ("fcaw-g", "mild-steel"), ("smaw", "mild-steel"),
    ("gtaw-dc", "mild-steel"), ("gtaw-dc", "stainless"), ("gtaw-ac", "aluminium"), ("gtaw-ac", ""),
]  # fmt: skip
SIZES = ["", "0.6 mm", "0.030 in", "0.035 in", "1.0 mm", "0.045 in", "1/16 in", "3/32 in", "1/8 in"]


@given(
    st.sampled_from(SITUATIONS), THICK, THICK, st.sampled_from(SIZES),
    st.sampled_from(["", "6013", "7018"]),
)  # fmt: skip
def test_thicker_metal_of_one_size_never_wants_less(
    rules: RuleBase, situation: tuple[str, str], a: float, b: float, size: str, rod: str
) -> None:
    """Same wire, rod or tungsten: volts, feed and amps do not fall as the metal gets thicker."""
    thin, thick = (Quantity("length", x, "mm") for x in sorted((a, b)))
    typed = {"wire": size, "tungsten": size, "rod": f"{size} {rod}".strip()}
    one, other = (find(rules, *situation, x, typed, "indoors") for x in (thin, thick))
    assert one is not None
    assert other is not None
    if not size and one.note != other.note:
        return  # another size is usual for the other thickness
    for name in set(one.targets) & set(other.targets) & {"volts", "wire_feed", "amps"}:
        if "whole range" in one.note + other.note:
            continue
        lesser, greater = one.targets[name], other.targets[name]
        assert lesser.best.value <= greater.best.value + 1e-9
        assert lesser.low.value <= greater.low.value + 1e-9
        assert lesser.high.value <= greater.high.value + 1e-9


@given(
    st.sampled_from(SITUATIONS), st.floats(0.01, 500) | st.none(),
    st.dictionaries(st.sampled_from(["wire", "rod", "tungsten", "gas", "volts"]),
                    st.text(max_size=30) | st.sampled_from(SIZES)),
    st.sampled_from(["", "indoors", "outdoors", "on the moon"]),
)  # fmt: skip
def test_any_situation_gets_ordered_finite_targets_and_a_printable_note(
    rules: RuleBase,
    situation: tuple[str, str],
    thickness: float | None,
    typed: dict[str, str],
    place: str,
) -> None:
    thick = None if thickness is None else Quantity("length", thickness, "mm")
    found = find(rules, *situation, thick, typed, place)
    assert found is not None
    assert found.note.isprintable()
    assert found.note.isascii()
    for name, target in found.targets.items():
        assert 0 < target.low.value <= target.best.value <= target.high.value < math.inf
        possible = rules.settings[name].possible
        assert possible is not None
        assert possible[0].value <= target.low.value
        assert target.high.value <= possible[1].value


@given(st.floats(0.1, 100), st.floats(0.1, 100), st.floats(0.1, 100), st.floats(0, 1000))
def test_distance_is_0_at_best_and_1_at_the_limits(a: float, b: float, c: float, x: float) -> None:
    low, best, high = (Quantity("voltage", v, "V") for v in sorted((a, b, c)))
    target = Target(low, best, high)
    assert distance(best, target) == 0
    if low.value < best.value < high.value:
        assert distance(low, target) == pytest.approx(-1)
        assert distance(high, target) == pytest.approx(1)
    assert math.isfinite(distance(Quantity("voltage", x, "V"), target))
    assert (distance(Quantity("voltage", x, "V"), target) > 0) == (x > best.value)


# What is assumed is said


def test_an_unknown_metal_is_taken_as_mild_steel_and_said(rules: RuleBase) -> None:
    assert seek(rules, "gmaw", "", "1/8 in").window.id == "mig-steel-short-c25"
    assert "mild steel is assumed" in seek(rules, "gmaw", "", "1/8 in").note
    assert "aluminium is assumed" in seek(rules, "gtaw-ac", "").note


def test_a_metal_without_windows_has_none(rules: RuleBase) -> None:
    assert find(rules, "smaw", "cast-iron", None, {}, "") is None
    assert find(rules, "unheard-of", "", None, {}, "") is None


def test_without_a_thickness_only_what_always_holds_is_given(rules: RuleBase) -> None:
    assert set(seek(rules, "gmaw", "mild-steel").targets) == {"gas_flow", "stick_out"}
    assert set(seek(rules, "smaw", "mild-steel").targets) == set()
    rod = seek(rules, "smaw", "mild-steel", rod="1/8 in E7018")
    assert bounds(rod.targets["amps"], "A")[2] == 165
    assert "whole range" in rod.note


def test_beyond_the_rows_the_last_one_is_shown_only_when_close(rules: RuleBase) -> None:
    close = seek(rules, "gmaw", "mild-steel", "5/16 in", wire="0.035 in")
    far = seek(rules, "gmaw", "mild-steel", "1 in", wire="0.035 in")
    assert "last line" in close.note
    assert bounds(close.targets["amps"], "A")[1] == 150
    assert "no numbers" in far.note
    assert "volts" not in far.targets


def test_a_big_rod_on_thin_sheet_gets_no_numbers(rules: RuleBase) -> None:
    found = seek(rules, "smaw", "mild-steel", "18 ga", rod="1/8 in")
    assert found.targets == {}
    assert "thinner" in found.note


def test_a_gas_without_a_table_gets_no_volts(rules: RuleBase) -> None:
    found = seek(rules, "gmaw", "mild-steel", "1/8 in", wire="0.035 in", gas="argon")
    assert set(found.targets) == {"gas_flow", "stick_out"}
    assert "gas in use" in found.note


def test_between_two_rows_the_numbers_lie_between(rules: RuleBase) -> None:
    found = seek(rules, "gtaw-ac", "aluminium", "2 mm", tungsten="1/16 in")
    assert bounds(found.targets["amps"], "A") == (70, 90, 105)


def test_aluminium_sheet_goes_by_its_own_gauge(rules: RuleBase) -> None:
    found = seek(rules, "gtaw-ac", "aluminium", "16 ga")
    assert "0.051 in" in found.note
    steel = seek(rules, "gtaw-dc", "mild-steel", "16 ga")
    assert "aluminium" not in steel.note


def test_metric_names_of_a_size_find_its_rows(rules: RuleBase) -> None:
    for metric, inch in (("0.9 mm", "0.035 in"), ("1.2 mm", "0.045 in"), ("0.8 mm", "0.030 in")):
        one = seek(rules, "gmaw", "mild-steel", "1/8 in", wire=metric)
        assert one.targets == seek(rules, "gmaw", "mild-steel", "1/8 in", wire=inch).targets
    assert "No numbers" in seek(rules, "gmaw", "mild-steel", "1/8 in", wire="3/32 in").note


@pytest.mark.parametrize(
    ("process", "thickness", "size"),
    [
        ("gmaw", "24 ga", "0.023 in"), ("gmaw", "18 ga", "0.030 in"),
        ("gmaw", "1/8 in", "0.035 in"), ("gmaw", "3/16 in", "0.035 in"),
        ("smaw", "18 ga", "3/32 in"), ("smaw", "1/8 in", "1/8 in"), ("smaw", "1/4 in", "1/8 in"),
        ("gtaw-dc", "16 ga", "1/16 in"), ("gtaw-dc", "1/8 in", "3/32 in"),
    ],
)  # fmt: skip
def test_the_usual_size_is_taken_when_none_is_told(
    rules: RuleBase, process: str, thickness: str, size: str
) -> None:
    assert f"For {size}" in seek(rules, process, "mild-steel", thickness).note


# What people write about wire, rod and gas


@pytest.mark.parametrize(
    ("text", "size", "name"),
    [
        ("1/8 in 6013", 3.175, "6013"),
        ("E7018 1/8", 3.175, "E7018"),
        ("3.2 mm 7018-1 H4R", 3.2, "7018-1"),
        ("0.035 in ER70S-6", 0.889, "ER70S-6"),
        ("0.030 e71t-gs", 0.762, "E71T-GS"),
        ("6013", None, "6013"),
        ("1/8 in", 3.175, ""),
        ("brand new", None, ""),
        ("", None, ""),
    ],
)
def test_size_and_class_are_found_in_a_text(text: str, size: float | None, name: str) -> None:
    found, said = read(text)
    assert (found.value if found else None) == (pytest.approx(size) if size else None)
    assert said == name


def test_a_class_is_known_with_or_without_its_letters() -> None:
    assert same_class("6011", "E6010/E6011")
    assert same_class("e7018-1", "E7018")
    assert same_class("70S-6", "ER70S-6")
    assert not same_class("E71T-1", "E71T-11/E71T-GS")
    assert not same_class("6010", "E6013")


def test_a_gas_is_known_by_any_of_its_names() -> None:
    listed = ("C25", "75 Ar 25 CO2", "75/25")
    for text in ("c25", "75 % argon, 25 % CO2", "argon/CO2 75/25", "75/25 mix", ""):
        assert same_gas(text, listed), text
    assert not same_gas("argon", listed)
    assert same_gas("100 % carbon dioxide", ("CO2",))


@given(st.text(max_size=200))
def test_any_text_about_a_consumable_is_taken_calmly(text: str) -> None:
    size, name = read(text)
    assert size is None or size.kind == "length"
    assert name.isascii()
    assert isinstance(same_gas(text, ("C25",)), bool)
