"""Boxes of text, written as plain text, Markdown or HTML, so that all three say the same.

The one place where text is escaped. Whoever makes the boxes has cleaned their texts.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape

from weldwhy.lines import WIDTH, wrapped

FORMATS = ("text", "markdown", "html")
ENDINGS: Mapping[str, str] = {"text": ".txt", "markdown": ".md", "html": ".html"}
"""What the name of a file in each form ends with."""


@dataclass(frozen=True, slots=True)
class Block:
    """One box: its title, a table (its first row is the heading), lines, and where to go next.

    `listed`: each line is a thing of its own, so it gets a mark before it. `ways` are pairs of
    what is found and the title of the box it leads to.
    """

    title: str
    lines: tuple[str, ...] = ()
    ways: tuple[tuple[str, str], ...] = ()
    table: tuple[tuple[str, ...], ...] = ()
    listed: bool = False


def is_care(line: str) -> bool:
    """Whether the line is a warning."""
    return line.strip().startswith(("CAUTION:", "STOP:"))


# plain text


def plain_lines(head: Sequence[str], blocks: Iterable[Block], after_title: str = "") -> list[str]:
    """The boxes as lines that are not wrapped yet; `after_title` ends each title."""
    lines = list(head)
    for block in blocks:
        lines += ["", block.title + after_title]
        lines += _text_table(block.table)
        lines += [f"  {'- ' if block.listed else ''}{line}" for line in block.lines]
        lines += [f"    {found} -> {title}" for found, title in block.ways]
    return lines


def _text(head: Sequence[str], blocks: Iterable[Block]) -> list[str]:
    return list(wrapped(plain_lines(head, blocks)))


def _text_table(table: Sequence[Sequence[str]]) -> list[str]:
    """Rows in columns; rows that would not fit are not padded, so that they can be wrapped.

    The bars stay where blanks are lost, as they are in lines that are read out.
    """
    widths = [max(map(len, column)) for column in zip(*table, strict=True)]
    padded = [[c.ljust(w) for c, w in zip(row, widths, strict=True)] for row in table]
    fits = all(len(" | ".join(row)) + 2 <= WIDTH for row in padded)
    return [f"  {' | '.join(row)}".rstrip() for row in (padded if fits else table)]


# Markdown


def marked(line: str) -> str:
    """Text whose marks mean nothing in Markdown, wherever they stand.

    >>> marked("2. a *b*"), marked("- c")
    ('2\\\\. a \\\\*b\\\\*', '\\\\- c')
    """
    safe = re.sub(r"([\\`*_{}\[\]<>#|~&])", r"\\\1", line)
    return re.sub(r"^(\d+[.)](?= |$)|[+=-])", _numbered, safe)


def _numbered(found: re.Match[str]) -> str:
    """The beginning of a line without its meaning: that of a list, or a line under a heading."""
    return f"{found[0][:-1]}\\{found[0][-1]}"


def _markdown(head: Sequence[str], blocks: Iterable[Block]) -> list[str]:
    title, *rest = (marked(line) for line in head)
    lines = [f"# {title}", "", *(_broken(line) for line in rest)]
    for block in blocks:
        lines += ["", f"## {marked(block.title)}", ""]
        lines += [*_markdown_table(block.table), ""] if block.table else []
        lines += [_markdown_line(line.strip(), block.listed) for line in block.lines]
        ways = [f"- {marked(found)}: **{marked(to)}**" for found, to in block.ways]
        lines += ["", *ways] if ways else []
    return lines


def _markdown_line(line: str, listed: bool) -> str:
    text = f"**{marked(line)}**" if is_care(line) else marked(line)
    return f"- {text}" if listed else _broken(text)


def _broken(line: str) -> str:
    """A line that ends where it ends: two blanks break it there."""
    return f"{line}  "


def _markdown_table(table: Sequence[Sequence[str]]) -> Iterator[str]:
    heading, *rows = ["| " + " | ".join(map(marked, row)) + " |" for row in table]
    yield heading
    yield "|" + " --- |" * len(table[0])
    yield from rows


# HTML

STYLE = (
    "body{font:11pt sans-serif;max-width:60em;margin:1em auto;padding:0 .5em;"
    "color:#000;background:#fff}"
    "section{border:1px solid;padding:.3em .8em;margin:.6em 0;break-inside:avoid}"
    "h1{font-size:1.3em}h2{font-size:1em;margin:.2em 0;break-after:avoid}"
    "p{margin:.2em 0;white-space:pre-wrap;overflow-wrap:anywhere}"
    ".care{font-weight:bold;border-left:.3em solid;padding-left:.5em}"
    "table{border-collapse:collapse;margin:.3em 0}"
    "th,td{border:1px solid;padding:.15em .5em;text-align:left;overflow-wrap:anywhere}"
    "ul{margin:.2em 0;padding-left:1.4em}li{overflow-wrap:anywhere}"
    "@media print{body{margin:0;max-width:none}}"
)


def _html(head: Sequence[str], blocks: Iterable[Block]) -> list[str]:
    """One page that needs nothing else and prints without colour; each way links to its box."""
    boxes = list(blocks)
    titles = {block.title for block in boxes}
    title = escape(head[0])
    lines = ["<!DOCTYPE html>", '<html lang="en">', '<meta charset="utf-8">']
    lines += [f"<title>{title}</title>", f"<style>{STYLE}</style>", f"<h1>{title}</h1>"]
    lines += [_paragraph(line) for line in head[1:]]
    for block in boxes:
        lines += [f'<section id="{_anchor(block.title)}">', f"<h2>{escape(block.title)}</h2>"]
        lines += _html_table(block.table) if block.table else []
        lines += _html_lines(block)
        ways = (_way(found, to, to in titles) for found, to in block.ways)
        lines += ["<ul>", *ways, "</ul>"] if block.ways else []
        lines.append("</section>")
    return [*lines, "</html>"]


def _html_lines(block: Block) -> list[str]:
    if not block.listed or not block.lines:
        return [_paragraph(line) for line in block.lines]
    return ["<ul>", *(f"<li{_care(line)}>{escape(line)}</li>" for line in block.lines), "</ul>"]


def _paragraph(line: str) -> str:
    return f"<p{_care(line)}>{escape(line)}</p>"


def _care(line: str) -> str:
    return ' class="care"' if is_care(line) else ""


def _html_table(table: Sequence[Sequence[str]]) -> Iterator[str]:
    yield "<table>"
    for place, row in enumerate(table):
        cell = "td" if place else "th"
        yield "<tr>" + "".join(f"<{cell}>{escape(text)}</{cell}>" for text in row) + "</tr>"
    yield "</table>"


def _way(found: str, title: str, linked: bool) -> str:
    """A way on; the end of a case has no box to lead to."""
    to = f'<a href="#{_anchor(title)}">{escape(title)}</a>' if linked else escape(title)
    return f"<li>{escape(found)}: {to}</li>"


def _anchor(title: str) -> str:
    return escape(title.lower().replace(" ", "-"))


WRITERS: Mapping[str, Callable[[Sequence[str], Iterable[Block]], list[str]]] = {
    "text": _text, "markdown": _markdown, "html": _html,
}  # fmt: skip
"""The lines of a page from its head (title first) and its boxes, in each of `FORMATS`."""
