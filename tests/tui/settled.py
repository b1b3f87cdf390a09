"""Waits until the program under test has done all that it will do by itself.

After every key the framework's pilot sleeps in steps of a fiftieth of a second until one of them
took next to no processor time. On a busy machine that can be too soon, and on any machine most of
the time is slept away. The event loop knows better: with no callback ready and no timer due soon,
nothing comes until the next key.
"""

from __future__ import annotations

import asyncio
import time

SOON = 0.05
"""A timer due in so many seconds is waited for; one of a sixtieth of a second redraws a screen."""
MOST_TIMERS = 30
"""Of a program that is left, one goes on ticking for nothing."""
LONGEST = 10.0
"""Seconds: a busy machine may need many times what a quiet one does."""


async def settled(min_sleep: float = 0.0, max_sleep: float = LONGEST) -> None:
    """Come back when the event loop is idle; takes what the framework's own takes."""
    end = time.monotonic() + max(max_sleep, LONGEST)
    await asyncio.sleep(min_sleep)
    timers = 0
    while (wait := _next()) is not None and timers < MOST_TIMERS and time.monotonic() < end:
        timers += wait > 0.0
        await asyncio.sleep(wait)


def _next() -> float | None:
    """Seconds until the loop has something to do, if that is soon."""
    loop = asyncio.get_running_loop()
    if loop._ready:  # type: ignore[attr-defined]
        return 0.0
    timers: list[asyncio.TimerHandle] = loop._scheduled  # type: ignore[attr-defined]
    wait = min((t.when() - loop.time() for t in timers if not t.cancelled()), default=SOON)
    return max(wait, 0.0) if wait < SOON else None
