"""Symptoms that were told by a picture: what is picked by whom, and what that says of a cause."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import prod

from weldwhy.model import Cause, RuleBase

Looks = Mapping[str, Mapping[str, float]]
"""Of each symptom told by its picture: P(that picture is picked | each symptom)."""


def shown(cause: Cause, symptoms: Sequence[str], looks: Looks) -> list[float]:
    """P(each symptom is reported | only this cause); of one told by a picture, P(it is picked)."""

    def chance(symptom: str) -> float:
        if symptom not in looks:
            return cause.symptoms.get(symptom, 0.0)
        missed = prod(1.0 - p * cause.symptoms.get(s, 0.0) for s, p in looks[symptom].items())
        return 1.0 - missed

    return [chance(symptom) for symptom in symptoms]


def look_of(rules: RuleBase, symptom: str) -> dict[str, float]:
    """P(the symptom's picture is picked | each symptom that may be the one).

    A person picks one picture: their symptom's own, whose weight is 1, or one that looks like it.
    """
    own = rules.pictures.get(symptom)
    look = {**(own.like if own else {}), symptom: 1.0}
    return {each: weight / _picks(rules, each) for each, weight in look.items()}


def _picks(rules: RuleBase, symptom: str) -> float:
    """The weights of all pictures that a person who has the symptom may pick."""
    return 1.0 + sum(picture.like.get(symptom, 0.0) for picture in rules.pictures.values())
