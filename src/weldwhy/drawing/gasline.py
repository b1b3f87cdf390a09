"""The way of the gas: cylinder, regulator, hose, torch; with the spot of trouble drawn large."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import cos, pi, sin

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import HIGH, Point, Sketch

BENCH = 25
"""Where the plate's face lies on the board."""


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The way of the gas with its trouble."""
    TROUBLES[str(parts["trouble"])](Sketch(canvas))


def cylinder(sketch: Sketch, x: float, top: float, half: float) -> None:
    """A gas cylinder that stands on the board's lower edge, with its valve at `top`."""
    sketch.bar(x, half * 0.3, top, top + 4, "heat")
    sketch.bar(x, half * 0.7, top + 3, top + 5, "ripple")
    sketch.bar(x, half, top + 5, HIGH, "plate")


def dial(sketch: Sketch, x: float, y: float, radius: float) -> None:
    """The round face of a gauge, with its rim."""
    sketch.disc(x, y, radius, "ripple")
    sketch.disc(x, y, radius - max(1.1, 1 / sketch.scale), "plate")


def gauge(sketch: Sketch, x: float, y: float, radius: float, needle: float) -> None:
    """A gauge; `needle` from 0, at its stop on the left, to 1 on the right."""
    dial(sketch, x, y, radius)
    turn = pi * (1 - needle)
    reach = radius * 0.75
    sketch.line([(x, y), (x + reach * cos(turn), y - reach * sin(turn))], 1, "hole")


HOSE: tuple[Point, ...] = ((18, 10), (19, 17), (25, 19), (29, 12), (32, 3), (37, 3), (39, 6))

FLAKE = ((2.6, 0), (0, 2.6), (1.8, 1.8), (1.8, -1.8))
"""How far the arms of a snow flake reach, across and down."""


def _sound(sketch: Sketch) -> None:
    """Cylinder and regulator at the left, hose, and a nozzle over the plate at the right."""
    cylinder(sketch, 7, 4, 5)
    sketch.box(9, 5, 17, 7.5, "heat")
    gauge(sketch, 18, 6, 4.6, 0.7)
    sketch.line(HOSE, 1.6, "ripple")
    sketch.ground(BENCH, "plate", 28)
    sketch.bar(39, 5, 6, 14, "heat")
    sketch.bar(39, 3, 8, 14, "")
    sketch.shape([(36, 14), (42, 14), (45, BENCH), (33, BENCH)], "tint")
    sketch.bar(39, 0.9, 8, 17, "weld")
    sketch.shape([(38.4, 17), (39.6, 17), (41, BENCH), (37, BENCH)], "hot")


def _no_gas(sketch: Sketch) -> None:
    """The nozzle large, with no stream where there should be one; the gauge at its stop."""
    cylinder(sketch, 5, 11, 4.5)
    dial(sketch, 8, 6, 5.7)
    sketch.sign(8, 6, "0")
    sketch.line([(13, 9), (18, 12), (21, 4), (26, 2)], 1.6, "ripple")
    x = sketch.even(36)
    sketch.bar(x, 9, 0, 9.5, "heat")
    sketch.bar(x, 6.5, 2, 9.5, "")
    sketch.bar(x, 2.2, 0, 9, "weld")
    sketch.ground(BENCH + 1, "plate", 20)
    for side in (-1, 1):
        sketch.dotted((x + side * 9, 12), (x + side * 11, BENCH), "tint")
    sketch.cross(x, 19, 5.8)


def _leaks(sketch: Sketch) -> None:
    """No torch: the leak is the picture, with the hose drawn as thick as a hand is."""
    cylinder(sketch, 6, 6, 5)
    sketch.box(8, 7, 15, 9.5, "heat")
    gauge(sketch, 16, 8, 5.4, 0.3)
    sketch.line([(16, 13), (17, 19), (22, 22), (48, 22)], 3.4, "ripple")
    sketch.shape([(32, 19), (37, 19), (34.5, 23.5)], "hole")
    for across, up in ((-9, 13), (0, 16), (9, 13)):  # it hisses out of a split in the hose
        sketch.dotted((34.5 + across * 0.25, 18), (34.5 + across, 18 - up), "tint", 1.4)
    for lean in (-1, 0, 1):  # and out of a joint
        sketch.line([(11 + lean, 6), (11 + lean * 3.4, 2)], 1, "tint")
    if sketch.scale > 0.7:
        for x, y, radius in ((28, 15.5, 2), (41, 16, 1.6), (39, 5.5, 1.4), (29.5, 4.5, 1.2)):
            sketch.disc(x, y, radius, "tint", radius - 0.9)  # bubbles


def _will_not_stop(sketch: Sketch) -> None:
    """The trigger has sprung out and is off, no arc burns, and the gas and the clock run on."""
    sketch.ground(BENCH + 1, "plate", 22)
    x = sketch.even(37)
    sketch.beam(4, 3, 0, x, "heat")
    sketch.bar(x, 7.5, 1, 11, "heat")
    sketch.bar(x, 5, 4, 11, "")
    sketch.shape([(x - 5, 12), (x + 5, 12), (x + 10, BENCH + 1), (x - 10, BENCH + 1)], "tint")
    sketch.bar(x, 1.6, 4, 13, "weld")
    for side in (-1, 1):  # it streams
        sketch.line([(x + side * 2.5, 15), (x + side * 4.5, BENCH - 2)], 0.8, "")
    sketch.line([(22, 7), (12, 12)], 2, "ripple")
    sketch.sign(19, 14.5, "OFF")
    sketch.disc(7, 21, 6, "ripple")
    sketch.disc(7, 21, 4.8, "plate")
    sketch.line([(7, 17.5), (7, 21), (10, 21)], 1, "hole")


def _frosted_regulator(sketch: Sketch) -> None:
    cylinder(sketch, 8, 9, 7)
    sketch.box(8, 9, 40, 13, "heat")
    gauge(sketch, 21, 7, 6.5, 0.6)
    gauge(sketch, 36, 7, 6.5, 0.15)
    for x, long in ((17.5, 8), (22.5, 4), (28, 11), (33, 5), (38, 8)):
        sketch.shape([(x - 2.4, 13), (x + 2.4, 13), (x, 13 + long)], "tint")  # icicles
    for x, y in ((43, 23), (34, 24), (21, 25)):
        for across, down in FLAKE[: 4 if sketch.scale > 0.7 else 2]:
            sketch.line([(x - across, y - down), (x + across, y + down)], 0.8, "tint")


TROUBLES: dict[str, Callable[[Sketch], None]] = {
    "sound": _sound,
    "no gas": _no_gas,
    "leaks": _leaks,
    "will not stop": _will_not_stop,
    "frosted regulator": _frosted_regulator,
}
"""Where the gas fails, between cylinder and nozzle."""
