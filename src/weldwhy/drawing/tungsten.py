"""The end of a tungsten in the cup of a TIG torch, many times its size."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import radians, tan

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import ROOMY, Sketch

MIDDLE = 24
HALF = 4.5
"""Half the thickness of the tungsten."""
MOUTH = 7
"""Where the cup ends."""
POINT = 25
"""Where a ground point ends."""
ANGLE = 30.0
"""Degrees between the sides of a point, where nothing else is said."""


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The tungsten with its point as it is now."""
    sketch = Sketch(canvas)
    sketch.shape([(7, 0), (41, 0), (38, MOUTH), (10, MOUTH)], "heat")
    sketch.shape([(13.5, 0), (34.5, 0), (33, MOUTH), (15, MOUTH)], "")
    if parts["point"] == "sound":
        _sound(sketch, float(parts.get("angle", ANGLE)))
    else:
        POINTS[str(parts["point"])](sketch)


def _sound(sketch: Sketch, angle: float) -> None:
    long = min(HALF / tan(radians(angle / 2)), POINT - 1)
    neck = POINT - long
    sketch.bar(MIDDLE, HALF, 0, neck, "weld")
    sketch.shape([(MIDDLE - HALF, neck), (MIDDLE + HALF, neck), (MIDDLE, POINT)], "weld")
    marks = (-0.5, 0, 0.5) if sketch.scale > 0.8 else ()
    for part in marks:  # ground lengthwise: they run to the point
        foot = MIDDLE + part * HALF * 0.3
        sketch.line([(MIDDLE + part * HALF, neck), (foot, POINT - long * 0.35)], 0.6, "ripple")
    sketch.word(41, POINT - 3, f"{angle:g} deg")


def _balled(sketch: Sketch) -> None:
    sketch.bar(MIDDLE, HALF, 0, 11, "weld")
    sketch.disc(MIDDLE, 18, 8.5, "weld")
    sketch.disc(MIDDLE, 18, 8.5, "ripple", 7.4)
    sketch.disc(21, 15, 1.5, "hot")
    for side in (-1, 1):  # it shakes
        x = MIDDLE + side * 12
        sketch.line([(x, 14), (x + side * 1.5, 18), (x, 22)], 1, "hot")


def _split(sketch: Sketch) -> None:
    sketch.bar(MIDDLE, 6, 0, 11, "weld")
    sketch.shape([(18, 10.5), (21.6, 10.5), (20.5, 18), (11, 27), (14.5, 17)], "weld")
    sketch.shape([(22.6, 10.5), (25.4, 10.5), (25.2, 20), (23.6, 26)], "weld")
    sketch.shape([(26.4, 10.5), (30, 10.5), (33.5, 17), (38, 21.5), (28.5, 17.5)], "weld")
    sketch.line([(21.8, 3), (21.6, 7), (22.2, 11)], 0.8, "hole")  # splits run up the grain
    sketch.line([(26.4, 5.5), (25.9, 11)], 0.8, "hole")
    sketch.shape([(37, 23.5), (41, 25), (38.5, 28), (35, 25.5)], "weld")  # a piece that broke off


def _eroded(sketch: Sketch) -> None:
    sketch.bar(MIDDLE, HALF, 0, 9, "weld")
    sketch.shape(
        [(19.5, 9), (28.5, 9), (28.5, 12), (27, 11), (26.5, 14), (24.8, 12), (23.5, 13.5),
         (22, 11.5), (20.5, 13), (19.5, 11)],
        "weld",
    )  # fmt: skip
    for x, y in ((20, 9), (28, 10), (24, 11), (21.5, 6), (27, 5)) if sketch.scale > ROOMY else ():
        sketch.disc(x, y, 0.8, "slag")
    for side in (-1, 1):  # where the point was
        sketch.dotted((MIDDLE + side * HALF, 13), (MIDDLE + side * HALF, 16), "ripple")
        sketch.dotted((MIDDLE + side * HALF, 16), (MIDDLE + side, POINT), "ripple")
    sketch.word(37, 20, "was here")


def _contaminated(sketch: Sketch) -> None:
    sketch.bar(MIDDLE, HALF, 0, 12, "weld")
    sketch.shape([(19.5, 12), (28.5, 12), (25, 25), (23.5, 25)], "weld")
    for x, y, radius in ((20, 15, 4), (27, 17, 5), (22, 20, 4.5), (29, 13.5, 2.5), (25, 23, 3)):
        sketch.disc(x, y, radius, "plate")
    for x, y in ((19, 14), (27, 16), (23, 21), (29, 19), (25, 12.5)):
        sketch.disc(x, y, 1.2, "slag")
    sketch.word(39, 26.5, "other metal")


POINTS: dict[str, Callable[[Sketch], None]] = {
    "balled": _balled,
    "split": _split,
    "eroded": _eroded,
    "contaminated": _contaminated,
}
"""What became of the point, other than a sound one."""
