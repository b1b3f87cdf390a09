"""Answers that may have been a slip of the hand or eye, and what a second look would gain."""

from __future__ import annotations

from weldwhy.engine.belief import Belief, Finding, likelihood
from weldwhy.engine.plan import Planner

LOOK_AGAIN = 0.30
"""From this chance of a slip on, an answer may be asked again."""
WORTH_LOOKING = 0.2
"""Minutes that a second look must gain."""


def chance(belief: Belief, finding: Finding) -> float:
    """P(the answer was a slip), given all that is believed now."""
    check = belief.network.checks[finding.check]
    row = likelihood(belief.network, finding.check, finding.answer)
    floor = check.noise / len(check.answers)
    return sum(w * floor / p for w, p in zip(belief.weights, row))


def gain(belief: Belief, planner: Planner, minutes_now: float, finding: Finding) -> float:
    """Minutes saved by asking again, the new answer predicted by the chance of a slip."""
    network = belief.network
    check = network.checks[finding.check]
    slip = chance(belief, finding)
    old = likelihood(network, finding.check, finding.answer)
    without = [w / p for w, p in zip(belief.weights, old)]
    found = [[w * p for w, p in zip(without, row)] for row in network.rows(check.id)]
    total = sum(map(sum, found))
    after = 0.0
    for answer, joint in zip(check.answers, found):
        told = slip * sum(joint) / total + (1.0 - slip if answer.id == finding.answer else 0.0)
        after += told * planner.cost(joint) / sum(joint)
    return max(minutes_now - after, 0.0) - check.minutes - planner.tuned.attention
