"""A case as data: the stable shape of `weldwhy diagnose --json`.

`schemas/diagnosis.json` describes it, and a test holds the two together. Texts are cleaned here,
because whoever prints them next may not.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from weldwhy.case import (
    Answered,
    Entry,
    Hinted,
    Measured,
    Passed,
    Reported,
    Resembled,
    Said,
    Situated,
    Supposed,
    Suspected,
    Told,
    Tried,
)
from weldwhy.plaintext import clean
from weldwhy.report import before

if TYPE_CHECKING:
    from weldwhy.advice import Advice, SettingAdvice
    from weldwhy.interview import Interview, Ranked
    from weldwhy.steps import Step
    from weldwhy.understanding.heard import Understood


def diagnosis(
    interview: Interview,
    understood: Iterable[Understood] = (),
    not_understood: Iterable[str] = (),
) -> dict[str, Any]:
    """The result as data that JSON can hold: what is likely, why, and what comes next."""
    return {
        "understood": [
            {"text": clean(u.text), **_meant(u.entry), "confidence": u.confidence}
            for u in understood
        ],
        "not_understood": [clean(text) for text in not_understood],
        "supposed": interview.supposed,
        "causes": [_cause(interview, ranked) for ranked in interview.ranked],
        "next": _step(interview.step),
        "expected_minutes": round(interview.expected_minutes, 1),
        "said": [_said(said, taken) for said, taken in interview.case.own_words],
    }


def _said(said: Said, taken: Iterable[Told]) -> dict[str, Any]:
    """The person's own words as the case keeps them, with what stands of what was taken."""
    return {
        "text": said.text,
        "understood": [{"text": entry.words, **_meant(entry)} for entry in taken],
        "not_understood": list(said.not_understood),
        "struck_out": list(said.struck),
    }


def _meant(entry: Entry) -> dict[str, str]:
    """What was told, as a check and its answer; a setting and its value where it was measured."""
    match entry:
        case Situated(field=check, value=answer) | Measured(setting=check, value=answer):
            return {"check": check, "answer": clean(answer)}
        case Reported(symptom) | Resembled(symptom) | Hinted(symptom):
            return {"check": "symptom", "answer": symptom}
        case Answered(check=check, answer=answer) | Supposed(check=check, answer=answer):
            return {"check": check, "answer": answer}
        case Suspected(cause=cause):
            return {"check": "suspected", "answer": cause}
        case Tried(cause=cause, result=result):
            return {"check": f"tried {cause}", "answer": result}
        case Passed(check=check, reason=reason):
            return {"check": check, "answer": reason}
        case Said(text=text):
            return {"check": "said", "answer": text}


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
        "cautions": [clean(caution.text) for caution in before(step)],
        "text": clean(step.text),
        "answers": [{"id": answer.id, "text": clean(answer.text)} for answer in step.answers],
        "minutes": round(step.minutes, 2),
        "reason": clean(step.reason),
    }
