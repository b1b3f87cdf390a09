"""Volts and amps belong to a wire feed: those that go with the feed in use, not another one."""

from __future__ import annotations

from dataclasses import replace

from weldwhy.model import WindowRow
from weldwhy.units import Quantity, Target, rounded, show
from weldwhy.windowrows import SAME_SIZE
from weldwhy.windows import Found


def paired(found: Found, size: Quantity | None, feed: Quantity | None) -> Found:
    """The window with the volts that its rows give this wire at this feed.

    Nothing is changed where the size or the feed is not known, or where the feed itself lies
    outside its range: then it has to be put right first.
    """
    allowed = found.targets.get("wire_feed")
    if size is None or feed is None or allowed is None or "volts" not in found.targets:
        return found
    if not allowed.low.value <= feed.value <= allowed.high.value:
        return found
    volts = _at_feed(_rows_of(found, size, "volts"), "volts", feed.value)
    if volts is None:
        return found
    said = {**found.said, "volts": f"The volts are those for {show(feed)}."}
    return replace(found, targets={**found.targets, "volts": volts}, said=said)


def amps_at(found: Found, size: Quantity, feed: Quantity) -> Quantity | None:
    """The amps that the rows of this wire give at a feed; None without two such rows."""
    amps = _at_feed(_rows_of(found, size, "amps"), "amps", feed.value)
    return amps.best if amps else None


def _rows_of(found: Found, size: Quantity, setting: str) -> list[WindowRow]:
    """The rows of this wire that give both feed and this setting, slowest feed first."""
    rows = [
        row
        for row in found.window.rows
        if row.size is not None
        and max(row.size.value, size.value) < SAME_SIZE * min(row.size.value, size.value)
        and {"wire_feed", setting} <= row.targets.keys()
    ]
    return sorted(rows, key=lambda row: row.targets["wire_feed"].best.value)


def _at_feed(rows: list[WindowRow], setting: str, feed: float) -> Target | None:
    """Between the rows that feed less and more a straight line; beyond the last ones, those."""
    if len(rows) < 2:
        return None
    feeds = [row.targets["wire_feed"].best.value for row in rows]
    at = next((n for n, value in enumerate(feeds) if value >= feed), len(rows) - 1) or 1
    below, above = rows[at - 1].targets[setting], rows[at].targets[setting]
    gap = feeds[at] - feeds[at - 1]
    part = min(max((feed - feeds[at - 1]) / gap, 0.0), 1.0) if gap > 0 else 0.0

    def between(a: Quantity, b: Quantity) -> Quantity:
        return rounded(replace(a, value=a.value + (b.value - a.value) * part))

    return Target(
        between(below.low, above.low), between(below.best, above.best),
        between(below.high, above.high),
    )  # fmt: skip
