"""Simulated cases: a world with hidden faults that answers, errs and reports as people do.

The world combines faults as the engine does, so real gains will be smaller than these. What the
engine need not know: slips and "don't know" come at the world's own rates, some faults are in no
list, and in a blurred world the rules' grades are off.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from tests.engine.small import GRADES

from weldwhy.engine import rows, tuning
from weldwhy.engine.belief import Finding, Fix, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.network import Network
from weldwhy.engine.plan import Item, Planner
from weldwhy.engine.tuning import Tuning
from weldwhy.model import Cause, Check

WRONG, DONT_KNOW, FAILS, NOT_LISTED = 0.075, 0.15, 0.08, 0.02
FAULTS = ((1, 0.6), (2, 0.3), (3, 0.1))
ATTENTION = 0.15
"""Minutes that each question costs on top of its own, whatever the engine thinks it costs."""
ELSEWHERE = -1
"""The number of a fault that is in no list."""
LONGEST = 80


@dataclass
class World:
    """One case: the faults still there, and the price of what was done.

    Chance is drawn anew from the seed for each check and remedy, so that a policy gets the same
    answer to the same question as its rivals, whatever was asked before.
    """

    network: Network
    tuned: Tuning
    seed: str
    faults: set[int]
    causes: Sequence[Cause]
    minutes: float = 0.0
    asked: int = 0
    fixes: int = 0
    helped: bool = False
    first: list[str] = field(default_factory=list)
    done: dict[str, int] = field(default_factory=dict)

    def _chance(self, name: str) -> random.Random:
        self.done[name] = self.done.get(name, 0) + 1
        return random.Random(f"{self.seed} {name} {self.done[name]}")

    def answer(self, check: Check) -> str | None:
        """What the person says; None for "don't know"."""
        self.minutes += check.minutes + ATTENTION
        self.asked += 1
        rng = self._chance(f"check {check.id}")
        if rng.random() < DONT_KNOW:
            return None
        ids = [a.id for a in check.answers]
        slip = rng.random() < WRONG
        told = rng.choices(ids, self._row(check))[0]
        return rng.choice([a for a in ids if a != told]) if slip else told

    def _row(self, check: Check) -> Sequence[float]:
        if ELSEWHERE in self.faults:
            return rows.unlisted(check)
        here = [self.causes[f] for f in sorted(self.faults) if check.id in self.causes[f].shows]
        return rows.together(check, [rows.single(check, c) for c in here])

    def fix(self, cause: int) -> str:
        """Try the remedy; the report on the test bead."""
        self.minutes += self.network.causes[cause].remedies[0].minutes + self.tuned.test_bead
        self.fixes += 1
        name = f"fix {cause}"
        fails = 1.0 - tuning.SECOND_TRY if name in self.done else FAILS
        rng = self._chance(name)
        gone = rng.random() >= fails and cause in self.faults
        if gone:
            self.faults.discard(cause)
            if not self.faults:
                return "sound"
        chances = tuning.REMOVED_ONE if gone else tuning.REMOVED_NONE
        return rng.choices(list(chances), list(chances.values()))[0]

    def call(self) -> None:
        """Give up and call for help."""
        self.minutes += self.tuned.help
        self.helped = True


def new(network: Network, tuned: Tuning, seed: str, blurred: bool = False) -> World:
    """A case drawn from the start weights; exclusive causes never come together."""
    rng = random.Random(seed)
    # chance of its own, so that a blurred case has the faults of the plain one
    causes = network.causes
    if blurred:
        causes = _blurred(causes, random.Random(f"{seed} blurred"))
    if rng.random() < NOT_LISTED:
        return World(network, tuned, seed, {ELSEWHERE}, causes)
    size = rng.choices([n for n, _ in FAULTS], [w for _, w in FAULTS])[0]
    lone = {s[0]: w for s, w in zip(network.sets, network.start) if len(s) == 1 and s[0] >= 0}
    faults: set[int] = set()
    while lone and len(faults) < size:
        drawn = rng.choices(list(lone), list(lone.values()))[0]
        faults.add(drawn)
        group = network.causes[drawn].exclusive
        lone = {
            c: w for c, w in lone.items()
            if c != drawn and not (group and network.causes[c].exclusive == group)
        }  # fmt: skip
    return World(network, tuned, seed, faults, causes)


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


Policy = Callable[[World], None]


def live(world: World) -> None:
    """The engine's own policy, with sets of three faults once a remedy has failed."""
    network = world.network
    log: tuple[Finding | Fix, ...] = ()
    refused: set[str] = set()
    again: set[str] = set()
    for _ in range(LONGEST):
        belief = replay(network, log)
        step = Chooser(belief, log, refused, world.tuned, again).step
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
            network = _with_triples(world.network, {e.cause for e in log if isinstance(e, Fix)})
            continue
        if step.kind == "again":
            again.add(step.check)
        said = world.answer(network.checks[step.check])
        if said is None:
            refused.add(step.check)
        else:
            log = (*log, Finding(step.check, said))
    world.call()


def _with_triples(network: Network, failed: set[str]) -> Network:
    checks = list(network.checks.values())
    return Network(network.causes, checks, network.symptoms, triples=failed)


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
    planner = Planner(network, network.checks, {}, replace(world.tuned, attention=ATTENTION))
    _down(world, list(planner.order(network.start)))


def random_order(world: World) -> None:
    """Fixes in random order."""
    order = [Item(c, 0.0, 0.0, 1.0) for c in range(len(world.network.causes))]
    random.Random(world.seed).shuffle(order)
    _down(world, order)


def all_knowing(world: World) -> None:
    """Just the fixes that are needed."""
    while not world.helped:
        cause = min(world.faults)
        if cause == ELSEWHERE or world.network.causes[cause].remedies[0].stop:
            world.call()
        elif world.fix(cause) == "sound":
            return
