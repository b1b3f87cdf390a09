"""The arc: its volts, its heat in each length of weld, and how the metal crosses it."""

from __future__ import annotations

from math import inf
from typing import Literal

from weldwhy.arithmetic.bounds import Reckoned, outside, possible, remarks
from weldwhy.arithmetic.spans import AMPS, SHARE, TRAVEL, VOLTS

Transfer = Literal["short circuit", "globular", "spray"]


def load_volts(amps: float, base: float, slope: float) -> Reckoned:
    """Volts of a welding arc at so many amps, V.

    U = a + b I: a the base in V, b the slope in V for each A, I amps.

    Holds for: 1 to 600 A; each line for its own process and way of transfer.

    Source: IEC 60974-1, conventional load voltage, for its lines. From memory.
    """
    possible("amps", amps, *AMPS)
    possible("base of the line", base, 0, 100, "V")
    possible("slope of the line", slope, 0, 1, "V/A")
    return Reckoned(base + slope * amps, outside("amps", amps, 1, 600, "A"), remarks(amps))


def arc_energy(volts: float, amps: float, travel: float) -> Reckoned:
    """Energy that the arc uses on each millimetre of weld, kJ/mm.

    E = U I / (1000 v): U volts at the arc, I amps, v travel in mm/s.

    Holds for: steady (not pulsed) arcs, 10 to 40 V, 10 to 600 A, 0.5 to 50 mm/s.

    Source: ISO/TR 18491 (2015), arcs without waveform control. From memory.
    """
    possible("volts", volts, *VOLTS)
    possible("amps", amps, *AMPS)
    possible("travel", travel, *TRAVEL)
    return Reckoned(
        volts * amps / (1000 * travel),
        outside("volts", volts, 10, 40, "V"),
        outside("amps", amps, 10, 600, "A"),
        outside("travel", travel, 0.5, 50, "mm/s"),
        remarks(volts, amps, travel),
    )


def heat_input(volts: float, amps: float, travel: float, factor: float) -> Reckoned:
    """Heat put into each millimetre of weld, kJ/mm.

    Q = k U I / (1000 v): k process factor, U volts at the arc, I amps, v travel in mm/s.

    Holds for: steady (not pulsed) arcs, 10 to 40 V, 10 to 600 A, 0.5 to 50 mm/s.

    Source: EN 1011-1 (2009), 8.7 and table 1.
    """
    possible("process factor", factor, *SHARE)
    energy = arc_energy(volts, amps, travel)
    return Reckoned(factor * energy, remarks(energy))


def heat_input_asme(volts: float, amps: float, travel: float) -> Reckoned:
    """Heat input as the American boiler code counts it, J/in.

    H = 60 U I / S: U volts, I amps, S travel in in/min. No process factor.

    Holds for: steady (not pulsed) arcs, 10 to 40 V, 10 to 600 A, 1.2 to 118 in/min.

    Source: ASME BPVC section IX, QW-409.1(a). From memory.
    """
    energy = arc_energy(volts, amps, Reckoned(travel * 25.4 / 60, remarks(travel)))
    return Reckoned(energy * 1000 * 25.4, remarks(energy))


def arc_efficiency(power: float, volts: float, amps: float) -> Reckoned:
    """Share of the arc's power that was found in the work, 0 to 1.

    eta = P / (U I): P power into the work as measured in a calorimeter, W; U volts, I amps.

    Holds for: any arc; no more than the whole power can be found in the work.

    Source: Welding Journal 74 (1995), Thermal Efficiency of Arc Welding Processes.
    """
    possible("volts", volts, *VOLTS)
    possible("amps", amps, *AMPS)
    possible("power into the work", power, 0, volts * amps, "W")
    return Reckoned(power / (volts * amps), remarks(power, volts, amps))


def transfer(amps: float, spray_from: float, short_up_to: float) -> Transfer:
    """How the metal crosses the arc: "short circuit", "globular" or "spray".

    Short circuit if I <= Ic, else spray if I >= Is, else globular: I amps; Ic the most for short
    circuits, 0 where the volts are too high for them; Is the least for spray, infinite where the
    gas allows none; all in A.

    Holds for: steady (not pulsed) arcs, gun on plus; low volts unless Ic is 0.

    Source: AWS Welding Handbook vol. 2, gas metal arc welding, modes of transfer. From memory.
    """
    possible("amps", amps, *AMPS)
    possible("amps up to which it is short circuit", short_up_to, 0, 2000, "A")
    possible("amps from which on it sprays", spray_from, 1, inf, "A")
    if amps <= short_up_to:
        return "short circuit"
    return "spray" if amps >= spray_from else "globular"
