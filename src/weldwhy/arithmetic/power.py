"""The machine's power: minutes of arc it can stand, amps it draws, volts lost in the leads."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import sqrt

from weldwhy.arithmetic.bounds import Impossible, Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import AMPS, VOLTS, Span

_PERCENT: Span = (0.1, 100, "%")
_SUPPLY: Span = (10, 1000, "V")
_ONE_WAY: Span = (0.01, 1000, "m")
_SECTION: Span = (0.05, 1000, "mm2")
_RESISTIVITY: Span = (0.01, 0.2, "ohm mm2/m")
_TEN = 10.0
"""Minutes of the period that a duty is a part of."""

Rating = tuple[float, float]
"""What a plate says: so many percent of ten minutes at so many amps."""


def duty_at(amps: float, rated_percent: float, rated_amps: float) -> Reckoned:
    """Duty of a machine at other amps than its rated ones, percent of ten minutes.

    D = Dr (Ir / I)^2, 100 at most: Dr rated percent at Ir amps, I the amps asked of.

    Holds for: ten-minute periods, amps near the rated ones and not above them. Above the rated
    amps the machine may not be used, whatever the formula says.

    Source: AWS Welding Handbook vol. 2, power sources; IEC 60974-1. From memory.
    """
    possible("amps", amps, *AMPS)
    possible("rated duty", rated_percent, *_PERCENT)
    possible("rated amps", rated_amps, *AMPS)
    duty = min(100.0, rated_percent * (rated_amps / amps) ** 2)
    return Reckoned(duty, _above(amps, rated_amps), remarks(amps, rated_amps))


def amps_at(percent: float, rated_percent: float, rated_amps: float) -> Reckoned:
    """Amps that a machine may give for a duty other than its rated one, A.

    I = Ir sqrt(Dr / D): Dr rated percent at Ir amps, D the percent asked of.

    Holds for: ten-minute periods, amps near the rated ones and not above them. Above the rated
    amps the machine may not be used, whatever the formula says.

    Source: AWS Welding Handbook vol. 2, power sources; IEC 60974-1. From memory.
    """
    possible("duty", percent, *_PERCENT)
    possible("rated duty", rated_percent, *_PERCENT)
    possible("rated amps", rated_amps, *AMPS)
    amps = rated_amps * sqrt(rated_percent / percent)
    return Reckoned(amps, _above(amps, rated_amps), remarks(percent, rated_amps))


def _above(amps: float, rated_amps: float) -> tuple[str, ...]:
    if amps <= rated_amps:
        return ()
    return (f"{amps:.0f} A is above the rated {rated_amps:g} A: do not use the machine so",)


def duty_between(amps: float, ratings: Sequence[Rating]) -> Reckoned:
    """Duty of a machine with several ratings, each (percent, amps); percent of ten minutes.

    The square law D = Dr (Ir / I)^2 from the nearest rating below and above I, the lower of the
    two taken; never less than the rating above, which holds at fewer amps all the more.

    Holds for: ten-minute periods, ratings whose percent falls as their amps rise, amps up to the
    highest rated ones. Between two ratings it errs on the careful side.

    Source: the square law as in `duty_at`; the careful choice between two is common practice.
    """
    possible("amps", amps, *AMPS)
    rated = _in_order(ratings)
    if amps <= rated[0][1]:
        return duty_at(amps, *rated[0])
    if amps >= rated[-1][1]:
        return duty_at(amps, *rated[-1])
    below, above = next(pair for pair in pairwise(rated) if amps <= pair[1][1])
    careful = min(float(duty_at(amps, *below)), float(duty_at(amps, *above)))
    return Reckoned(min(max(careful, above[0]), below[0]), remarks(amps))


def amps_between(percent: float, ratings: Sequence[Rating]) -> Reckoned:
    """Most amps that a machine with several ratings, each (percent, amps), gives for a duty, A.

    The most amps whose duty by `duty_between` is no less than the one asked for.

    Holds for: as `duty_between`.

    Source: the square law as in `amps_at`; the careful choice between two is common practice.
    """
    possible("duty", percent, *_PERCENT)
    rated = _in_order(ratings)
    if percent >= rated[0][0]:
        return amps_at(percent, *rated[0])
    if percent <= rated[-1][0]:
        return amps_at(percent, *rated[-1])
    below, above = next(pair for pair in pairwise(rated) if percent > pair[1][0])
    careful = min(float(amps_at(percent, *below)), float(amps_at(percent, *above)))
    return Reckoned(max(careful, below[1]), remarks(percent))


def _in_order(ratings: Sequence[Rating]) -> list[Rating]:
    """The ratings by rising amps; Impossible if there is none or the percent does not fall."""
    rated = sorted(ratings, key=lambda rating: rating[1])
    if not rated:
        raise Impossible("no rating given; a plate says, for example, 30 % at 130 A")
    for (percent, amps), (next_percent, next_amps) in pairwise(rated):
        if not (next_percent < percent and next_amps > amps):
            one, other = f"{percent:g} % at {amps:g} A", f"{next_percent:g} % at {next_amps:g} A"
            raise Impossible(f"{one} and {other} cannot both be: more amps go with less duty")
    return rated


def rest_minutes(duty: float) -> Reckoned:
    """Minutes of rest that a machine needs in every ten, min.

    r = 10 - D / 10: D duty in percent; the other D / 10 minutes are arc.

    Holds for: ten-minute periods, 40 C air at most.

    Source: AWS glossary, duty cycle.
    """
    return Reckoned(_TEN * (1 - possible("duty", duty, *_PERCENT) / 100), remarks(duty))


def supply_amps(
    volts_out: float, amps_out: float, supply_volts: float, efficiency: float, power_factor: float
) -> Reckoned:
    """Amps that a machine draws from the supply while the arc burns, A.

    I1 = U2 I2 / (U1 eta cos phi): U2, I2 volts and amps at the arc, U1 supply volts, eta share of
    the power that comes out, cos phi the power factor.

    Holds for: single-phase supplies, a steady arc.

    Source: power balance; the terms as in IEC 60974-1. From memory.
    """
    possible("supply volts", supply_volts, *_SUPPLY)
    drawn = apparent_power(volts_out, amps_out, efficiency, power_factor)
    return Reckoned(drawn * 1000 / supply_volts, remarks(drawn, supply_volts))


def apparent_power(
    volts_out: float, amps_out: float, efficiency: float, power_factor: float
) -> Reckoned:
    """Power that supply or generator must be sized for, kVA.

    S = U2 I2 / (1000 eta cos phi): as in `supply_amps`.

    Holds for: single-phase supplies, a steady arc.

    Source: power balance; the terms as in IEC 60974-1. From memory.
    """
    possible("volts at the arc", volts_out, *VOLTS)
    possible("amps", amps_out, *AMPS)
    possible("efficiency", efficiency, 0.05, 1)
    possible("power factor", power_factor, 0.05, 1)
    drawn = volts_out * amps_out / (1000 * efficiency * power_factor)
    return Reckoned(drawn, remarks(volts_out, amps_out))


def effective_amps(amps: float, duty: float) -> Reckoned:
    """Steady amps that would heat a supply lead as much as amps that come and go, A.

    I = I1 sqrt(D / 100): I1 amps while the arc burns, D duty in percent.

    Holds for: ten-minute periods; what the machine draws without an arc is left out.

    Source: IEC 60974-1, effective supply current. From memory.
    """
    possible("amps", amps, 0.1, 2000, "A")
    return Reckoned(amps * sqrt(possible("duty", duty, *_PERCENT) / 100), remarks(amps, duty))


def peak_volts(volts: float) -> Reckoned:
    """Highest volts of an alternating current, V.

    Up = U sqrt(2): U what a meter shows (rms), V.

    Holds for: a sine, as a transformer gives it; square waves have no higher peak than U.

    Source: plane geometry.
    """
    return Reckoned(possible("volts", volts, 0, 2000, "V") * sqrt(2), remarks(volts))


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
