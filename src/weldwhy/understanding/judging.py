"""How likely a thing is meant, from what speaks for it.

The weights were fitted by `tests/narratives/fit.py` on `tests/narratives/fitted.yaml`; its writers
saw no phrase, and no phrase's writer these stories. They are rounded, but for those of `denied` and
`odd`, which are too seldom met there. Stories put aside check them. They know nothing of welding.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp

SYMPTOM_DOUBT, ANSWER_DOUBT = 1.6, 1.24
"""Exponents that make a chance a confidence: a symptom counts as told from a chance of 80 % on, an
answer from 75 %. A wrong one leads astray; one not told is only asked for."""
DOUBTFUL = 0.2
"""Below this confidence nothing is made of what was said."""


@dataclass(frozen=True, slots=True)
class SymptomView:
    """What speaks for a symptom.

    `score`, `covered`: how far the words lean to it; `unsaid`: the score again if no phrase fits.
    `share`: of what speaks for the best one; `lead`: over the next. `fit`, `whole`: of its best
    phrase, and what share of its clauses that is; `exact`: the fit of a phrase of several telling
    words that are all there; `named`: its fit if it is a name that the rules have for the symptom.
    `taken`: of its words by a stronger one. `own_metal`: it is of the metal told only; `common`:
    how often it is met (log, the most common at 0).
    """

    score: float
    covered: float
    fit: float
    exact: float
    named: float
    whole: float
    unsaid: float
    share: float
    lead: float
    taken: float
    denied: float
    odd: float
    own_metal: float
    common: float


@dataclass(frozen=True, slots=True)
class AnswerView:
    """What speaks for an answer: leaning, best phrase, and whether its check matters here.

    `flipped` is above 0 where all this speaks for another answer, which is denied. `limited`: the
    check is put for certain symptoms only, and one of them is told; `matters`: some cause of a
    symptom told shows in it. `denied` is the fit of a phrase of this answer that is denied;
    `result` is 1 where the clause tells a result that goes with the answer, -1 where another.
    `likely`, `lifted`: log of the chance that the rules give it here, and of how many times the
    usual one that is; `likely_normal` the former if it is the normal answer.
    """

    score: float
    covered: float
    beside: float
    words: float
    fit: float
    fit_squared: float
    exact: float
    whole: float
    flipped: float
    limited: float
    matters: float
    normal: float
    odd: float
    denied: float
    result: float
    likely: float
    lifted: float
    likely_normal: float


SYMPTOM = {
    "": -6.2, "score": 0.25, "covered": 0.7, "fit": 1.65, "exact": 0.4, "named": 1.05, "whole": 0.6,
    "unsaid": 0.2, "share": 3.15, "lead": 2.3, "taken": -0.35, "denied": -1.35, "odd": 0.0,
    "own_metal": 3.0, "common": 0.5,
}  # fmt: skip
ANSWER = {
    "": -9.75, "score": 0.55, "covered": 0.75, "beside": 2.7, "words": -0.25, "fit": 0.0,
    "fit_squared": 2.0, "exact": 0.2, "whole": 0.8, "flipped": 0.85, "limited": 0.35,
    "matters": 2.65, "normal": -0.75, "odd": -0.5, "denied": -0.7, "result": 0.25, "likely": 0.45,
    "lifted": 0.85, "likely_normal": -0.4,
}  # fmt: skip


def symptom_chance(view: SymptomView) -> float:
    """P(the symptom is meant)."""
    return _chance(SYMPTOM, view)


def answer_chance(view: AnswerView) -> float:
    """P(the answer is meant)."""
    return _chance(ANSWER, view)


def answer_confidence(chance: float) -> float:
    """The chance on the scale of confidences."""
    return float(chance**ANSWER_DOUBT)


def symptom_confidence(chance: float) -> float:
    """The same for a symptom, which must be likelier to be sure."""
    return float(chance**SYMPTOM_DOUBT)


def _chance(weights: Mapping[str, float], view: SymptomView | AnswerView) -> float:
    total = weights[""]
    for name, weight in weights.items():
        if name:
            total += weight * float(getattr(view, name))
    return float(1.0 / (1.0 + exp(-total)))
