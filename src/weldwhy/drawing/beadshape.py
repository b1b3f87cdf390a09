"""The lines of a bead: places, waves, edges. Sums only, so that a picture is always the same."""

from __future__ import annotations

from functools import cache
from math import sin, sqrt


@cache
def places(count: int, seed: int = 0) -> tuple[tuple[float, float, float], ...]:
    """Places in a square, evenly strewn, each number from 0 to 1; the third is a size."""
    return tuple(
        (
            (_mirrored(step, 2) + seed * 0.37) % 1,
            (_mirrored(step, 3) + seed * 0.61) % 1,
            (_mirrored(step, 5) + seed * 0.23) % 1,
        )
        for step in range(1, count + 1)
    )


def _mirrored(number: int, base: int) -> float:
    """The digits of a number mirrored at the point: halves, quarters, eighths (Halton 1960)."""
    part, found = 1.0, 0.0
    while number:
        part /= base
        number, digit = divmod(number, base)
        found += digit * part
    return found


@cache
def grain(y: int, width: int) -> tuple[float, ...]:
    """A number from 0 to 1 for each dot of a row, without any order that the eye could see."""
    found = []
    for x in range(width):
        mixed = (x * 374761393 + y * 668265263) & 0xFFFFFFFF
        for _ in range(2):
            mixed = ((mixed ^ (mixed >> 13)) * 1274126177) & 0xFFFFFFFF
        found.append((mixed >> 8 & 0xFFFF) / 0xFFFF)
    return tuple(found)


def wave(along: float, seed: float = 0.0) -> float:
    """An uneven wave from about -1 to 1, as an unsteady hand makes it; `along` from 0 to 1."""
    return 0.6 * sin(11.0 * along + 2.1 * seed) + 0.4 * sin(23.0 * along + 1.0 + seed)


def jagged(count: int, seed: int = 0) -> list[float]:
    """So many numbers from -1 to 1, never two alike side by side: the line of a crack."""
    return [(1 if step % 2 else -1) * (0.35 + 0.65 * size)
            for step, (_, _, size) in enumerate(places(count, seed))]  # fmt: skip


def rounded(distance: float, radius: float) -> float:
    """Part of the full width at a distance from the round end of a bead."""
    if distance >= radius:
        return 1.0
    rest = 1 - max(distance, 0.0) / radius
    return sqrt(max(1 - rest * rest, 0.0))


def cap(level: float, steep: bool) -> float:
    """Part of the full width of a cap at a part of its height; steep sides keep it wide."""
    level = min(max(level, 0.0), 1.0)
    return float((1 - level**3) ** 0.5 if steep else (1 - level) ** 0.6)


def groove(depth: float) -> float:
    """Part of the full width of a fused groove at a part of its depth, round at the bottom."""
    depth = min(max(depth, 0.0), 1.0)
    return float(1 - 0.62 * depth**0.9)


def nugget(depth: float) -> float:
    """Part of the full width of what a bead melts where it does not get through."""
    depth = min(max(depth, 0.0), 1.0)
    return sqrt(1 - depth * depth)
