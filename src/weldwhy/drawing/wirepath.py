"""The way of the wire, from the spool through rolls, liner and gun to the contact tip.

The part where the trouble sits is drawn large: the rolls, the spool or the contact tip.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.drawing import tools
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.sketch import HIGH, Point, Sketch
from weldwhy.drawing.tools import PLATE

ROLLS = 15
"""Where the drive rolls stand, one over and one under the wire."""
LEVEL = 14
"""How high the wire runs between the rolls."""
LINER = 38
"""Where the lead with its liner begins."""


def paint(canvas: Canvas, parts: Mapping[str, float | str]) -> None:
    """The way of the wire with its fault."""
    FAULTS[str(parts["fault"])](Sketch(canvas))


def _rolls(sketch: Sketch) -> None:
    """Drive rolls, inlet guide and the beginning of the lead; no wire yet."""
    for y in (LEVEL - 7.2, LEVEL + 7.2):
        sketch.disc(ROLLS, y, 6.4, "plate")
        sketch.disc(ROLLS, y, 6.4, "ripple", 5)
        sketch.disc(ROLLS, y, 1.5, "hole")
    for left, right in ((0, 5), (LINER, 48)):
        sketch.beam(LEVEL, 3.4, left, right, "heat")
        sketch.beam(LEVEL, 1.2, left, right, "")
    sketch.word(ROLLS + 14, 1, "rolls")
    sketch.word(43, 19.5, "lead")


def _wire(sketch: Sketch, left: float, right: float) -> None:
    sketch.beam(LEVEL, 1, left, right, "weld")


def _sound(sketch: Sketch) -> None:
    _rolls(sketch)
    _wire(sketch, 0, 48)
    sketch.arrow((24, 20), (34, 20), "ripple")


def _nest_at_rolls(sketch: Sketch) -> None:
    _rolls(sketch)
    _wire(sketch, 0, 22)
    _wire(sketch, 36, 48)
    for x, y, radius in ((27, 11, 6), (32, 16, 6.5), (26, 18, 6), (33, 9, 5), (30, 14, 8.5)):
        sketch.disc(x, y, radius, "weld", radius - 1.3)


def _collapse(sketch: Sketch) -> None:
    _rolls(sketch)
    _wire(sketch, 0, 20)
    folds: list[Point] = [(20, LEVEL)]
    for step, x in enumerate((22.5, 25.5, 28.5, 31.5, 34.5)):
        folds.append((x, LEVEL + (9 if step % 2 else -9)))
    sketch.line([*folds, (37, LEVEL)], 1.6, "weld")
    _wire(sketch, 36, 48)


def _slip(sketch: Sketch) -> None:
    _rolls(sketch)
    _wire(sketch, 0, 48)
    for way, y in ((-1, LEVEL - 7.2), (1, LEVEL + 7.2)):  # they turn ...
        x = ROLLS - 9.5
        sketch.line([(ROLLS, y + way * 6), (x + 2, y + way * 4), (x, y)], 1, "hot")
        sketch.arrow((x, y), (x + 1, y - way * 3.5), "hot")
    for x in (21, 24.5):  # ... and only rub the wire
        sketch.bar(x, 0.8, LEVEL - 1, LEVEL + 1, "hot")
    sketch.cross(32, LEVEL, 4.5)


def _shaved(sketch: Sketch) -> None:
    _rolls(sketch)
    _wire(sketch, 0, ROLLS)
    sketch.box(ROLLS, LEVEL, 48, LEVEL + 1, "weld")  # past the rolls it is scraped thin
    for x in (21, 27, 33):
        sketch.box(x, LEVEL - 1, x + 1.5, LEVEL, "weld")
    for x, y in ((25, 17.5), (32, 18), (28, 21), (35, 21.5)):  # falling curls
        sketch.line([(x, y), (x + 2, y - 1.2), (x + 2.4, y + 1.2)], 0.8, "weld")
    sketch.shape([(20, 28), (25, 25), (29, 23.8), (33, 24.5), (41, 28)], "weld")


def _nest_at_spool(sketch: Sketch) -> None:
    for x, y, wide in ((4, 18, 5.5), (22, 21, 6), (13, 21, 6.5), (26, 10, 5.5)):
        sketch.disc(x, y, wide, "weld", wide - 1.3)
    sketch.disc(14, 12, 11.5, "ripple")
    sketch.disc(14, 12, 9.8, "weld")
    sketch.disc(14, 12, 7, "ripple", 6)
    sketch.disc(14, 12, 3.6, "plate")
    sketch.disc(14, 12, 1.5, "hole")
    sketch.line([(10, 4), (22, 20), (28, 5), (36, 13), (48, 13)], 1.6, "weld")
    for level in (8.5, 17.5):
        sketch.disc(41, level, 3.8, "plate")
        sketch.disc(41, level, 3.8, "ripple", 2.8)
    sketch.word(38, 24, "rolls")
    sketch.word(36, 2, "spool")


def _jerks(sketch: Sketch) -> None:
    for place, end, pace in ((7, 25, 12), (22, 16, 0), (37, 21, 7)):
        x = sketch.even(place)
        tools.gun(sketch, x, 12, 0.72)
        tools.wire(sketch, x, 9, end)
        if pace:
            sketch.arrow((x + 5, 14), (x + 5, 14 + pace), "ripple")
        else:
            sketch.beam(20, 0.8, x - 4, x + 4, "ripple")  # it runs no farther
    for x, word in ((7, "fast"), (22, "stops"), (37, "slow")):
        sketch.word(x, 27.5, word)


def _no_feed(sketch: Sketch) -> None:
    sketch.ground(PLATE, "plate")
    for y in (5, 13):
        sketch.disc(6, y, 3.7, "plate")
        sketch.disc(6, y, 3.7, "ripple", 2.6)
    sketch.line([(0, 9), (14, 9)], 1, "weld")
    sketch.line([(11, 9), (17, 9), (22, 6), (28, 3)], 3, "heat")
    tools.gun(sketch, 34, 13)
    sketch.dotted((34, 14), (34, PLATE), "ripple", 1.6)
    sketch.cross(34, 18, 4)


def _tip(sketch: Sketch) -> None:
    """The nozzle cut open over the plate, its contact tip large; no wire yet."""
    sketch.ground(PLATE + 1, "plate")
    sketch.bar(24, 15, 0, 9, "plate")
    sketch.bar(24, 12.5, 0, 9, "")
    sketch.bar(24, 6.5, 0, 9, "heat")
    sketch.shape([(17.5, 9), (30.5, 9), (28.5, 12), (19.5, 12)], "heat")


def _curl(sketch: Sketch) -> None:
    x = 15
    tools.gun(sketch, x, 6, 1.2)
    sketch.ground(PLATE + 1, "plate")
    sketch.bar(x, 0.8, PLATE + 1, HIGH, "hole")  # the joint, which the gun points at
    sketch.dotted((x, 9), (x, PLATE), "ripple")
    sketch.line([(x, 0), (x, 7), (18, 11), (22, 14), (27, 15)], 1.8, "weld")
    sketch.disc(29, 10.5, 5.5, "weld", 3.7)  # one turn of a corkscrew, and off to the side
    sketch.line([(27, 15), (33, 15), (38, 17), (42, 20), (44, PLATE)], 1.8, "weld")
    sketch.word(7, PLATE - 3, "aim")


def _burnback(sketch: Sketch) -> None:
    _tip(sketch)
    sketch.bar(24, 1, 0, 8, "weld")
    sketch.disc(24, 12.5, 5.2, "weld")
    sketch.shape([(17.5, 8), (21, 9.5), (20, 13), (18, 12)], "weld")
    for x, y, to_x, to_y in ((16, 12, 12, 11), (16.5, 16, 13, 18.5), (24, 19, 24, 21.5),
                             (31.5, 16, 35, 18.5), (32, 12, 36, 11)):  # fmt: skip
        sketch.line([(x, y), (to_x, to_y)], 1, "hot")


def _worn_tip(sketch: Sketch) -> None:
    _tip(sketch)
    sketch.shape([(22, 0), (26, 0), (28.5, 12), (19.5, 12)], "hole")  # the bore has opened out
    sketch.line([(22.5, 0), (26.5, 12), (29, PLATE)], 1.8, "weld")


FAULTS: dict[str, Callable[[Sketch], None]] = {
    "sound": _sound,
    "nest at rolls": _nest_at_rolls,
    "nest at spool": _nest_at_spool,
    "collapse": _collapse,
    "slip": _slip,
    "shaved": _shaved,
    "jerks": _jerks,
    "no feed": _no_feed,
    "curl": _curl,
    "burnback": _burnback,
    "worn tip": _worn_tip,
}
"""What is wrong on the way of the wire."""
