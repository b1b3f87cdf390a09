"""What a metal is made of, in mass percent by element: sound or refused, and mixed in the pool."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic.bounds import possible

Makes = Mapping[str, float]
"""Mass percent by symbol of the element; what is not named is not in it."""


def sound(makes: Makes) -> Makes:
    """The composition as it is; Impossible if a part is below 0 % or all are more than 100 %.

    Each part at least 0, and their sum at most 100.

    Holds for: every metal.

    Source: arithmetic.
    """
    for element, percent in makes.items():
        possible(element, percent, 0.0, 100.0, "%")
    # a hair more than 100, for what adding up decimals may leave
    possible("the sum of all elements", sum(makes.values()), 0.0, 100.0 + 1e-9, "%")
    return makes


def mixed(base: Makes, filler: Makes, dilution: float) -> dict[str, float]:
    """What the weld is made of, mass percent: filler with so much of the base melted into it.

    weld = dilution * base + (1 - dilution) * filler, for each element; dilution 0 to 1.

    Holds for: a pool that is stirred well and loses nothing; a few hundredths of zinc, magnesium
    and manganese burn off in the arc.

    Source: conservation of mass.
    """
    share = possible("dilution", dilution, 0.0, 1.0)
    parts = sound(base), sound(filler)
    elements = dict.fromkeys([*filler, *base])
    return {
        each: share * parts[0].get(each, 0.0) + (1.0 - share) * parts[1].get(each, 0.0)
        for each in elements
    }
