"""A simulated case: hidden faults, and a person who answers, errs and reports as people do.

The world combines faults as the engine does, so what is measured on it is kinder than a shop.
What the engine need not know: slips and "don't know" come at the world's own rates, and some
faults are in no list.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from weldwhy.engine import rows, tuning
from weldwhy.engine.belief import Belief, Finding, Fix, replay
from weldwhy.engine.choice import Chooser, Step
from weldwhy.engine.network import Network
from weldwhy.engine.tuning import Tuning
from weldwhy.model import Cause, Check

FAULTS = ((1, tuning.ONE_FAULT), (2, tuning.TWO_FAULTS), (3, tuning.THREE_FAULTS))
"""How many faults a case has, and how often."""
ELSEWHERE = -1
"""The number of a fault that is in no list."""
LONGEST = 80
"""Steps after which a case is given up."""


@dataclass(frozen=True, slots=True)
class Manners:
    """How people and remedies behave: chances of a wrong answer, of none, of a remedy that fails,
    of a fault that is not listed; the minutes that each question really costs on top; and how
    many odd things people tell before they are asked."""

    wrong: float = 0.10
    dont_know: float = 0.15
    fails: float = 0.08
    not_listed: float = tuning.UNLISTED
    attention: float = 0.15
    told: int = 0


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
    manners: Manners = Manners()
    minutes: float = 0.0
    asked: list[str] = field(default_factory=list)
    fixes: int = 0
    helped: bool = False
    done: dict[str, int] = field(default_factory=dict)

    def _chance(self, name: str) -> random.Random:
        self.done[name] = self.done.get(name, 0) + 1
        return random.Random(f"{self.seed} {name} {self.done[name]}")

    def volunteered(self) -> tuple[Finding, ...]:
        """Odd things seen or known that are told before any question, as many as people tell."""
        told: list[Finding] = []
        plain = [c for c in self.network.checks.values() if c.how in ("ask", "look")]
        self._chance("volunteered").shuffle(plain)
        for check in plain:
            if len(told) == self.manners.told:
                break
            said = self._said(check)
            if said not in (None, check.answers[0].id):
                told.append(Finding(check.id, str(said)))
        return tuple(told)

    def answer(self, check: Check) -> str | None:
        """What the person says when asked; None for "don't know"."""
        self.minutes += check.minutes + self.manners.attention
        self.asked.append(check.id)
        return self._said(check)

    def _said(self, check: Check) -> str | None:
        rng = self._chance(f"check {check.id}")
        if rng.random() < self.manners.dont_know:
            return None
        ids = [a.id for a in check.answers]
        slip = rng.random() < self.manners.wrong
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
        fails = 1.0 - tuning.SECOND_TRY if name in self.done else self.manners.fails
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


def draw(
    network: Network,
    seed: str,
    sizes: Sequence[tuple[int, float]] = FAULTS,
    not_listed: float = tuning.UNLISTED,
) -> set[int]:
    """Faults drawn from the start weights, by number; exclusive causes never come together."""
    rng = random.Random(seed)
    if rng.random() < not_listed:
        return {ELSEWHERE}
    size = rng.choices([n for n, _ in sizes], [w for _, w in sizes])[0]
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
    return faults


def live(world: World, watch: Callable[[Belief, Step], None] = lambda *_: None) -> None:
    """The engine's own policy, with sets of three faults once a remedy has failed.

    `watch` is told the belief and the step that it leads to, before each step is taken.
    """
    network = world.network
    log: tuple[Finding | Fix, ...] = world.volunteered()
    refused: set[str] = set()
    again: set[str] = set()
    for _ in range(LONGEST):
        belief = replay(network, log)
        step = Chooser(belief, log, refused, world.tuned, again).step
        watch(belief, step)
        if step.kind == "help":
            break
        if step.kind == "fix":
            report = world.fix(network.number[step.cause])
            if report == "sound":
                return
            log = (*log, Fix(step.cause, report))
            failed = {entry.cause for entry in log if isinstance(entry, Fix)}
            network = with_triples(world.network, failed)
            continue
        if step.kind == "again":
            again.add(step.check)
        said = world.answer(network.checks[step.check])
        if said is None:
            refused.add(step.check)
        else:
            log = (*log, Finding(step.check, said))
    world.call()


def with_triples(network: Network, failed: set[str]) -> Network:
    """The network with sets of three faults around the causes whose remedy failed."""
    checks = list(network.checks.values())
    return Network(
        network.causes,
        checks,
        network.symptoms,
        triples=failed,
        process=network.process,
        looks=network.looks,
    )
