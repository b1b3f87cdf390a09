"""A chart as a sheet to print for the wall: numbered steps, and lists to work through in order.

Text, Markdown and HTML are written from the same blocks, so that they say the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape

from weldwhy.chart import Chart, Leaf, ListItem, Node
from weldwhy.lines import safe, wrapped
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.report import caution_lines, percent
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
    return {"text": _text, "markdown": _markdown, "html": _html}[form](head, blocks)


def _head(rules: RuleBase, chart: Chart) -> list[str]:
    title = f"{rules.symptoms[chart.symptom].name}, {rules.processes[chart.process].plain}"
    return safe([
        title,
        "Start at step 1. Read the cautions of a step before you do it.",
        f"The lists at the ends hold {percent(chart.coverage)} of what can be wrong here. The live "
        "guide gets there faster: it weighs every answer.",
    ])  # fmt: skip


def _blocks(rules: RuleBase, chart: Chart) -> Iterator[Block]:
    order = chart.order()
    titles = _titles(chart, order)
    for number in order:
        node = chart.nodes[number]
        if isinstance(node, Node):
            ways = tuple((clean(b.label), titles[b.to]) for b in node.branches)
            yield Block(titles[number], tuple(_step(node.step)), ways)
        elif not node.done:
            yield Block(titles[number], tuple(_list(rules, node)))


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
    return [*caution_lines(step.cautions), *safe([f"{step.text}{bead}"])]


def _list(rules: RuleBase, leaf: Leaf) -> list[str]:
    lines = ["In this order, a test bead after each, until one is sound:"]
    for number, item in enumerate(leaf.items, 1):
        lines += _item(rules, number, item)
    return safe([*lines, "Still not sound: stop and call for help."])


def _item(rules: RuleBase, number: int, item: ListItem) -> list[str]:
    """One cause of a list: cautions, the check that decides on it, and its first remedy."""
    cause = rules.causes[item.cause]
    remedy = cause.remedies[0]
    check = rules.checks.get(item.check)
    cautions = dict.fromkeys([*(check.cautions if check else ()), *remedy.cautions])
    lines = caution_lines(rules.cautions[c] for c in cautions if c in rules.cautions)
    lines.append(f"{number}. {cause.name}")
    if check is not None:
        lines.append(f'   Check: {check.ask} If not "{check.answers[0].text}":')
    lines.append(f"   {'STOP: ' if remedy.stop else ''}{remedy.do}")
    return [*lines, *([f"   Call: {remedy.call}"] if remedy.call else [])]


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
