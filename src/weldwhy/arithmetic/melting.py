"""The wire: how fast it must be fed to melt at so many amps, and what it lays down."""

from __future__ import annotations

from math import pi, sqrt

from weldwhy.arithmetic.bounds import Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import AMPS, DENSITY, FEED, SHARE, STICK_OUT, WIRE

_AT = 1.2
"""Wire size, mm, at which the constants of a wire are given."""
_SECONDS = 60 / 1000
"""mm/s to m/min."""


def melting_feed(
    amps: float, diameter: float, extension: float, alpha: float, beta: float
) -> Reckoned:
    """Wire feed at which the wire melts as fast as it comes, m/min.

    F = alpha I + beta L I^2 in mm/s: I mean amps, L stick-out in mm, alpha in mm/(A s) falling
    with the square of the wire's diameter, beta in 1e-6/(A2 s) with its fourth power; both are
    given at 1.2 mm.

    Holds for: solid wire on plus, steady arcs, 0.7 to 1.7 mm wire, 30 to 400 A, 5 to 25 mm of
    stick-out.

    Source: Welding Journal 37 (1958), melting rate in gas metal arc welding. From memory.
    """
    possible("amps", amps, *AMPS)
    melt, heat = _at_size(diameter, extension, alpha, beta)
    feed = (melt * amps + heat * amps**2) * _SECONDS
    return Reckoned(feed, _where(amps, diameter, extension), remarks(amps, diameter, extension))


def melting_amps(
    feed: float, diameter: float, extension: float, alpha: float, beta: float
) -> Reckoned:
    """Mean amps that a wire feed draws, A.

    I = 2 F / (alpha + sqrt(alpha^2 + 4 beta L F)), the one root above nought of
    F = alpha I + beta L I^2: F wire feed in mm/s, L stick-out in mm, alpha and beta for
    the wire as it is thick.

    Holds for: solid wire on plus, steady arcs, 0.7 to 1.7 mm wire, 30 to 400 A, 5 to 25 mm of
    stick-out.

    Source: Welding Journal 37 (1958), melting rate in gas metal arc welding. From memory.
    """
    speed = possible("wire feed", feed, *FEED) / _SECONDS
    melt, heat = _at_size(diameter, extension, alpha, beta)
    amps = 2 * speed / (melt + sqrt(melt**2 + 4 * heat * speed))  # no difference of near equals
    return Reckoned(amps, _where(amps, diameter, extension), remarks(feed, diameter, extension))


def _at_size(diameter: float, extension: float, alpha: float, beta: float) -> tuple[float, float]:
    """alpha, and beta times the stick-out, of this wire: mm/(A s) and mm/(A2 s)."""
    possible("wire size", diameter, *WIRE)
    possible("stick-out", extension, *STICK_OUT)
    possible("alpha of the wire", alpha, 0.01, 10, "mm/(A s)")
    possible("beta of the wire", beta, 0, 1000, "1e-6/(A2 s)")
    ratio = (_AT / diameter) ** 2
    return alpha * ratio, beta * 1e-6 * extension * ratio**2


def _where(amps: float, diameter: float, extension: float) -> tuple[str, ...]:
    return (
        *outside("amps", amps, 30, 400, "A"),
        *outside("wire size", diameter, 0.7, 1.7, "mm"),
        *outside("stick-out", extension, 5, 25, "mm"),
    )


def deposition(feed: float, diameter: float, density: float, efficiency: float) -> Reckoned:
    """Weld metal laid down in an hour of arc, kg/h.

    W = (pi/4) d^2 F rho eta: d wire diameter in mm, F wire feed in m/min, rho density in g/cm3,
    eta share of the wire that ends in the weld.

    Holds for: round wire. Cored wire is lighter than its metal: its own density belongs here.

    Source: AWS Welding Handbook vol. 1, economics. From memory.
    """
    possible("density", density, *DENSITY)
    cubic = wire_volume(feed, diameter, efficiency)
    return Reckoned(cubic * density * 0.06, remarks(cubic))


def wire_volume(feed: float, diameter: float, efficiency: float) -> Reckoned:
    """Weld metal laid down in a minute of arc, cm3/min.

    V = (pi/4) d^2 F eta: d wire diameter in mm, F wire feed in m/min, eta share of the wire that
    ends in the weld.

    Holds for: round wire; for cored wire eta takes in its lighter core.

    Source: plane geometry.
    """
    possible("wire feed", feed, *FEED)
    possible("wire size", diameter, *WIRE)
    possible("deposition efficiency", efficiency, *SHARE)
    return Reckoned(pi / 4 * diameter**2 * feed * efficiency, remarks(feed, diameter))
