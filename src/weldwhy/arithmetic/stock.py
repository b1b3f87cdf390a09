"""Wire, rods and weld metal: how much a job needs, how much is left, and how long it takes."""

from __future__ import annotations

from math import ceil, pi

from weldwhy.arithmetic.bounds import Impossible, Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import AREA, DENSITY, FEED, SHARE, WIRE, Span

_MASS: Span = (0, 5000, "kg")
_METRES: Span = (0, 1e7, "m")
_SPOOL: Span = (1, 2000, "mm")


def wire_left(mass: float, diameter: float, density: float) -> Reckoned:
    """Length of a wire of some mass, m.

    L = 4000 m / (pi d^2 rho): m in kg (spool weighed, less the empty spool), d wire diameter in
    mm, rho density in g/cm3.

    Holds for: round wire. Cored wire is lighter than its metal: its own density belongs here.

    Source: plane geometry.
    """
    possible("mass of wire", mass, *_MASS)
    possible("wire size", diameter, *WIRE)
    possible("density", density, *DENSITY)
    return Reckoned(mass * 4000 / (pi * diameter**2 * density), remarks(mass, diameter))


def wire_mass(length: float, diameter: float, density: float) -> Reckoned:
    """Mass of a wire of some length, kg.

    m = pi d^2 rho L / 4000: d wire diameter in mm, rho density in g/cm3, L in m.

    Holds for: round wire. Cored wire is lighter than its metal: its own density belongs here.

    Source: plane geometry.
    """
    possible("length of wire", length, *_METRES)
    possible("wire size", diameter, *WIRE)
    possible("density", density, *DENSITY)
    return Reckoned(length * pi * diameter**2 * density / 4000, remarks(length, diameter))


def wire_wound(
    outer: float, inner: float, width: float, diameter: float, packing: float
) -> Reckoned:
    """Length of wire wound on a spool, by the size of the winding, m.

    L = f w (Do^2 - Di^2) / (1000 d^2): Do, Di outer and inner diameter of the winding and w its
    width, d wire diameter, all in mm; f share of the winding that is metal.

    Holds for: even layers. f is 0.785 for turns in square array and 0.907 at the very most.

    Source: plane geometry.
    """
    for name, size in (("outer diameter", outer), ("inner diameter", inner), ("width", width)):
        possible(f"{name} of the winding", size, *_SPOOL)
    possible("wire size", diameter, *WIRE)
    possible("packing", packing, 0.2, 0.907)
    if outer < inner:
        raise Impossible(f"the winding cannot be {outer:g} mm outside and {inner:g} mm inside")
    length = packing * width * (outer**2 - inner**2) / (1000 * diameter**2)
    return Reckoned(length, remarks(outer, inner, width, diameter))


def feed_minutes(length: float, feed: float) -> Reckoned:
    """Minutes of arc in a length of wire, min.

    t = L / F: L in m, F wire feed in m/min.

    Holds for: a wire feed that stays as set.

    Source: plane geometry.
    """
    possible("length of wire", length, *_METRES)
    return Reckoned(length / possible("wire feed", feed, *FEED), remarks(length, feed))


def weld_metal(area: float, length: float, density: float, extra: float = 0.0) -> Reckoned:
    """Weld metal in a joint, kg.

    m = A L rho (1 + x) / 1000: A section in mm2, L length in m, rho density in g/cm3, x share on
    top for the rounded face, 0.10 to 0.15.

    Holds for: one section all along.

    Source: AWS Welding Handbook vol. 1. From memory.
    """
    possible("area", area, *AREA)
    possible("length of weld", length, 0.001, 100_000, "m")
    possible("density", density, *DENSITY)
    possible("share on top", extra, 0, 1)
    return Reckoned(area * length * density * (1 + extra) / 1000, remarks(area, length))


def filler_needed(mass: float, efficiency: float) -> Reckoned:
    """Wire or rods to buy for some weld metal, kg.

    M = m / eta: m weld metal in kg, eta share of what is bought that ends in the weld.

    Holds for: eta as given for the wire or rod; a rod's takes in covering and stub.

    Source: AWS Welding Handbook vol. 1. From memory.
    """
    possible("weld metal", mass, *_MASS)
    return Reckoned(mass / possible("deposition efficiency", efficiency, *SHARE), remarks(mass))


def arc_minutes(mass: float, rate: float) -> Reckoned:
    """Minutes of arc that some weld metal takes, min.

    t = 60 m / W: m weld metal in kg, W what is laid down, kg/h.

    Holds for: arc time only; setting up, chipping and resting come on top.

    Source: AWS Welding Handbook vol. 1. From memory.
    """
    possible("weld metal", mass, *_MASS)
    return Reckoned(60 * mass / possible("deposition rate", rate, 0.01, 100, "kg/h"), remarks(mass))


def rod_metal(
    diameter: float, length: float, stub: float, density: float, recovery: float
) -> Reckoned:
    """Weld metal that one rod gives, kg.

    m = pi d^2 rho (l - s) R / 4e6: d core diameter, l rod length, s stub thrown away, in mm; rho
    density in g/cm3; R weld metal for each part of core melted, above 1 with iron powder.

    Holds for: rods burnt down to the stub.

    Source: ISO 2401, effective electrode efficiency. From memory.
    """
    possible("rod size", diameter, *WIRE)
    possible("rod length", length, 50, 1000, "mm")
    possible("stub", stub, 0, 500, "mm")
    possible("density", density, *DENSITY)
    possible("recovery", recovery, 0.3, 2.5)
    if stub >= length:
        raise Impossible(f"a stub of {stub:g} mm leaves nothing of a rod of {length:g} mm")
    said = outside("stub", stub, 25, 100, "mm")
    burnt = pi * diameter**2 * density * (length - stub) / 4e6
    return Reckoned(burnt * recovery, said, remarks(diameter, length, stub))


def rods_needed(mass: float, each: float) -> Reckoned:
    """Rods for some weld metal, whole rods.

    n = m / m1 rounded up: m weld metal in kg, m1 what one rod gives in kg.

    Holds for: rods burnt down to the stub; bent and spoilt ones come on top.

    Source: plane arithmetic.
    """
    possible("weld metal", mass, *_MASS)
    possible("weld metal of a rod", each, 1e-5, 5, "kg")
    return Reckoned(ceil(mass / each - 1e-9), remarks(mass, each))
