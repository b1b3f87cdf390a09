"""The groove of a butt joint: its section, and the passes that fill it."""

from __future__ import annotations

from math import ceil, radians, tan

from weldwhy.arithmetic.bounds import Impossible, Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import AREA, LENGTH


def groove_area(
    thickness: float, gap: float, face: float, angle: float, both_sides: bool
) -> Reckoned:
    """Section of a square (angle 0), V or double V groove, mm2.

    A = g t + (t - f)^2 tan(w/2), half of the second term for a double V: t thickness, g root gap,
    f root face, mm; w included angle of the groove in degrees.

    Holds for: straight sides, both plates of one thickness; a double V equal on both sides, its
    root face in the middle. 0 to 90 degrees.

    Source: plane geometry; the names are those of ISO 9692-1.
    """
    possible("groove angle", angle, 0, 150, "deg")
    depth = _depth(thickness, gap, face)
    wedge = depth**2 * tan(radians(angle / 2)) * (0.5 if both_sides else 1.0)
    said = outside("groove angle", angle, 0, 90, "deg")
    return Reckoned(gap * thickness + wedge, said, remarks(thickness, gap, face))


def bevel_area(
    thickness: float, gap: float, face: float, angle: float, both_sides: bool
) -> Reckoned:
    """Section of a groove of which one plate is bevelled and the other square, mm2.

    A = g t + (t - f)^2 tan(w) / 2, half of the second term when bevelled from both sides: w angle
    of the bevel in degrees; g gap, t thickness and f root face in mm.

    Holds for: straight sides, both plates of one thickness; a double bevel equal on both sides,
    its root face in the middle. 0 to 60 degrees.

    Source: plane geometry; the names are those of ISO 9692-1.
    """
    possible("bevel angle", angle, 0, 75, "deg")
    depth = _depth(thickness, gap, face)
    wedge = depth**2 * tan(radians(angle)) / 2 * (0.5 if both_sides else 1.0)
    said = outside("bevel angle", angle, 0, 60, "deg")
    return Reckoned(gap * thickness + wedge, said, remarks(thickness, gap, face))


def _depth(thickness: float, gap: float, face: float) -> float:
    """How much of the thickness is bevelled, mm."""
    possible("thickness", thickness, *LENGTH)
    possible("root gap", gap, 0, 100, "mm")
    possible("root face", face, 0, thickness, "mm")
    return thickness - face


def with_reinforcement(area: float, share: float) -> Reckoned:
    """Section of a weld that stands proud of its groove, mm2.

    A = Ag (1 + s): Ag section of the groove in mm2, s share that stands above it.

    Holds for: a share of 0 to 0.3; 0.10 to 0.15 is usual.

    Source: AWS Welding Handbook vol. 1, economics. From memory.
    """
    possible("area", area, *AREA)
    possible("reinforcement share", share, 0, 1)
    said = outside("reinforcement share", share, 0, 0.3)
    return Reckoned(area * (1 + share), said, remarks(area))


def passes(area: float, area_of_pass: float) -> Reckoned:
    """How many passes fill a section, a whole number.

    n = A / Ap, rounded up: A section to fill, Ap what one pass lays down, both mm2.

    Holds for: passes of one size; a root pass is often smaller, so count one more for it.

    Source: plane geometry.
    """
    possible("area", area, *AREA)
    possible("area of one pass", area_of_pass, *AREA)
    # 3 x 0.1 is a hair more than 0.3, and no fourth pass
    count = ceil(area / area_of_pass * (1 - 1e-9))
    if count > 1000:
        raise Impossible(f"{count} passes are not possible; make the passes larger")
    return Reckoned(count, remarks(area, area_of_pass))
