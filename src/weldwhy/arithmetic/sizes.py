"""Sizes that go by a number: sheet by its weight, wire by its gauge."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic.bounds import Impossible, Reckoned, possible, remarks


def sheet_thickness(weight: float, weight_of_inch: float, coating: float = 0.0) -> Reckoned:
    """Thickness of sheet that is sold by weight, in.

    t = (w + c) / k: w weight by gauge in lb/ft2 (15 USC 206), c weight of zinc in lb/ft2, k weight
    of an inch of it: 40 by statute (wrought iron), 41.82 in the trade (steel).

    Holds for: iron and steel sheet; mills roll within some percent of it.

    Source: 15 U.S.C. 206; k of the trade is common practice, from memory.
    """
    possible("weight of sheet", weight, 0.1, 50, "lb/ft2")
    possible("weight of an inch", weight_of_inch, 10, 60, "lb/ft2")
    possible("weight of zinc", coating, 0, 1, "lb/ft2")
    return Reckoned((weight + coating) / weight_of_inch, remarks(weight))


def gauge_diameter(number: float) -> Reckoned:
    """Diameter of American wire gauge, and thickness of aluminium sheet of that number, mm.

    d = 0.127 * 92^((36 - n) / 39): n the gauge; 0 to -3 stand for 1/0 to 4/0.

    Holds for: solid round wire of 4/0 to 40, aluminium sheet.

    Source: ASTM B258. From memory.
    """
    step = (36 - possible("wire gauge", number, -3, 40)) / 39
    return Reckoned(0.127 * 92**step, remarks(number))


def cup_bore(number: float) -> Reckoned:
    """Bore of a TIG cup of some number, mm.

    d = 25.4 n / 16: n the number, which counts sixteenths of an inch.

    Holds for: cups numbered in the usual way.

    Source: common practice.
    """
    return Reckoned(25.4 / 16 * possible("cup number", number, 1, 32), remarks(number))


def least_enough(wanted: float, sizes: Mapping[str, float]) -> str:
    """The name of the smallest size that is enough, in the unit of the sizes; "" if none is.

    The least s_i with s_i >= s wins: s what is wanted, s_i the sizes there are.

    Holds for: sizes of one kind.

    Source: plane arithmetic.
    """
    possible("size", wanted, 0, 1e6)
    enough = [name for name in sizes if sizes[name] >= wanted]
    return min(enough, key=lambda name: sizes[name], default="")


def nearest(size: float, sizes: Mapping[str, float]) -> str:
    """The name of the size that is nearest to one measured, in the unit of the sizes.

    The least |s - s_i| wins; of two equally near, the first.

    Holds for: sizes that lie closer together than they vary.

    Source: plane arithmetic.
    """
    possible("size", size, 0, 1e6)
    if not sizes:
        raise Impossible("no sizes to choose from")
    return min(sizes, key=lambda name: abs(sizes[name] - size))
