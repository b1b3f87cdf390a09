"""What a machine draws from its socket."""

from __future__ import annotations

from math import sqrt

from weldwhy.arithmetic.bounds import Reckoned, possible, remarks
from weldwhy.arithmetic.spans import AMPS, VOLTS, Span

_SUPPLY: Span = (10, 1000, "V")


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

    S = U2 I2 / (1000 eta cos phi): U2 volts and I2 amps of the arc, eta efficiency, cos phi power
    factor.

    Holds for: single-phase supplies, a steady arc.

    Source: power balance; the terms as in IEC 60974-1. From memory.
    """
    possible("volts at the arc", volts_out, *VOLTS)
    possible("amps", amps_out, *AMPS)
    possible("efficiency", efficiency, 0.05, 1)
    possible("power factor", power_factor, 0.05, 1)
    drawn = volts_out * amps_out / (1000 * efficiency * power_factor)
    return Reckoned(drawn, remarks(volts_out, amps_out))


def peak_volts(volts: float) -> Reckoned:
    """Highest volts of an alternating current, V.

    Up = U sqrt(2): U what a meter shows (rms), V.

    Holds for: a sine, as a transformer gives it; square waves have no higher peak than U.

    Source: plane geometry.
    """
    return Reckoned(possible("volts", volts, 0, 2000, "V") * sqrt(2), remarks(volts))
