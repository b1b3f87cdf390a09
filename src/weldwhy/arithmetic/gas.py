"""How much gas a cylinder holds, and how long it lasts.

Litres of gas are litres at 15 C and 1 atm, what a flow gauge is marked in. Pressures are what the
gauge reads, over that of the air. Temperatures are those of the gas in the cylinder.
"""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.arithmetic.bounds import Impossible, Reckoned, possible, remarks
from weldwhy.arithmetic.realgas import ZERO_C, co2_pressure, compressibility
from weldwhy.arithmetic.spans import Span

ATMOSPHERE = 1.01325
"""bar"""
_AT = 15.0
"""Temperature, C, at which litres of gas are counted."""
_GAUGE: Span = (0, 400, "bar")
_WATER: Span = (0.05, 2000, "L")
_LITRES: Span = (0, 1e7, "L")
_FLOW: Span = (0.05, 500, "L/min")
_CO2_MOLE = 44.0095
"""Mass of a mole of CO2, g."""
_CO2_END = 30.9
"""Temperature, C, above which CO2 is never liquid."""
_MOSTLY = 90.0
"""Percent of CO2 from which a gas is kept as liquid."""
_GAS_CONSTANT = 0.08314462618
"""L bar / (mol K)"""


def contents(
    pressure: float, volume: float, temperature: float, parts: Mapping[str, float]
) -> Reckoned:
    """Gas in a cylinder, L at 15 C and 1 atm, down to an empty gauge.

    N = V (P / (Z T) - P0 / (Z0 T)) T0 Z0 / P0: V water volume in L, P gauge pressure plus P0 in
    bar, P0 1.01325 bar, T in K (asked for in C), T0 288.15 K, Z how far the gas departs from the
    ideal law. Parts in percent by volume.

    Holds for: gas only, 0 to 300 bar, -10 to 45 C, up to 30 % CO2 in argon; within 1 % for argon,
    its mixtures with CO2 or oxygen, and helium.

    Source: gas law; Z by AIChE Journal 21 (1975) 510. From memory.
    """
    possible("gauge pressure", pressure, *_GAUGE)
    possible("water volume", volume, *_WATER)
    if parts.get("co2", 0.0) >= _MOSTLY and liquid_left(pressure, temperature):
        raise Impossible("liquid CO2 is left, and its pressure tells nothing: weigh the cylinder")
    full = _thick(pressure + ATMOSPHERE, temperature, parts)
    empty = _thick(ATMOSPHERE, temperature, parts)
    unit = _thick(ATMOSPHERE, _AT, parts)
    return Reckoned(volume * (full - empty) / unit, remarks(full, pressure, volume))


def _thick(pressure: float, temperature: float, parts: Mapping[str, float]) -> Reckoned:
    """Amount of gas in a volume, mol/L times the gas constant; pressure absolute."""
    z = compressibility(pressure, temperature, parts)
    return Reckoned(pressure / (z * (temperature + ZERO_C)), remarks(z))


def liquid_left(pressure: float, temperature: float) -> bool:
    """Whether CO2 under this gauge pressure may be liquid, from 2 % below its vapour pressure.

    p >= 0.98 ps(T) - p0: ps vapour pressure of CO2 in bar, p0 1.01325 bar, T in C. A gauge is not
    good to 2 %.

    Holds for: -56 to 31 C; above that CO2 counts as liquid from 72 bar, being nearly as dense.

    Source: J. Phys. Chem. Ref. Data 25 (1996) 1509, vapour pressure of CO2. From memory.
    """
    possible("gauge pressure", pressure, *_GAUGE)
    return pressure + ATMOSPHERE >= 0.98 * co2_pressure(min(temperature, _CO2_END))


def water_volume(
    litres: float, pressure: float, temperature: float, parts: Mapping[str, float]
) -> Reckoned:
    """Water volume of a cylinder that is known by the gas it holds when full, L.

    V = N / N1: N gas in the full cylinder, L at 15 C and 1 atm, N1 what one litre holds at its
    full gauge pressure.

    Holds for: gas only, 0 to 300 bar, -10 to 45 C.

    Source: gas law; Z by AIChE Journal 21 (1975) 510. From memory.
    """
    possible("gas when full", litres, 1, 1e6, "L")
    possible("full pressure", pressure, 1, 400, "bar")
    return Reckoned(litres / contents(pressure, 1.0, temperature, parts), remarks(litres))


def liquid_contents(mass: float) -> Reckoned:
    """Gas that liquid CO2 of some mass gives, L at 15 C and 1 atm: about 534 L for each kg.

    N = 1000 m / M Z0 R T0 / P0: m in kg, M 44.0095 g/mol, R 0.0831446 L bar/(mol K), T0 288.15 K,
    P0 1.01325 bar, Z0 0.994.

    Holds for: any temperature; mass is that of the cylinder less that stamped for it empty.

    Source: gas law; AWS Welding Handbook (0.54 m3 for each kg). From memory.
    """
    possible("mass of the gas", mass, 0, 5000, "kg")
    z = compressibility(ATMOSPHERE, _AT, {"co2": 100.0})
    mole = z * _GAS_CONSTANT * (_AT + ZERO_C) / ATMOSPHERE
    return Reckoned(mass * 1000 / _CO2_MOLE * mole, remarks(mass))


def minutes_left(litres: float, flow: float) -> Reckoned:
    """Minutes that gas lasts while it flows, min.

    t = N / q: N gas in L, q flow in L/min, both at 15 C and 1 atm.

    Holds for: a flow that stays as set.

    Source: AWS Welding Handbook. From memory.
    """
    possible("gas", litres, *_LITRES)
    return Reckoned(litres / possible("gas flow", flow, *_FLOW), remarks(litres, flow))


def gas_for(minutes: float, flow: float) -> Reckoned:
    """Gas that some minutes of flow use up, L at 15 C and 1 atm.

    N = q t: q flow in L/min, t minutes with the gas on, which are more than those of arc.

    Holds for: a flow that stays as set.

    Source: AWS Welding Handbook. From memory.
    """
    possible("minutes", minutes, 0, 1e6, "min")
    return Reckoned(minutes * possible("gas flow", flow, *_FLOW), remarks(minutes, flow))
