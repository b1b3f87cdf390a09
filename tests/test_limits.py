"""Targets never leave what the machine reaches, and it is said what to change."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.machines import LITTLE, MUCH, RULES, WHOLE, made
from tests.replay import shipped_rules

from weldwhy.limits import fit
from weldwhy.machine import limit
from weldwhy.model import Machine, Window
from weldwhy.units import Quantity, Target, parse, parse_target, show_target
from weldwhy.windows import Found, find

WINDOW = Window("w", "w", ("gmaw",), ("mild-steel",), "wire", "common practice")
MACHINE = made(WHOLE)  # 13 to 24 V, 60 ipm to 12 m/min, 30 to 180 A; stick 20 to 160 A


def _found(**targets: str) -> Found:
    kinds = {"volts": "voltage", "wire_feed": "feed", "amps": "current", "gas_flow": "flow"}
    return Found(WINDOW, {n: parse_target(t, kinds[n]) for n, t in targets.items()}, "a note")


def _volts(text: str) -> Quantity:
    return parse(text, "voltage")


def test_the_wire_feed_falls_with_the_amps_that_a_machine_lacks() -> None:
    found = _found(amps="200 A (180-220)", wire_feed="400 ipm (350-450)")
    held = fit(RULES, found, MACHINE, "gmaw").targets["wire_feed"]
    assert show_target(held) == "360 ipm (315-405)"


def test_a_target_within_reach_stays_as_it_is() -> None:
    found = _found(volts="18.5 V (17.5-19.5)", wire_feed="250 ipm (220-280)")
    assert fit(RULES, found, MACHINE, "gmaw") == found


@pytest.mark.parametrize(
    ("process", "target", "wanted"),
    [
        ("gmaw", "170 A (150-190)", "170 A (150-180)"),
        ("smaw", "155 A (140-175)", "155 A (140-160)"),
        ("smaw", "165 A (140-190)", "160 A (140-160)"),
        ("smaw", "22 A (10-40)", "22 A (20-40)"),
    ],
)
def test_the_part_that_a_machine_does_not_reach_is_cut_off_without_a_word(
    process: str, target: str, wanted: str
) -> None:
    held = fit(RULES, _found(amps=target), MACHINE, process)
    assert show_target(held.targets["amps"]) == wanted
    assert held.beyond == {}


@pytest.mark.parametrize(
    ("target", "wanted", "sentence"),
    [
        ("27 V (26-28)", "24 V (24-24)", f"This machine ends at 24 V; {LITTLE}"),
        ("24.5 V (24.5-24.5)", "24 V (24-24)", f"This machine ends at 24 V; {LITTLE}"),
        ("27 V (23-31)", "24 V (23-24)", f"This machine ends at 24 V; {LITTLE}"),
        ("11 V (10-12)", "13 V (13-13)", f"This machine starts at 13 V; {MUCH}"),
    ],
)
def test_out_of_reach_the_nearest_value_is_kept_and_it_is_said_what_to_change(
    target: str, wanted: str, sentence: str
) -> None:
    held = fit(RULES, _found(volts=target), MACHINE, "gmaw")
    assert show_target(held.targets["volts"]) == wanted
    assert held.beyond == {"volts": sentence}


def test_where_the_rules_say_nothing_to_change_only_the_end_is_told() -> None:
    held = fit(RULES, _found(amps="300 A (280-320)"), MACHINE, "gmaw")
    assert held.beyond == {"amps": "This machine ends at 180 A."}


def test_the_end_is_told_in_the_units_asked_for_and_the_target_keeps_its_own() -> None:
    held = fit(RULES, _found(wire_feed="700 ipm (650-750)"), MACHINE, "gmaw", "in")
    assert held.beyond["wire_feed"].startswith("This machine ends at 470 ipm")
    assert held.targets["wire_feed"].best.unit == "ipm"
    told = fit(RULES, _found(wire_feed="700 ipm (650-750)"), MACHINE, "gmaw")
    assert told.beyond["wire_feed"].startswith("This machine ends at 12 m/min")


def test_nothing_is_claimed_of_a_setting_that_the_machine_says_nothing_of() -> None:
    found = _found(gas_flow="25 cfh (20-30)", amps="900 A (800-1000)")
    assert fit(RULES, found, Machine("x", "x", ("gmaw",)), "gmaw") == found
    assert fit(RULES, found, MACHINE, "gmaw").targets["gas_flow"] == found.targets["gas_flow"]


def test_what_was_beyond_before_is_still_told() -> None:
    found = replace(_found(volts="27 V (26-28)"), beyond={"amps": "so it is"})
    assert fit(RULES, found, MACHINE, "gmaw").beyond.keys() == {"amps", "volts"}


@st.composite
def _targets(draw: st.DrawFn) -> Target:
    low, best, high = sorted(draw(st.tuples(*[st.floats(0.5, 400.0)] * 3)))
    return Target(*(Quantity("current", value, "A") for value in (low, best, high)))


@given(_targets(), st.sampled_from(["gmaw", "smaw"]))
def test_a_held_target_is_in_order_inside_the_limits_and_holding_it_again_changes_nothing(
    target: Target, process: str
) -> None:
    ends = limit(MACHINE, process, "amps")
    assert ends is not None
    held = fit(RULES, Found(WINDOW, {"amps": target}, ""), MACHINE, process)
    inside = held.targets["amps"]
    values = [q.value for q in (inside.low, inside.best, inside.high)]
    assert ends[0].value <= values[0] <= values[1] <= values[2] <= ends[1].value
    assert fit(RULES, held, MACHINE, process) == held


@given(_targets())
def test_the_best_place_moves_only_if_the_machine_does_not_reach_it(target: Target) -> None:
    held = fit(RULES, Found(WINDOW, {"amps": target}, ""), MACHINE, "gmaw")
    reached = 30 <= target.best.value <= 180
    assert (held.targets["amps"].best == target.best) == reached
    if reached:
        assert held.beyond == {}


@given(_targets())
def test_a_target_that_lies_outside_as_a_whole_is_always_told(target: Target) -> None:
    held = fit(RULES, Found(WINDOW, {"amps": target}, ""), MACHINE, "gmaw")
    if target.low.value > 180 or target.high.value < 30:
        assert "amps" in held.beyond


def test_every_setting_that_a_shipped_machine_limits_says_what_to_change() -> None:
    rules = shipped_rules()
    limited = {name for machine in rules.machines.values() for name in machine.limits}
    for name in limited:
        assert rules.settings[name].too_little
        assert rules.settings[name].too_much


def test_heavy_plate_with_a_thick_rod_on_the_default_machine_says_what_to_change() -> None:
    rules = shipped_rules()
    settings = {"rod": parse("3/16 in", "length")}
    found = find(rules, "smaw", "mild-steel", parse("1/2 in", "length"), settings, "")
    assert found is not None
    assert found.targets["amps"].best.value > 160
    held = fit(rules, found, next(iter(rules.machines.values())), "smaw")
    assert held.targets["amps"].best.value == 160
    assert held.beyond["amps"].startswith("This machine ends at 160 A; take a smaller rod")


def test_a_machine_that_reaches_only_the_low_part_of_a_range_is_said_to_end_there() -> None:
    narrow = Machine("x", "x", ("gmaw",), limits={"volts": (_volts("22 V"), _volts("23 V"))})
    held = fit(RULES, _found(volts="27 V (20-34)"), narrow, "gmaw")
    assert held.beyond == {"volts": f"This machine ends at 23 V; {LITTLE}"}


def test_a_sentence_of_before_is_not_said_anew() -> None:
    found = replace(_found(volts="27 V (26-28)"), beyond={"volts": "so it is"})
    assert fit(RULES, found, MACHINE, "gmaw").beyond == {"volts": "so it is"}
