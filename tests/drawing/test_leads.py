"""The drawn hook-up agrees with the words of the set-ups and of the processes."""

from __future__ import annotations

import re

import pytest
from tests.replay import shipped_rules

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import LEAST, hookup
from weldwhy.drawing.leads import FRONT, LOWER, SIGNS, UPPER
from weldwhy.drawing.letters import letters_of
from weldwhy.drawing.sketch import Sketch
from weldwhy.hookup import polarity
from weldwhy.model import RuleBase

PROCESSES = ("gmaw", "fcaw-s", "fcaw-g", "smaw", "gtaw-dc", "gtaw-ac")
SIZES = (LEAST, (38, 10), (40, 12), (60, 16), (78, 20))


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    return shipped_rules()


def _shown(rules: RuleBase, process: str, size: tuple[int, int] = (40, 12)) -> Canvas:
    canvas = hookup(rules, process, *size)
    assert canvas is not None
    return canvas


@pytest.mark.parametrize("process", PROCESSES)
def test_what_is_on_each_terminal_is_said_as_in_the_set_up(rules: RuleBase, process: str) -> None:
    setup = rules.setups[process]
    drawn = "\n".join(letters_of(_shown(rules, process)))
    said = dict(re.findall(r"(gun|torch|rod holder|clamp) ([-+~])", drawn))
    assert said == {setup.holder: SIGNS[setup.gun], "clamp": SIGNS[setup.clamp]}


@pytest.mark.parametrize("process", PROCESSES)
def test_the_signs_mean_what_the_words_of_the_process_say(rules: RuleBase, process: str) -> None:
    setup = rules.setups[process]
    words = polarity(setup.holder, setup.gun)
    kind = {"+": "(DCEP)", "-": "(DCEN)", "~": "(AC)"}[SIGNS[setup.gun]]
    assert kind in words
    told = rules.processes[process].polarity
    assert kind in told or "Alternating current" in told


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("process", PROCESSES)
def test_each_lead_has_the_same_sign_at_both_ends(
    rules: RuleBase, process: str, size: tuple[int, int]
) -> None:
    """The clamp's sign is the lowest on the plate's side, the gun's is the one farthest right."""
    setup = rules.setups[process]
    signs = _shown(rules, process, size).signs
    marks = [(x, y, sign) for (x, y), (sign, _) in signs.items() if sign in "+-~"]
    assert len(marks) == 4
    assert max(marks)[2] == SIGNS[setup.gun]
    at_work = [mark for mark in marks if mark[0] > size[0] * 0.6]
    assert max(at_work, key=lambda mark: mark[1])[2] == SIGNS[setup.clamp]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("process", PROCESSES)
def test_the_lead_at_a_terminal_is_the_one_that_its_sign_says(
    rules: RuleBase, process: str, size: tuple[int, int]
) -> None:
    """Right of the front the clamp's lead is painted as copper is, the gun's as outlines are."""
    setup = rules.setups[process]
    canvas = _shown(rules, process, size)
    board = Sketch(canvas)
    leads = {}
    for level in (UPPER, LOWER):
        front, y = map(int, board.at((FRONT + 1, level)))
        marks = [canvas.signs.get((x, y // 2), ("", ""))[0] for x in range(front)]
        leads[canvas.halves[y][front]] = next(mark for mark in marks if mark and mark in "+-~")
    assert leads == {"ripple": SIGNS[setup.gun], "heat": SIGNS[setup.clamp]}


def test_the_leads_cross_where_the_gun_is_on_minus(rules: RuleBase) -> None:
    straight, crossed = _shown(rules, "fcaw-g"), _shown(rules, "fcaw-s")
    assert straight.halves != crossed.halves
    minus = next(y for (_, y), (sign, _) in sorted(crossed.signs.items()) if sign == "-")
    plus = next(y for (_, y), (sign, _) in sorted(crossed.signs.items()) if sign == "+")
    assert plus < minus, "plus stands above minus on the machine, whatever is plugged in"


def test_a_cylinder_stands_by_where_gas_is_used(rules: RuleBase) -> None:
    for process in PROCESSES:
        hose = any("tint" in row for row in _shown(rules, process).halves)
        assert hose == bool(rules.setups[process].gases), process


def test_without_room_or_without_a_set_up_there_is_none(rules: RuleBase) -> None:
    assert hookup(rules, "gmaw", LEAST[0] - 1, LEAST[1]) is None
    assert hookup(rules, "no-such-process", 40, 12) is None
