"""The drawings that show no bead: wire path, tungsten, rod, arc, circuit, gas."""

from __future__ import annotations

from itertools import combinations, groupby

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.drawing import arc, circuit, gasline, rod, tools, tungsten, wirepath
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import PAINTERS
from weldwhy.drawing.letters import letters_of
from weldwhy.drawing.paints import PAINTS
from weldwhy.drawing.sketch import Sketch
from weldwhy.sceneforms import SCENES
from weldwhy.shape import Key, Keys, Shape

Parts = dict[str, float | str]

DRAWN = frozenset(PAINTS) - {"allowed", "elsewhere"}
"""The paints of drawings; the other two are those of operating windows."""
FORMS: dict[str, Keys] = {key.name: key.shape for key in SCENES if isinstance(key.shape, Keys)}


def _words(key: Key) -> list[str]:
    assert isinstance(key.shape, Shape)
    return list(key.shape.schema.get("enum", ()))


def _values(key: Key) -> st.SearchStrategy[float | str]:
    assert isinstance(key.shape, Shape)
    words = _words(key)
    if words:
        return st.sampled_from(words)
    schema = key.shape.schema
    return st.floats(schema["minimum"], schema["maximum"])


def _parts(form: Keys) -> st.SearchStrategy[Parts]:
    must = {key.name: _values(key) for key in form.keys if key.required}
    may = {key.name: _values(key) for key in form.keys if not key.required}
    return st.fixed_dictionaries(must, optional=may)


LEGAL = st.sampled_from(sorted(FORMS)).flatmap(
    lambda name: st.tuples(st.just(name), _parts(FORMS[name]))
)
EVERY: list[tuple[str, Parts]] = [
    (name, {key.name: word})
    for name, form in FORMS.items()
    for key in form.keys
    if key.required
    for word in _words(key)
]
"""Each drawing with each word of what it must be told."""


def painted(name: str, parts: Parts, width: int, height: int) -> Canvas:
    canvas = Canvas(width, height)
    PAINTERS[name](canvas, parts)
    return canvas


@given(LEGAL, st.integers(1, 200), st.integers(1, 60))
def test_any_legal_drawing_fits_any_canvas(
    drawing: tuple[str, Parts], width: int, height: int
) -> None:
    canvas = painted(*drawing, width, height)
    assert [len(row) for row in canvas.halves] == [width] * (2 * height)
    assert {paint for row in canvas.halves for paint in row} <= {"", *DRAWN}
    assert all(0 <= x < width and 0 <= y < height for x, y in canvas.signs)


@given(LEGAL, st.integers(1, 80), st.integers(1, 24))
def test_the_same_is_drawn_twice(drawing: tuple[str, Parts], width: int, height: int) -> None:
    first, again = (painted(*drawing, width, height) for _ in range(2))
    assert (first.halves, first.signs) == (again.halves, again.signs)


def test_every_word_of_the_rules_is_drawn_and_no_other() -> None:
    drawn = {
        "path": set(wirepath.FAULTS),
        "tungsten": {"sound", *tungsten.POINTS},
        "rod": set(rod.STATES),
        "arc": set(arc.STATES),
        "circuit": set(circuit.TROUBLES),
        "gas": set(gasline.TROUBLES),
    }
    told = {name: {w for key in form.keys[:1] for w in _words(key)} for name, form in FORMS.items()}
    assert drawn == told


@pytest.mark.parametrize("name", FORMS)
@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_each_word_gives_its_own_picture(name: str, size: tuple[int, int]) -> None:
    shown = [painted(name, parts, *size).halves for other, parts in EVERY if other == name]
    assert all(one != another for one, another in combinations(shown, 2))


@pytest.mark.parametrize("name", FORMS)
def test_each_word_gives_its_own_picture_in_letters(name: str) -> None:
    shown = [letters_of(painted(name, parts, 38, 10)) for other, parts in EVERY if other == name]
    assert all(one != another for one, another in combinations(shown, 2))


@pytest.mark.parametrize("state", arc.STATES)
def test_an_arc_burns_from_three_different_tools(state: str) -> None:
    gun, torch, stick = (
        painted("arc", {"arc": state, "tool": tool}, 24, 8).halves
        for tool in ("gun", "torch", "rod")
    )
    assert gun != torch != stick != gun
    assert painted("arc", {"arc": state}, 24, 8).halves == gun


@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_where_no_spark_jumps_the_gap_is_empty(size: tuple[int, int]) -> None:
    halves = painted("arc", {"arc": "no spark", "tool": "torch"}, *size).halves
    left = [row[: size[0] // 2] for row in halves]
    assert not any("hot" in row or "hole" in row for row in left)
    tungsten = [y for y, row in enumerate(left) if "weld" in row]
    plate = [y for y, row in enumerate(left) if "plate" in row]
    assert min(plate) - max(tungsten) > 2
    assert any("hot" in row and "hole" in row for row in halves)


@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_gas_that_will_not_stop_streams_with_no_arc(size: tuple[int, int]) -> None:
    canvas = painted("gas", {"trouble": "will not stop"}, *size)
    paints = [paint for row in canvas.halves for paint in row]
    assert paints.count("tint") > len(paints) * 0.04
    assert "hot" not in paints


@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_two_lit_figures_stand_apart_on_a_dark_display(size: tuple[int, int]) -> None:
    rows = painted("circuit", {"trouble": "fan or display"}, *size).halves
    lit = [any(row[x] == "hot" for row in rows) for x in range(size[0])]
    assert [on for on, _ in groupby(lit)].count(True) == 2
    for y, row in enumerate(rows):
        for x, paint in enumerate(row):
            if paint == "hot":
                about = {p for line in rows[y - 1 : y + 2] for p in line[x - 1 : x + 2]}
                assert about <= {"hot", "hole"}


@pytest.mark.parametrize("lit", range(5))
@pytest.mark.parametrize("size", [(24, 8), (40, 12), (78, 20)])
def test_a_level_has_as_many_steps_lit_as_it_is_told(lit: int, size: tuple[int, int]) -> None:
    sketch = Sketch(Canvas(*size))
    tools.level(sketch, 4, 20, lit)
    foot = next(row for row in reversed(sketch.canvas.halves) if any(row))
    steps = [paint for paint, _ in groupby(foot) if paint]
    assert steps == ["hot"] * lit + ["ripple"] * (4 - lit)


def test_a_blunter_point_is_shorter() -> None:
    def narrow(angle: float) -> int:
        rows = painted("tungsten", {"point": "sound", "angle": angle}, 40, 12).halves
        widths = [sum(paint in ("weld", "ripple") for paint in row) for row in rows]
        return sum(0 < width < max(widths) for width in widths)

    assert narrow(20) > narrow(45) > narrow(90)


@pytest.mark.parametrize(("name", "parts"), EVERY)
def test_words_come_only_where_there_is_room(name: str, parts: Parts) -> None:
    signs = painted(name, parts, 24, 8).signs
    letters = "".join(letter for letter, _ in signs.values())
    assert letters in ("", "+-", "0 A", "0", "ONOFF", "OFF")  # what is written on a machine itself


def test_a_sign_stands_on_bare_ground() -> None:
    """On paper letters are printed over paint, on a screen they take its place."""
    for name, parts in EVERY:
        canvas = painted(name, parts, 60, 18)
        for x, y in canvas.signs:
            assert canvas.halves[2 * y][x] == canvas.halves[2 * y + 1][x] == "", (name, parts)
