"""A case as data: the stable shape of `weldwhy diagnose --json`.

`schemas/diagnosis.json` describes it, and a test holds the two together. Texts are cleaned here,
because whoever prints them next may not.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from weldwhy.plaintext import clean

if TYPE_CHECKING:
    from weldwhy.advice import Advice, SettingAdvice
    from weldwhy.interview import Interview, Ranked
    from weldwhy.steps import Step


@dataclass(frozen=True, slots=True)
class Understood:
    """One thing that a free sentence was taken to say, and how surely (0 to 1)."""

    text: str
    check: str
    answer: str
    confidence: float


def diagnosis(
    interview: Interview,
    understood: Iterable[Understood] = (),
    not_understood: Iterable[str] = (),
) -> dict[str, Any]:
    """The result as data that JSON can hold: what is likely, why, and what comes next."""
    return {
        "understood": [
            {
                "text": clean(u.text),
                "check": u.check,
                "answer": u.answer,
                "confidence": u.confidence,
            }
            for u in understood
        ],
        "not_understood": [clean(text) for text in not_understood],
        "causes": [_cause(interview, ranked) for ranked in interview.ranked],
        "next": _step(interview.step),
        "expected_minutes": round(interview.expected_minutes, 1),
    }


def _cause(interview: Interview, ranked: Ranked) -> dict[str, Any]:
    cause = ranked.cause
    return {
        "id": cause.id,
        "name": clean(cause.name),
        "family": cause.family,
        "share": cause.share,
        "probability": round(ranked.probability, 6),
        "why": [
            {"check": r.check_id, "answer": r.answer_id, "decibans": round(r.decibans, 1)}
            for r in interview.why(cause.id)
        ],
        "remedies": [_remedy(advice) for advice in interview.remedies(cause.id)],
    }


def _remedy(advice: Advice) -> dict[str, Any]:
    return {
        "id": advice.remedy.id,
        "minutes": advice.remedy.minutes,
        "cautions": [clean(caution.text) for caution in advice.cautions],
        "settings": [_setting(setting) for setting in advice.settings],
    }


def _setting(setting: SettingAdvice) -> dict[str, str]:
    """The setting by its id, the name that the case file uses; unknown texts are empty."""
    return {
        "name": setting.setting,
        "yours": clean(setting.yours),
        "try": setting.best,
        "low": setting.low,
        "high": setting.high,
    }


def _step(step: Step) -> dict[str, Any] | None:
    """The next step; None once the bead is sound, when nothing is left to do."""
    if step.kind == "done":
        return None
    return {
        "kind": step.kind,
        "id": step.id,
        "text": clean(step.text),
        "answers": [{"id": answer.id, "text": clean(answer.text)} for answer in step.answers],
        "minutes": round(step.minutes, 2),
        "reason": clean(step.reason),
    }
