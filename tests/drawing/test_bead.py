"""The drawing of a bead: whatever is asked for fits, is the same twice, and can be seen."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.beadforms import BEAD
from weldwhy.drawing import bead as drawing
from weldwhy.drawing.beadgas import spots
from weldwhy.drawing.beadparts import Bead, read
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import sound
from weldwhy.drawing.letters import letters_of
from weldwhy.drawing.paints import PAINTS
from weldwhy.shape import Key, Shape

Parts = dict[str, Any]

DRAWN = frozenset(PAINTS) - {"allowed", "elsewhere"}
SOUND = read({})
NEEDS: dict[str, Parts] = {
    "pore_count": {"pores": "scattered"},
    "pore_size": {"pores": "scattered"},
    "uneven": {"joint": "fillet"},
    "unfused": {"runs": 3.0},
    "crack_too": {"crack": "across"},
}
"""What a parameter is a part of, and says nothing without."""
DETAILS = {"pore_count", "pore_size"}
"""What only a large picture has the dots for."""


def _values(key: Key) -> list[Any]:
    """Every word of a parameter, or the ends of its range."""
    assert isinstance(key.shape, Shape)
    schema = key.shape.schema
    if "enum" in schema:
        words = schema["enum"]
        return [True, False] if True in words else list(words)
    return [schema["minimum"], schema["maximum"]]


def _legal(key: Key) -> st.SearchStrategy[Any]:
    assert isinstance(key.shape, Shape)
    schema = key.shape.schema
    if "enum" in schema:
        return st.sampled_from(_values(key))
    return st.floats(schema["minimum"], schema["maximum"])


LEGAL = st.fixed_dictionaries({}, optional={key.name: _legal(key) for key in BEAD.keys})
EVERY = [
    (key.name, value)
    for key in BEAD.keys
    for value in _values(key)
    if value != getattr(SOUND, key.name) and (key.name, value) != ("crack_too", "across")
]


def painted(parts: Parts, width: int, height: int) -> Canvas:
    canvas = Canvas(width, height)
    drawing.paint(canvas, parts)
    return canvas


@given(LEGAL, st.integers(1, 200), st.integers(1, 60))
def test_any_legal_bead_is_painted_at_any_size_inside_it_and_the_same_twice(
    parts: Parts, width: int, height: int
) -> None:
    canvas = painted(parts, width, height)
    assert [len(row) for row in canvas.halves] == [width] * (2 * height)
    assert {paint for row in canvas.halves for paint in row} <= {*DRAWN, ""}
    assert all(0 <= x < width and 0 <= y < height for x, y in canvas.signs)
    again = painted(parts, width, height)
    assert (again.halves, again.signs) == (canvas.halves, canvas.signs)


@pytest.mark.parametrize(("name", "value"), EVERY)
@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_every_word_of_every_parameter_can_be_seen(
    name: str, value: Any, size: tuple[int, int]
) -> None:
    if name in DETAILS and size != (78, 20):
        return
    base = NEEDS.get(name, {})
    without, told = painted(base, *size), painted({**base, name: value}, *size)
    assert told.halves != without.halves


def test_the_rules_can_say_everything_that_can_be_drawn_and_nothing_else() -> None:
    assert {key.name for key in BEAD.keys} == {field.name for field in fields(Bead)}


@pytest.mark.parametrize("of", ["", *drawing.SOUND])
@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_a_sound_bead_shows_nothing_of_a_fault(of: str, size: tuple[int, int]) -> None:
    canvas = sound(of, *size)
    paints = {paint for row in canvas.halves for paint in row}
    assert {"weld", "plate", "heat"} <= paints
    assert not paints & {"slag", "hot", "tint"}
    # only the joint itself, before and behind the bead and under a fillet, is open
    holes = sum(row.count("hole") for row in canvas.halves)
    assert holes < 0.03 * size[0] * 2 * size[1]


@given(st.integers(24, 70), st.integers(12, 40))
def test_a_sound_bead_has_even_edges(width: int, height: int) -> None:
    canvas = sound("plate", width, height)
    row = canvas.halves[max(range(2 * height), key=lambda y: canvas.halves[y].count("weld"))]
    weld = [x for x, paint in enumerate(row) if paint in ("weld", "ripple")]
    assert weld == list(range(weld[0], weld[-1] + 1))


@pytest.mark.parametrize("where", ["scattered", "start", "ends"])
def test_a_smaller_picture_shows_the_same_pores_only_fewer(where: str) -> None:
    bead = read({"pores": where, "pore_count": "many"})
    few, many = spots(bead, 20, 2.5), spots(bead, 200, 20)
    assert len(few) < len(many)
    assert set(few) <= set(many)


@pytest.mark.parametrize("word", ["from above", "cut through"])
def test_a_large_picture_says_which_view_is_which_and_a_small_one_does_not(word: str) -> None:
    assert any(word in line for line in letters_of(painted({}, 78, 20)))
    assert not any(word in line for line in letters_of(painted({}, 40, 12)))


def test_a_root_is_shown_from_behind() -> None:
    assert letters_of(painted({"seen": "behind"}, 78, 20))[0] == "from behind"


def test_a_groove_beside_the_bead_is_told_in_letters_too() -> None:
    undercut = letters_of(painted({"undercut": "left"}, 40, 12))
    sound_one = letters_of(painted({}, 40, 12))
    assert (
        sum(line.count("o") for line in undercut) > sum(line.count("o") for line in sound_one) + 20
    )
