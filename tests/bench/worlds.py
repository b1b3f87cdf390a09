"""Policies to compare on simulated cases; in a blurred world the rules' grades are off."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import replace

from tests.engine.small import GRADES

from weldwhy.engine import tuning, world
from weldwhy.engine.belief import Belief
from weldwhy.engine.choice import Step
from weldwhy.engine.network import Network
from weldwhy.engine.plan import Item, Planner
from weldwhy.engine.tuning import Tuning
from weldwhy.engine.world import ELSEWHERE, Manners, World
from weldwhy.model import Cause

MANNERS = Manners(wrong=0.075, not_listed=0.02)
FAULTS = ((1, 0.6), (2, 0.3), (3, 0.1))


def new(network: Network, tuned: Tuning, seed: str, blurred: bool = False) -> World:
    """A case drawn from the start weights; exclusive causes never come together."""
    causes = network.causes
    if blurred:
        # chance of its own, so that a blurred case has the faults of the plain one
        causes = _blurred(causes, random.Random(f"{seed} blurred"))
    faults = world.draw(network, seed, FAULTS, MANNERS.not_listed)
    return World(network, tuned, seed, faults, causes, MANNERS)


def _blurred(causes: Sequence[Cause], rng: random.Random) -> tuple[Cause, ...]:
    """Each grade one step off with chance 1/2; rows whose grades no longer fit stay as they are."""

    def near(grade: float) -> float:
        place = min(range(len(GRADES)), key=lambda i: abs(GRADES[i] - grade))
        moved = place + rng.choice((-1, 1)) if rng.random() < 0.5 else place
        return GRADES[min(max(moved, 0), len(GRADES) - 1)]

    made = []
    for cause in causes:
        shows = {q: {a: near(p) for a, p in row.items()} for q, row in cause.shows.items()}
        fit = {q: r if sum(r.values()) < 1.0 else cause.shows[q] for q, r in shows.items()}
        made.append(replace(cause, shows=fit))
    return tuple(made)


Policy = Callable[[World], list[str]]
"""Works on a case to its end; returns the likeliest causes at the first fix, if it ranks any."""


def live(case: World) -> list[str]:
    """The engine's own policy."""
    first: list[str] = []

    def look(belief: Belief, step: Step) -> None:
        if step.kind == "fix" and not first:
            marginals = belief.marginals()
            first.extend(sorted(marginals, key=lambda c: -marginals[c])[:3])

    world.live(case, look)
    return first


def _down(case: World, order: list[Item]) -> None:
    """Work down a list twice at most, a check before its fix where the list has one, then call."""
    for _ in range(tuning.TRIES):
        for item in order:
            if item.check:
                check = case.network.checks[item.check]
                if case.answer(check) == check.answers[0].id:
                    continue
            if case.network.causes[item.cause].remedies[0].stop:
                continue
            if case.fix(item.cause) == "sound":
                return
    case.call()


def fixed_list(case: World) -> list[str]:
    """The list a careful shop would print: prior chance over cost, check first where it pays."""
    network = case.network
    priced = replace(case.tuned, attention=MANNERS.attention)
    planner = Planner(network, network.checks, {}, priced)
    _down(case, list(planner.order(network.start)))
    return []


def random_order(case: World) -> list[str]:
    """Fixes in random order."""
    order = [Item(c, 0.0, 0.0, 1.0) for c in range(len(case.network.causes))]
    random.Random(case.seed).shuffle(order)
    _down(case, order)
    return []


def all_knowing(case: World) -> list[str]:
    """Just the fixes that are needed."""
    while not case.helped:
        cause = min(case.faults)
        if cause == ELSEWHERE or case.network.causes[cause].remedies[0].stop:
            case.call()
        elif case.fix(cause) == "sound":
            break
    return []
