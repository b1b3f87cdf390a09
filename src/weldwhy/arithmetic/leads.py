"""Volts lost on the way: in weld leads and in extension cords."""

from __future__ import annotations

from weldwhy.arithmetic.bounds import Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import Span

_ONE_WAY: Span = (0.01, 1000, "m")
_SECTION: Span = (0.05, 1000, "mm2")
_RESISTIVITY: Span = (0.01, 0.2, "ohm mm2/m")


def copper(temperature: float, at_20: float, rise: float, stranding: float) -> Reckoned:
    """Resistivity of a copper lead that is so warm, ohm mm2/m.

    rho = s rho20 (1 + k (T - 20)): rho20 ohm mm2/m at 20 C, k its rise for each degree, s how much
    longer the strands are than the lead, T in C.

    Holds for: -20 to 120 C.

    Source: copper wire tables; s from NEC chapter 9, table 8.
    """
    possible("temperature of the lead", temperature, -60, 250, "C")
    possible("resistivity", at_20, *_RESISTIVITY)
    possible("rise with temperature", rise, 0, 0.01)
    possible("stranding", stranding, 1, 1.1)
    said = outside("temperature of the lead", temperature, -20, 120, "C")
    return Reckoned(stranding * at_20 * (1 + rise * (temperature - 20)), said)


def cable_drop(length: float, amps: float, section: float, resistivity: float) -> Reckoned:
    """Volts lost on the way out and back, V.

    dU = 2 L I rho / A: L length one way in m, I amps, rho ohm mm2/m, A section of the metal
    in mm2.

    Holds for: direct current, both ways of one section; alternating current up to some 70 mm2 and
    laid out straight. Poor plugs and clamps lose more.

    Source: AWS Welding Handbook vol. 2, power sources; NEC chapter 9, table 8. From memory.
    """
    possible("section", section, *_SECTION)
    return Reckoned(_volt_sections(length, amps, resistivity) / section, remarks(length, amps))


def section_for(length: float, amps: float, drop: float, resistivity: float) -> Reckoned:
    """Section of the metal that loses no more than so many volts, mm2.

    A = 2 L I rho / dU: L length one way in m, I amps, rho ohm mm2/m, dU volts lost.

    Holds for: direct current, both ways of one section. What the lead can carry without getting
    hot is another matter.

    Source: AWS Welding Handbook vol. 2, power sources; NEC chapter 9, table 8. From memory.
    """
    possible("volts lost", drop, 0.01, 500, "V")
    return Reckoned(_volt_sections(length, amps, resistivity) / drop, remarks(length, amps))


def _volt_sections(length: float, amps: float, resistivity: float) -> float:
    possible("length", length, *_ONE_WAY)
    possible("amps", amps, 0.1, 2000, "A")
    return 2 * length * amps * possible("resistivity", resistivity, *_RESISTIVITY)
