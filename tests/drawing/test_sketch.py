from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import HIGH, WIDE, WORDY, Sketch

SIZES = st.tuples(st.integers(4, 120), st.integers(2, 40))


def _columns(canvas: Canvas) -> list[int]:
    return [x for row in canvas.halves for x, paint in enumerate(row) if paint]


@given(SIZES)
def test_the_board_is_as_large_as_fits_and_in_the_middle(size: tuple[int, int]) -> None:
    sketch = Sketch(Canvas(*size))
    left, top = sketch.at((0, 0))
    right, bottom = sketch.at((WIDE, HIGH))
    assert abs(left + right - size[0]) < 1e-6
    assert abs(top + bottom - 2 * size[1]) < 1e-6
    assert min(left, top) >= -1e-6
    assert min(left, top) < 1e-6


@given(SIZES, st.floats(4, 44), st.floats(0.01, 8))
def test_a_bar_is_never_lost(size: tuple[int, int], x: float, half: float) -> None:
    canvas = Canvas(*size)
    Sketch(canvas).bar(x, half, 0, HIGH, "weld")
    assert _columns(canvas)


@given(SIZES, st.floats(0.3, 12))
def test_a_bar_in_the_middle_is_alike_on_both_sides(size: tuple[int, int], half: float) -> None:
    canvas = Canvas(*size)
    Sketch(canvas).bar(WIDE / 2, half, 0, HIGH, "weld")
    assert all(row == row[::-1] for row in canvas.halves)


@given(SIZES, st.floats(1, 13))
def test_a_disc_in_the_middle_is_alike_on_both_sides(size: tuple[int, int], radius: float) -> None:
    canvas = Canvas(*size)
    Sketch(canvas).disc(WIDE / 2, HIGH / 2, radius, "weld")
    assert _columns(canvas)
    assert canvas.halves == [row[::-1] for row in canvas.halves] == canvas.halves[::-1]


@given(SIZES, st.floats(0.1, 0.9))
def test_a_thin_line_has_no_gap(size: tuple[int, int], thick: float) -> None:
    canvas = Canvas(*size)
    Sketch(canvas).line([(2, 3), (46, 25)], thick, "weld")
    columns = sorted(set(_columns(canvas)))
    assert columns == list(range(columns[0], columns[-1] + 1))


def test_a_ring_is_bare_inside() -> None:
    canvas = Canvas(48, 14)
    Sketch(canvas).disc(24, 14, 10, "weld", 7)
    assert canvas.halves[14][24] == ""
    assert canvas.halves[14][16] == "weld"


def test_a_word_is_left_out_where_it_would_be_cut_off() -> None:
    canvas = Canvas(*WORDY)
    sketch = Sketch(canvas)
    sketch.word(1, 5, "rolls")
    sketch.word(47, 5, "rolls")
    sketch.word(24, 99, "rolls")
    assert not canvas.signs
    sketch.word(24, 5, "rolls")
    assert "".join(letter for letter, _ in canvas.signs.values()) == "rolls"


def test_a_word_is_left_out_on_a_small_canvas_but_a_sign_is_not() -> None:
    canvas = Canvas(WORDY[0] - 1, WORDY[1])
    Sketch(canvas).word(24, 5, "rolls")
    assert not canvas.signs
    Sketch(canvas).sign(24, 5, "+")
    assert canvas.signs
