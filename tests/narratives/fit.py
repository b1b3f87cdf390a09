"""The weights of `weldwhy.understanding.judging`, fitted to stories.

    PYTHONPATH=src:. python tests/narratives/fit.py FILE ... [--strength X]

Logistic regression on every view of a symptom and of an answer that the stories give rise to,
drawn towards nothing by `--strength`. Prints the weights, and how well chances fitted on four
fifths of the stories hold on the other fifth: what share was right among those given a chance
near each value. Fit on stories whose misses were not made into phrases, or the chances come out
too high for words that nobody has foreseen.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import astuple, fields
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from tests.narratives.score import stories

from weldwhy.case import Case
from weldwhy.model import RuleBase
from weldwhy.rulebase import load
from weldwhy.understanding import symptoms
from weldwhy.understanding.answers import Answers
from weldwhy.understanding.hearing import telling_of
from weldwhy.understanding.judging import AnswerView, SymptomView
from weldwhy.understanding.work import Work

FOLDS = 5
STEPS = 12
"""Newton's method is done long before."""
EDGES = (0.0, 0.1, 0.3, 0.5, 0.7, 0.85, 1.0001)

Numbers = NDArray[np.float64]
Row = tuple[tuple[float, ...], bool, int]
"""What speaks for a thing, whether it is meant, and the number of its story."""


def symptom_rows(rules: RuleBase, told: Iterable[Mapping[str, Any]]) -> Iterator[Row]:
    """Every view of a symptom."""
    for number, story in enumerate(told):
        telling = telling_of(rules, story["text"], Case())
        work = Work(telling)
        list(work.entries())
        for view, symptom, _ in symptoms.views(telling, work):
            yield astuple(view), symptom in story.get("symptoms", []), number


def answer_rows(rules: RuleBase, told: Iterable[Mapping[str, Any]]) -> Iterator[Row]:
    """Every view of an answer, read with the symptoms that are meant; those left open are not."""
    for number, story in enumerate(told):
        telling = telling_of(rules, story["text"], Case())
        work = Work(telling)
        list(work.entries())
        meant, may = story.get("answers", {}), story.get("also", {})
        asked = Answers(telling, work, set(story.get("symptoms", [])), set(telling.used))
        for view, check, answer, _ in asked.views():
            if may.get(check) != answer:
                yield astuple(view), meant.get(check) == answer, number


def fit(views: Numbers, meant: Numbers, strength: float) -> Numbers:
    """Weights, that of the constant first; `views` one row each, without the constant."""
    usual = views.std(axis=0)
    usual[usual == 0] = 1.0
    made = np.hstack([np.ones((len(views), 1)), views / usual])
    weights = np.zeros(made.shape[1])
    drawn = strength * np.eye(made.shape[1])
    drawn[0, 0] = 1e-6
    for _ in range(STEPS):
        chance = 1 / (1 + np.exp(-made @ weights))
        slope = made.T @ (meant - chance) - drawn @ weights
        curve = (made.T * (chance * (1 - chance))) @ made + drawn
        weights += np.linalg.solve(curve, slope)
    return np.concatenate([weights[:1], weights[1:] / usual])


def held_out(rows: list[Row], strength: float) -> tuple[Numbers, Numbers]:
    """The chance of each row by weights fitted on other stories, and whether it is meant."""
    views, meant, number = _columns(rows)
    chances = np.zeros(len(rows))
    for part in range(FOLDS):
        out = number % FOLDS == part
        weights = fit(views[~out], meant[~out], strength)
        chances[out] = 1 / (1 + np.exp(-(weights[0] + views[out] @ weights[1:])))
    return chances, meant


def _columns(rows: list[Row]) -> tuple[Numbers, Numbers, NDArray[np.int64]]:
    views, meant, numbers = zip(*rows, strict=True)
    return np.array(views), np.array(meant, dtype=float), np.array(numbers)


def _lines(name: str, kind: type, rows: list[Row], strength: float) -> Iterator[str]:
    views, meant, _ = _columns(rows)
    weights = fit(views, meant, strength)
    names = ["", *(field.name for field in fields(kind))]
    yield f"{name}: {len(rows)} views, {int(meant.sum())} meant"
    yield ", ".join(f'"{n}": {w:.2f}' for n, w in zip(names, weights, strict=True))
    chances, meant = held_out(rows, strength)
    sure = np.clip(np.where(meant == 1, chances, 1 - chances), 1e-9, 1)
    yield f"mean log loss on stories left out: {-np.log(sure).mean():.4f}"
    for low, high in pairwise(EDGES):
        inside = (chances >= low) & (chances < high)
        if inside.any():
            yield (
                f"  chance {chances[inside].mean():.2f}: {meant[inside].mean():.2f} meant"
                f" of {int(inside.sum())}"
            )


def main() -> None:
    """Print the weights for the stories of the files named."""
    asked = argparse.ArgumentParser(description="fit the weights of own words")
    asked.add_argument("files", nargs="+", type=Path)
    asked.add_argument("--strength", type=float, default=3.0)
    options = asked.parse_args()
    rules = load()
    told = [story for path in options.files for story in stories(path)]
    for name, kind, rows in (
        ("SYMPTOM", SymptomView, list(symptom_rows(rules, told))),
        ("ANSWER", AnswerView, list(answer_rows(rules, told))),
    ):
        sys.stdout.writelines(f"{line}\n" for line in _lines(name, kind, rows, options.strength))


if __name__ == "__main__":
    main()
