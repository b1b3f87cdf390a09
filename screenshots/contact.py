"""All pictures of the rules on one sheet, as drawings and as letters."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from textwrap import wrap

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import hookup, picture
from weldwhy.drawing.letters import letters_of
from weldwhy.drawing.svg import ASPECT, svg_of
from weldwhy.model import RuleBase

CELLS, LETTERS = (40, 12), (38, 10)
"""Cells of one picture: drawn, and in letters."""
ACROSS = 6
WIDE, GAP = 250, 16
NAME = 44
"""Room below a picture for two lines with its name."""
HIGH = WIDE * CELLS[1] * ASPECT / CELLS[0]

Sheet = list[tuple[str, list[tuple[str, Canvas]]]]
"""Heading and named pictures, group by group."""


def contact_sheet(rules: RuleBase) -> tuple[str, str]:
    """The sheet as an SVG document and as plain text: whatever pictures the rules hold."""
    return _drawn(_groups(rules, *CELLS)), _lettered(_groups(rules, *LETTERS))


def _groups(rules: RuleBase, width: int, height: int) -> Sheet:
    groups: Sheet = []
    for group, heading in rules.groups.items():
        named = [
            (symptom.name, canvas)
            for symptom in rules.symptoms.values()
            if symptom.group == group and (canvas := picture(rules, symptom.id, width, height))
        ]
        groups.append((heading, named))
    hooked = [
        (process.plain, canvas)
        for process in rules.processes.values()
        if (canvas := hookup(rules, process.id, width, height))
    ]
    groups.append(("How it is hooked up", hooked))
    return [(heading, named) for heading, named in groups if named]


def _drawn(sheet: Sheet) -> str:
    parts: list[str] = []
    y = 0.0
    for heading, named in sheet:
        y += 34
        parts.append(f'<text x="{GAP}" y="{y:.0f}" class="h">{escape(heading)}</text>')
        y += 12
        for at, (name, canvas) in enumerate(named):
            if at and at % ACROSS == 0:
                y += HIGH + NAME
            x = GAP + at % ACROSS * (WIDE + GAP)
            parts += svg_of(canvas, x, y, WIDE)
            for line, words in enumerate(wrap(name, 31)):
                below = y + HIGH + 15 * (line + 1)
                parts.append(f'<text x="{x}" y="{below:.0f}">{escape(words)}</text>')
        y += HIGH + NAME
    width, height = ACROSS * (WIDE + GAP) + GAP, y + GAP
    style = 'text{font:13px "DejaVu Sans Mono",monospace}.h{font-size:17px;font-weight:bold}'
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height:.0f}" '
            f'width="{width}" height="{height:.0f}" '
            f'shape-rendering="crispEdges"><style>{style}</style>',
            '<rect width="100%" height="100%" fill="#ffffff"/>',
            *parts,
            "</svg>\n",
        ]
    )


def _lettered(sheet: Sheet) -> str:
    lines: list[str] = []
    for heading, named in sheet:
        lines += [heading.upper(), ""]
        for left in range(0, len(named), 2):
            lines += [*_beside(named[left : left + 2]), ""]
    return "\n".join(lines) + "\n"


def _beside(named: list[tuple[str, Canvas]]) -> Iterator[str]:
    """Two pictures side by side, with their names below."""
    columns = [[*letters_of(canvas), name[: LETTERS[0]]] for name, canvas in named]
    for row in zip(*columns):
        yield "    ".join(line.ljust(LETTERS[0]) for line in row).rstrip()
