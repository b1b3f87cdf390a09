"""The drawing of a bead: whatever is asked for fits, is the same twice, and can be seen."""

from __future__ import annotations

from dataclasses import fields
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.beadforms import BEAD
from weldwhy.drawing import bead as drawing
from weldwhy.drawing import beadabove
from weldwhy.drawing.beadgas import spots
from weldwhy.drawing.beadparts import Bead, read
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import sound
from weldwhy.drawing.letters import letters_of
from weldwhy.drawing.paints import PAINTS
from weldwhy.drawing.pane import Pane
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
    assert not paints & {"slag", "hot", "tint", "pale"}
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


def _bare_rows(canvas: Canvas) -> list[int]:
    return [y for y, row in enumerate(canvas.halves) if not any(row)]


def test_a_small_picture_is_all_of_the_view_that_shows_more() -> None:
    above, cut, both = (painted(parts, 24, 8) for parts in ({"more": "above"}, {"more": "cut"}, {}))
    assert all(paint for row in above.halves for paint in row)
    for narrow in ((24, 12), (40, 8)):  # little room one way is little room
        assert all(paint for row in painted({"more": "above"}, *narrow).halves for paint in row)
    assert not any(paint == "ripple" for row in cut.halves for paint in row)
    assert any(0 < y < 15 for y in _bare_rows(both)), "the views are apart"
    assert any(0 < y < 23 for y in _bare_rows(painted({"more": "above"}, 40, 12)))


def test_what_was_heated_through_lies_in_a_closed_furnace() -> None:
    rows = painted({"heat": 3.0, "more": "cut"}, 24, 8).halves
    rim = [*rows[0], *rows[-1], *(row[0] for row in rows), *(row[-1] for row in rows)]
    assert set(rim) == {"ripple"}
    assert all(not row[x] for row in rows for x in (1, -2) if "heat" in row), "it stands clear"
    coils = [y for y, row in enumerate(rows) if "hot" in row]
    part = [y for y, row in enumerate(rows) if "heat" in row]
    assert min(coils) < min(part)
    assert max(coils) > max(part)


def test_powder_is_wiped_off_in_one_stripe_by_a_finger() -> None:
    rows = painted({"dust": "powder", "heat": 0.0, "more": "above"}, 24, 8).halves
    columns = [[row[x] for row in rows] for x in range(1, 23)]
    clean = [x for x, column in enumerate(columns) if "pale" not in column]
    wiped = [x for x in clean if columns[x][-1] == "heat"]
    assert len(wiped) >= 3
    assert wiped == list(range(wiped[0], wiped[-1] + 1))


def test_a_broken_tungsten_stands_clear_of_the_bead_that_its_point_is_in() -> None:
    rows = painted({"specks": "tungsten", "height": 0.3, "more": "cut"}, 24, 8).halves
    face = next(y for y, row in enumerate(rows) if "plate" in row)
    level = [y for y, row in enumerate(rows[:face]) if set(row) <= {"", "ripple"}]
    assert len(level) >= 2, "a gap between them"
    inside = [
        (x, y)
        for y, row in enumerate(rows)
        for x, paint in enumerate(row)
        if paint == "pale" and y > level[-1]
    ]
    heights = [x for x, _ in inside]
    thick = max(heights.count(x) for x in heights)
    assert thick == max(row.count("pale") for row in rows[: level[0]]), "it broke off there"
    for x, y in inside:
        about = {rows[line][at] for line in range(y - 1, y + 2) for at in range(x - 1, x + 2)}
        assert about == {"pale"} or about <= {"pale", "weld", "ripple"}


def test_oxide_skin_runs_from_the_plates_into_the_weld() -> None:
    rows = painted({"specks": "oxide", "more": "cut"}, 24, 8).halves
    face = next(y for y, row in enumerate(rows) if "tint" in row)
    assert rows[face][1] == rows[face][-2] == "tint"
    back = max(y for y, row in enumerate(rows) if row[1])
    assert rows[back][1] == rows[back][-2] == "tint"
    inner = [y for y in range(face + 1, back) if "tint" in rows[y]]
    assert len(inner) > (back - face) / 2


@pytest.mark.parametrize("more", ["above", "cut"])
def test_aluminium_has_its_sign_on_it_once(more: str) -> None:
    for size in ((24, 8), (40, 12), (78, 20)):
        text = "".join(letters_of(painted({"metal": "aluminium", "more": more}, *size)))
        assert text.count("Al") == 1


@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_a_clock_and_frost_stand_clear_of_the_bead(size: tuple[int, int]) -> None:
    rows = painted({"late": True, "more": "cut", "joint": "plate"}, *size).halves
    frost = [(x, y) for y, row in enumerate(rows) for x, paint in enumerate(row) if paint == "tint"]
    hands = [(x, y) for y, row in enumerate(rows) for x, paint in enumerate(row) if paint == "hole"]
    assert min(x for x, _ in frost) > size[0] / 2 > max(x for x, _ in hands)
    for x, y in (*frost, *hands):
        about = {paint for row in rows[y - 1 : y + 2] for paint in row[max(x - 1, 0) : x + 2]}
        assert not about & {"weld", "heat"}


@pytest.mark.parametrize("size", [(24, 8), (40, 9), (90, 20)])
def test_whiskers_are_wires_of_one_thickness_to_their_ends(size: tuple[int, int]) -> None:
    """Four of them at most; metal that hangs in drops has levels that are wide."""
    rows = painted({"seen": "behind", "root": "whiskers", "more": "cut"}, *size).halves
    foot = max(y for y, row in enumerate(rows) if "plate" in row)
    wires = [row.count("weld") for row in rows[foot + 1 :]]
    assert len(wires) > 2
    assert all(0 < count <= 4 for count in wires[1:])


@pytest.mark.parametrize("parts", [{"hollow": 0.9}, {"hollow": 0.9, "joint": "fillet"}])
def test_dashes_show_where_a_face_should_be_that_lies_too_low(parts: Parts) -> None:
    low, flush = (painted({**parts, "hollow": hollow, "more": "cut"}, 24, 8).halves
                  for hollow in (parts["hollow"], 0.0))  # fmt: skip
    assert sum(row.count("ripple") for row in low) > 2
    assert not any("ripple" in row for row in flush)


@given(st.integers(20, 90), st.integers(10, 40))
def test_drops_beside_a_bead_lie_apart_and_on_the_plate(width: int, height: int) -> None:
    run = beadabove.laid(read({"spatter": "much"}), Pane(width, height))
    found = beadabove.drops(run, 30, 1, 3.0, 1.0)
    assert found
    for one, other in combinations(found, 2):
        assert max(abs(one[0] - other[0]), abs(one[1] - other[1])) >= 3
    for x, y, _ in found:
        at = min(max(round(x) - run.first, 0), run.length)
        assert not run.tops[at] < y < run.bottoms[at]


def test_a_root_is_shown_from_behind() -> None:
    assert letters_of(painted({"seen": "behind"}, 78, 20))[0] == "from behind"


def test_a_groove_beside_the_bead_is_told_in_letters_too() -> None:
    undercut = letters_of(painted({"undercut": "left"}, 40, 12))
    sound_one = letters_of(painted({}, 40, 12))
    assert (
        sum(line.count("o") for line in undercut) > sum(line.count("o") for line in sound_one) + 20
    )
