"""Reading the rules against a stock YAML loader, in one process, interleaved."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

import yaml

from weldwhy import compiled, rulebase, yamltree


def seconds(jobs: list[Callable[[], object]], runs: int) -> list[float]:
    """Median CPU seconds of each job, interleaved, after one round that is not counted."""
    spent: list[list[float]] = [[] for _ in jobs]
    for number in range(runs + 1):
        for kept, job in zip(spent, jobs):
            start = time.process_time()
            job()
            if number:
                kept.append(time.process_time() - start)
    return [median(kept) for kept in spent]


def ratios(place: Path, runs: int) -> dict[str, float]:
    """Our tree with lines and duplicate keys, and the compiled rules, over CSafeLoader."""
    folder = rulebase.default_folder()
    texts = {str(path): path.read_bytes() for path in sorted(folder.rglob("*.yaml"))}

    def stock() -> None:
        for text in texts.values():
            yaml.load(text, Loader=yaml.CSafeLoader)

    def tree() -> None:
        for name, text in texts.items():
            yamltree.read(text, name)

    def quick() -> None:
        assert compiled.load(str(place / "weldwhy" / "_rules")) is not None

    base, ours, made = seconds([stock, tree, quick], runs)
    return {"YAML with lines and duplicate check": ours / base, "compiled rules": made / base}
