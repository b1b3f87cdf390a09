"""The engine's beliefs equal those of a reference library on the same networks, to 1e-9."""

from __future__ import annotations

import random

import pyagrum as gum
import pytest
from tests.engine.reference import noisy_or_posterior, posterior
from tests.engine.small import base, cause, check, random_base
from tests.replay import shipped_rules

from weldwhy.engine import rows
from weldwhy.engine.belief import Finding, replay
from weldwhy.engine.network import Network, network_for
from weldwhy.model import RuleBase

PAIRS = [(s.id, p) for s in shipped_rules().symptoms.values() for p in s.processes]


def some_answers(network: Network, seed: int, count: int) -> dict[str, str]:
    """Answers to a few checks, no two of the same look (those are discounted, by design)."""
    rng = random.Random(seed)
    found: dict[str, str] = {}
    looks: set[str] = set()
    for name in rng.sample(sorted(network.checks), k=len(network.checks)):
        asked = network.checks[name]
        if len(found) < count and (not asked.same_look or asked.same_look not in looks):
            looks.add(asked.same_look)
            found[name] = rng.choice(asked.answers).id
    return found


def agree(rules: RuleBase, process: str, symptom: str, seed: int, count: int) -> None:
    network = network_for(rules, process, (symptom,))
    answers = some_answers(network, seed, count)
    log = tuple(Finding(name, answer) for name, answer in answers.items())
    ours = replay(network, log).marginals()
    theirs = posterior(rules, process, symptom, answers)
    assert ours.keys() == theirs.keys()
    assert ours == pytest.approx(theirs, abs=1e-9)


@pytest.mark.parametrize("seed", range(25))
def test_on_random_bases(seed: int) -> None:
    agree(random_base(seed), "p", "bad", seed, 4)


@pytest.mark.parametrize(("symptom", "process"), PAIRS)
def test_on_the_shipped_rules(symptom: str, process: str) -> None:
    for seed in range(3):
        agree(shipped_rules(), process, symptom, seed, 5)


def test_the_rows_of_several_causes_are_the_librarys_own_noisy_or() -> None:
    """Leak .1, net strengths .8, .6 and .3: all eight rows."""
    leak, strengths = 0.1, {"a": 0.8, "b": 0.6, "c": 0.3}
    network = gum.BayesNet("noisy-or")
    for name in strengths:
        network.add(gum.LabelizedVariable(name, name, 2))
    network.addNoisyORNet(gum.LabelizedVariable("q", "q", 2), leak)
    for name, strength in strengths.items():
        network.addWeightedArc(name, "q", strength)
    asked = check("q", off=leak)
    single = {n: 1.0 - (1.0 - leak) * (1.0 - s) for n, s in strengths.items()}
    for mask in range(8):
        present = [n for i, n in enumerate(strengths) if mask >> i & 1]
        ours = rows.together(asked, [(1.0 - single[n], single[n]) for n in present])
        place = {n: int(n in present) for n in strengths}
        inference = gum.LazyPropagation(network)
        inference.setEvidence(place)
        inference.makeInference()
        assert ours[1] == pytest.approx(inference.posterior("q").tolist()[1], abs=1e-9)


@pytest.mark.parametrize("seed", range(12))
def test_yes_no_checks_believe_as_the_librarys_noisy_or_network(seed: int) -> None:
    """No table of ours in it: each check is a noisy-OR node below the causes themselves.

    The grades keep every pair within the bounds on "normal"; beyond those the engine departs.
    """
    rng = random.Random(seed)
    asked = [check(f"q{i}", off=rng.choice((0.02, 0.06, 0.15))) for i in range(6)]
    causes = [
        cause(
            f"c{i}",
            rng.choice((1.0, 3.0, 8.0, 20.0)),
            {q.id: {"yes": rng.choice((0.3, 0.5, 0.7, 0.85))} for q in rng.sample(asked, 3)},
            symptoms={"bad": rng.choice((0.3, 0.7, 0.95))},
        )
        for i in range(6)
    ]
    rules = base(causes, asked)
    answers = {q.id: rng.choice(("no", "yes")) for q in rng.sample(asked, 4)}
    network = network_for(rules, "p", ("bad",))
    answers = {name: answer for name, answer in answers.items() if name in network.checks}
    log = tuple(Finding(name, answer) for name, answer in answers.items())
    theirs = noisy_or_posterior(rules, "p", "bad", answers)
    assert replay(network, log).marginals() == pytest.approx(theirs, abs=1e-9)
