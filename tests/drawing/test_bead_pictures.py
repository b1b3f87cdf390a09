"""The pictures that the rules give the symptoms seen at the bead itself."""

from __future__ import annotations

from itertools import combinations

import pytest
from tests.replay import shipped_rules

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import LEAST, picture, sound
from weldwhy.drawing.letters import letters_of
from weldwhy.model import RuleBase

GROUPS = ("holes", "shape", "joint", "surface", "crack")
APART = 0.03
"""Least share of the half cells, or of the letters, in which two pictures differ."""


MUTUAL = (
    ("crater-pipe", "crater-crack"), ("overlap", "ropy-bead"), ("porosity", "porosity-in-line"),
    ("cold-crack", "stress-relief-crack"), ("undercut", "underfill"), ("arc-strike", "spatter"),
    ("slag-inclusion", "oxide-inclusion"), ("lack-of-penetration", "lack-of-root-fusion"),
)  # fmt: skip
"""Symptoms of which each is taken for the other."""


BESIDE = ("cold-crack", "stress-relief-crack", "cast-iron-crack", "undercut")
EDGES = ("undercut", "overlap", "underfill", "cold-crack")
"""What shows as a dark line along the bead unless it is drawn with care."""


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    return shipped_rules()


def _ours(rules: RuleBase) -> list[str]:
    return [symptom.id for symptom in rules.symptoms.values() if symptom.group in GROUPS]


def _shown(rules: RuleBase, symptom: str, width: int, height: int) -> Canvas:
    canvas = picture(rules, symptom, width, height)
    assert canvas is not None, symptom
    return canvas


def _signs(canvas: Canvas) -> list[str]:
    return [sign for line in letters_of(canvas) for sign in line.ljust(canvas.width)]


def _paints(canvas: Canvas) -> list[str]:
    return [paint for row in canvas.halves for paint in row]


def _alike(shown: dict[str, list[str]]) -> list[tuple[str, str, float]]:
    """Pairs that differ in too few places, and in which share."""
    shares = (
        (one, other, sum(a != b for a, b in zip(shown[one], shown[other])) / len(shown[one]))
        for one, other in combinations(shown, 2)
    )
    return [pair for pair in shares if pair[2] < APART]


def test_every_symptom_at_the_bead_has_a_picture_of_a_bead(rules: RuleBase) -> None:
    drawn = {name for name, drawing in rules.pictures.items() if drawing.draws == "bead"}
    assert set(_ours(rules)) == drawn


def test_no_two_are_alike_on_the_smallest_canvas_nor_like_a_sound_bead(rules: RuleBase) -> None:
    shown = {name: _paints(_shown(rules, name, *LEAST)) for name in _ours(rules)}
    assert not _alike({**shown, "sound": _paints(sound("", *LEAST))})


@pytest.mark.parametrize("group", [BESIDE, EDGES])
def test_what_is_often_mixed_up_in_small_pictures_differs_in_many_places(
    rules: RuleBase, group: tuple[str, ...]
) -> None:
    shown = {name: _paints(_shown(rules, name, *LEAST)) for name in group}
    for one, other in combinations(group, 2):
        differ = sum(a != b for a, b in zip(shown[one], shown[other]))
        assert differ > 0.12 * len(shown[one]), (one, other)


def test_no_two_are_alike_in_letters(rules: RuleBase) -> None:
    shown = {name: _signs(_shown(rules, name, 38, 10)) for name in _ours(rules)}
    assert not _alike({**shown, "sound": _signs(sound("", 38, 10))})


def test_no_picture_names_its_fault(rules: RuleBase) -> None:
    for name in _ours(rules):
        words = {word for _, word in _words(_shown(rules, name, 78, 20))}
        assert words <= {"from above", "from behind", "cut through", "broken open", "Al"}


def _words(canvas: Canvas) -> list[tuple[int, str]]:
    lines: dict[int, dict[int, str]] = {}
    for (x, y), (letter, _) in canvas.signs.items():
        lines.setdefault(y, {})[x] = letter
    found = []
    for y, line in lines.items():
        text = "".join(line.get(x, " ") for x in range(canvas.width))
        found += [(y, word) for word in text.split("  ") if word.strip()]
    return [(y, word.strip()) for y, word in found]


def test_a_look_alike_is_another_symptom_met_with_a_process_in_common(rules: RuleBase) -> None:
    for name in _ours(rules):
        for other in rules.pictures[name].like:
            assert other != name
            shared = set(rules.symptoms[name].processes) & set(rules.symptoms[other].processes)
            assert shared, (name, other)


def test_nobody_picks_a_look_alike_more_often_than_the_right_picture(rules: RuleBase) -> None:
    """The picture of a symptom is picked by 85 of 100 who have it."""
    for name in _ours(rules):
        assert all(0 < chance < 0.85 for chance in rules.pictures[name].like.values()), name


def test_a_look_alike_that_looks_the_other_way_too_is_named_there(rules: RuleBase) -> None:
    for one, other in MUTUAL:
        assert other in rules.pictures[one].like
        assert one in rules.pictures[other].like
