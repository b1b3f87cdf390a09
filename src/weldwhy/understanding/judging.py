"""How likely a thing is meant, from what speaks for it.

The weights were fitted by logistic regression on the stories of `tests/narratives/tuned.yaml`, and
are rounded; stories put aside check them. They know nothing of welding.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp, sqrt

STRICT = 0.8
"""Exponent that makes a symptom's chance a confidence: 64 % is just sure. A wrong symptom costs
most, and strangers' words fit less well than those that the weights were fitted on."""
DOUBTFUL = 0.45
"""Below this confidence nothing is made of what was said."""


@dataclass(frozen=True, slots=True)
class SymptomView:
    """What speaks for a symptom.

    `score`, `covered`: how far the words lean to it; `unsaid`: the score again if no phrase fits.
    `share`: of what speaks for the best one; `lead`: over the next. `fit`, `whole`: of its best
    phrase, and what share of its clauses that is. `taken`: of its words by a stronger one.
    `own_metal`: it is of the metal told only; `common`: how often it is met (log, the most common
    at 0).
    """

    score: float
    covered: float
    fit: float
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
    "": -5.65, "score": 0.48, "covered": 0.9, "fit": 1.0, "whole": 1.3, "unsaid": 0.2,
    "share": 2.65, "lead": 2.05, "taken": -1.25, "denied": -1.5, "odd": 0.0, "own_metal": 1.55,
    "common": 0.65,
}  # fmt: skip
ANSWER = {
    "": -7.4, "score": 0.34, "covered": 1.6, "beside": 2.4, "words": 0.2, "fit": 0.1,
    "fit_squared": 1.4, "whole": 1.7, "flipped": 0.75, "limited": 0.0, "matters": 1.3,
    "normal": -1.35, "odd": -0.35, "denied": -1.5, "result": 1.55, "likely": 0.85, "lifted": 0.8,
    "likely_normal": -0.6,
}  # fmt: skip


def symptom_chance(view: SymptomView) -> float:
    """P(the symptom is meant)."""
    return _chance(SYMPTOM, view)


def answer_chance(view: AnswerView) -> float:
    """P(the answer is meant)."""
    return _chance(ANSWER, view)


def confidence(chance: float) -> float:
    """The chance on the scale of confidences, where an even chance is just sure."""
    return sqrt(chance)


def symptom_confidence(chance: float) -> float:
    """The same for a symptom, which must be likelier to be sure."""
    return float(chance**STRICT)


def _chance(weights: Mapping[str, float], view: SymptomView | AnswerView) -> float:
    total = weights[""]
    for name, weight in weights.items():
        if name:
            total += weight * float(getattr(view, name))
    return float(1.0 / (1.0 + exp(-total)))
