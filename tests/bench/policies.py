"""Policies compared on the same simulated cases: minutes, questions, calls, hits, calibration."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import mean, stdev

from tests.bench import worlds
from tests.bench.worlds import Policy
from tests.engine.small import random_base
from tests.replay import shipped_rules

from weldwhy.engine.belief import Finding, replay
from weldwhy.engine.network import Network, network_for
from weldwhy.engine.tuning import Tuning
from weldwhy.engine.world import ELSEWHERE

POLICIES: dict[str, Policy] = {
    "live guide": worlds.live,
    "fixed list": worlds.fixed_list,
    "random order": worlds.random_order,
    "all-knowing": worlds.all_knowing,
}


@dataclass(frozen=True)
class Outcome:
    """Means over the cases of one policy; hits only where the policy ranks causes."""

    minutes: float
    asked: float
    fixes: float
    calls: float
    top1: float = 0.0
    top3: float = 0.0
    each: tuple[float, ...] = ()

    def saved(self, other: Outcome) -> tuple[float, float]:
        """Minutes less than the other policy takes on the same cases, and its standard error."""
        less = [theirs - ours for ours, theirs in zip(self.each, other.each)]
        return mean(less), stdev(less) / len(less) ** 0.5


def shipped() -> list[Network]:
    """A network for each symptom and process of the shipped rules, metal not told."""
    rules = shipped_rules()
    return [
        network_for(rules, process, (symptom.id,))
        for symptom in rules.symptoms.values()
        for process in symptom.processes
    ]


def synthetic(bases: int) -> list[Network]:
    """Random bases of the size of a real symptom: 20 causes, 40 checks."""
    return [network_for(random_base(s, 20, 40), "p", ("bad",)) for s in range(bases)]


def outcome(
    policy: Policy,
    networks: Sequence[Network],
    cases: int,
    tuned: Tuning,
    seed: int,
    blurred: bool = False,
) -> Outcome:
    """The policy on cases whose faults are the same for every policy of this seed."""
    done = []
    hits: list[tuple[bool, bool]] = []
    for number in range(cases):
        network = networks[number % len(networks)]
        world = worlds.new(network, tuned, f"{seed} {number}", blurred)
        names = {network.causes[f].id for f in world.faults if f != ELSEWHERE}
        first = policy(world)
        done.append(world)
        if first:
            hits.append((first[0] in names, bool(names & set(first))))
    return Outcome(
        mean(w.minutes for w in done),
        mean(len(w.asked) for w in done),
        mean(w.fixes for w in done),
        mean(w.helped for w in done),
        mean(h[0] for h in hits) if hits else 0.0,
        mean(h[1] for h in hits) if hits else 0.0,
        tuple(w.minutes for w in done),
    )


def calibration(
    networks: Sequence[Network], cases: int, seed: int
) -> list[tuple[float, float, int]]:
    """After four random answers: mean stated probability, observed share, entries, by tenths."""
    bins: list[list[tuple[float, bool]]] = [[] for _ in range(10)]
    for number in range(cases):
        network = networks[number % len(networks)]
        world = worlds.new(network, Tuning(), f"{seed} {number}")
        rng = random.Random(world.seed)
        log: tuple[Finding, ...] = ()
        for name in rng.sample(sorted(network.checks), k=min(4, len(network.checks))):
            said = world.answer(network.checks[name])
            if said is not None:
                log = (*log, Finding(name, said))
        marginals = replay(network, log).marginals()
        for cause, p in marginals.items():
            bins[min(int(p * 10), 9)].append((p, network.number[cause] in world.faults))
    return [(mean(p for p, _ in b), mean(hit for _, hit in b), len(b)) for b in bins if b]
