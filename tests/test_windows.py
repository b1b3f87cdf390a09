"""The operating windows: what is common practice, and what follows from formulas.

What publications say of them is in tests/test_published_settings.py.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy import rulebase, units
from weldwhy.arithmetic.melting import melting_feed
from weldwhy.consumables import read, same_class
from weldwhy.model import JOINTS, POSITIONS, RuleBase, Window, WindowRow
from weldwhy.units import Quantity, Target, parse
from weldwhy.windowrows import targets_from_rows
from weldwhy.windows import Found, distance, find


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
        ("gmaw", "stainless", "indoors", 25, 40),
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


@pytest.mark.parametrize(
    ("window", "volts"), [("mig-steel-short-co2", 2), ("mig-steel-short-c10", -0.5)]
)
def test_the_gas_changes_the_volts_and_nothing_else(
    rules: RuleBase, window: str, volts: float
) -> None:
    mixed, other_gas = (rules.windows[name].rows for name in ("mig-steel-short-c25", window))
    for one, other in zip(mixed, other_gas, strict=True):
        assert (one.thickness, one.size) == (other.thickness, other.size)
        assert other.targets["volts"].best.value - one.targets["volts"].best.value == volts
        for name in ("wire_feed", "amps", "travel"):
            assert other.targets[name] == one.targets[name]


# Formulas

SHORT = ("mig-steel-short-c25", "mig-steel-short-co2", "mig-steel-short-c10")
MELTING = [
    ("mig-steel-short-c25", "solid-steel", 9.5),
    ("mig-steel-short-co2", "solid-steel", 9.5),
    ("mig-steel-short-c10", "solid-steel", 9.5),
    ("mig-steel-spray", "solid-steel", 13),
    ("mig-stainless-short-trimix", "solid-stainless", 9.5),
    ("mig-stainless-short-c2", "solid-stainless", 9.5),
    ("mig-aluminium-argon", "aluminium", 12.7),
]
"""Windows whose wire feed follows the melting law: the wire, and millimetres of stick-out."""
FEED_STEP = 5.0
"""Inches a minute: the step that wire feed is shown in."""


def melted(rules: RuleBase, wire: str, amps: float, size: float, reach: float) -> float:
    """Wire melted, in ipm, by the constants of the rules."""
    table = rules.tables["melting"]
    alpha, beta = table.value(wire, "alpha"), table.value(wire, "beta")
    return melting_feed(amps, size, reach, alpha, beta) / 0.0254


@pytest.mark.parametrize(
    ("window", "base"), [("mig-steel-short-c25", 14.0), ("mig-steel-short-c10", 13.5)]
)
def test_short_circuit_volts_follow_the_amps(rules: RuleBase, window: str, base: float) -> None:
    """14 + 0.042 A, within 1.5 V, for argon with 25 % CO2; half a volt less with less CO2."""
    for _, row in rows(rules, window):
        amps, volts = row.targets["amps"].best.value, row.targets["volts"]
        assert volts.best.value == pytest.approx(base + 0.042 * amps, abs=0.5)
        assert volts.high.value - volts.best.value == volts.best.value - volts.low.value == 1.5


@pytest.mark.parametrize(("window", "wire", "reach"), MELTING)
def test_wire_feed_melts_at_the_amps_given(
    rules: RuleBase, window: str, wire: str, reach: float
) -> None:
    """Within 15 % at the best place, 20 % at the ends; the law and constants are from memory."""
    for _, row in rows(rules, window):
        assert row.size is not None
        if window == "mig-steel-spray" and row.size.value > 1.5:
            continue  # the feed of these rows is a published one
        for end, slack in (("low", 0.2), ("best", 0.15), ("high", 0.2)):
            amps = getattr(row.targets["amps"], end).value
            feed = units.convert(getattr(row.targets["wire_feed"], end), "ipm")
            law = melted(rules, wire, amps, row.size.value, reach)
            assert feed == pytest.approx(law, rel=slack), row


def test_between_rows_a_straight_line_is_as_good_as_the_melting_law(rules: RuleBase) -> None:
    """Amps go straight from row to row. Where the law says other than the straight line of the
    feed between the same two ends, that is less than half a step of the dial."""
    largest = 0.0
    for window, wire, reach in MELTING:
        sizes: dict[float, list[WindowRow]] = {}
        for _, row in rows(rules, window):
            assert row.size is not None
            sizes.setdefault(row.size.value, []).append(row)
        for size, stairs in sizes.items():
            amps = sorted(row.targets["amps"].best.value for row in stairs)
            for one, other in pairwise(amps):
                ends = (melted(rules, wire, x, size, reach) for x in (one, other))
                law = melted(rules, wire, (one + other) / 2, size, reach)
                largest = max(largest, abs(sum(ends) / 2 - law))
    assert 0 < largest < FEED_STEP / 2


@pytest.mark.parametrize("window", SHORT)
def test_up_to_an_eighth_the_amps_keep_to_the_rule_of_thumb(rules: RuleBase, window: str) -> None:
    """1.0 to 1.6 A for each 0.001 in: a part of every range lies in it."""
    for _, row in rows(rules, window):
        assert row.thickness is not None
        thousandths = row.thickness.value / 0.0254
        if thousandths <= 125:
            low, _, high = bounds(row.targets["amps"], "A")
            assert low <= 1.6 * thousandths
            assert high >= thousandths


def test_wider_gasless_wire_lays_down_as_much_as_narrow(rules: RuleBase) -> None:
    laid: dict[float, list[float]] = {}
    for _, row in rows(rules, "gasless-steel"):
        assert row.size is not None
        assert row.thickness is not None
        feed = row.targets["wire_feed"].best.value
        laid.setdefault(row.thickness.value, []).append(feed * row.size.value**2)
    for amounts in laid.values():
        assert max(amounts) <= 1.05 * min(amounts)


# Properties

THICK = st.floats(0.5, 15)
SITUATIONS = [
    ("gmaw", "mild-steel"), ("gmaw", "stainless"), ("gmaw", "aluminium"), ("gmaw", ""),
    ("fcaw-s", "mild-steel"), ("fcaw-g", "mild-steel"), ("smaw", "mild-steel"),
    ("gtaw-dc", "mild-steel"), ("gtaw-dc", "stainless"), ("gtaw-ac", "aluminium"), ("gtaw-ac", ""),
    ("smaw", "stainless"), ("smaw", "low-alloy-steel"), ("smaw", "cast-iron"),
    ("gmaw", "copper-alloy"),
]  # fmt: skip
JOINT = st.sampled_from(["", *JOINTS])
POSITION = st.sampled_from(["", *POSITIONS])
GASES = st.sampled_from(["", "C25", "C10", "98/2", "CO2", "98 Ar 2 O2"])
SIZES = [
    "", "0.6 mm", "0.030 in", "0.035 in", "1.0 mm", "0.045 in", "1/16 in", "2.0 mm", "3/32 in",
    "1/8 in",
]  # fmt: skip


@given(
    st.sampled_from(SITUATIONS), THICK, THICK, st.sampled_from(SIZES),
    st.sampled_from(["", "6013", "7018"]), GASES, JOINT, POSITION,
)  # fmt: skip
def test_thicker_metal_of_one_size_never_wants_less(
    rules: RuleBase, situation: tuple[str, str], a: float, b: float, size: str, rod: str,
    gas: str, joint: str, position: str,
) -> None:  # fmt: skip
    """Same wire, rod or tungsten: volts, feed and amps do not fall as the metal gets thicker."""
    thin, thick = (Quantity("length", x, "mm") for x in sorted((a, b)))
    typed = {"wire": size, "tungsten": size, "rod": f"{size} {rod}".strip(), "gas": gas}
    one, other = (
        find(rules, *situation, x, typed, "indoors", joint, position) for x in (thin, thick)
    )
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
    st.sampled_from(["", "indoors", "outdoors", "on the moon"]), JOINT, POSITION,
)  # fmt: skip
def test_any_situation_gets_ordered_finite_targets_and_a_printable_note(
    rules: RuleBase,
    situation: tuple[str, str],
    thickness: float | None,
    typed: dict[str, str],
    place: str,
    joint: str,
    position: str,
) -> None:
    thick = None if thickness is None else Quantity("length", thickness, "mm")
    found = find(rules, *situation, thick, typed, place, joint, position)
    assert found is not None
    assert found.note.isprintable()
    assert found.note.isascii()
    for name, target in found.targets.items():
        assert 0 < target.low.value <= target.best.value <= target.high.value < math.inf
        possible = rules.settings[name].possible
        assert possible is not None
        assert possible[0].value <= target.low.value
        assert target.high.value <= possible[1].value


def test_every_row_is_in_order_and_more_gas_flows_outdoors(rules: RuleBase) -> None:
    for window in rules.windows.values():
        for targets in (window.targets, window.outdoors, *(row.targets for row in window.rows)):
            for target in targets.values():
                assert target.low.value <= target.best.value <= target.high.value
        for name, outdoors in window.outdoors.items():
            for end in ("low", "best", "high"):
                assert getattr(outdoors, end).value >= getattr(window.targets[name], end).value


def test_no_window_or_shift_prints_a_number_without_a_source(rules: RuleBase) -> None:
    named = [w.source for w in rules.windows.values()] + [s.source for s in rules.shifts.values()]
    for cited in named:
        source, _, where = cited.partition(",")
        assert cited == "common practice" or (source in rules.sources and where.strip())


def test_what_is_not_from_a_text_that_was_seen_is_said_to_be_so(rules: RuleBase) -> None:
    """Numbers from memory say "from memory" in their note, or leave the word to the packet."""
    for window in rules.windows.values():
        source = rules.sources.get(window.source.partition(",")[0])
        if source is not None and source.basis == "memory":
            assert "from memory" in window.note, window.id


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
    assert find(rules, "gtaw-dc", "cast-iron", None, {}, "") is None
    assert find(rules, "unheard-of", "", None, {}, "") is None


def test_without_a_thickness_only_what_always_holds_is_given(rules: RuleBase) -> None:
    assert set(seek(rules, "gmaw", "mild-steel").targets) == {"gas_flow", "stick_out"}
    assert "thickness and the wire size" in seek(rules, "gmaw", "mild-steel").note
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


@pytest.mark.parametrize(
    ("gas", "window"),
    [("C20", "mig-steel-short-c25"), ("M21", "mig-steel-short-c25"),
     ("82 Ar 18 CO2", "mig-steel-short-c25"), ("12 % CO2 in argon", "mig-steel-short-c10"),
     ("carbon dioxide", "mig-steel-short-co2"), ("Ar + 2 O2", "mig-steel-spray")],
)  # fmt: skip
def test_a_gas_finds_the_window_of_its_group(rules: RuleBase, gas: str, window: str) -> None:
    found = seek(rules, "gmaw", "mild-steel", "1/4 in", wire="0.035 in", gas=gas)
    assert found.window.id == window
    assert "volts" in found.targets
    assert "Gas not told" not in found.note


def test_a_gas_that_was_not_told_is_assumed_and_said(rules: RuleBase) -> None:
    assert "argon with 25 % CO2 is assumed" in seek(rules, "gmaw", "mild-steel", "1/8 in").note
    assert "Gas not told" not in seek(rules, "gtaw-ac", "aluminium", "1/8 in").note


def test_tri_mix_and_argon_of_one_group_are_not_taken_for_each_other(rules: RuleBase) -> None:
    helium = seek(rules, "gmaw", "stainless", "1/8 in", wire="0.035 in", gas="tri-mix")
    argon = seek(rules, "gmaw", "stainless", "1/8 in", wire="0.035 in", gas="98/2")
    assert rules.gases["trimix"].group == rules.gases["c2"].group
    assert bounds(helium.targets["volts"], "V")[1] - bounds(argon.targets["volts"], "V")[1] == 1.5


def test_plate_beyond_the_short_circuit_rows_is_sprayed_where_the_gas_can(rules: RuleBase) -> None:
    thin, thick = (
        seek(rules, "gmaw", "mild-steel", t, wire="0.035 in", gas="C10")
        for t in ("1/4 in", "3/8 in")
    )
    assert (thin.window.transfer, thick.window.transfer) == ("short circuit", "spray")
    overhead = find(
        rules, "gmaw", "mild-steel", parse("3/8 in", "length"), {"gas": "C10"}, "", "", "overhead"
    )
    assert overhead is not None
    assert overhead.window.transfer == "short circuit"


@pytest.mark.parametrize(
    ("process", "typed"), [("gmaw", {"gas": "98 Ar 2 O2"}), ("smaw", {"rod": "1/8 in 7024"})]
)
def test_what_works_flat_only_gets_no_numbers_overhead(
    rules: RuleBase, process: str, typed: dict[str, str]
) -> None:
    plate = parse("3/8 in", "length")
    flat = find(rules, process, "mild-steel", plate, typed, "", "", "flat")
    overhead = find(rules, process, "mild-steel", plate, typed, "", "", "overhead")
    assert flat is not None
    assert overhead is not None
    assert "amps" in flat.targets
    assert "amps" not in overhead.targets
    assert "flat and horizontal only" in overhead.note


def test_between_two_sizes_the_numbers_lie_between(rules: RuleBase) -> None:
    """1.0 mm gasless wire, where only its neighbours are listed."""
    assert "from the sizes beside it" in seek(rules, "fcaw-s", "", "1/8 in", wire="1.0 mm").note
    assert "No numbers" in seek(rules, "fcaw-s", "", "18 ga", wire="1.0 mm").note
    small, between, big = (
        bounds(seek(rules, "fcaw-s", "mild-steel", "1/8 in", wire=w).targets["wire_feed"], "ipm")
        for w in ("0.9 mm", "1.0 mm", "1.2 mm")
    )
    assert all(s > m > b for s, m, b in zip(small, between, big, strict=True))
    # as much metal laid down: the feed goes by the square of the size
    assert between[1] * 1.0**2 == pytest.approx(small[1] * 0.889**2, rel=0.05)


@pytest.mark.parametrize(
    ("metal", "rod", "window"),
    [("stainless", "1/8 in 308L-16", "stick-stainless"),
     ("cast-iron", "1/8 in ENi-CI", "stick-cast-iron"),
     ("low-alloy-steel", "1/8 in E7018", "stick-low-alloy-7018")],
)  # fmt: skip
def test_rods_for_other_metals_have_their_amps_and_name_the_packet(
    rules: RuleBase, metal: str, rod: str, window: str
) -> None:
    found = seek(rules, "smaw", metal, "3/16 in", rod=rod)
    assert found.window.id == window
    assert "amps" in found.targets
    assert "packet decides" in found.window.note
    assert "No table" not in found.note


def test_hardenable_steel_is_never_given_amps_without_the_word_preheat(rules: RuleBase) -> None:
    for window in rules.windows.values():
        if "low-alloy-steel" in window.materials:
            assert "preheat" in window.note
            assert "procedure" in window.note


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
        ("1/8 in ENi-CI", 3.175, "ENI-CI"),
        ("0.045 in ERCu", 1.143, "ERCU"),
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
    assert same_class("308L-16", "E308L/E309L")
    assert same_class("E316L-17", "E316L")
    assert not same_class("308L", "E309L")
    assert same_class("NiFe-CI", "ENi-CI/ENiFe-CI")


@given(st.text(max_size=200))
def test_any_text_about_a_consumable_is_taken_calmly(text: str) -> None:
    size, name = read(text)
    assert size is None or size.kind == "length"
    assert name.isascii()


@pytest.mark.parametrize("gauge", [16, 14, 12, 10])
def test_a_gauge_of_aluminium_has_the_numbers_of_its_own_thickness(
    rules: RuleBase, gauge: int
) -> None:
    """Aluminium sheet goes by the wire gauge: 0.005 x 92^((36 - n) / 39) in."""
    inches = 0.005 * 92 ** ((36 - gauge) / 39)
    by_gauge = seek(rules, "gmaw", "aluminium", f"{gauge} ga")
    assert by_gauge.targets == seek(rules, "gmaw", "aluminium", f"{inches:.6f} in").targets


def test_nothing_is_worked_out_between_sizes_that_are_far_apart() -> None:
    def between(small: str, large: str) -> dict[str, Target]:
        plate = parse("3 mm", "length")
        amps = {"amps": units.parse_target("100 A (90-110)", "current")}
        lines = tuple(
            WindowRow(parse(thick, "length"), parse(size, "length"), amps)
            for size in (small, large)
            for thick in ("2 mm", "4 mm")
        )
        window = Window("w", "w", ("smaw",), ("mild-steel",), "rod", "common practice", rows=lines)
        return targets_from_rows(window, plate, parse("2.5 mm", "length"), [])

    assert "amps" in between("2 mm", "3.1 mm")
    assert between("2 mm", "4 mm") == {}


def test_a_size_between_two_others_is_worked_out_in_ratios() -> None:
    """Feed falls with the square of the size: 8 m/min at 1 mm and 4 m/min at 1.414 mm are the
    same metal, so half way in ratio, at 1.19 mm, it is 5.66 m/min and not 6."""
    plate, feeds = parse("3 mm", "length"), (("1 mm", "8 m/min"), ("1.414 mm", "4 m/min"))
    lines = tuple(
        WindowRow(
            parse(thick, "length"),
            parse(size, "length"),
            {"wire_feed": Target(*[parse(feed, "feed")] * 3)},
        )
        for size, feed in feeds
        for thick in ("2 mm", "4 mm")
    )
    window = Window("w", "w", ("gmaw",), ("mild-steel",), "wire", "common practice", rows=lines)
    found = targets_from_rows(window, plate, parse("1.189 mm", "length"), [])
    assert found["wire_feed"].best.value == pytest.approx(5.66, abs=0.1)


def test_a_class_without_a_table_is_named_beside_the_one_the_numbers_are_for(
    rules: RuleBase,
) -> None:
    found = seek(rules, "gmaw", "mild-steel", "1/8 in", wire="0.035 in ER80S-D2")
    assert "No table for ER80S-D2: these numbers are for" in found.note
