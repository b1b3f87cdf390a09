"""Drawn pictures and understood words, against one choice of the next step: what a key may cost."""

from __future__ import annotations

import time
from collections.abc import Callable
from statistics import mean

from tests.bench.choosing import fresh
from tests.replay import shipped_rules

from weldwhy.drawing import draw
from weldwhy.engine.belief import replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.tuning import PATIENCE
from weldwhy.tui.canvas import rows_of
from weldwhy.understanding.hearing import understand

SIZES = ((24, 8), (40, 12), (78, 20))
SAID = (
    "mig on 3 mm plate, bubbles all over, turned the gas up and no change, windy today. 18 volts, "
    "25 cfh. ran fine yesterday, since then a new spool. i reckon its the liner"
)


def _seconds(act: Callable[[], object], runs: int) -> float:
    """The least CPU time of `runs` runs."""

    def once() -> float:
        begun = time.process_time()
        act()
        return time.process_time() - begun

    return min(once() for _ in range(runs))


def pictures(runs: int) -> dict[tuple[int, int], tuple[float, float]]:
    """Mean and worst milliseconds of a picture, painted and made into rows, by its cells."""
    rules = shipped_rules()
    found = {}
    for width, height in SIZES:
        taken = [
            1000 * _seconds(lambda: _drawn(symptom, width, height), runs)  # noqa: B023
            for symptom in rules.pictures
        ]
        found[width, height] = mean(taken), max(taken)
    return found


def _drawn(symptom: str, width: int, height: int) -> object:
    canvas = draw.picture(shipped_rules(), symptom, width, height)
    return canvas and rows_of(canvas)


def words(runs: int) -> float:
    """A text understood, as a multiple of one choice of the next step."""
    rules = shipped_rules()
    understand(rules, "")  # the phrases are gathered once

    def chosen() -> object:
        network = fresh("spatter", "gmaw")
        return Chooser(replay(network, ()), (), tuned=PATIENCE["normal"]).step

    return _seconds(lambda: understand(rules, SAID), runs) / _seconds(chosen, runs)
