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
    """It glows from end to end and hangs down limp, and its coating falls off in pieces."""
    core = [(7, 11.5), (16, 11.5), (24, 12), (30, 14), (34, 17), (36, 20)]
    sketch.frame(0, 7, 8, 16, "plate")  # the jaws of the holder
    for start, end in (((8, 11.5), (13, 11.5)), ((17, 11.5), (23, 12)), ((28, 13), (31, 14.5))):
        sketch.line([start, end], 7, "heat")
    sketch.line(core, 3, "hot")
    for x, y in ((12, 18), (18, 20.5), (25, 19)):
        sketch.box(x, y, x + 3.4, y + 2.2, "heat")
    tools.arc(sketch, (36, 19), 37, 2.4)
    tools.mound(sketch, 37, 7, 1.5)
    tools.waves(sketch, 7.4, 11, 19, 27)


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
