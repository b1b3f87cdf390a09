"""A chart as a sheet to print for the wall: steps, lists to work through, and causes by number.

Text, Markdown and HTML are written from the same blocks, so that they say the same.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape

from weldwhy.chart import Chart, Leaf, ListItem, Node
from weldwhy.lines import safe, wrapped
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.report import caution_lines, ended, percent
from weldwhy.steps import Step

FORMATS = ("text", "markdown", "html")


@dataclass(frozen=True, slots=True)
class Block:
    """One box of the sheet: its title, what to do, and where to go from it.

    `ways` are pairs of what is found and the title of the box it leads to.
    """

    title: str
    lines: tuple[str, ...]
    ways: tuple[tuple[str, str], ...] = ()


def sheet(rules: RuleBase, chart: Chart, form: str) -> list[str]:
    """The lines of the printed chart in one of `FORMATS`."""
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


def _text(head: Sequence[str], blocks: Iterable[Block]) -> list[str]:
    lines = list(head)
    for block in blocks:
        lines += ["", block.title, *(f"  {line}" for line in block.lines)]
        lines += [f"    {found} -> {title}" for found, title in block.ways]
    return list(wrapped(lines))


def _markdown(head: Sequence[str], blocks: Iterable[Block]) -> list[str]:
    title, *rest = (_marked(line) for line in head)
    lines = [f"# {title}", "", *rest]
    for block in blocks:
        lines += ["", f"## {block.title}", ""]
        # two blanks at the end of a line break it there
        lines += [f"{_marked(line.strip())}  " for line in block.lines]
        lines += ["", *(f"- {_marked(f)}: **{title}**" for f, title in block.ways)]
    return lines


def _marked(line: str) -> str:
    """Text whose marks mean nothing in Markdown."""
    return "".join(f"\\{mark}" if mark in "\\`*_{}[]<>#|" else mark for mark in line)


STYLE = (
    "body{font:11pt sans-serif;max-width:60em;margin:1em auto}"
    "section{border:1px solid;padding:.3em .8em;margin:.6em 0;break-inside:avoid}"
    "h2{font-size:1em;margin:.2em 0}p{margin:.2em 0;white-space:pre-wrap}.care{font-weight:bold}"
)


def _html(head: Sequence[str], blocks: Iterable[Block]) -> list[str]:
    """One page that needs nothing else; each way is a link to its box."""
    title = escape(head[0])
    lines = ["<!DOCTYPE html>", '<html lang="en">', '<meta charset="utf-8">']
    lines += [f"<title>{title}</title>", f"<style>{STYLE}</style>", f"<h1>{title}</h1>"]
    lines += [f"<p>{escape(line)}</p>" for line in head[1:]]
    for block in blocks:
        lines += [f'<section id="{_anchor(block.title)}">', f"<h2>{escape(block.title)}</h2>"]
        lines += [_paragraph(line) for line in block.lines]
        lines += ["<ul>", *(_way(*way) for way in block.ways), "</ul>"] if block.ways else []
        lines.append("</section>")
    return [*lines, "</html>"]


def _paragraph(line: str) -> str:
    care = line.strip().startswith(("CAUTION:", "STOP:"))
    mark = ' class="care"' if care else ""
    return f"<p{mark}>{escape(line)}</p>"


def _way(found: str, title: str) -> str:
    """A way on; the end of a case has no box to lead to."""
    if not title.startswith(("Step ", "List ")):
        return f"<li>{escape(found)}: {escape(title)}</li>"
    return f'<li>{escape(found)}: <a href="#{_anchor(title)}">{escape(title)}</a></li>'


def _anchor(title: str) -> str:
    return title.lower().replace(" ", "-")


WRITERS: Mapping[str, Callable[[Sequence[str], Iterable[Block]], list[str]]] = {
    "text": _text, "markdown": _markdown, "html": _html,
}  # fmt: skip
"""The lines of a sheet from its head and its boxes, in each of `FORMATS`."""
