"""Whether an aluminium bead tears as it freezes: what it is made of, against where cracks peak."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic.bounds import Impossible, Reckoned
from weldwhy.arithmetic.makes import Makes, sound
from weldwhy.arithmetic.makes import mixed as mixed

_MG, _SI = 24.305, 28.086  # atomic masses

Peak = tuple[float, float, float]
"""Percent where cracking is worst: from, to, and from where on it is over."""


def magnesium_silicide(makes: Makes) -> Reckoned:
    """Mg2Si that the magnesium and silicon of an alloy can form, mass percent.

    Mg2Si = Mg * 76.70/48.61 or Si * 76.70/28.09, whichever gives less.

    Holds for: aluminium in which all of the scarcer of the two is bound.

    Source: atomic masses of magnesium (24.305) and silicon (28.086).
    """
    part, molar = sound(makes).get, 2 * _MG + _SI
    return Reckoned(min(part("Mg", 0.0) * molar / (2 * _MG), part("Si", 0.0) * molar / _SI))


def crack_sensitivity(makes: Makes, peaks: Mapping[str, Peak]) -> Reckoned:
    """How much an aluminium bead is given to hot cracks: 0 hardly, 1 as much as at the peak.

    s = max(rise) * min(ease). For Si, Mg, Cu and Mg2Si: rise goes up straight from 0 at 0 % to 1
    at the start of its peak and stays; ease is 1 up to the end of the peak and falls straight to
    0 where the peak is over, since much late liquid heals what tears.

    Holds for: the order of alloys and fillers, not for the chance of a crack; straight lines stand
    for the published curves.

    Source: curves of Pumphrey and Lyons (1948) and later work, as textbooks give them. From
    memory.
    """
    contents = dict(makes) | {"Mg2Si": float(magnesium_silicide(makes))}
    rise, ease = 0.0, 1.0
    for each, (start, end, over) in peaks.items():
        if not 0.0 < start <= end < over:
            raise Impossible(f"the peak of {each} must rise: from, to, over")
        percent = contents.get(each, 0.0)
        rise = max(rise, min(percent / start, 1.0))
        ease = min(ease, max((over - percent) / (over - end), 0.0))
    return Reckoned(rise * ease)
