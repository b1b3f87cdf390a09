"""The printed tree: it ends, it covers, it is no larger than promised, and it is the live guide."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.engine.small import random_base
from tests.replay import shipped_rules

from weldwhy import chart
from weldwhy.case import DONT_KNOW, RESULTS, Case, Passed, Reported, Situated, Tried, entry_for
from weldwhy.interview import Interview
from weldwhy.model import RuleBase

PAIRS = [
    # each symptom in one of its processes, in turn; all 300 and more would take minutes
    (symptom.id, symptom.processes[number % len(symptom.processes)])
    for number, symptom in enumerate(shipped_rules().symptoms.values())
]


@cache
def shipped(symptom: str, process: str) -> chart.Chart:
    return chart.build(shipped_rules(), symptom, process, depth=2, least=0.05)


@pytest.mark.parametrize(("symptom", "process"), PAIRS)
def test_the_lists_of_every_shipped_chart_cover_what_they_promise(
    symptom: str, process: str
) -> None:
    made = shipped(symptom, process)
    assert 0.95 <= made.coverage <= 1.0 + 1e-9
    assert made.steps_to_end() <= 2
    assert made.steps_to_remedy() <= 3
    remedies = [
        cause.remedies[0]
        for cause in shipped_rules().causes.values()
        if symptom in cause.symptoms and process in cause.processes
    ]
    for node in made.nodes:
        if isinstance(node, chart.Leaf) and not node.items:
            assert node.done or any(remedy.stop for remedy in remedies)


@pytest.mark.parametrize("seed", range(6))
def test_every_path_comes_to_a_remedy_by_the_seventh_step(seed: int) -> None:
    made = chart.build(curious(seed), "bad", "p", depth=9, least=0.02, patience="thorough")
    assert made.steps_to_remedy() <= 7


def test_without_that_bound_a_path_would_be_longer(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(chart, "SOONEST", 99)
    made = chart.build(curious(2), "bad", "p", 9, 0.02, "thorough")
    assert made.steps_to_remedy() > 7


def test_a_danger_that_only_others_may_mend_ends_a_path_with_a_stop() -> None:
    made = chart.build(shipped_rules(), "shock", "smaw", depth=4, least=0.02)
    stops = [n for n in made.nodes if isinstance(n, chart.Node) and n.step.kind == "stop"]
    assert stops
    for node in stops:
        assert node.branches == ()
        assert node.step.call
        assert node.step.cautions


def curious(seed: int) -> RuleBase:
    """Questions cost nothing and remedies much, so the guide would ask on and on."""
    rules = random_base(seed, 12, 16)
    checks = {c.id: replace(c, minutes=0.01, noise=0.1) for c in rules.checks.values()}
    causes = {
        c.id: replace(c, remedies=tuple(replace(r, minutes=r.minutes * 20) for r in c.remedies))
        for c in rules.causes.values()
    }
    return replace(rules, checks=checks, causes=causes)


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10_000), st.integers(1, 4), st.sampled_from([0.3, 0.1, 0.03]))
def test_a_chart_is_bounded_and_its_chances_add_up(seed: int, depth: int, least: float) -> None:
    made = chart.build(random_base(seed), "bad", "p", depth, least)
    inner = [n for n in made.nodes if isinstance(n, chart.Node)]
    assert made.steps_to_end() <= depth
    assert len(inner) <= depth / least
    for node in inner:
        assert sum(branch.chance for branch in node.branches) == pytest.approx(1.0, abs=1e-9)
    assert 0.0 < made.coverage <= 1.0 + 1e-9


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10_000))
def test_no_two_boxes_are_the_same_and_every_box_is_reached(seed: int) -> None:
    made = chart.build(random_base(seed), "bad", "p", 3, 0.03)
    assert len(set(made.nodes)) == len(made.nodes)
    assert sorted(made.order()) == list(range(len(made.nodes)))


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10_000))
def test_the_chart_replayed_is_the_live_guide(seed: int) -> None:
    rules = random_base(seed)
    made = chart.build(rules, "bad", "p", 3, 0.03)
    start = Case().with_(Reported("bad"), Situated("process", "p"), Situated("material", ""))
    _follow(rules, made, made.root, start)


def _follow(rules: RuleBase, made: chart.Chart, number: int, case: Case) -> None:
    node = made.nodes[number]
    if isinstance(node, chart.Leaf):
        return
    step = Interview(rules, case).step
    assert (step.kind, step.id) == (node.step.kind, node.step.id)
    for place, branch in enumerate(node.branches):
        if step.kind == "remedy":
            entry = Tried(step.cause, step.id, RESULTS[place])
        elif place < len(step.answers):
            _follow(rules, made, branch.to, case.with_(entry_for(step.id, step.answers[place].id)))
            continue
        else:
            _follow(rules, made, branch.to, case.with_(Passed(step.id, DONT_KNOW)))
            continue
        _follow(rules, made, branch.to, case.with_(entry))
