"""What an arc burns from, cut open over the plate: gun, torch and rod; and the arc itself."""

from __future__ import annotations

from weldwhy.drawing.sketch import Sketch

PLATE = 23
"""Where the plate's face lies on the board."""


def gun(sketch: Sketch, x: float, end: float, size: float = 1) -> None:
    """A MIG gun's nozzle with its contact tip, open at `end`; the wire is drawn by itself."""
    sketch.bar(x, 6.5 * size, 0, end, "plate")
    sketch.bar(x, min(4.5 * size, 6.5 * size - 1.1 / sketch.scale), 2 * size, end, "")
    sketch.bar(x, 2.6 * size, 0, end - 1.5 * size, "heat")


def wire(sketch: Sketch, x: float, start: float, end: float, size: float = 1) -> None:
    """The wire from the contact tip down to `end`."""
    sketch.bar(x, 0.9 * size, start, end, "weld")


def torch(sketch: Sketch, x: float, end: float, size: float = 1) -> None:
    """A TIG torch's cup with its ground tungsten, whose point is at `end`."""
    wide, mouth = 6.5 * size, end - 7 * size
    sketch.shape(
        [(x - wide, 0), (x + wide, 0), (x + wide * 0.7, mouth), (x - wide * 0.7, mouth)], "heat"
    )
    half = 1.3 * size
    sketch.bar(x, half, 0, end - 4 * size, "weld")
    sketch.shape([(x - half, end - 4 * size), (x + half, end - 4 * size), (x, end)], "weld")
    sketch.bar(x, 0.4, end - 4 * size, end, "weld")


def rod(sketch: Sketch, x: float, end: float, size: float = 1) -> None:
    """A stick rod: core in its coating, burnt off square at `end`."""
    sketch.bar(x, max(3.4 * size, 2.1 / sketch.scale), 0, end, "heat")
    sketch.bar(x, 1.3 * size, 0, end, "weld")


def arc(
    sketch: Sketch, tip: tuple[float, float], foot: float, spread: float, level: float = PLATE
) -> None:
    """An arc from the end of wire, tungsten or rod down to `foot` on the plate."""
    x, y = tip
    waist = (level - y) * 0.45
    lean = (foot - x) * 0.35
    top = min(1.2, spread * 0.7)
    sketch.line([tip, (x + lean, y + waist), (foot, level - 1.2 / sketch.scale)], 1, "hot")
    sketch.bar(x, top, y, y + 1.5, "hot")
    sketch.shape(
        [
            (x - top, y),
            (x + top, y),
            (x + lean + spread * 0.75, y + waist),
            (foot + spread, level),
            (foot - spread, level),
            (x + lean - spread * 0.75, y + waist),
        ],
        "hot",
    )


def drops(sketch: Sketch, *places: tuple[float, float]) -> None:
    """Drops of spatter in flight."""
    for x, y in places:
        sketch.disc(x, y, 0.8, "hot")


def mound(sketch: Sketch, x: float, wide: float, high: float) -> None:
    """A bead that stands on the plate, cut across."""
    points = []
    for step in range(-6, 7):
        part = step / 6
        points.append((x + wide * part, PLATE - high * (1 - part * part)))
    sketch.shape(points, "weld")


def level(sketch: Sketch, x: float, foot: float, lit: int, size: float = 1) -> None:
    """How strong the current is: four steps that grow, so many of them lit."""
    wide = max(int(2 * size * sketch.scale), 1) / sketch.scale
    for step in range(4):
        left = sketch.even(x) + step * wide * 2
        high = (2.2 + 2.6 * step) * size
        sketch.box(left, foot - high, left + wide, foot, "hot" if step < lit else "ripple")


def waves(sketch: Sketch, y: float, *places: float) -> None:
    """Heat that rises from `y`."""
    sway = max(1.6, 1.1 / sketch.scale)
    for x in places:
        sketch.line([(x, y), (x + sway, y - 2.4), (x, y - 4.8), (x + sway, y - 7.2)], 1, "hot")


def bolt(sketch: Sketch, x: float, y: float, size: float, paint: str = "hot") -> None:
    """A flash of current, its middle at a point."""
    points = ((1, -5), (-3, 1), (-0.4, 1), (-2, 6), (3.4, -1), (0.6, -1), (3, -5))
    sketch.shape([(x + across * size, y + down * size) for across, down in points], paint)
