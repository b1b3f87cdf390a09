"""Worked examples of the literature about what a plan costs; figures as in test_published.py.

Whole policies are priced by tests.engine.optimum, whose optimum must meet a published one too.
"""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from itertools import pairwise

import pytest
from tests.engine.classic import EXAMPLES, only
from tests.engine.optimum import Optimum, Policy
from tests.engine.small import Row, base, cause, check

from weldwhy.engine import history
from weldwhy.engine.history import Closed
from weldwhy.engine.plan import Planner
from weldwhy.engine.tuning import Tuning

FREE = Tuning(attention=0.0, test_bead=0.0, help=1e6)
DEAR = 1000.0
"""Minutes of a remedy so dear that only a fault that is certain is worth it."""


@pytest.mark.parametrize("number", [0, 1])
def test_price_of_an_order_of_actions_that_cure_several_faults(number: int) -> None:
    """In a given order an action has the chance of the faults that no earlier one cures."""
    example = EXAMPLES["order-dependent-actions"]
    faults, actions = dict(example["inputs"]["faults"]), example["inputs"]["actions"]
    sequence = example["expect"]["sequences"][number]
    left = {a: sum(faults.pop(f, 0.0) for f in actions[a]) for a in sequence["order"]}
    causes = [cause(a, minutes=example["inputs"]["cost"]) for a in left]
    network = only(base(causes, []), left)
    plan = Planner(network, (), {}, FREE).plan(network.start)
    assert [network.causes[item.cause].id for item in plan.items] == sequence["order"]
    assert plan.minutes == pytest.approx(sequence["minutes"], abs=example["tolerance"])


@pytest.mark.parametrize("seed", range(20))
def test_swapping_two_neighbours_of_the_plan_costs_what_is_published(seed: int) -> None:
    """Observe-then-repair with a sure check for each fault and one price for every repair."""
    rng = random.Random(seed)
    look = [rng.uniform(0.5, 5.0) for _ in range(5)]
    drawn = [rng.uniform(0.05, 1.0) for _ in look]
    p = [d / sum(drawn) for d in drawn]
    causes = [cause(f"c{i}", shows={f"q{i}": {"yes": 1.0}}, minutes=DEAR) for i in range(5)]
    checks = [check(f"q{i}", off=0.0, minutes=minutes) for i, minutes in enumerate(look)]
    network = only(base(causes, checks), {f"c{i}": chance for i, chance in enumerate(p)})
    plan = Planner(network, network.checks, {}, FREE).plan(network.start)
    order = [item.cause for item in plan.items]
    assert all(item.check for item in plan.items)
    for k, (one, two) in enumerate(pairwise(order)):
        swapped = [*order[:k], two, one, *order[k + 2 :]]
        change = plan.minutes - _observe_then_repair(swapped, p, look)
        assert change == pytest.approx(p[two] * look[one] - p[one] * look[two], abs=1e-9)
        assert change <= 1e-9


def _observe_then_repair(order: Sequence[int], p: Sequence[float], look: Sequence[float]) -> float:
    return DEAR + sum(p[i] * sum(look[j] for j in order[: k + 1]) for k, i in enumerate(order))


def test_fewest_tests_that_name_one_of_six_states() -> None:
    """The optimum is the published one, and the engine, looking one question ahead, meets it."""
    example = EXAMPLES["test-sequencing-6x5"]
    prior: Mapping[str, float] = example["inputs"]["p"]
    tests: Mapping[str, list[str]] = example["inputs"]["tests"]
    shows: dict[str, dict[str, Row]] = {
        state: {t: {"yes": float(state in fails)} for t, fails in tests.items()} for state in prior
    }
    causes = [cause(state, shows=shows[state], minutes=DEAR) for state in prior]
    network = only(base(causes, [check(t, off=0.5) for t in tests]), prior)
    published = example["expect"]["tests"]
    for way in (Optimum(network, FREE), Policy(network, FREE)):
        assert way.minutes() - DEAR == pytest.approx(published, abs=example["tolerance"])


def test_confirmations_shift_a_share_as_the_rule_of_succession(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """With a shrinkage of alpha, base share times multiplier is the mean of the beta posterior."""
    example = EXAMPLES["beta-update"]
    i = example["inputs"]
    share = i["alpha"] / (i["alpha"] + i["beta"])
    monkeypatch.setattr(history, "SHRINKAGE", float(i["alpha"]))
    cases = [
        Closed(("a",) if number < i["successes"] else (), {"a": share})
        for number in range(i["trials"])
    ]
    found = share * history.multipliers(cases)["a"]
    assert found == pytest.approx(example["expect"]["mean"], abs=example["tolerance"])
