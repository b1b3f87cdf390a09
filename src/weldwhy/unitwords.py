"""The words and sizes behind `units`: unit names, their worth, sheet gauges, wire names."""

from __future__ import annotations

BASE: dict[str, str] = {
    "length": "mm", "voltage": "V", "current": "A", "feed": "m/min", "flow": "L/min",
    "temperature": "C", "time": "min", "percent": "%",
}  # fmt: skip

EXAMPLES: dict[str, str] = {
    "length": '"1/8 in", "18 ga" or "3 mm"', "voltage": '"18.5 V"', "current": '"120 A"',
    "feed": '"250 ipm" or "6.3 m/min"', "flow": '"25 cfh" or "12 L/min"',
    "temperature": '"150 C" or "300 F"', "time": '"5 min"', "percent": '"70 %"',
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
}

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
}  # fmt: skip

# What a bare number means to somebody who works in inches or in millimetres.
HOME: dict[str, dict[str, str]] = {
    "in": {"length": "in", "feed": "ipm", "flow": "cfh", "temperature": "F"},
    "mm": {"length": "mm", "feed": "m/min", "flow": "L/min", "temperature": "C"},
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
