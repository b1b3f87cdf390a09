"""What the numbers of an arc weld can be at all, as bounds and unit for `bounds.possible`."""

from __future__ import annotations

Span = tuple[float, float, str]

AMPS: Span = (1, 2000, "A")
VOLTS: Span = (1, 150, "V")
TRAVEL: Span = (0.01, 1000, "mm/s")
FEED: Span = (0.02, 1000, "m/min")
WIRE: Span = (0.2, 10, "mm")
STICK_OUT: Span = (0, 100, "mm")
AREA: Span = (0.01, 10_000, "mm2")
LENGTH: Span = (0.01, 500, "mm")
SHARE: Span = (0.01, 1, "")
DENSITY: Span = (0.5, 25, "g/cm3")
