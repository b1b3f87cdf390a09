"""The value of each question equals that of a plain oracle, which loops over the sets of causes."""

from __future__ import annotations

import random

import pytest
from tests.bench.choosing import oracle
from tests.engine.small import random_base
from tests.replay import shipped_rules

from weldwhy.engine.belief import Finding, Fix, Log, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.network import Network, network_for


def agree(network: Network, log: Log) -> int:
    """Hold our values against the oracle's; returns how many steps of our plan have a check."""
    belief = replay(network, log)
    chooser = Chooser(belief, log)
    gains = oracle(network, belief, [e.check for e in log if isinstance(e, Finding)])
    assert chooser.values
    for value in chooser.values:
        assert value.gain == pytest.approx(gains[value.check], abs=1e-9)
    return sum(bool(item.check) for item in chooser.plan.items)


def test_on_random_bases_at_the_start_after_answers_and_after_a_failed_remedy() -> None:
    """The plans priced on the way hold checks before remedies, and sets of three."""
    with_check = 0
    for seed in range(10):
        rules, rng = random_base(seed), random.Random(seed)
        network = network_for(rules, "p", ("bad",), triples=frozenset({"c2"}))
        told = [
            Finding(name, rng.choice(rules.checks[name].answers).id)
            for name in rng.sample(sorted(network.checks), k=2)
        ]
        logs: list[Log] = [(), tuple(told), (*told, Fix("c2", "no change"))]
        for log in logs:
            with_check += agree(network, log)
    assert with_check >= 10


@pytest.mark.parametrize(("symptom", "process"), [("burn-through", "smaw"), ("spatter", "gmaw")])
def test_on_the_shipped_rules(symptom: str, process: str) -> None:
    agree(network_for(shipped_rules(), process, (symptom,)), ())
