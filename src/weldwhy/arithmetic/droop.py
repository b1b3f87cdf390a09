"""A power source whose volts fall as the amps rise, and where an arc settles on its line."""

from __future__ import annotations

from weldwhy.arithmetic.bounds import Impossible, Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import AMPS, VOLTS


def arc_length_volts(length: float, base: float, per_mm: float) -> Reckoned:
    """Volts of an arc of some length, V.

    U = a + b L: a base in V, b volts for each millimetre, L length of the arc in mm.

    Holds for: one rod or tungsten in one gas, arcs of 1 to 10 mm.

    Source: welding textbook, characteristics of arc and power source.
    """
    possible("arc length", length, 0, 100, "mm")
    possible("base of the arc's line", base, *VOLTS)
    possible("volts for each millimetre", per_mm, 0, 50, "V/mm")
    said = outside("arc length", length, 1, 10, "mm")
    return Reckoned(base + per_mm * length, said, remarks(length))


def working_amps(open_volts: float, short_amps: float, base: float, slope: float) -> Reckoned:
    """Amps at which the line of a drooping power source crosses that of the arc, A.

    I = (U0 - a) / (U0 / Is + b), from U = U0 - (U0 / Is) I and U = a + b I: U0 open-circuit volts,
    Is amps when shorted, a base of the arc's line in V, b its slope in V/A (0: volts stay).

    Holds for: straight lines, stick and TIG sources near the working point.

    Source: welding textbook, characteristics of arc and power source.
    """
    possible("open-circuit volts", open_volts, *VOLTS)
    possible("short-circuit amps", short_amps, *AMPS)
    possible("base of the arc's line", base, *VOLTS)
    possible("slope of the arc's line", slope, 0, 10, "V/A")
    if base >= open_volts:
        raise Impossible(
            f"an arc of {base:g} V goes out: the source gives {open_volts:g} V at most"
        )
    amps = (open_volts - base) / (open_volts / short_amps + slope)
    return Reckoned(amps, remarks(open_volts, short_amps, base))
