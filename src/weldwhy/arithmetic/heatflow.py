"""Where the heat goes: the area it melts, and how hot the metal beside the weld gets."""

from __future__ import annotations

from weldwhy.arithmetic.bounds import Impossible, Reckoned, possible, remarks
from weldwhy.arithmetic.spans import AMPS, AREA, LENGTH, SHARE, TRAVEL, VOLTS

_ENERGY = (0.1, 200.0, "J/mm3")
_HEAT = (0.1, 1_000_000.0, "J/mm")
_CAPACITY = (0.0005, 0.02, "J/(mm3 C)")
_MELTS = (100.0, 4000.0, "C")
_COLDEST = -100.0


def melting_energy(melts_at: float) -> Reckoned:
    """Energy that melts one cubic millimetre of a metal, J/mm3.

    Um = 3.33e-6 Tm^2: Tm melting point in kelvin.

    Holds for: sizing to the order of magnitude, common metals.

    Source: textbook problem on fillet welds, solution.
    """
    possible("melting point", melts_at, 300, 4000, "K")
    return Reckoned(3.33e-6 * melts_at**2, remarks(melts_at))


def melted_area(
    volts: float, amps: float, travel: float, into_work: float, into_melting: float, energy: float
) -> Reckoned:
    """Cross-section that the arc can melt, filler and plate together, mm2.

    A = f1 f2 U I / (Um v): f1 share of the heat that goes into the work, f2 share of that which
    melts, U volts, I amps, Um melting energy in J/mm3, v travel in mm/s.

    Holds for: sizing to the order of magnitude; f2 is 0.2 to 0.6 as a rule.

    Source: textbook problem on fillet welds, solution.
    """
    possible("volts", volts, *VOLTS)
    possible("amps", amps, *AMPS)
    possible("travel", travel, *TRAVEL)
    _shares(into_work, into_melting, energy)
    area = into_work * into_melting * volts * amps / (energy * travel)
    return Reckoned(area, remarks(volts, amps, travel, energy))


def power_to_melt(
    area: float, travel: float, into_work: float, into_melting: float, energy: float
) -> Reckoned:
    """Power of the arc that melts a cross-section, W.

    P = A Um v / (f1 f2): A area in mm2, Um heat to melt a mm3 in J, v travel in mm/s, f1
    and f2 the shares of the heat that reach the work and melt it.

    Holds for: sizing to the order of magnitude.

    Source: textbook problem on fillet welds, solution.
    """
    possible("area", area, *AREA)
    possible("travel", travel, *TRAVEL)
    _shares(into_work, into_melting, energy)
    power = area * energy * travel / (into_work * into_melting)
    return Reckoned(power, remarks(area, travel, energy))


def _shares(into_work: float, into_melting: float, energy: float) -> None:
    possible("share that goes into the work", into_work, *SHARE)
    possible("share that melts", into_melting, *SHARE)
    possible("melting energy", energy, *_ENERGY)


def peak_temperature(
    distance: float, heat: float, thickness: float, start: float, melts: float, capacity: float
) -> Reckoned:
    """The hottest that the metal gets at a distance from the edge of the weld, C.

    1/(Tp - T0) = 4.13 rhoC t Y / H + 1/(Tm - T0): T0 start and Tm melting temperature in C, rhoC
    heat capacity in J/(mm3 C), t thickness and Y distance in mm, H heat put in, J/mm.

    Holds for: plate melted right through in one pass, so that heat flows sideways only.

    Source: AWS Welding Handbook vol. 1, heat flow. From memory; the formula was also seen in a
    university's virtual laboratory.
    """
    possible("distance", distance, 0, 500, "mm")
    per_mm = _cooling(heat, thickness, start, melts, capacity)
    peak = start + 1 / (per_mm * distance + 1 / (melts - start))
    return Reckoned(peak, remarks(distance, heat, thickness))


def heated_width(
    peak: float, heat: float, thickness: float, start: float, melts: float, capacity: float
) -> Reckoned:
    """Width beside the weld, on each side, that got hotter than a temperature, mm.

    Y = (1/(Tp - T0) - 1/(Tm - T0)) H / (4.13 rhoC t): Tp the temperature asked about, T0 at the
    start and Tm of melting in C, H heat input in J/mm, rhoC in J/(mm3 C), t thickness in mm.

    Holds for: plate melted right through in one pass, so that heat flows sideways only.

    Source: AWS Welding Handbook vol. 1, heat flow. From memory; the formula was also seen in a
    university's virtual laboratory.
    """
    per_mm = _cooling(heat, thickness, start, melts, capacity)
    possible("temperature", peak, start + 1, melts, "C")
    width = (1 / (peak - start) - 1 / (melts - start)) / per_mm
    return Reckoned(width, remarks(heat, thickness))


def _cooling(heat: float, thickness: float, start: float, melts: float, capacity: float) -> float:
    """How much 1/(Tp - T0) rises with each millimetre."""
    possible("heat", heat, *_HEAT)
    possible("thickness", thickness, *LENGTH)
    possible("melting temperature", melts, *_MELTS)
    possible("heat capacity", capacity, *_CAPACITY)
    if not _COLDEST <= start <= melts - 10:
        raise Impossible(
            f"metal at {start:g} C cannot be welded; it can be {_COLDEST:g} to {melts - 10:g} C"
        )
    return 4.13 * capacity * thickness / heat
