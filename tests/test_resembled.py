"""A picked picture on the shipped rules: what it shows leads, what looks like it stays in play."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.case import Answered, Case, Reported, Resembled, Situated
from weldwhy.interview import Interview

RULES = shipped_rules()
PICKS = [
    (symptom.id, process)
    for symptom in RULES.symptoms.values()
    for process in symptom.processes[:1]
    if symptom.id in RULES.pictures
]


def guide(symptom: str, process: str, *, sure: bool = False) -> Interview:
    told = Reported(symptom) if sure else Resembled(symptom)
    return Interview(RULES, Case((Situated("process", process), told)))


@pytest.mark.parametrize(("symptom", "process"), PICKS)
def test_the_symptom_of_the_picture_stays_at_the_head(symptom: str, process: str) -> None:
    """Also where it is met seldom and what looks like it is met every day."""
    ranked = guide(symptom, process).ranked
    own = sum(r.probability for r in ranked if symptom in r.cause.symptoms)
    assert own > 0.35 * sum(r.probability for r in ranked)
    assert any(symptom in r.cause.symptoms for r in ranked[:3])


@pytest.mark.parametrize(("symptom", "process"), PICKS)
def test_what_may_be_meant_is_kept_and_can_be_found(symptom: str, process: str) -> None:
    """Each cause of a look-alike that is often enough taken for it has its place."""
    seen, sure = guide(symptom, process), guide(symptom, process, sure=True)
    assert sure.network.number.keys() <= seen.network.number.keys()
    like = RULES.pictures[symptom].like
    for cause in seen.network.causes:
        if symptom not in cause.symptoms:
            assert any(cause.symptoms.get(other, 0.0) * p > 0.0 for other, p in like.items())
            assert 0.0 < seen.belief.probability(cause.id) < 0.5


def test_a_look_at_the_pores_brings_worm_holes_to_the_top_of_a_picked_porosity() -> None:
    """What tells the look-alikes apart is asked of them all."""
    case = Case((Situated("process", "fcaw-s"), Resembled("porosity")))
    assert RULES.pictures["porosity"].like
    before = Interview(RULES, case)
    worms = case.with_(Answered("pore-pattern", "worm-tracks"))
    after = Interview(RULES, worms)
    gained = {
        r.cause.id: after.belief.probability(r.cause.id) / before.belief.probability(r.cause.id)
        for r in before.ranked
    }
    assert max(gained.values()) > 1.5
