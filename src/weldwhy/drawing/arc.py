"""An arc under a gun, a torch or a rod: how it burns, or that it does not.

What changes from moment to moment is drawn as three moments side by side.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.drawing import tools
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import ROOMY, Sketch
from weldwhy.drawing.tools import PLATE

MIDDLE = 24
MOMENTS = (8, 24, 40)
"""Where three moments stand side by side."""
SMALL = 0.72
"""Size of a tool that stands for one moment of three."""

Tool = str


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The arc in its state, at the tool named or at a gun."""
    sketch = Sketch(canvas)
    sketch.ground(PLATE, "plate")
    STATES[str(parts["arc"])](sketch, str(parts.get("tool", "gun")))


def held(sketch: Sketch, tool: Tool, x: float, end: float, size: float = 1) -> float:
    """The tool with the end of its wire, tungsten or rod at `end`."""
    if tool == "torch":
        tools.torch(sketch, x, end, size)
    elif tool == "rod":
        tools.rod(sketch, x, end, size)
    else:
        tools.gun(sketch, x, end - 4 * size, size)
        tools.wire(sketch, x, end - 6 * size, end, size)
    return end


def _steady(sketch: Sketch, tool: Tool) -> None:
    end = held(sketch, tool, MIDDLE, 16)
    sketch.shape([(14, PLATE), (34, PLATE), (29, 25.5), (19, 25.5)], "weld")
    tools.mound(sketch, MIDDLE, 10, 1.6)
    tools.arc(sketch, (MIDDLE, end), MIDDLE, 4.5, 22)


def _wandering(sketch: Sketch, tool: Tool) -> None:
    _moments(sketch, "left", "right", "left")
    for x, foot in zip(map(sketch.even, MOMENTS), (-5, 5.5, -4)):
        end = held(sketch, tool, x, 14, SMALL)
        tools.arc(sketch, (x, end), x + foot, 1.8)
        sketch.box(x + foot - 3, PLATE, x + foot + 3, PLATE + 1.6, "weld")


def _blown_aside(sketch: Sketch, tool: Tool) -> None:
    x = MIDDLE - 7
    end = held(sketch, tool, x, 15)
    sketch.shape([(26, PLATE), (43, PLATE), (40, 25.5), (30, 25.5)], "weld")
    sketch.shape(
        [(x - 1, end), (x + 1.5, end - 0.5), (x + 10, 16.5), (x + 22, PLATE), (x + 11, PLATE),
         (x + 5, 19.5)],
        "hot",
    )  # fmt: skip
    tools.drops(sketch, (38, 16), (42, 19), (36, 12), (44, 14))
    sketch.arrow((30, 6), (43, 6))


def _weak(sketch: Sketch, tool: Tool) -> None:
    x = sketch.even(33)
    end = held(sketch, tool, x, 15)
    tools.mound(sketch, x, 6, 5)  # it lies on the plate and has melted nothing
    sketch.bar(x, 0.8, end, PLATE - 4.5, "hot")
    tools.level(sketch, 2, 20, 1, 1.5)


def _harsh(sketch: Sketch, tool: Tool) -> None:
    """An arc that bursts rather than burns and digs into the plate, and its crackling."""
    x = sketch.even(30)
    held(sketch, tool, x, 11, 0.85)
    sketch.box(0, PLATE - 3, x - 2, PLATE, "weld")
    sketch.shape([(0, PLATE), (x + 4, PLATE), (x, 26), (0, 26)], "weld")
    for at in (4, 11, 18):
        sketch.line([(at, PLATE - 2.5), (at + 2, PLATE - 0.5), (at, PLATE + 1.5)], 0.8, "ripple")
    sketch.shape([(x - 6, PLATE - 3), (x + 6, PLATE - 3), (x + 3, 27), (x - 3, 27)], "")
    sketch.shape(
        [(x - 1, 11), (x + 1, 11), (x + 2, 15.5), (x + 7, 12.5), (x + 4, 18), (x + 9.5, 19.5),
         (x + 4, 21.5), (x + 2, 27), (x - 2, 27), (x - 4, 21.5), (x - 9.5, 19.5), (x - 4, 18),
         (x - 7, 12.5), (x - 2, 15.5)],
        "hot",
    )  # fmt: skip
    for way in (-1, 1):
        for reach in (10.5, 15) if sketch.scale > ROOMY else (13,):
            side = x + way * reach
            sketch.line(
                [(side, 9), (side + way * 2.4, 12), (side, 15), (side + way * 2.4, 18)], 0.8, "hot"
            )


def _stuttering(sketch: Sketch, tool: Tool) -> None:
    _moments(sketch, "on", "off", "on")
    for x, burns in zip(map(sketch.even, MOMENTS), (True, False, True)):
        end = held(sketch, tool, x, 14 if burns else 10, SMALL)
        if burns:
            tools.arc(sketch, (x, end), x, 3.4, 22)
            tools.mound(sketch, x, 6.5, 2.4)
        else:
            sketch.cross(x, 17.5, 2.4)


def _pulsing(sketch: Sketch, tool: Tool) -> None:
    sketch.ground(PLATE, "weld")
    sketch.ground(PLATE + 1.5, "plate")
    _moments(sketch, "soft", "loud", "soft")
    for x, spread in zip(map(sketch.even, MOMENTS), (1.4, 7.2, 1.4)):
        end = held(sketch, tool, x, 14, SMALL)
        tools.mound(sketch, x, 7, spread / 2.4)
        tools.arc(sketch, (x, end), x, spread)


def _not_starting(sketch: Sketch, tool: Tool) -> None:
    held(sketch, tool, MIDDLE, 20)
    for x in (5, 9, 13, 34, 38, 42):  # scratches, where it was tried before
        sketch.line([(x, PLATE + 0.6), (x + 2, PLATE + 3)], 0.8, "hole")
    sketch.cross(MIDDLE, 19, 4.5)


def _no_spark(sketch: Sketch, tool: Tool) -> None:
    """Nothing in the gap; beside it a spark in a ring, struck out as on a sign that forbids."""
    held(sketch, tool, 13, 13)
    sketch.disc(36, 12, 10.5, "ripple")
    sketch.disc(36, 12, 10.5 - max(1.2, 1 / sketch.scale), "plate")
    tools.bolt(sketch, 36, 12, 1.5)
    sketch.line([(29.5, 5.5), (42.5, 18.5)], 1.8, "hole")


def _stubbing(sketch: Sketch, tool: Tool) -> None:
    held(sketch, tool, MIDDLE, 12)
    sketch.line([(24, 11), (24, 14), (29, 17), (22, 20), (24, 25)], 1.8, "weld")
    tools.drops(sketch, (17, 20), (14, 17), (32, 20), (35, 17))
    for x in (6, 11, 38, 43):  # bits of wire that never melted
        sketch.bar(x, 0.8, 18, PLATE, "weld")
    for x in (11, 37):
        sketch.arrow((x, 13), (x, 3))


def _moments(sketch: Sketch, *words: str) -> None:
    for x, word in zip(MOMENTS, words):
        sketch.word(x, 27, word)


STATES: dict[str, Callable[[Sketch, Tool], None]] = {
    "steady": _steady,
    "wandering": _wandering,
    "blown aside": _blown_aside,
    "weak": _weak,
    "harsh": _harsh,
    "stuttering": _stuttering,
    "pulsing": _pulsing,
    "not starting": _not_starting,
    "no spark": _no_spark,
    "stubbing": _stubbing,
}
"""What the arc does."""
