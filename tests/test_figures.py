"""What the start values come to, in words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.test_setup import ABLE, RULES, STRONG, case, made

from weldwhy.figures import heat
from weldwhy.model import DutyPoint
from weldwhy.setup import plan


def test_the_wire_used_is_what_is_fed_while_the_gun_goes_a_metre() -> None:
    found = made("gmaw", "mild-steel", "3 mm", wire="0.9 mm")
    told = {each.name: each.text for each in found.figures}
    metres_a_second = found.targets["wire_feed"].best.value / 60
    seconds = 1000 / found.targets["travel"].best.value
    assert told["wire used"] == f"{metres_a_second * seconds:.1f} m of wire in a metre of weld"


def test_the_heat_input_is_the_process_factor_times_power_over_speed() -> None:
    found = made("gmaw", "mild-steel", "3 mm", wire="0.9 mm").targets
    volts, amps, travel = (found[name].best.value for name in ("volts", "amps", "travel"))
    wanted = 0.8 * volts * amps / travel / 1000
    assert heat(RULES, "gmaw", found) == pytest.approx(wanted)


def test_preheat_is_told_as_none_or_as_a_least_temperature() -> None:
    def warm(grade: str, thickness: str) -> str:
        found = made("gmaw", "mild-steel", thickness, grade=grade)
        return {each.name: each.text for each in found.figures}["preheat"]

    assert warm("a36", "1/8 in").startswith("none, if the metal is not colder than")
    assert " or more, all round the joint; no hotter than " in warm("1045", "1 in")


def test_amps_above_the_rated_ones_are_warned_of_beside_the_duty_cycle() -> None:
    rated = replace(STRONG, duty=(DutyPoint(10, 100),))
    told = case("mild-steel", "3 mm", wire="0.9 mm")
    found = {f.name: f.text for f in plan(RULES, told, rated, "gmaw").figures}["duty cycle"]
    assert "125 A is above the rated 100 A: do not use the machine so" in found


def test_heat_input_is_told_in_the_units_asked_for() -> None:
    for system, unit in (("in", "kJ/in"), ("mm", "kJ/mm")):
        found = plan(RULES, case("mild-steel", "1/8 in"), ABLE, "gmaw", system).figures
        (text,) = [each.text for each in found if each.name == "heat input"]
        assert text.endswith(unit)
