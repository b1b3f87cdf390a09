"""Networks in a reference library for Bayesian networks, built apart from the engine's own code."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import combinations, product
from math import prod

import pyagrum as gum

from weldwhy.model import Cause, Check, RuleBase

Yes = Callable[[Mapping[str, bool]], float]
"""P(a node is yes) from the states of its parents by name."""


def binary(nodes: Mapping[str, tuple[Sequence[str], Yes]]) -> gum.BayesNet:
    """A network of yes/no nodes: name -> (parents, P(yes | parents)); parents come first."""
    network = gum.BayesNet("classic")
    for name, (parents, chance) in nodes.items():
        network.add(gum.LabelizedVariable(name, name, 2))
        for parent in parents:
            network.addArc(parent, name)
        for values in product((False, True), repeat=len(parents)):
            state = dict(zip(parents, values))
            yes = chance(state)
            place = {parent: int(value) for parent, value in state.items()}
            network.cpt(name)[place] = [1.0 - yes, yes]
    return network


def yes(network: gum.BayesNet, asked: str, given: Mapping[str, bool]) -> float:
    """P(asked is yes | given) by exact inference."""
    inference = gum.LazyPropagation(network)
    inference.setEvidence({name: int(value) for name, value in given.items()})
    inference.makeInference()
    return float(inference.posterior(asked).tolist()[1])


def in_play(rules: RuleBase, process: str, symptom: str) -> list[Cause]:
    """The causes that can give the symptom in the process."""
    return [
        c
        for c in rules.causes.values()
        if symptom in c.symptoms and (not c.processes or process in c.processes)
    ]


def model(rules: RuleBase, process: str, symptom: str, checks: Sequence[str]) -> gum.BayesNet:
    """One node for the set of faults and one for each check.

    Priors and tables are worked out here from the rules' own numbers.
    """
    sets, prior = _prior(in_play(rules, process, symptom), symptom, process)
    network = gum.BayesNet("guide")
    network.add(gum.LabelizedVariable("faults", "faults", len(sets)))
    network.cpt("faults").fillWith(prior)
    for name in checks:
        check = rules.checks[name]
        network.add(gum.LabelizedVariable(name, name, len(check.answers)))
        network.addArc("faults", name)
        network.cpt(name)[:] = [_row(check, members) for members in sets]
    return network


def posterior(
    rules: RuleBase, process: str, symptom: str, answers: Mapping[str, str]
) -> dict[str, float]:
    """P(cause still at work | answers)."""
    causes = in_play(rules, process, symptom)
    sets, _ = _prior(causes, symptom, process)
    inference = gum.LazyPropagation(model(rules, process, symptom, list(answers)))
    inference.setEvidence(
        {n: [a.id for a in rules.checks[n].answers].index(a) for n, a in answers.items()}
    )
    inference.makeInference()
    found = inference.posterior("faults").tolist()
    return {
        c.id: sum(p for p, members in zip(found, sets) if members and c in members) for c in causes
    }


def noisy_or_posterior(
    rules: RuleBase, process: str, symptom: str, answers: Mapping[str, str]
) -> dict[str, float]:
    """P(cause still at work | answers) by the library's own noisy-OR with leak.

    Only for yes/no checks that never slip, named "no" and "yes". Below the node for the set of
    faults stands one yes/no node for each cause and for "not listed"; these are the parents.
    """
    causes = in_play(rules, process, symptom)
    sets, prior = _prior(causes, symptom, process)
    network = gum.BayesNet("noisy-or")
    network.add(gum.LabelizedVariable("faults", "faults", len(sets)))
    network.cpt("faults").fillWith(prior)
    for cause in (*causes, None):
        name = cause.id if cause else "not listed"
        network.add(gum.LabelizedVariable(name, name, 2))
        network.addArc("faults", name)
        held = [members is None if cause is None else cause in (members or ()) for members in sets]
        network.cpt(name)[:] = [[float(not h), float(h)] for h in held]
    for name in answers:
        leak = rules.checks[name].baseline[1]
        network.addNoisyORNet(gum.LabelizedVariable(name, name, 2), leak)
        alone = {c.id: c.shows[name]["yes"] for c in causes if name in c.shows}
        for parent, shown in {**alone, "not listed": 0.5 * leak + 0.25}.items():
            network.addWeightedArc(parent, name, 1.0 - (1.0 - shown) / (1.0 - leak))
    inference = gum.LazyPropagation(network)
    inference.setEvidence({name: int(answer == "yes") for name, answer in answers.items()})
    inference.makeInference()
    return {c.id: float(inference.posterior(c.id).tolist()[1]) for c in causes}


def _prior(
    causes: Sequence[Cause], symptom: str, process: str
) -> tuple[list[list[Cause] | None], list[float]]:
    """Single faults .62 and pairs .30 of what is not the unlisted fault's .03; None is unlisted."""
    lone = {c.id: c.base_in.get(process, c.base) * c.symptoms[symptom] for c in causes}
    pairs = [
        [a, b] for a, b in combinations(causes, 2) if not a.exclusive or a.exclusive != b.exclusive
    ]
    ones, twos = [[c] for c in causes], pairs
    mass_one, mass_two = (0.62 / 0.92, 0.30 / 0.92) if twos else (1.0, 0.0)
    sum_one = sum(lone.values())
    sum_two = sum(prod(lone[c.id] for c in pair) for pair in twos)
    prior = [0.97 * mass_one * lone[c.id] / sum_one for c in causes]
    prior += [0.97 * mass_two * prod(lone[c.id] for c in pair) / sum_two for pair in twos]
    return [*ones, *twos, None], [*prior, 0.03]


def _row(check: Check, members: Sequence[Cause] | None) -> list[float]:
    count = len(check.answers)
    if members is None:
        plain = [0.5 * b + 0.5 / count for b in check.baseline]
    else:
        plain = _combined(check, [_alone(check, c) for c in members if check.id in c.shows])
    return [(1.0 - check.noise) * p + check.noise / count for p in plain]


def _alone(check: Check, cause: Cause) -> list[float]:
    named = cause.shows[check.id]
    free = sum(b for a, b in zip(check.answers, check.baseline) if a.id not in named)
    left = 1.0 - sum(named.values())
    return [
        named.get(a.id, left * b / free if free else 0.0)
        for a, b in zip(check.answers, check.baseline)
    ]


def _combined(check: Check, rows: list[list[float]]) -> list[float]:
    if not rows:
        return list(check.baseline)
    if len(rows) == 1:
        return rows[0]
    normal = check.baseline[0] * prod(row[0] / check.baseline[0] for row in rows)
    normal = min(max(normal, 0.005), 0.985)
    shares = [sum(row[i] for row in rows) for i in range(1, len(check.answers))]
    return [normal, *((1.0 - normal) * share / sum(shares) for share in shares)]
