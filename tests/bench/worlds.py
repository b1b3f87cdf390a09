"""Simulated cases: a world with hidden faults that answers, errs and reports as people do."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass, field

from weldwhy.engine import rows, tuning
from weldwhy.engine.belief import Finding, Fix, replay
from weldwhy.engine.choice import Chooser, Step
from weldwhy.engine.network import Network
from weldwhy.engine.plan import Item, Planner
from weldwhy.engine.tuning import Tuning
from weldwhy.model import Check

WRONG, DONT_KNOW, FAILS = 0.075, 0.15, 0.08
FAULTS = ((1, 0.6), (2, 0.3), (3, 0.1))
LONGEST = 80


@dataclass
class World:
    """One case: the faults still there, and the price of what was done."""

    network: Network
    tuned: Tuning
    rng: random.Random
    faults: set[int]
    minutes: float = 0.0
    asked: int = 0
    fixes: int = 0
    helped: bool = False
    first: list[str] = field(default_factory=list)

    def answer(self, check: Check) -> str | None:
        """What the person says; None for "don't know"."""
        self.minutes += check.minutes + self.tuned.attention
        self.asked += 1
        if self.rng.random() < DONT_KNOW:
            return None
        ids = [a.id for a in check.answers]
        if self.rng.random() < WRONG:
            return self.rng.choice(ids)
        linked = [self.network.causes[f] for f in sorted(self.faults)]
        here = [rows.single(check, c) for c in linked if check.id in c.shows]
        return self.rng.choices(ids, rows.together(check, here))[0]

    def fix(self, cause: int) -> str:
        """Try the remedy; the report on the test bead."""
        self.minutes += self.network.causes[cause].remedies[0].minutes + self.tuned.test_bead
        self.fixes += 1
        gone = cause in self.faults and self.rng.random() >= FAILS
        if gone:
            self.faults.discard(cause)
            if not self.faults:
                return "sound"
        chances = tuning.REMOVED_ONE if gone else tuning.REMOVED_NONE
        return self.rng.choices(list(chances), list(chances.values()))[0]

    def call(self) -> None:
        """Give up and call for help."""
        self.minutes += self.tuned.help
        self.helped = True


def draw(network: Network, rng: random.Random) -> set[int]:
    """One to three faults, by their start weights."""
    size = rng.choices([n for n, _ in FAULTS], [w for _, w in FAULTS])[0]
    lone = {s[0]: w for s, w in zip(network.sets, network.start) if len(s) == 1 and s[0] >= 0}
    faults: set[int] = set()
    while len(faults) < min(size, len(lone)):
        faults.add(rng.choices(list(lone), list(lone.values()))[0])
    return faults


Policy = Callable[[World], None]


def live(world: World) -> None:
    """The engine's own policy."""
    network, tuned = world.network, world.tuned
    log: tuple[Finding | Fix, ...] = ()
    refused: set[str] = set()
    again: set[str] = set()
    for _ in range(LONGEST):
        belief = replay(network, log)
        step: Step = Chooser(belief, log, refused, tuned, again).step
        if step.kind == "help":
            break
        if step.kind == "fix":
            if not world.first:
                marginals = belief.marginals()
                world.first = sorted(marginals, key=lambda c: -marginals[c])[:3]
            report = world.fix(network.number[step.cause])
            if report == "sound":
                return
            log = (*log, Fix(step.cause, report))
            continue
        if step.kind == "again":
            again.add(step.check)
        said = world.answer(network.checks[step.check])
        if said is None:
            refused.add(step.check)
        else:
            log = (*log, Finding(step.check, said))
    world.call()


def _down(world: World, order: list[Item]) -> None:
    """Work down a list twice at most, a check before its fix where the list has one, then call."""
    for _ in range(tuning.TRIES):
        for item in order:
            if item.check:
                check = world.network.checks[item.check]
                if world.answer(check) == check.answers[0].id:
                    continue
            if world.network.causes[item.cause].remedies[0].stop:
                continue
            if world.fix(item.cause) == "sound":
                return
    world.call()


def fixed_list(world: World) -> None:
    """The list a careful shop would print: prior chance over cost, check first where it pays."""
    network = world.network
    planner = Planner(network, network.checks, {}, world.tuned)
    _down(world, list(planner.order(network.start)))


def random_order(world: World) -> None:
    """Fixes in random order."""
    order = [Item(c, 0.0, 0.0, 1.0) for c in range(len(world.network.causes))]
    world.rng.shuffle(order)
    _down(world, order)


def all_knowing(world: World) -> None:
    """Just the fixes that are needed."""
    while world.faults and not world.helped:
        cause = min(world.faults)
        if world.network.causes[cause].remedies[0].stop:
            world.call()
        elif world.fix(cause) == "sound":
            return
