"""A picture on paper is the picture on the screen, half cell by half cell, and plain XML."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.paints import INK
from weldwhy.drawing.svg import svg_of

PAINTS = sorted(INK)
FILLS = st.tuples(*[st.integers(0, 11)] * 4, st.sampled_from(PAINTS))
LEFT, TOP, SIDE = 7.0, 3.0, 4.0
"""Where the picture stands, and the side of a half cell, which is square."""


def _elements(canvas: Canvas) -> ElementTree.Element:
    lines = svg_of(canvas, LEFT, TOP, canvas.width * SIDE)
    return ElementTree.fromstring(f"<svg>{''.join(lines)}</svg>")


@given(st.lists(FILLS, max_size=6))
def test_every_half_cell_has_the_ink_of_its_paint(
    fills: list[tuple[int, int, int, int, str]],
) -> None:
    canvas = Canvas(12, 6)
    for fill in fills:
        canvas.fill(*fill)
    inked = [[""] * 12 for _ in range(12)]
    for rect in _elements(canvas):
        x, y, width, height = (float(rect.attrib[n]) for n in ("x", "y", "width", "height"))
        for row in range(12):
            for column in range(12):
                middle = LEFT + (column + 0.5) * SIDE - x, TOP + (row + 0.5) * SIDE - y
                if 0 < middle[0] < width and 0 < middle[1] < height:
                    assert not inked[row][column]
                    inked[row][column] = rect.attrib["fill"]
    assert inked == [[INK[p] if p else "" for p in row] for row in canvas.halves]


@pytest.mark.parametrize("letter", ["A", "<", "&", ">", '"'])
def test_a_letter_is_written_in_its_cell_whatever_it_is(letter: str) -> None:
    canvas = Canvas(6, 3)
    canvas.put(4, 1, f"{letter} ", "strong")
    (text,) = _elements(canvas)
    assert text.text == letter
    assert LEFT + 4 * SIDE < float(text.attrib["x"]) < LEFT + 5 * SIDE
    assert TOP + 2 * SIDE < float(text.attrib["y"]) < TOP + 4 * SIDE
