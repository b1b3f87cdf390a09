"""The canvas: paint stays where it is put, and every sign can be told without colour."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.drawing.canvas import FULL, LOWER, UPPER, Canvas
from weldwhy.drawing.paints import INK, PAINTS
from weldwhy.tui.canvas import rows_of
from weldwhy.tui.page import PicturePage
from weldwhy.tui.rows import DRAWN, ROLES, beside, joined, row

PLACES = st.integers(-40, 80)


def test_halves_of_a_cell_are_painted_apart() -> None:
    canvas = Canvas(4, 1)
    canvas.fill(0, 0, 0, 0, "allowed")
    canvas.fill(1, 1, 1, 1, "allowed")
    canvas.fill(2, 0, 2, 1, "allowed")
    assert rows_of(canvas)[0].spans == ((UPPER + LOWER + FULL, "allowed"), (" ", "text"))


def test_two_paints_in_one_cell_are_named_in_its_role() -> None:
    canvas = Canvas(1, 1)
    canvas.fill(0, 0, 0, 0, "allowed")
    canvas.fill(0, 1, 0, 1, "elsewhere")
    assert rows_of(canvas)[0].spans == ((UPPER, "allowed/elsewhere"),)


def test_letters_need_no_colour() -> None:
    canvas = Canvas(6, 2)
    canvas.fill(1, 0, 4, 3, "elsewhere")
    canvas.fill(2, 1, 3, 2, "allowed")
    canvas.put(2, 1, "X", "strong")
    # where a cell has two paints, the upper one is its letter
    assert joined(rows_of(canvas, letters=True)) == " ::::\n :X#:"
    assert all(
        role in ("text", "strong") for line in rows_of(canvas, True) for _, role in line.spans
    )


@given(PLACES, PLACES, PLACES, PLACES, PLACES, PLACES, st.booleans())
def test_nothing_is_ever_painted_or_written_outside(
    left: int, top: int, right: int, bottom: int, x: int, y: int, letters: bool
) -> None:
    canvas = Canvas(20, 6)
    canvas.fill(left, top, right, bottom, "allowed")
    canvas.put(x, y, "long words", "strong")
    rows = rows_of(canvas, letters)
    assert [line.width for line in rows] == [20] * 6
    assert all(line.text.isascii() for line in rows) or not letters


@given(PLACES, PLACES, PLACES, PLACES)
def test_a_block_is_painted_as_its_dots_one_by_one(
    left: int, top: int, right: int, bottom: int
) -> None:
    block, dotted = Canvas(20, 6), Canvas(20, 6)
    block.fill(left, top, right, bottom, "weld")
    for y in range(top, bottom + 1):
        for x in range(left, right + 1):
            dotted.dot(x, y, "weld")
    assert block.halves == dotted.halves


@given(st.integers(0, 19), st.integers(0, 11), st.integers(0, 19), st.integers(0, 11))
def test_as_much_is_painted_as_was_asked_for(x1: int, y1: int, x2: int, y2: int) -> None:
    left, right, top, bottom = min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2)
    canvas = Canvas(20, 6)
    canvas.fill(left, top, right, bottom, "allowed")
    text = "".join(line.text for line in rows_of(canvas))
    halves = 2 * text.count(FULL) + text.count(UPPER) + text.count(LOWER)
    assert halves == (right - left + 1) * (bottom - top + 1)


def test_every_paint_is_a_role_with_a_style_and_a_letter_of_its_own() -> None:
    assert set(PAINTS) == {"allowed", "elsewhere", *DRAWN} == set(INK)
    assert {"allowed", "elsewhere"} <= set(ROLES)
    assert {f"page--{paint}" for paint in DRAWN} <= PicturePage.COMPONENT_CLASSES
    assert len({PAINTS[paint] for paint in DRAWN}) == len(DRAWN) == 9
    assert PAINTS["allowed"] != PAINTS["elsewhere"]


@pytest.mark.parametrize(("left", "right"), [(3, 1), (1, 3), (2, 2), (0, 2)])
def test_blocks_side_by_side_lose_no_row(left: int, right: int) -> None:
    one, two = [row((f"a{n}", "text")) for n in range(left)], [row(("b", "text"))] * right
    rows = beside(one, two, 6)
    assert len(rows) == max(left, right)
    assert sum("b" in line.text for line in rows) == right
    assert all(line.text.find("b") in (-1, 6) for line in rows)
