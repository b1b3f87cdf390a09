"""How far a compressed gas or mixture departs from the ideal gas law."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from math import exp, sqrt
from typing import NamedTuple

from weldwhy.arithmetic.bounds import Impossible, Reckoned, outside, possible

ZERO_C = 273.15
"""Kelvin at 0 C."""


class _Critical(NamedTuple):
    """What one gas is reduced by: kelvin, bar, and the acentric factor."""

    kelvin: float
    bar: float
    acentric: float


# Critical constants as published. Helium and hydrogen are quantum gases, for which those do not
# fit: their pairs were fitted to their densities at 20 to 300 bar and -10 to 45 C.
_GASES = {
    "argon": _Critical(150.687, 48.63, -0.0022),
    "co2": _Critical(304.1282, 73.773, 0.2239),
    "oxygen": _Critical(154.581, 50.43, 0.0222),
    "nitrogen": _Critical(126.192, 33.958, 0.0372),
    "helium": _Critical(4.5, 3.9, 0.0),
    "hydrogen": _Critical(30.0, 16.6, 0.0),
}


class _Fluid(NamedTuple):
    """The twelve constants of a fluid of the equation."""

    b: tuple[float, float, float, float]
    c: tuple[float, float, float, float]
    d: tuple[float, float]
    beta: float
    gamma: float


_SIMPLE = _Fluid(
    (0.1181193, 0.265728, 0.154790, 0.030323),
    (0.0236744, 0.0186984, 0.0, 0.042724),
    (0.155488e-4, 0.623689e-4),
    0.65392,
    0.060167,
)
_REFERENCE = _Fluid(
    (0.2026579, 0.331511, 0.027655, 0.203488),
    (0.0313385, 0.0503618, 0.016901, 0.041577),
    (0.48736e-4, 0.0740336e-4),
    1.226,
    0.03754,
)
_REFERENCE_ACENTRIC = 0.3978

_CO2_MOST = 30.0
"""Percent of CO2 up to which the mixing rule was found good."""


def compressibility(pressure: float, temperature: float, parts: Mapping[str, float]) -> Reckoned:
    """Z = p V / (n R T) of a gas or mixture, no unit: below 1 more gas is in there than p V says.

    Z = Z0 + (w / 0.3978) (Zr - Z0): Z0 and Zr of a simple and a reference fluid at the same
    reduced temperature and pressure, w acentric factor; mixtures by pseudo-critical constants
    from pairs of gases. Pressure in bar absolute, temperature in C, parts in percent by volume.

    Holds for: 0 to 300 bar, -10 to 45 C, gas only; argon mixtures with up to 30 % CO2. Argon with
    helium may be 3 % out.

    Source: AIChE Journal 21 (1975) 510, three-parameter corresponding states. From memory.
    """
    possible("pressure", pressure, 0.001, 1000, "bar")
    possible("temperature", temperature, -60, 150, "C")
    shares = _shares(parts)
    of = _pseudo_critical(shares)
    warm, pressed = (temperature + ZERO_C) / of.kelvin, pressure / of.bar
    simple = _of_fluid(warm, pressed, _SIMPLE)
    reference = _of_fluid(warm, pressed, _REFERENCE)
    z = simple + of.acentric / _REFERENCE_ACENTRIC * (reference - simple)
    return Reckoned(z, _where(pressure, temperature, shares))


def _where(pressure: float, temperature: float, shares: Mapping[str, float]) -> Iterator[str]:
    yield from outside("pressure", pressure, 0, 302, "bar")
    yield from outside("temperature", temperature, -10, 45, "C")
    co2 = 100 * shares.get("co2", 0.0)
    if len(shares) > 1:
        yield from outside("CO2 in the mixture", co2, 0, _CO2_MOST, "%")


def _shares(parts: Mapping[str, float]) -> dict[str, float]:
    """The parts as shares of 1; Impossible for a gas that is not known."""
    for name, percent in parts.items():
        if name not in _GASES:
            raise Impossible(f'no figures for the gas "{name}"; it can be {", ".join(_GASES)}')
        possible(f"percent of {name}", percent, 0, 100, "%")
    total = sum(parts.values())
    possible("the parts of the gas together are", total, 99, 101, "%")
    return {name: percent / total for name, percent in parts.items() if percent}


def _pseudo_critical(shares: Mapping[str, float]) -> _Critical:
    """Reducing constants of a mixture, from those of each pair of its gases."""
    acentric = sum(share * _GASES[name].acentric for name, share in shares.items())
    volume = heat = 0.0
    for (one, share), (other, other_share) in product(shares.items(), repeat=2):
        pair = (_size(_GASES[one]) ** (1 / 3) + _size(_GASES[other]) ** (1 / 3)) ** 3 / 8
        volume += share * other_share * pair
        warmth = sqrt(_GASES[one].kelvin * _GASES[other].kelvin)
        heat += share * other_share * pair * warmth
    kelvin = heat / volume
    return _Critical(kelvin, _critical_z(acentric) * kelvin / volume, acentric)


def _size(gas: _Critical) -> float:
    """Critical volume of a gas, in units of the gas constant: kelvin for each bar."""
    return _critical_z(gas.acentric) * gas.kelvin / gas.bar


def _critical_z(acentric: float) -> float:
    return 0.2905 - 0.085 * acentric


def _of_fluid(warm: float, pressed: float, fluid: _Fluid) -> float:
    """Z of one fluid at a reduced temperature and pressure, on the gas side."""
    high = 4 * warm / pressed  # four times the ideal volume: thinner than any gas here
    low = high
    while (found := warm * _z(low, warm, fluid) / low) < pressed:
        high, low = low, 0.97 * low
        if warm * _z(low, warm, fluid) / low <= found:
            raise Impossible("at this pressure and temperature some of it is liquid")
    for _ in range(60):
        middle = (low + high) / 2
        if warm * _z(middle, warm, fluid) / middle < pressed:
            high = middle
        else:
            low = middle
    return pressed * low / warm


def _z(volume: float, warm: float, fluid: _Fluid) -> float:
    """Z at a reduced volume: the equation itself."""
    b1, b2, b3, b4 = fluid.b
    c1, c2, c3, c4 = fluid.c
    b = b1 - b2 / warm - b3 / warm**2 - b4 / warm**3
    c = c1 - c2 / warm + c3 / warm**3
    d = fluid.d[0] + fluid.d[1] / warm
    damped = fluid.gamma / volume**2
    last = c4 / (warm**3 * volume**2) * (fluid.beta + damped) * exp(-damped)
    return 1 + b / volume + c / volume**2 + d / volume**5 + last


def co2_pressure(temperature: float) -> Reckoned:
    """Pressure of CO2 over its own liquid, bar absolute: it tells nothing of how much is left.

    ln(p / pc) = (Tc / T) (a1 q + a2 q^1.5 + a3 q^2 + a4 q^4), q = 1 - T / Tc: T in K (asked for
    in C), Tc 304.128 K, pc 73.773 bar, a -7.0602087, 1.9391218, -1.6463597, -3.2995634.

    Holds for: -56 to 31 C; above that there is no liquid.

    Source: J. Phys. Chem. Ref. Data 25 (1996) 1509, vapour pressure of CO2. From memory.
    """
    critical = _GASES["co2"]
    possible("temperature of liquid CO2", temperature, -56, critical.kelvin - ZERO_C, "C")
    cold = 1 - (temperature + ZERO_C) / critical.kelvin
    powers = -7.0602087 * cold + 1.9391218 * cold**1.5 - 1.6463597 * cold**2 - 3.2995634 * cold**4
    return Reckoned(critical.bar * exp(critical.kelvin / (temperature + ZERO_C) * powers))
