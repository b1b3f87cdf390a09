"""The bead: a fillet's sizes, the section of a bead, and the travel speed that it tells."""

from __future__ import annotations

from math import hypot, sqrt

from weldwhy.arithmetic.bounds import Reckoned, outside, possible, remarks
from weldwhy.arithmetic.melting import wire_volume
from weldwhy.arithmetic.spans import AREA, TRAVEL

_SIZE = (0.1, 200.0, "mm")


def fillet_throat(leg: float, other_leg: float | None = None) -> Reckoned:
    """Throat of a flat-faced fillet: from the root straight to the face, mm.

    a = z1 z2 / sqrt(z1^2 + z2^2), which is 0.707 z when both legs are z. mm throughout.

    Holds for: plates at right angles, a flat face.

    Source: AWS A3.0, fillet weld terms. From memory.
    """
    other = leg if other_leg is None else other_leg
    possible("leg", leg, *_SIZE)
    possible("other leg", other, *_SIZE)
    return Reckoned(leg * other / hypot(leg, other), _uneven(leg, other), remarks(leg, other))


def fillet_leg(throat: float) -> Reckoned:
    """Leg of a flat-faced fillet with equal legs, mm.

    z = 1.414 a: a throat, mm.

    Holds for: plates at right angles, a flat face, equal legs.

    Source: AWS A3.0, fillet weld terms. From memory.
    """
    possible("throat", throat, *_SIZE)
    return Reckoned(throat * sqrt(2), remarks(throat))


def fillet_area(leg: float, other_leg: float) -> Reckoned:
    """Section of a flat-faced fillet, mm2.

    A = z1 z2 / 2: the two legs, mm. A rounded face holds more.

    Holds for: plates at right angles without a gap, a flat face.

    Source: AWS A3.0, fillet weld terms. From memory.
    """
    possible("leg", leg, *_SIZE)
    possible("other leg", other_leg, *_SIZE)
    return Reckoned(leg * other_leg / 2, _uneven(leg, other_leg), remarks(leg, other_leg))


def leg_of_area(area: float) -> Reckoned:
    """Leg of a flat-faced fillet with equal legs that has some section, mm.

    z = sqrt(2 A): A section, mm2.

    Holds for: plates at right angles without a gap, a flat face, equal legs.

    Source: AWS A3.0, fillet weld terms. From memory.
    """
    possible("area", area, *AREA)
    return Reckoned(sqrt(2 * area), remarks(area))


def _uneven(leg: float, other: float) -> tuple[str, ...]:
    if max(leg, other) < 1.5 * min(leg, other):
        return ()
    return ("one leg is half as long again as the other: only the shorter one counts for strength",)


def bead_area(width: float, height: float) -> Reckoned:
    """Section of what stands above the plate in a bead, mm2.

    A = 2/3 w h: w width at the plate, h height over it, mm. The shape taken is a parabola; half
    an ellipse would hold 18 % more.

    Holds for: a bead laid on flat plate, not taller than half its width.

    Source: plane geometry.
    """
    possible("bead width", width, *_SIZE)
    possible("bead height", height, 0.05, 200, "mm")
    ratio = outside("height over width of the bead", height / width, 0, 0.5)
    return Reckoned(2 / 3 * width * height, ratio, remarks(width, height))


def travel_for_area(area: float, feed: float, diameter: float, efficiency: float) -> Reckoned:
    """Travel speed that lays down a bead of some section, mm/s.

    v = (pi/4) d^2 F eta / A: d wire diameter in mm, F wire feed (here m/min), eta share of the
    wire that ends in the weld, A section in mm2.

    Holds for: round wire, for cored wire with eta less by its core; all of the section is filler.

    Source: plane geometry.
    """
    possible("area", area, *AREA)
    cubic = wire_volume(feed, diameter, efficiency)
    return Reckoned(cubic * 1000 / 60 / area, remarks(cubic, area))


def area_for_travel(travel: float, feed: float, diameter: float, efficiency: float) -> Reckoned:
    """Section of the bead that a travel speed lays down, mm2.

    A = (pi/4) d^2 F eta / v: v travel in mm/s, d wire diameter in mm, F feed, eta
    the share of the wire that stays.

    Holds for: round wire, for cored wire with eta less by its core; all of the section is filler.

    Source: plane geometry.
    """
    possible("travel", travel, *TRAVEL)
    cubic = wire_volume(feed, diameter, efficiency)
    return Reckoned(cubic * 1000 / 60 / travel, remarks(cubic, travel))


def travel_minutes(length: float, travel: float) -> Reckoned:
    """Minutes of arc for a weld of some length, min.

    t = L / v: L length of all passes together (here m), v travel in mm/s.

    Holds for: one even travel speed.

    Source: plane geometry.
    """
    possible("length of weld", length, 0.001, 100_000, "m")
    possible("travel", travel, *TRAVEL)
    return Reckoned(length * 1000 / travel / 60, remarks(length, travel))
