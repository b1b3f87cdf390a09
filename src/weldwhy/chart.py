"""The policy of the live guide frozen into a tree for one symptom, to print for the wall.

Every answer, "don't know" and test-bead result is a branch. The tree is cut at a depth or where a
path has become unlikely; there every leaf holds an ordered list of things to check and put right
that covers the belief left, and then "call for help". Equal subtrees are held once.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from weldwhy.case import (
    DONT_KNOW,
    RESULTS,
    SOUND,
    Case,
    Passed,
    Reported,
    Situated,
    Tried,
    entry_for,
)
from weldwhy.engine import tuning
from weldwhy.engine.belief import Belief, likelihood
from weldwhy.engine.network import UNLISTED
from weldwhy.interview import Interview
from weldwhy.model import Check, Remedy, RuleBase
from weldwhy.steps import Step

SOONEST = 7
"""By this step every path has come to a remedy, to a stop or to a leaf's list."""
COVER = 0.95
"""Share of a leaf's belief (outside "not in this list") that its list must reach."""


@dataclass(frozen=True, slots=True)
class ListItem:
    """One line of a leaf's list: put the cause right, after its check if there is one."""

    cause: str
    check: str = ""


@dataclass(frozen=True, slots=True)
class Leaf:
    """An ordered list and the share of the belief that it covers; then call for help.

    An empty list that covers everything is the end of a case: the bead is sound.
    """

    items: tuple[ListItem, ...]
    covered: float = field(compare=False)  # equal lists are one list, however likely they are
    done: bool = False


@dataclass(frozen=True, slots=True)
class Branch:
    """One way on from a node: the answer or result in words, its chance, the node it leads to."""

    label: str
    chance: float = field(compare=False)
    to: int


@dataclass(frozen=True, slots=True)
class Node:
    """A step with its branches; a stop has none."""

    step: Step
    branches: tuple[Branch, ...]


@dataclass(frozen=True)
class Chart:
    """The tree: nodes by number, the root is `root`. `coverage` is the sum of P(leaf) x covered."""

    symptom: str
    process: str
    depth: int
    nodes: tuple[Node | Leaf, ...]
    root: int
    coverage: float

    def steps_to_remedy(self, node: int | None = None) -> int:
        """The most steps on any path up to the first remedy or stop, which a leaf's list is too."""
        found = self.nodes[self.root if node is None else node]
        if isinstance(found, Leaf) or found.step.kind in ("remedy", "stop"):
            return 1
        return 1 + max(self.steps_to_remedy(branch.to) for branch in found.branches)

    def steps_to_end(self, node: int | None = None) -> int:
        """The most steps on any path before a leaf."""
        found = self.nodes[self.root if node is None else node]
        if isinstance(found, Leaf) or not found.branches:
            return 0
        return 1 + max(self.steps_to_end(branch.to) for branch in found.branches)

    def order(self) -> tuple[int, ...]:
        """Node numbers from the root down, each once, nearest branches first."""
        queue = [self.root]
        for number in queue:
            node = self.nodes[number]
            if isinstance(node, Node):
                queue += [b.to for b in node.branches if b.to not in queue]
        return tuple(dict.fromkeys(queue))


class _Builder:
    def __init__(self, rules: RuleBase, depth: int, least: float, patience: str) -> None:
        self.rules = rules
        self.depth = depth
        self.least = least
        self.patience = patience
        self.nodes: list[Node | Leaf] = []
        self.numbers: dict[Node | Leaf, int] = {}
        self.coverage = 0.0

    def build(self, case: Case, depth: int, chance: float) -> int:
        """The node of a case with `depth` steps left, reached with `chance`."""
        interview = Interview(self.rules, case, self.patience)
        step = interview.step
        if step.kind == "done":
            return self._leaf(Leaf((), 1.0, done=True), chance)
        too_late = not case.tried and self.depth - depth >= SOONEST - 1 and step.kind != "remedy"
        if step.kind == "stop" and step.cause:
            self.coverage += chance
            return self._number(Node(step, ()))
        if depth == 0 or chance < self.least or step.kind == "stop" or too_late:
            return self._leaf(_list(interview), chance)
        if step.kind == "remedy":
            branches = self._results(interview, step, depth, chance)
        else:
            branches = self._answers(interview, self.rules.checks[step.id], depth, chance)
        return self._number(Node(step, tuple(branches)))

    def _number(self, node: Node | Leaf) -> int:
        known = self.numbers.get(node)
        if known is None:
            known = self.numbers[node] = len(self.nodes)
            self.nodes.append(node)
        return known

    def _leaf(self, leaf: Leaf, chance: float) -> int:
        self.coverage += chance * leaf.covered
        return self._number(leaf)

    def _answers(
        self, interview: Interview, check: Check, depth: int, chance: float
    ) -> Iterator[Branch]:
        belief = interview.belief
        for answer in check.answers:
            row = likelihood(belief.network, check.id, answer.id)
            share = sum(w * p for w, p in zip(belief.weights, row)) * (1.0 - check.dont_know)
            case = interview.case.with_(entry_for(check.id, answer.id))
            yield Branch(answer.text, share, self.build(case, depth - 1, chance * share))
        if check.dont_know:
            case = interview.case.with_(Passed(check.id, DONT_KNOW))
            to = self.build(case, depth - 1, chance * check.dont_know)
            yield Branch("Don't know", check.dont_know, to)

    def _results(
        self, interview: Interview, step: Step, depth: int, chance: float
    ) -> Iterator[Branch]:
        shares = result_chances(interview.belief, step.cause, _remedy(self.rules, step))
        for result in RESULTS:
            case = interview.case.with_(Tried(step.cause, step.id, result))
            to = self.build(case, depth - 1, chance * shares[result])
            yield Branch(result.capitalize(), shares[result], to)


def _remedy(rules: RuleBase, step: Step) -> Remedy:
    return next(r for r in rules.causes[step.cause].remedies if r.id == step.id)


def result_chances(belief: Belief, cause: str, remedy: Remedy) -> dict[str, float]:
    """P(test-bead result) after the remedy; the four add up to 1."""
    network = belief.network
    exits = network.exits(network.number[cause])
    removed = sum(belief.weights[before] for before, _ in exits) * remedy.works
    alone = sum(belief.weights[before] for before, after in exits if after == 0) * remedy.works
    chances = {SOUND: alone}
    for report in tuning.REPORTS:
        chances[report] = (removed - alone) * tuning.REMOVED_ONE[report]
        chances[report] += (1.0 - removed) * tuning.REMOVED_NONE[report]
    return chances


def _list(interview: Interview) -> Leaf:
    """The ordered list of a leaf, long enough to cover its belief."""
    belief = interview.belief
    network = belief.network
    planner = interview.chooser.planner
    reached = {i for i in range(len(network.causes)) if not planner.curable(i)}
    items: list[ListItem] = []
    for item in planner.order(belief.weights):
        if _covered(belief, reached) >= COVER:
            break
        items.append(ListItem(network.causes[item.cause].id, item.check))
        reached.add(item.cause)
    return Leaf(tuple(items), _covered(belief, reached))


def _covered(belief: Belief, reached: set[int]) -> float:
    """The share of the listed faults all of which are reached, or left to those who may."""
    return sum(
        w
        for h, (w, members) in enumerate(zip(belief.weights, belief.network.sets))
        if h != UNLISTED and reached.issuperset(members)
    ) / (1.0 - belief.unlisted)


def build(
    rules: RuleBase,
    symptom: str,
    process: str,
    depth: int = 4,
    least: float = 0.02,
    patience: str = "normal",
) -> Chart:
    """The printed tree of one symptom in one process.

    `depth` bounds the steps on any path, `least` the path probability that is still branched on;
    so there are at most depth / least nodes with branches.
    """
    builder = _Builder(rules, depth, least, patience)
    # the sheet is for any metal: what depends on it is branched on by the checks themselves
    case = Case().with_(Reported(symptom), Situated("process", process), Situated("material", ""))
    root = builder.build(case, depth, 1.0)
    return Chart(symptom, process, depth, tuple(builder.nodes), root, builder.coverage)
