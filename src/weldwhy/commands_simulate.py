"""`weldwhy rules simulate`: how well the guide finds simulated faults, in lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from weldwhy import simulation
from weldwhy.engine.world import Manners
from weldwhy.model import RuleBase
from weldwhy.simulation import APART, SOON, Findings, Pair, Score

INDENT = "   "


def run(rules: RuleBase, symptoms: Sequence[str], cases: int, told: int = 0) -> None:
    """Print a block of lines for each symptom as it is done, and what holds over all of them."""
    findings = Findings()
    manners = Manners(told=told)
    everything = []
    for symptom in symptoms:
        done = simulation.trials(rules, symptom, cases, manners=manners)
        alike = _alike(rules, symptom, findings)
        if not done:
            print(f"{symptom}: no cause gives it")
            continue
        everything += done
        findings.add(done)
        for line in (*score_lines(simulation.score(symptom, done)), *pair_lines(alike)):
            print(line, flush=True)
    if len(symptoms) > 1 and everything:
        print()
        for line in (
            *score_lines(simulation.score("all symptoms", everything)),
            _list("causes never found", findings.never_found()),
            _list("checks that never help", findings.idle(rules)),
        ):
            print(line)


def _alike(rules: RuleBase, symptom: str, findings: Findings) -> list[Pair]:
    """Pairs that no check parts in any process, the closest first."""
    parted: dict[tuple[str, str], Pair] = {}
    for process in rules.symptoms[symptom].processes:
        for pair in simulation.pairs(rules, symptom, process):
            findings.best.add(pair.check)
            known = parted.get((pair.one, pair.other))
            if known is None or pair.apart > known.apart:
                parted[pair.one, pair.other] = pair
    close = [pair for pair in parted.values() if pair.apart < APART]
    return sorted(close, key=lambda pair: (pair.apart, pair.one, pair.other))


def score_lines(score: Score) -> Iterator[str]:
    """The rates of one symptom and its calibration curve."""
    yield f"{score.symptom}: {score.trials} cases, {score.steps:.1f} steps to the first remedy"
    yield (
        f"{INDENT} at the first remedy: one fault first {_share(score.first)}, among three "
        f"{_share(score.in_three)}; both of two among three {_share(score.both)}"
    )
    yield (
        f"{INDENT} after {SOON} steps put right or among three: one fault "
        f"{_share(score.soon_one)}, both of two {_share(score.soon_two)}"
    )
    yield (
        f"{INDENT} in the end: every fault put right {_share(score.mended)}, "
        f"help called {_share(score.helped)}"
    )
    points = [f"{said:.2f} was {was:.2f} ({count})" for said, was, count in score.curve]
    yield f"{INDENT} said and was: {', '.join(points)}"


def pair_lines(pairs: Sequence[Pair]) -> Iterator[str]:
    """One line for each two causes that no check parts."""
    for pair in pairs:
        best = f"{pair.check} parts them best, {pair.apart:.2f}" if pair.check else "no check"
        yield f"{INDENT} hard to tell apart: {pair.one} and {pair.other} ({best})"


def _share(rate: float | None) -> str:
    return "-" if rate is None else f"{100 * rate:.0f} %"


def _list(title: str, names: Sequence[str]) -> str:
    return f"{title}: {', '.join(names) or 'none'}"
