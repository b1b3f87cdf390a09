"""Small rule bases in a line or two, and random ones from a seed, so engine tests need no YAML."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import replace

from weldwhy.model import Answer, Cause, Check, Process, Remedy, RuleBase, Symptom

Row = Mapping[str, float]


def check(
    name: str,
    answers: str = "no yes",
    off: float = 0.1,
    minutes: float = 1.0,
    noise: float = 0.0,
    dont_know: float = 0.0,
    same_look: str = "",
) -> Check:
    """A check with a baseline that splits `off` evenly over the answers that are not normal."""
    ids = answers.split()
    spread = off / (len(ids) - 1)
    return Check(
        id=name,
        ask=f"{name}?",
        how="look",
        minutes=minutes,
        answers=tuple(Answer(a, a) for a in ids),
        baseline=(1.0 - off, *([spread] * (len(ids) - 1))),
        noise=noise,
        dont_know=dont_know,
        settles=f"settles {name}",
        source="invented",
        same_look=same_look,
    )


def cause(
    name: str,
    base: float = 1.0,
    shows: Mapping[str, Row] | None = None,
    minutes: float = 5.0,
    works: float = 1.0,
    symptoms: Mapping[str, float] | None = None,
    exclusive: str = "",
    hazard: bool = False,
    stop: bool = False,
) -> Cause:
    """A cause with one remedy."""
    return Cause(
        id=name,
        name=name,
        what=name,
        family="invented",
        share="operator",
        processes=(),
        base=base,
        symptoms=symptoms or {"bad": 0.5},
        shows=shows or {},
        source="invented",
        remedies=(Remedy(f"fix-{name}", f"fix {name}", minutes, works, "invented", stop=stop),),
        exclusive=exclusive,
        hazard=hazard,
    )


def base(causes: list[Cause], checks: list[Check], symptoms: str = "bad") -> RuleBase:
    """A rule base of these causes and checks for one process."""
    return RuleBase(
        processes={"p": Process("p", "P", "p", "", "invented")},
        symptoms={s: Symptom(s, s, "holes", ("p",), s, "invented") for s in symptoms.split()},
        causes={c.id: c for c in causes},
        checks={c.id: c for c in checks},
    )


def scaled(rules: RuleBase, factor: float) -> RuleBase:
    """The same rules with all minutes multiplied by `factor`."""
    causes = [
        replace(c, remedies=tuple(replace(r, minutes=r.minutes * factor) for r in c.remedies))
        for c in rules.causes.values()
    ]
    return base(causes, [replace(q, minutes=q.minutes * factor) for q in rules.checks.values()])


GRADES = (0.02, 0.06, 0.15, 0.30, 0.50, 0.70, 0.85, 0.95, 0.985)


def random_base(seed: int, causes: int = 6, checks: int = 8) -> RuleBase:
    """A random base of the same kind as the real one; the same seed gives the same base."""
    rng = random.Random(seed)
    made = [
        check(
            f"q{i}",
            " ".join(["normal", "low", "high", "odd"][: rng.choice((2, 2, 3, 4))]),
            off=rng.choice((0.02, 0.06, 0.15, 0.30)),
            minutes=rng.choice((0.2, 0.5, 1.0, 3.0)),
            noise=rng.choice((0.02, 0.06, 0.10)),
            dont_know=rng.choice((0.0, 0.15)),
        )
        for i in range(checks)
    ]
    found = []
    for i in range(causes):
        shows: dict[str, Row] = {}
        for linked in rng.sample(made, k=min(len(made), rng.randint(1, 4))):
            answer = rng.choice(linked.answers[1:]).id
            shows[linked.id] = {answer: rng.choice(GRADES[3:8])}
        found.append(
            cause(
                f"c{i}",
                rng.choice((1.0, 3.0, 8.0, 20.0)),
                shows,
                rng.choice((1.0, 5.0, 15.0)),
                rng.choice((0.85, 0.95)),
                {"bad": rng.choice(GRADES[3:8])},
                exclusive="pair" if i < 2 else "",
            )
        )
    return base(found, made)
