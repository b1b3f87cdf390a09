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


def gauge(sketch: Sketch, x: float, y: float, radius: float, needle: float) -> None:
    """A round gauge; `needle` from 0, at its stop on the left, to 1 on the right."""
    sketch.disc(x, y, radius, "ripple")
    sketch.disc(x, y, radius - max(1.1, 1 / sketch.scale), "plate")
    turn = pi * (1 - needle)
    reach = radius * 0.75
    sketch.line([(x, y), (x + reach * cos(turn), y - reach * sin(turn))], 1, "hole")


def _supply(sketch: Sketch, needle: float) -> None:
    """Cylinder and regulator at the left, hose, and a nozzle over the plate at the right."""
    cylinder(sketch, 7, 4, 5)
    sketch.box(9, 5, 17, 7.5, "heat")
    gauge(sketch, 18, 6, 4.6, needle)
    sketch.line(HOSE, 1.6, "ripple")
    sketch.ground(BENCH, "plate", 28)
    sketch.bar(39, 5, 6, 14, "heat")
    sketch.bar(39, 3, 8, 14, "")
    sketch.bar(39, 0.9, 8, 16, "weld")


HOSE: tuple[Point, ...] = ((18, 10), (19, 17), (25, 19), (29, 12), (32, 3), (37, 3), (39, 6))


FLAKE = ((2.6, 0), (0, 2.6), (1.8, 1.8), (1.8, -1.8))
"""How far the arms of a snow flake reach, across and down."""


def _sound(sketch: Sketch) -> None:
    _supply(sketch, 0.7)
    sketch.shape([(36, 14), (42, 14), (45, BENCH), (33, BENCH)], "tint")
    sketch.bar(39, 0.9, 14, 17, "weld")
    sketch.shape([(38.4, 17), (39.6, 17), (41, BENCH), (37, BENCH)], "hot")


def _no_gas(sketch: Sketch) -> None:
    _supply(sketch, 0.0)
    for side in (-1, 1):
        sketch.dotted((39 + side * 3, 15), (39 + side * 6, BENCH), "tint")
    sketch.cross(39, 19.5, 5)
    sketch.word(18, 9, "0")


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
    sketch.ground(BENCH, "plate", 4, 44)
    sketch.bar(24, 9, 0, 10, "heat")
    sketch.bar(24, 6.5, 2, 10, "")
    sketch.bar(24, 2.2, 0, 8, "weld")
    for x, foot in ((19, 11), (24, 24), (29, 37)):  # it blows on with no arc
        sketch.arrow((x, 11), (foot, BENCH - 1.5), "tint", 3)
    sketch.line([(40, 1), (46, 4)], 2, "ripple")  # the trigger is let go
    sketch.line([(33, 3), (42, 3)], 2.4, "heat")
    sketch.disc(8, 9, 6, "ripple")  # and the clock runs
    sketch.disc(8, 9, 4.8, "plate")
    sketch.line([(8, 5), (8, 9), (11, 10.5)], 1, "hole")


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
