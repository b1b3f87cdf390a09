"""The way of the current: supply, machine, leads, gun, clamp and work, with the spot of trouble."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import Point, Sketch

BENCH = 24
"""Where the plate's face lies on the board."""


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The circuit with its trouble."""
    TROUBLES[str(parts["trouble"])](Sketch(canvas))


def bolt(sketch: Sketch, x: float, y: float, size: float, paint: str = "hot") -> None:
    """A flash of current, its middle at a point."""
    points = ((1, -5), (-3, 1), (-0.4, 1), (-2, 6), (3.4, -1), (0.6, -1), (3, -5))
    sketch.shape([(x + across * size, y + down * size) for across, down in points], paint)


def waves(sketch: Sketch, y: float, *places: float) -> None:
    """Heat that rises from `y`."""
    for x in places:
        sketch.line([(x, y), (x + 1.6, y - 2.2), (x, y - 4.4), (x + 1.6, y - 6.6)], 1, "hot")


def _wall(sketch: Sketch, x: float, y: float) -> None:
    """A socket on the wall."""
    sketch.box(x - 3.5, y - 4, x + 3.5, y + 4, "plate")
    for side in (-1, 1):
        sketch.box(x + side * 1.4 - 0.6, y - 1.2, x + side * 1.4 + 0.6, y + 1.2, "hole")


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
    _wall(sketch, 4, 8)
    sketch.line([(7, 8), (10, 12), (13, 10)], 1.4, "ripple")
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
    bolt(sketch, 27, 14, 1.5)
    sketch.line([(31, 14), (36, 14)], 1.6, "ripple")
    sketch.frame(35, 8, 47, 22, "plate")
    sketch.cross(41, 15, 4)


def _thermal_trip(sketch: Sketch) -> None:
    sketch.frame(3, 10, 29, 26, "plate")
    for y in (14, 18, 22):
        sketch.box(6, y, 15, y + 1.3, "ripple")
    sketch.disc(22, 18, 3.6, "hole")
    sketch.disc(22, 18, 2.6, "hot")
    waves(sketch, 8.5, 6, 12, 18, 24)
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
    for side in (-1, 1) if sketch.scale > 0.6 else ():  # they stand still
        sketch.line([(x - 6, y - side * 6), (x + 6, y + side * 6)], 1.4, "hole")
    sketch.box(25, 6, 44, 16, "hole")
    sketch.sign(34.5, 10.5, "E ?")
    sketch.disc(29.5, 21, 2, "ripple")
    sketch.disc(39.5, 21, 2, "ripple")


def _hot_leads(sketch: Sketch) -> None:
    sketch.frame(1, 6, 13, 24, "plate")
    sketch.box(12, 9, 17, 14, "heat")
    lead: list[Point] = [(15, 11.5), (22, 12), (28, 16), (34, 16), (41, 12), (48, 11)]
    sketch.line(lead, 5, "ripple")
    sketch.line(lead[1:5], 2.2, "hot")
    for x, y in ((25, 17.5), (31, 19), (37, 17)):  # the rubber blisters
        sketch.disc(x, y, 1.8, "ripple")
        sketch.disc(x, y, 0.8, "hot")
    waves(sketch, 9.5, 21, 27, 33, 39)
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
    bolt(sketch, 23, 6.5, 1.2)
    for to_x, to_y in ((28, 9), (29, 19), (33, 8)):  # where the hand touches
        sketch.line([(31.5, 13.5), (to_x, to_y)], 1, "hot")


def _weak_on_long_cord(sketch: Sketch) -> None:
    _wall(sketch, 4, 6)
    sketch.line([(4, 10), (4, 15), (9, 20)], 1.4, "ripple")
    turns = (8.5, 5.6, 2.8) if sketch.scale > 0.7 else (8.5, 4.2)
    for radius in turns:  # the cord on its reel, turn by turn
        sketch.disc(14, 18, radius, "ripple", max(radius - 1.5, 0.1))
    sketch.line([(14, 10), (22, 8), (26, 11)], 1.4, "ripple")
    sketch.frame(26, 5, 35, 17, "plate")
    sketch.ground(BENCH, "plate", 34)
    sketch.line([(35, 8), (40, 7), (43, 9)], 1.4, "weld")
    sketch.shape([(40.5, 8), (45.5, 8), (44.5, 16), (41.5, 16)], "heat")
    sketch.bar(43, 0.8, 16, 18.5, "weld")
    sketch.bar(43, 0.6, 18.5, 20.5, "hot")
    sketch.disc(43, 22.5, 2, "weld")
    sketch.word(16, 3, "cord")


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
