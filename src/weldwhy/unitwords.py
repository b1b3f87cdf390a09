"""The words and sizes behind `units`: unit names, their worth, sheet gauges, wire names."""

from __future__ import annotations

import math

BASE: dict[str, str] = {
    "length": "mm", "voltage": "V", "current": "A", "feed": "m/min", "flow": "L/min",
    "temperature": "C", "time": "min", "percent": "%", "speed": "mm/s", "distance": "m",
    "section": "mm2", "area": "mm2", "pressure": "bar", "volume": "L", "mass": "kg",
    "heat": "kJ/mm", "rate": "kg/h", "angle": "deg", "power": "kW",
}  # fmt: skip

EXAMPLES: dict[str, str] = {
    "length": '"1/8 in", "18 ga" or "3 mm"', "voltage": '"18.5 V"', "current": '"120 A"',
    "feed": '"250 ipm" or "6.3 m/min"', "flow": '"25 cfh" or "12 L/min"',
    "temperature": '"150 C" or "300 F"', "time": '"5 min"', "percent": '"70 %"',
    "speed": '"12 in/min" or "5 mm/s"', "distance": '"25 ft" or "8 m"',
    "section": '"2 AWG" or "35 mm2"', "area": '"20 mm2"', "pressure": '"2000 psi" or "150 bar"',
    "volume": '"80 ft3" or "10 L"', "mass": '"11 lb" or "5 kg"',
    "heat": '"1.2 kJ/mm" or "30 kJ/in"', "rate": '"3 lb/h" or "1.4 kg/h"', "angle": '"60 deg"',
    "power": '"5 kW"',
}  # fmt: skip

# unit -> how many base units it is worth (temperature and gauge are not plain factors)
WORTH: dict[str, dict[str, float]] = {
    "length": {"mm": 1.0, "in": 25.4, "ga": 25.4},
    "voltage": {"V": 1.0},
    "current": {"A": 1.0},
    "feed": {"m/min": 1.0, "ipm": 0.0254},
    "flow": {"L/min": 1.0, "cfh": 28.316846592 / 60.0},
    "temperature": {"C": 1.0, "F": 1.0},
    "time": {"min": 1.0, "s": 1.0 / 60.0, "h": 60.0},
    "percent": {"%": 1.0},
    "speed": {
        "mm/s": 1.0,
        "mm/min": 1.0 / 60.0,
        "cm/min": 1.0 / 6.0,
        "m/min": 1000.0 / 60.0,
        "in/min": 25.4 / 60.0,
    },
    "distance": {"m": 1.0, "ft": 0.3048},
    "section": {"mm2": 1.0, "AWG": 1.0},
    "area": {"mm2": 1.0, "in2": 645.16},
    "pressure": {"bar": 1.0, "psi": 0.0689475729316836, "kPa": 0.01, "MPa": 10.0},
    "volume": {"L": 1.0, "m3": 1000.0, "ft3": 28.316846592},
    "mass": {"kg": 1.0, "g": 0.001, "lb": 0.45359237, "oz": 0.45359237 / 16.0},
    "heat": {
        "kJ/mm": 1.0,
        "J/mm": 0.001,
        "kJ/cm": 0.1,
        "kJ/in": 1.0 / 25.4,
        "J/in": 0.001 / 25.4,
    },
    "rate": {"kg/h": 1.0, "lb/h": 0.45359237},
    "angle": {"deg": 1.0},
    "power": {"kW": 1.0, "W": 0.001},
}

INCHES = frozenset((
    "in", "ga", "ipm", "cfh", "F", "in/min", "ft", "AWG", "in2", "psi", "ft3", "lb", "oz",
    "kJ/in", "J/in", "lb/h",
))  # fmt: skip
"""Units of those who work in inches. In WORTH, "ga" stands for its inches, "AWG" for its mm2."""

SPELLINGS: dict[str, dict[str, str]] = {
    "length": {
        "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm",
        "millimeters": "mm", "in": "in", "in.": "in", "inch": "in", "inches": "in", '"': "in",
        "''": "in", "ga": "ga", "ga.": "ga", "gauge": "ga", "gage": "ga", "g": "ga",
    },
    "voltage": {"v": "V", "volt": "V", "volts": "V"},
    "current": {"a": "A", "amp": "A", "amps": "A", "ampere": "A", "amperes": "A"},
    "feed": {
        "m/min": "m/min", "mpm": "m/min", "ipm": "ipm", "in/min": "ipm", "inch/min": "ipm",
        "inches/min": "ipm", "inches per minute": "ipm", "metres per minute": "m/min",
    },
    "flow": {
        "l/min": "L/min", "lpm": "L/min", "cfh": "cfh", "scfh": "cfh", "ft3/h": "cfh",
        "cu ft/h": "cfh", "litres per minute": "L/min", "cubic feet per hour": "cfh",
    },
    "temperature": {"c": "C", "deg c": "C", "f": "F", "deg f": "F"},
    "time": {
        "min": "min", "mins": "min", "minute": "min", "minutes": "min", "s": "s", "sec": "s",
        "seconds": "s", "h": "h", "hour": "h", "hours": "h",
    },
    "percent": {"%": "%", "percent": "%"},
    "speed": {
        "mm/s": "mm/s", "mm/min": "mm/min", "cm/min": "cm/min", "m/min": "m/min",
        "in/min": "in/min", "ipm": "in/min", "inches per minute": "in/min",
    },
    "distance": {
        "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m", "ft": "ft",
        "ft.": "ft", "foot": "ft", "feet": "ft", "'": "ft",
    },
    "section": {"mm2": "mm2", "mm^2": "mm2", "sq mm": "mm2", "awg": "AWG", "ga": "AWG"},
    "area": {"mm2": "mm2", "mm^2": "mm2", "sq mm": "mm2", "in2": "in2", "sq in": "in2"},
    "pressure": {"bar": "bar", "psi": "psi", "kpa": "kPa", "mpa": "MPa"},
    "volume": {
        "l": "L", "litre": "L", "litres": "L", "liter": "L", "liters": "L", "m3": "m3",
        "ft3": "ft3", "cf": "ft3", "cuft": "ft3", "cu ft": "ft3", "cubic feet": "ft3",
    },
    "mass": {
        "kg": "kg", "g": "g", "lb": "lb", "lbs": "lb", "lb.": "lb", "pound": "lb", "pounds": "lb",
        "oz": "oz",
    },
    "heat": {
        "kj/mm": "kJ/mm", "j/mm": "J/mm", "kj/cm": "kJ/cm", "kj/in": "kJ/in", "j/in": "J/in",
    },
    "rate": {"kg/h": "kg/h", "lb/h": "lb/h", "lb/hr": "lb/h", "kg/hr": "kg/h"},
    "angle": {"deg": "deg", "degree": "deg", "degrees": "deg"},
    "power": {"kw": "kW", "w": "W"},
}  # fmt: skip

# What a bare number means to somebody who works in inches or in millimetres.
HOME: dict[str, dict[str, str]] = {
    "in": {
        "length": "in",
        "feed": "ipm",
        "flow": "cfh",
        "temperature": "F",
        "speed": "in/min",
        "distance": "ft",
        "section": "AWG",
        "area": "in2",
        "pressure": "psi",
        "volume": "ft3",
        "mass": "lb",
        "heat": "kJ/in",
        "rate": "lb/h",
    },
    "mm": {
        "length": "mm",
        "feed": "m/min",
        "flow": "L/min",
        "temperature": "C",
        "speed": "mm/s",
        "distance": "m",
        "section": "mm2",
        "area": "mm2",
        "pressure": "bar",
        "volume": "L",
        "mass": "kg",
        "heat": "kJ/mm",
        "rate": "kg/h",
    },
}

# Trade gauge of steel sheet (manufacturers' standard gauge), inches. Stainless sheet is some 5 %
# thicker at the same number and aluminium some 15 % thinner: see `aluminium_gauge`.
GAUGE: dict[int, float] = {
    3: 0.2391, 4: 0.2242, 5: 0.2092, 6: 0.1943, 7: 0.1793, 8: 0.1644, 9: 0.1495, 10: 0.1345,
    11: 0.1196, 12: 0.1046, 13: 0.0897, 14: 0.0747, 15: 0.0673, 16: 0.0598, 17: 0.0538,
    18: 0.0478, 19: 0.0418, 20: 0.0359, 21: 0.0329, 22: 0.0299, 23: 0.0269, 24: 0.0239,
    25: 0.0209, 26: 0.0179, 27: 0.0164, 28: 0.0149, 29: 0.0135, 30: 0.0120,
}  # fmt: skip

# Sizes of wire that the two systems call by names which are not exact conversions.
WIRE_NAMES: tuple[tuple[float, float], ...] = (
    (0.6, 0.023),
    (0.8, 0.030),
    (1.0, 0.040),
    (1.2, 0.045),
    (1.4, 0.052),
)


def aluminium_gauge(number: int) -> float:
    """Inches of aluminium sheet of this gauge: Brown and Sharpe, the wire gauge of ASTM B258."""
    return float(0.005 * 92.0 ** ((36 - number) / 39))


LEAST_AWG, MOST_AWG = -3, 40
"""From 4/0 AWG to 40 AWG; a higher number is a thinner wire."""


def awg_section(number: float) -> float:
    """Square millimetres of round wire of this American gauge (ASTM B258); 1/0 is 0, 4/0 is -3."""
    return math.pi / 4 * float(0.127 * 92.0 ** ((36 - number) / 39)) ** 2


def awg_number(section: float) -> float:
    """The American gauge, as a rule between two whole numbers, of so many square millimetres."""
    diameter = math.sqrt(4 * section / math.pi)
    return 36 - 39 * math.log(diameter / 0.127, 92) if diameter > 0 else math.inf
