"""The pictures that the rules give the symptoms of arc, wire, machine and gas."""

from __future__ import annotations

from itertools import combinations

import pytest
from tests.replay import shipped_rules

from weldwhy.drawing import arc
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import LEAST, picture
from weldwhy.drawing.letters import letters_of
from weldwhy.model import RuleBase

GROUPS = ("arc", "wire", "machine", "gas")
APART = 0.05
"""Least share of the cells in which two pictures differ."""


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    return shipped_rules()


def _ours(rules: RuleBase) -> list[str]:
    return [symptom.id for symptom in rules.symptoms.values() if symptom.group in GROUPS]


def _shown(rules: RuleBase, symptom: str, width: int, height: int, process: str = "") -> Canvas:
    canvas = picture(rules, symptom, width, height, process)
    assert canvas is not None, symptom
    return canvas


def _alike(shown: dict[str, list[str]]) -> list[tuple[str, str]]:
    """Pairs that differ in too few places."""
    return [
        (one, other)
        for one, other in combinations(shown, 2)
        if sum(a != b for a, b in zip(shown[one], shown[other])) < APART * len(shown[one])
    ]


def test_every_symptom_of_these_groups_has_a_picture(rules: RuleBase) -> None:
    without = [name for name in _ours(rules) if name not in rules.pictures]
    assert not without


def test_the_pictures_differ_on_the_smallest_canvas(rules: RuleBase) -> None:
    shown = {
        name: [paint for row in _shown(rules, name, *LEAST).halves for paint in row]
        for name in _ours(rules)
    }
    assert not _alike(shown)


def test_the_pictures_differ_in_letters(rules: RuleBase) -> None:
    shown = {
        name: [sign for line in letters_of(_shown(rules, name, 38, 10)) for sign in line.ljust(38)]
        for name in _ours(rules)
    }
    assert not _alike(shown)


def test_a_picture_is_mostly_made_of_one_drawing_for_its_group(rules: RuleBase) -> None:
    drawings = {
        "arc": {"arc", "rod", "tungsten"},
        "wire": {"path"},
        "machine": {"circuit"},
        "gas": {"gas"},
    }
    for name in _ours(rules):
        assert rules.pictures[name].draws in drawings[rules.symptoms[name].group], name


def test_a_look_alike_is_met_in_a_process_of_the_picture(rules: RuleBase) -> None:
    """Whoever welds in no process of the symptom is not shown its picture."""
    for name in _ours(rules):
        mine = set(rules.symptoms[name].processes)
        for other in rules.pictures[name].like:
            assert other != name
            assert mine & set(rules.symptoms[other].processes), (name, other)


def test_no_tool_is_drawn_that_the_symptom_is_not_met_with(rules: RuleBase) -> None:
    tools = {"gun": {"gmaw", "fcaw-s", "fcaw-g"}, "torch": {"gtaw-dc", "gtaw-ac"}, "rod": {"smaw"}}
    for name in _ours(rules):
        shown = rules.pictures[name]
        if shown.draws == "arc":
            processes = tools[str(shown.parts.get("tool", "gun"))]
            assert processes & set(rules.symptoms[name].processes), name


@pytest.mark.parametrize(
    ("process", "tool"), [("smaw", "rod"), ("gmaw", "gun"), ("fcaw-s", "gun"), ("gtaw-dc", "torch")]
)
def test_an_arc_burns_from_what_is_in_the_hand_in_the_process(
    rules: RuleBase, process: str, tool: str
) -> None:
    wanted = Canvas(40, 12)
    arc.paint(wanted, {"arc": "stuttering", "tool": tool})
    assert _shown(rules, "arc-stutters", 40, 12, process).halves == wanted.halves


def test_a_process_that_a_symptom_is_not_met_in_changes_nothing(rules: RuleBase) -> None:
    usual, other = (_shown(rules, "wire-stubs", 40, 12, process) for process in ("", "smaw"))
    assert usual.halves == other.halves


@pytest.mark.parametrize("size", [LEAST, (40, 12), (78, 20)])
def test_what_is_dark_lies_on_something_or_the_dark_page_would_swallow_it(
    rules: RuleBase, size: tuple[int, int]
) -> None:
    for name in rules.pictures:
        halves = _shown(rules, name, *size).halves
        for spot in _dark_spots(halves):
            about = [halves[y][x] for at in spot for x, y in _beside(*at, halves)]
            bare = about.count("")
            assert len(spot) < 3 or bare <= (len(about) - about.count("hole")) / 2, (name, spot)


def _beside(x: int, y: int, halves: list[list[str]]) -> list[tuple[int, int]]:
    """The up to eight half cells around one."""
    return [
        (column, row)
        for row in range(max(y - 1, 0), min(y + 2, len(halves)))
        for column in range(max(x - 1, 0), min(x + 2, len(halves[0])))
        if (column, row) != (x, y)
    ]


def _dark_spots(halves: list[list[str]]) -> list[set[tuple[int, int]]]:
    """Holes, cracks and gaps, each as its half cells."""
    left = {
        (x, y) for y, row in enumerate(halves) for x, paint in enumerate(row) if paint == "hole"
    }
    found = []
    while left:
        spot, edge = set[tuple[int, int]](), [left.pop()]
        while edge:
            spot.add(at := edge.pop())
            touched = left.intersection(_beside(*at, halves))
            left -= touched
            edge += touched
        found.append(spot)
    return found


def test_without_room_or_without_a_picture_there_is_none(rules: RuleBase) -> None:
    assert picture(rules, "burnback", LEAST[0] - 1, LEAST[1]) is None
    assert picture(rules, "burnback", LEAST[0], LEAST[1] - 1) is None
    assert picture(rules, "no-such-symptom", 40, 12) is None
