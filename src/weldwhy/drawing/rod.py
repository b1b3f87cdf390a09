"""The end of a stick rod over the plate, cut open: core, coating, arc."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.drawing import tools
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import Sketch
from weldwhy.drawing.tools import PLATE

MIDDLE = 24


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The rod in its state."""
    sketch = Sketch(canvas)
    sketch.ground(PLATE, "plate")
    STATES[str(parts["state"])](sketch)


def _sound(sketch: Sketch) -> None:
    sketch.bar(MIDDLE, 6, 0, 17, "heat")
    sketch.bar(MIDDLE, 2.5, 0, 16, "weld")
    tools.mound(sketch, MIDDLE, 10, 1.6)
    sketch.bar(MIDDLE, 9, PLATE, 25, "weld")
    tools.arc(sketch, (MIDDLE, 16), MIDDLE, 4.5, 22)


def _fingernail(sketch: Sketch) -> None:
    sketch.bar(MIDDLE, 6, 0, 10, "heat")
    sketch.shape([(18, 9), (22, 9), (21.5, 19), (19.5, 21), (18, 20)], "heat")
    sketch.shape([(26, 9), (30, 9), (30, 9.5), (26, 12)], "heat")
    sketch.bar(MIDDLE, 2.5, 0, 13, "weld")
    sketch.shape([(21.5, 13), (26.5, 13), (22, 16)], "weld")
    sketch.shape([(25, 13), (27, 11), (35, 17), (42, PLATE), (31, PLATE)], "hot")
    tools.drops(sketch, (38, 13), (43, 17), (41, 10), (45, 14))
    sketch.shape([(29, PLATE), (44, PLATE), (41, 25.5), (32, 25.5)], "weld")


def _overheated(sketch: Sketch) -> None:
    rod = [(8, -1), (11, 6), (18, 12), (27, 16), (33, 17)]
    sketch.line(rod[:2], 7.5, "heat")
    sketch.line(rod, 3.4, "hot")  # the whole rod glows, and bends under its own weight
    pieces = ((16, 13.5), (7.5, 15), (13, 19), (22, 18.5)) if sketch.scale > 0.6 else (
        (7.5, 15), (15, 18.5))  # fmt: skip
    for x, y in pieces:  # pieces of the coating
        sketch.shape([(x, y), (x + 4, y + 0.8), (x + 3, y + 3.4), (x - 1, y + 2.4)], "heat")
    tools.arc(sketch, (34, 17), 37, 2.4)
    tools.mound(sketch, 37, 7, 1.5)
    for x in (22, 30, 38):  # heat rises off it
        sketch.line([(x, 9), (x + 1.4, 6.5), (x, 4), (x + 1.4, 1.5)], 1, "hot")


def _stuck(sketch: Sketch) -> None:
    bow = [(31, 0), (26, 7), (24, 14), (24, PLATE - 2)]
    sketch.line(bow, 9, "heat")  # bowed, because the hand pulls
    sketch.line(bow, 3.5, "weld")
    sketch.bar(MIDDLE, 4.5, PLATE - 3, PLATE, "heat")
    sketch.shape([(16, PLATE), (20, PLATE - 3), (28, PLATE - 3), (32, PLATE), (28, 25), (20, 25)],
                 "weld")  # fmt: skip
    sketch.arrow((38, 12), (43, 3))
    sketch.arrow((13, 12), (8, 3))


STATES: dict[str, Callable[[Sketch], None]] = {
    "sound": _sound,
    "fingernail": _fingernail,
    "overheated": _overheated,
    "stuck": _stuck,
}
"""What the rod does."""
