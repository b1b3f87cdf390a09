"""The way of the current: supply, machine, leads, gun, clamp and work, with the spot of trouble."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.drawing import tools
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import Point, Sketch

BENCH = 24
"""Where the plate's face lies on the board."""


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The circuit with its trouble."""
    TROUBLES[str(parts["trouble"])](Sketch(canvas))


def _wall(sketch: Sketch, x: float, y: float) -> None:
    """A socket on the wall."""
    sketch.box(x - 4.5, y - 4, x + 4.5, y + 4, "plate")
    for side in (-1, 1):
        sketch.box(x + side * 1.8 - 0.6, y - 1.6, x + side * 1.8 + 0.6, y + 1.6, "hole")


def _work(sketch: Sketch, welds: bool, lead: str = "weld") -> None:
    """Leads from a machine that ends at 27 to gun and clamp, and the plate between them."""
    sketch.ground(BENCH, "plate", 26)
    sketch.line([(27, 8), (35, 6), (40, 9)], 1.6, lead)
    sketch.shape([(37.5, 8), (42.5, 8), (41.5, 16), (38.5, 16)], "heat")
    sketch.bar(40, 0.8, 16, 19 if welds else 20.5, "weld")
    sketch.line([(27, 14), (30, 15), (30, BENCH - 3)], 1.6, lead)
    sketch.box(28, BENCH - 4, 32, BENCH + 1, "heat")
    if welds:
        sketch.shape([(39.4, 19), (40.8, 19), (43, BENCH), (37, BENCH)], "hot")


def _sound(sketch: Sketch) -> None:
    _wall(sketch, 4.5, 8)
    sketch.line([(8, 8), (10, 12), (13, 10)], 1.4, "ripple")
    sketch.frame(13, 4, 27, 18, "plate")
    sketch.disc(18, 9, 3, "hole", 1.6)
    sketch.sign(24.5, 8.5, "+")
    sketch.sign(24.5, 14.5, "-")
    _work(sketch, welds=True)


def _no_output(sketch: Sketch) -> None:
    sketch.frame(3, 3, 27, 19, "plate")
    sketch.box(6, 6, 18, 11, "hole")
    sketch.sign(12, 8.5, "0 A")
    for x in (8, 14):
        sketch.disc(x, 14, 1.2, "ripple")
    _work(sketch, welds=False)
    sketch.cross(40, 20.5, 4.5)
    sketch.word(11, 23.5, "machine")


def _breaker_trips(sketch: Sketch) -> None:
    sketch.frame(2, 1, 22, 27, "plate")
    sketch.box(9.5, 5, 14.5, 23, "hole")  # the slot of the lever, which has dropped
    sketch.box(7.5, 16, 16.5, 22, "heat")
    sketch.sign(6, 6, "ON")
    sketch.sign(6, 22.4, "OFF")
    tools.bolt(sketch, 27, 14, 1.5)
    sketch.line([(31, 14), (36, 14)], 1.6, "ripple")
    sketch.frame(35, 8, 47, 22, "plate")
    sketch.cross(41, 15, 4)


def _thermal_trip(sketch: Sketch) -> None:
    sketch.frame(3, 10, 29, 26, "plate")
    for y in (14, 18, 22):
        sketch.box(6, y, 15, y + 1.3, "ripple")
    sketch.disc(22, 18, 3.6, "hole")
    sketch.disc(22, 18, 2.6, "hot")
    tools.waves(sketch, 8.5, 5, 13, 21)
    sketch.disc(40, 22.5, 5, "ripple")  # a thermometer, full to the top
    sketch.disc(40, 22.5, 3.8, "hot")
    sketch.bar(40, 2.6, 2, 20, "ripple")
    sketch.bar(40, 1.4, 3.5, 20, "hot")
    for y in (5, 9, 13):
        sketch.box(43, y, 46, y + 1, "ripple")


def _fan_or_display(sketch: Sketch) -> None:
    sketch.frame(1, 3, 47, 26, "plate")
    x, y = sketch.even(13), 14.5
    sketch.disc(x, y, 9, "ripple")
    sketch.disc(x, y, 9 - max(1.2, 1 / sketch.scale), "plate")
    for across, down in ((0, -1), (1, 0), (0, 1), (-1, 0)):  # the blades
        tip = (x + across * 7, y + down * 7)
        sketch.shape([(x, y), (tip[0] - down * 3, tip[1] + across * 3),
                      (tip[0] + down * 2, tip[1] - across * 2)], "heat")  # fmt: skip
    sketch.cross(x, y, 6.5)  # they stand still
    sketch.box(25, 6, 44, 20, "hole")
    for left, strokes in ((28, "tulmb"), (36, "trmlo")):  # a fault's letter; one that flickers
        for stroke in strokes:
            across, down, to_x, to_y = _STROKES[stroke]
            sketch.box(left + across, 8 + down, left + to_x, 8 + to_y, "hot")


_STROKES = {
    "t": (0, 0, 6, 2), "m": (0, 4, 6, 6), "b": (0, 8, 6, 10),
    "u": (0, 0, 2, 6), "l": (0, 4, 2, 10), "r": (4, 0, 6, 6), "o": (4, 4, 6, 10),
}  # fmt: skip
"""Strokes of a lit figure: the level ones top, middle, bottom; upright ones upper and lower."""


def _hot_leads(sketch: Sketch) -> None:
    sketch.frame(1, 6, 13, 24, "plate")
    sketch.box(12, 9, 17, 14, "heat")
    lead: list[Point] = [(15, 11.5), (22, 12), (28, 16), (34, 16), (41, 12), (48, 11)]
    sketch.line(lead, 5, "ripple")
    sketch.line(lead[1:5], 2.2, "hot")
    for x, y in ((25, 17.5), (31, 19), (37, 17)):  # the rubber blisters
        sketch.disc(x, y, 1.8, "ripple")
        sketch.disc(x, y, 0.8, "hot")
    tools.waves(sketch, 9.5, 21, 29, 37)
    sketch.sign(7, 11.5, "+")
    sketch.sign(7, 19.5, "-")
    sketch.line([(13, 19.5), (22, 24), (48, 24)], 1.6, "ripple")
    sketch.word(42, 21, "leads")


def _shock(sketch: Sketch) -> None:
    sketch.frame(33, 6, 48, 28, "plate")
    x = sketch.even(10)
    sketch.disc(x, 4.5, 3.4, "heat")  # a person, one hand on the case
    sketch.bar(x, 3, 10, 19, "heat")
    sketch.line([(x, 12), (32, 14)], 2.4, "heat")
    sketch.line([(x - 2, 11.5), (2, 16)], 2.4, "heat")
    for side in (-1, 1):
        sketch.line([(x + side * 1.5, 19), (x + side * 4, 28)], 2.6, "heat")
        sketch.line([(x + side * 5.5, 3), (x + side * 8.5, 1)], 1, "hot")
    tools.bolt(sketch, 23, 6.5, 1.2)
    for to_x, to_y in ((28, 9), (29, 19), (33, 8)):  # where the hand touches
        sketch.line([(31.5, 13.5), (to_x, to_y)], 1, "hot")


def _weak_on_long_cord(sketch: Sketch) -> None:
    cord: list[Point] = [(7, 4), (26, 4), (26, 9), (2, 9), (2, 14), (26, 14), (26, 19), (2, 19),
                         (2, 24), (28, 24)]  # fmt: skip
    sketch.line(cord, 1.4, "heat")  # back and forth over the floor
    _wall(sketch, 5, 4)
    sketch.frame(28, 13, 48, 28, "plate")
    tools.level(sketch, 30, 25.5, 1)
    sketch.line([(33, 13), (33, 2), (40, 2)], 1.4, "ripple")
    sketch.shape([(38.5, 1), (45.5, 1), (44, 6), (40, 6)], "heat")
    sketch.bar(42, 0.8, 6, 9, "weld")
    sketch.bar(42, 0.8, 9, 11, "hot")
    sketch.word(14, 26.8, "cord")


TROUBLES: dict[str, Callable[[Sketch], None]] = {
    "sound": _sound,
    "no output": _no_output,
    "breaker trips": _breaker_trips,
    "thermal trip": _thermal_trip,
    "fan or display": _fan_or_display,
    "hot leads": _hot_leads,
    "shock": _shock,
    "weak on long cord": _weak_on_long_cord,
}
"""Where the current or the machine fails."""
