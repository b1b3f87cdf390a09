"""The choice of the next step against a plain oracle, information against a reference library."""

from __future__ import annotations

import time
from collections.abc import Collection, Sequence
from statistics import median

import pyagrum as gum
from tests.engine import reference
from tests.replay import shipped_rules

from weldwhy.engine.belief import Belief, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.network import EMPTY, Network, network_for
from weldwhy.engine.plan import Item, Planner
from weldwhy.engine.tuning import PATIENCE


def fresh(symptom: str, process: str) -> Network:
    """The network of a report, with none of its rows worked out yet; for any metal."""
    network_for.cache_clear()
    return network_for(shipped_rules(), process, (symptom,))


def oracle(network: Network, belief: Belief, answered: Collection[str] = ()) -> dict[str, float]:
    """Gain of every open question by plain loops over the sets: no tables, none left out.

    Questions of the same look count in full. The price of a step of the plan is the planner's.
    """
    left = {name: check for name, check in network.checks.items() if name not in answered}
    planner = Planner(network, left, belief.tries, PATIENCE["normal"])
    now = _plan(network, planner, belief.weights)
    gains = {}
    for name, check in left.items():
        after = 0.0
        for place in range(len(check.answers)):
            row = network.rows(name)[place]
            after += _plan(network, planner, [w * p for w, p in zip(belief.weights, row)])
        gross = max((1.0 - check.dont_know) * (now - after), 0.0)
        gains[name] = gross - check.minutes - PATIENCE["normal"].attention
    return gains


def _plan(network: Network, planner: Planner, weights: Sequence[float]) -> float:
    total = sum(weights)
    p = [
        sum(w for w, members in zip(weights, network.sets) if cause in members) / total
        for cause in range(len(network.causes))
    ]
    items = [planner._item(c, p[c]) for c in range(len(p)) if planner.curable(c) and p[c] > 0.0]

    def one(item: Item) -> tuple[float, float, int]:
        cost = p[item.cause] * item.present + (1.0 - p[item.cause]) * item.absent
        return -p[item.cause] * item.works / cost, item.absent, item.cause

    def many(item: Item) -> tuple[float, float, int]:
        odds = p[item.cause] / (1.0 - p[item.cause])
        return -odds * item.works / item.absent, item.absent, item.cause

    return min(_walk(network, planner, sorted(items, key=key), weights) for key in (one, many))


def _walk(network: Network, planner: Planner, items: list[Item], weights: Sequence[float]) -> float:
    place = {item.cause: k for k, item in enumerate(items, 1)}
    by_cause = {item.cause: item for item in items}
    elapsed = [0.0]
    for item in items:
        elapsed.append(elapsed[-1] + item.absent)
    ends: list[list[float]] = [[] for _ in elapsed]
    spent = [0.0] * len(elapsed)
    left = 0.0
    for h, (w, members) in enumerate(zip(weights, network.sets)):
        if h == EMPTY:
            continue
        left += w
        if all(m in place for m in members):
            last = max(place[m] for m in members)
            extra = sum(by_cause[m].present - by_cause[m].absent for m in members)
            ends[last].append(w)
            spent[last] += w * (elapsed[last] + extra)
    best, done = left * planner.tuned.help, 0.0
    for k in range(1, len(elapsed)):
        done += spent[k]
        left -= sum(ends[k])
        best = min(best, done + left * (elapsed[k] + planner.tuned.help))
    return best


def against_oracle(symptom: str, process: str, runs: int) -> tuple[float, float, int]:
    """Oracle's time over ours for one step; worst disagreement on a gain; number of sets."""
    ours, theirs, worst = [], [], 0.0
    for _ in range(runs):
        network = fresh(symptom, process)
        for name in network.checks:
            network.rows(name)
        belief = replay(network, ())
        start = time.process_time()
        values = Chooser(belief, ()).values
        ours.append(time.process_time() - start)
        start = time.process_time()
        gains = oracle(network, belief)
        theirs.append(time.process_time() - start)
        worst = max(worst, *(abs(v.gain - gains[v.check]) for v in values))
    return median(theirs) / median(ours), worst, len(network.sets)


def against_library(symptom: str, process: str, runs: int) -> tuple[float, float]:
    """The library's time for the bits of every question over ours; worst disagreement in bits.

    The library has no notion of a plan, so of the value of a question only its information is
    asked of both. Both have their tables made beforehand.
    """
    network = fresh(symptom, process)
    model = reference.model(shipped_rules(), process, symptom, list(network.checks))
    chooser = Chooser(replay(network, ()), ())
    ours, theirs, worst = [], [], 0.0
    for number in range(runs + 1):
        start = time.process_time()
        bits = {name: chooser.bits(name) for name in network.checks}
        middle = time.process_time()
        inference = gum.LazyPropagation(model)
        told = {n: inference.jointMutualInformation(["faults", n]) for n in network.checks}
        end = time.process_time()
        worst = max(worst, *(abs(bits[name] - told[name]) for name in bits))
        if number:  # the first round makes our tables
            ours.append(middle - start)
            theirs.append(end - middle)
    return median(theirs) / median(ours), worst
