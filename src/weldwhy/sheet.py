"""A chart as a sheet to print for the wall: steps, lists to work through, and causes by number.

Text, Markdown and HTML are written from the same blocks, so that they say the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from weldwhy.blocks import WRITERS, Block
from weldwhy.chart import Chart, Leaf, ListItem, Node
from weldwhy.lines import safe
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.report import caution_lines, ended, percent
from weldwhy.steps import Step


def sheet(rules: RuleBase, chart: Chart, form: str) -> list[str]:
    """The lines of the printed chart in one of `blocks.FORMATS`."""
    head = _head(rules, chart)
    blocks = list(_blocks(rules, chart))
    return WRITERS[form](head, blocks)


def _head(rules: RuleBase, chart: Chart) -> list[str]:
    title = f"{rules.symptoms[chart.symptom].name}, {rules.processes[chart.process].plain}"
    promise = f"The lists hold {percent(chart.coverage)} of what can be wrong here."
    return safe(
        [
            title,
            "Start at Step 1. Read the cautions of a step before you do it.",
            "A list says which causes to go through, in order, a test bead after each, until one "
            "is sound.",
            f"{promise} The live guide gets there faster: it weighs every answer.",
        ]
    )


def _blocks(rules: RuleBase, chart: Chart) -> Iterator[Block]:
    """Steps and lists from the root down, then each cause that a list names, once."""
    order = chart.order()
    titles = _titles(chart, order)
    causes = _causes(chart, order)
    for number in order:
        node = chart.nodes[number]
        if isinstance(node, Node):
            yield Block(titles[number], tuple(_step(node.step)), _ways(node, titles))
        elif not node.done:
            yield Block(titles[number], (_list(rules, node, causes),))
    for place, item in enumerate(causes.values(), 1):
        yield Block(f"Cause {place}", tuple(_cause(rules, item)))


def _ways(node: Node, titles: Mapping[int, str]) -> tuple[tuple[str, str], ...]:
    """What is found and where to go; answers that lead to the same box stand together."""
    labels: dict[str, list[str]] = {}
    for branch in node.branches:
        labels.setdefault(titles[branch.to], []).append(clean(branch.label))
    return tuple(("; ".join(found), title) for title, found in labels.items())


def _causes(chart: Chart, order: Iterable[int]) -> dict[str, ListItem]:
    """The causes that lists name, by first naming; with its check where any list has it."""
    found: dict[str, ListItem] = {}
    for number in order:
        node = chart.nodes[number]
        for item in node.items if isinstance(node, Leaf) else ():
            if item.cause not in found or (item.check and not found[item.cause].check):
                found[item.cause] = item
    return found


def _titles(chart: Chart, order: Iterable[int]) -> dict[int, str]:
    """What each box is called: steps are numbered, and so are lists, by themselves."""
    titles: dict[int, str] = {}
    steps = lists = 0
    for number in order:
        node = chart.nodes[number]
        if isinstance(node, Node):
            steps += 1
            titles[number] = f"Step {steps}"
        elif node.done:
            titles[number] = "done, the bead is sound"
        else:
            lists += 1
            titles[number] = f"List {lists}"
    return titles


def _step(step: Step) -> list[str]:
    """Cautions first, then what to do."""
    bead = " Then run a test bead." if step.kind == "remedy" else ""
    stop = "STOP: " if step.kind == "stop" else ""
    call = [f"Call: {ended(step.call)}"] if step.call else []
    return [*caution_lines(step.cautions), *safe([f"{stop}{step.text}{bead}", *call])]


NAMED = 3
"""Causes of a list that are named; the others stand by number, or a sheet would be a book."""


def _list(rules: RuleBase, leaf: Leaf, causes: Mapping[str, ListItem]) -> str:
    if not leaf.items:
        return "Nothing is left that you may mend yourself: stop and call for help."
    number = {cause: place for place, cause in enumerate(causes, 1)}
    names = [f"{rules.causes[i.cause].name} ({number[i.cause]})" for i in leaf.items[:NAMED]]
    rest = [str(number[item.cause]) for item in leaf.items[NAMED:]]
    told = f"Causes: {', '.join(names)}" + (f", then {', '.join(rest)}" if rest else "")
    return clean(f"{told}. Still not sound: stop and call for help.")


def _cause(rules: RuleBase, item: ListItem) -> list[str]:
    """A cause: its name, cautions, the check that decides on it, and its first remedy."""
    cause = rules.causes[item.cause]
    remedy = cause.remedies[0]
    check = rules.checks.get(item.check)
    cautions = dict.fromkeys([*(check.cautions if check else ()), *remedy.cautions])
    lines = [f"{cause.name}."]
    lines += caution_lines(rules.cautions[c] for c in cautions if c in rules.cautions)
    if check is not None:
        lines.append(f'Check: {check.ask} If it is not "{check.answers[0].text}":')
    lines.append(f"{'STOP: ' if remedy.stop else ''}{remedy.do}")
    return safe([*lines, *([f"Call: {ended(remedy.call)}"] if remedy.call else [])])
