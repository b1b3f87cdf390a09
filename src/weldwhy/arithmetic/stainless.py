"""What stainless weld metal becomes as it freezes: chromium and nickel equivalents, and ferrite."""

from __future__ import annotations

from weldwhy.arithmetic.bounds import Reckoned, outside, possible, remarks
from weldwhy.arithmetic.makes import Makes, sound

Equivalents = tuple[Reckoned, Reckoned]
"""Chromium and nickel equivalent, percent."""


def schaeffler(makes: Makes) -> Equivalents:
    """Chromium and nickel equivalents after Schaeffler, percent.

    Creq = Cr + Mo + 1.5 Si + 0.5 Nb; Nieq = Ni + 30 C + 0.5 Mn, each in mass percent.

    Holds for: stainless weld metal, and its mixtures with plain steel, with usual nitrogen.

    Source: Schaeffler, Metal Progress 56 (1949). From memory.
    """
    part = sound(makes).get
    creq = part("Cr", 0.0) + part("Mo", 0.0) + 1.5 * part("Si", 0.0) + 0.5 * part("Nb", 0.0)
    return Reckoned(creq), Reckoned(part("Ni", 0.0) + 30 * part("C", 0.0) + 0.5 * part("Mn", 0.0))


def delong(makes: Makes) -> Equivalents:
    """Chromium and nickel equivalents after DeLong, percent: Schaeffler's, with nitrogen counted.

    Creq = Cr + Mo + 1.5 Si + 0.5 Nb; Nieq = Ni + 30 C + 30 N + 0.5 Mn, each in mass percent.

    Holds for: stainless weld metal whose nitrogen is known.

    Source: DeLong, Welding Journal 53 (1974). From memory.
    """
    creq, nieq = schaeffler(makes)
    return creq, Reckoned(nieq + 30 * makes.get("N", 0.0))


def wrc(makes: Makes) -> Equivalents:
    """Chromium and nickel equivalents of the WRC-1992 diagram, percent; its ferrite is read there.

    Creq = Cr + Mo + 0.7 Nb; Nieq = Ni + 35 C + 20 N + 0.25 Cu, each in mass percent.

    Holds for: Creq 17 to 31, Nieq 9 to 18, Mn to 10, Mo to 3, N to 0.2, Si to 1.

    Source: WRC-1992 diagram, Welding Journal 71 (1992). From memory.
    """
    part = sound(makes).get
    creq = part("Cr", 0.0) + part("Mo", 0.0) + 0.7 * part("Nb", 0.0)
    nieq = part("Ni", 0.0) + 35 * part("C", 0.0) + 20 * part("N", 0.0) + 0.25 * part("Cu", 0.0)
    limits = (("Mn", 10), ("Mo", 3), ("N", 0.2), ("Si", 1))
    said = [outside(f"WRC: {each}", part(each, 0.0), 0, most, "%") for each, most in limits]
    return (
        Reckoned(creq, outside("WRC: Creq", creq, 17, 31), *said),
        Reckoned(nieq, outside("WRC: Nieq", nieq, 9, 18), *said),
    )


def ferrite_number(creq: float, nieq: float) -> Reckoned:
    """Ferrite number of a stainless weld as it freezes, from DeLong's equivalents; 0 is the least.

    FN = 3.34 Creq - 2.46 Nieq - 28.6, the straight lines of the DeLong diagram. From a composition
    alone it is good to about 3 FN below 10, and to less above.

    Holds for: Creq 16 to 27, Nieq 10 to 21, FN 0 to 18.

    Source: DeLong, Welding Journal 53 (1974); the line as fitted to its diagram. From memory.
    """
    possible("Creq", creq, 0.0, 200.0, "%")
    possible("Nieq", nieq, 0.0, 3500.0, "%")
    value = max(3.34 * creq - 2.46 * nieq - 28.6, 0.0)
    return Reckoned(
        value,
        remarks(creq, nieq),
        outside("ferrite: Creq", creq, 16, 27),
        outside("ferrite: Nieq", nieq, 10, 21),
        outside("ferrite number", value, 0, 18),
    )


def martensite_below(creq: float) -> Reckoned:
    """The nickel equivalent after Schaeffler, percent, below which a weld holds hard martensite.

    Nieq = 25 - 0.86 Creq, read off the diagram's line between austenite and martensite; good to
    about 1 %.

    Holds for: Creq 2 to 20, cooled in the air.

    Source: Schaeffler, Metal Progress 56 (1949). The line from memory.
    """
    possible("Creq", creq, 0.0, 200.0, "%")
    return Reckoned(max(25.0 - 0.86 * creq, 0.0), outside("martensite: Creq", creq, 2, 20))
