"""From the rows of a window to targets: which size of wire or rod, and between which rows."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from weldwhy.model import Window, WindowRow
from weldwhy.units import Quantity, Target, convert, rounded, show
from weldwhy.unitwords import WORTH

# A row still speaks for metal this much thinner or thicker than its own.
REACH = 1.25
# Sizes this far apart go by one name: 3/32 in and 2.5 mm, 3/16 in and 5 mm.
SAME_SIZE = 1.1
# Between two sizes further apart than this nothing is worked out.
NEIGHBOURS = 1.6
# 3.18 mm and 1/8 in are the same plate.
SLACK = 0.005
# Of a size's range of thickness (middle 0, ends 1), the part where it needs no second thought.
WELL = 0.8


def targets_from_rows(
    window: Window, thickness: Quantity | None, size: Quantity | None, notes: list[str]
) -> dict[str, Target]:
    """The targets of the rows, for the size in use or the usual one at this thickness."""
    sizes = _by_size(window)
    if not sizes:
        return {}
    if size is not None:
        return _at_size(window, sizes, size, thickness, notes)
    usual = _usual_size(sizes, thickness)
    if usual is None:
        wanted = f"{window.size_of} size"
        wanted = f"thickness and the {wanted}" if thickness is None else wanted
        notes.append(f"Give the {wanted} for more numbers.")
        return {}
    if (shown := sizes[usual][0].size) is not None:
        notes.append(f"For {show(shown)} {window.size_of}, as is usual.")
    return _at_thickness(sizes[usual], thickness, notes)


def usual_size(window: Window, thickness: Quantity | None) -> Quantity | None:
    """The size that is taken at this thickness when none is told; None if that cannot be said."""
    sizes = _by_size(window)
    usual = _usual_size(sizes, thickness)
    return None if usual is None else sizes[usual][0].size


def reaches(window: Window, thickness: Quantity | None, size: Quantity | None) -> bool:
    """Whether rows of this size (None: of any) hold the thickness between them."""
    for listed, rows in _by_size(window).items():
        if size is not None and _apart(listed, size.value) >= SAME_SIZE:
            continue
        ends = _ends(rows)
        if thickness is None or ends is None or not _place(*ends, thickness.value)[0]:
            return True
    return False


def _by_size(window: Window) -> dict[float, list[WindowRow]]:
    """The rows by size in millimetres; 0 for rows of any size."""
    sizes: dict[float, list[WindowRow]] = {}
    for row in window.rows:
        sizes.setdefault(row.size.value if row.size else 0.0, []).append(row)
    return sizes


def _at_size(
    window: Window,
    sizes: Mapping[float, Sequence[WindowRow]],
    size: Quantity,
    thickness: Quantity | None,
    notes: list[str],
) -> dict[str, Target]:
    """The targets of the size that goes by the same name, else worked out between two sizes."""
    nearest = min(sizes, key=lambda listed: _apart(listed, size.value))
    if _apart(nearest, size.value) < SAME_SIZE:
        return _at_thickness(sizes[nearest], thickness, notes)
    below = max((each for each in sizes if each < size.value), default=0.0)
    above = min((each for each in sizes if each > size.value), default=math.inf)
    found: dict[str, Target] = {}
    if below and _apart(below, above) <= NEIGHBOURS:
        ends = [_inside(sizes[each], thickness) for each in (below, above)]
        part = math.log(size.value / below) / math.log(above / below)
        found = {
            name: _mixed_by_ratio(target, ends[1][name], part)
            for name, target in ends[0].items()
            if name in ends[1]
        }
    kind = window.size_of
    notes.append(
        f"Worked out for {show(size)} {kind} from the sizes beside it."
        if found
        else f"No numbers here for {show(size)} {kind}."
    )
    return found


def _apart(a: float, b: float) -> float:
    """How many times the greater holds the smaller; 1 for rows of any size (written as 0)."""
    low, high = sorted((a, b))
    return high / low if low > 0 else 1.0


def _usual_size(
    sizes: Mapping[float, Sequence[WindowRow]], thickness: Quantity | None
) -> float | None:
    """The first size listed whose rows reach well past the thickness on both sides.

    If there is none, the one that reaches furthest, and of equals the greater size; for metal
    thinner or thicker than all rows, the size whose rows come closest to it.
    """
    if thickness is None:
        return None
    ranges = {size: _ends(rows) for size, rows in sizes.items()}
    known = {size: _place(*ends, thickness.value) for size, ends in ranges.items() if ends}
    well = [size for size, (outside, depth) in known.items() if not outside and depth <= WELL]
    return well[0] if well else min(known, key=lambda size: (*known[size], -size), default=None)


def _ends(rows: Sequence[WindowRow]) -> tuple[float, float] | None:
    """The least and greatest thickness of rows that have one."""
    thick = [row.thickness.value for row in rows if row.thickness is not None]
    return (min(thick), max(thick)) if thick else None


def _place(low: float, high: float, value: float) -> tuple[float, float]:
    """How far a value is outside a range, and how far from its middle (1 at the ends).

    Both count in ratios: from 1 to 2 mm is as far as from 2 to 4 mm.
    """
    outside = max(math.log(low / value), math.log(value / high), 0.0)
    half = math.log(high / low) / 2 or 0.01
    depth = abs(math.log(value * value / (low * high))) / 2 / half
    return round(max(outside - SLACK, 0.0), 6), round(depth, 6)


def _at_thickness(
    rows: Sequence[WindowRow], thickness: Quantity | None, notes: list[str]
) -> dict[str, Target]:
    """The targets between the rows of one size; a row without thickness is the last resort."""
    whole = next((dict(row.targets) for row in rows if row.thickness is None), {})
    stairs = sorted(
        ((row.thickness.value, row) for row in rows if row.thickness is not None),
        key=lambda stair: stair[0],
    )
    if thickness is None:
        notes.append("Thickness not known" + (": the whole range is shown." if whole else "."))
        return whole
    if not stairs:
        return whole
    value = thickness.value
    first, last = stairs[0], stairs[-1]
    if first[0] * (1 - SLACK) <= value <= last[0] * (1 + SLACK):
        below = max((s for s in stairs if s[0] <= value), key=lambda s: s[0], default=first)
        above = min((s for s in stairs if s[0] >= value), key=lambda s: s[0], default=last)
        return _between(below, above, value)
    end, side = (first, "thinner") if value < first[0] else (last, "thicker")
    said = f"{show(thickness)} is {side} than the table goes"
    if _apart(end[0], value) <= REACH:
        notes.append(f"{said}: its last line is shown.")
        return dict(end[1].targets)
    if side == "thicker" and whole:
        # heavy plate takes several passes, and any current the rod can carry
        notes.append(f"{said}: the whole range is shown.")
        return whole
    notes.append(f"{said}: no numbers.")
    return {}


def _inside(rows: Sequence[WindowRow], thickness: Quantity | None) -> dict[str, Target]:
    """The targets at a thickness that lies between the rows of one size; none outside them."""
    ends = _ends(rows)
    if thickness is None or ends is None or _place(*ends, thickness.value)[0]:
        return {}
    return _at_thickness(rows, thickness, [])


def _between(
    below: tuple[float, WindowRow], above: tuple[float, WindowRow], value: float
) -> dict[str, Target]:
    """Targets of both rows, a straight line between them."""
    gap = above[0] - below[0]
    part = (value - below[0]) / gap if gap > 0 else 0.0
    if part in (0.0, 1.0):
        return dict((above if part else below)[1].targets)
    upper = above[1].targets
    return {
        name: _mixed(target, upper[name], part)
        for name, target in below[1].targets.items()
        if name in upper
    }


def _mixed(a: Target, b: Target, part: float) -> Target:
    """The target this part of the way from `a` to `b`, at steps a welder can set."""
    return _joined(a, b, lambda x, y: x + (y - x) * part)


def _mixed_by_ratio(a: Target, b: Target, part: float) -> Target:
    """The same in ratios: feed falls with the square of the size, amps rise with a power of it."""
    return _joined(a, b, lambda x, y: x ** (1 - part) * y**part)


def _joined(a: Target, b: Target, mix: Callable[[float, float], float]) -> Target:
    pairs = ((a.low, b.low), (a.best, b.best), (a.high, b.high))
    low, best, high = (replace(x, value=mix(x.value, y.value)) for x, y in pairs)
    return on_steps(Target(low, best, high))


def on_steps(target: Target) -> Target:
    """The target at steps a welder can set, all in the unit of its best place.

    Travel, which no dial is set in, is given in two digits.
    """
    ends = (replace(q, unit=target.best.unit) for q in (target.low, target.best, target.high))
    low, best, high = (_two_digits(q) if q.kind == "speed" else rounded(q) for q in ends)
    return Target(low, best, high)


def _two_digits(q: Quantity) -> Quantity:
    return replace(q, value=float(f"{convert(q, q.unit):.2g}") * WORTH[q.kind][q.unit])
