"""The hook-up of a process: which lead goes on which terminal, with its sign at both ends."""

from __future__ import annotations

from weldwhy.drawing import tools
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.gasline import cylinder
from weldwhy.drawing.sketch import HIGH, Point, Sketch
from weldwhy.setupmodel import Setup

SIGNS = {"plus": "+", "minus": "-", "ac": "~"}
"""What stands at a terminal; on alternating current neither side has a sign of its own."""

UPPER, LOWER = 8, 18
"""Where the two terminals stand; plus is the upper one."""
FRONT = 26
"""Where the machine's front ends and the leads begin."""
BENCH = 25


def paint(canvas: Canvas, setup: Setup) -> None:
    """Machine, gun or torch or rod holder, and clamp, hooked up as the set-up says."""
    sketch = Sketch(canvas)
    left = 1.0
    if setup.gases:
        cylinder(sketch, 4.5, 2, 3.5)
        sketch.line([(5, 3.5), (9, 3.5), (12, 7)], 1, "tint")
        left = 10.0
    sketch.frame(left, 3, FRONT, 23, "plate")
    sketch.ground(BENCH, "plate", 28)
    crossed = setup.gun == "minus"
    ends = (LOWER, UPPER) if crossed else (UPPER, LOWER)
    _clamp(sketch, ends[1])
    _gun(sketch, setup.holder, ends[0])
    for name, side, level in (
        (setup.holder, setup.gun, ends[0]),
        ("clamp", setup.clamp, ends[1]),
    ):
        sketch.label(FRONT - 2, level, name, SIGNS[side])
    sketch.sign(46.5, 12, SIGNS[setup.gun])
    sketch.sign(37.5, 18, SIGNS[setup.clamp])


def _clamp(sketch: Sketch, level: float) -> None:
    lead: list[Point] = [(FRONT, level), (34, level), (34, BENCH - 4)]
    sketch.line(lead, 1.4, "heat")
    sketch.box(32, BENCH - 4, 36, BENCH - 1.5, "heat")
    for x in (32, 35):
        sketch.box(x, BENCH - 4, x + 1.2, HIGH - 1.2, "heat")


def _gun(sketch: Sketch, holder: str, level: float) -> None:
    lead: list[Point] = [(FRONT, level), (30, level), (30, 3), (38, 3)]
    if level == LOWER:  # a gap where it passes over the other lead
        sketch.box(28.6, UPPER - 2, 31.4, UPPER + 2, "")
    sketch.line(lead, 1.4, "ripple")
    x = sketch.even(41)
    if holder == "torch":
        tools.torch(sketch, x, 20, 0.8)
    elif holder == "gun":
        tools.gun(sketch, x, 14, 0.72)
        tools.wire(sketch, x, 12, 18, 0.8)
    else:
        sketch.line([(37, 2), (45, 2)], 3, "ripple")
        tools.rod(sketch, x, 20, 0.7)
    tools.arc(sketch, (x, 18 if holder == "gun" else 20), x, 2.6, BENCH)
