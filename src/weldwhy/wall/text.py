"""A wall chart in letters: 66 lines of 80 columns, and the same in Markdown."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, zip_longest
from textwrap import wrap

from weldwhy.blocks import marked
from weldwhy.wall.page import Page
from weldwhy.wall.pieces import Piece, Role, blocks, split
from weldwhy.wall.typeface import MARK

LINES, COLUMNS = 66, 80
PICTURE = (28, 8)
"""Cells of the picture beside how it looks."""
MARGIN: dict[Role, int] = {"check": 3, "way": 5, "item": 3}
"""Columns before the text of a piece; its mark stands in them."""
GAP = 2
COLUMN = (COLUMNS - GAP) // 2
"""Columns between the two columns of the list, and those of each."""
WAY = ">"
HELD = "\xa0"
"""Keeps the number of a caution on the line of the word that follows it."""


@dataclass(frozen=True)
class Letters:
    """The form of a page in letters, with the lines of its picture; its unit is the line.

    A tight page has no empty lines.
    """

    picture: tuple[str, ...] = ()
    tight: bool = False

    @property
    def enough(self) -> float:
        """What a page must cover, or it goes without its picture, and then without empty lines."""
        return 0.95 if self.picture else 0.0 if self.tight else 0.9

    @property
    def line(self) -> float:
        """Letters of one line."""
        return float(COLUMNS)

    @property
    def said(self) -> str:
        """Nothing: who prints it chooses the size."""
        return ""

    @property
    def step(self) -> float:
        """One line."""
        return 1.0

    def height(self, each: Piece) -> float:
        """Lines of the piece, of a caution or an entry of the list as a part of all of them."""
        if each.role == "caution":
            return (len(each.mark) + len(each.text) + 2) / (COLUMNS - 3)
        return len(_lines(each)) / (2 if each.role == "item" else 1)

    def lines(self, pieces: Iterable[Piece]) -> list[str]:
        """The lines of all these pieces."""
        lines = [line for block in blocks(pieces) for line in block_lines(block)]
        return [line for line in lines if line] if self.tight else lines

    def whole(self, pieces: Iterable[Piece]) -> float:
        """Lines of all these pieces."""
        return len(self.lines(pieces))

    def room(self, looks: Iterable[Piece]) -> float:
        """Lines below title, rule and looks."""
        return LINES - 2 - len(self.looks_lines(looks))

    def looks_lines(self, looks: Iterable[Piece]) -> list[str]:
        """How it looks, with the picture to the right of it."""
        left = COLUMNS - PICTURE[0] - 2 if self.picture else COLUMNS
        told = [line for each in looks for line in piece_lines(each, left)]
        pairs = zip_longest(told, self.picture, fillvalue="")
        return [f"{text.ljust(left + 2)}{drawn}".rstrip() for text, drawn in pairs]


def forms_of(picture: tuple[str, ...]) -> list[Letters]:
    """The forms in which a page may be set, best first."""
    return [Letters(picture), Letters(), Letters(tight=True)]


def block_lines(block: Sequence[Piece]) -> list[str]:
    """The lines of pieces that are set together: the list in two columns."""
    if block[0].role != "item":
        return [line for each in block for line in _lines(each)]
    told = [_lines(each) for each in block]
    count = split([len(lines) for lines in told])
    left, right = (list(chain.from_iterable(part)) for part in (told[:count], told[count:]))
    pairs = zip_longest(left, right, fillvalue="")
    return [f"{one.ljust(COLUMN + GAP)}{other}".rstrip() for one, other in pairs]


def _lines(each: Piece) -> tuple[str, ...]:
    return piece_lines(each, COLUMN if each.role == "item" else COLUMNS)


@lru_cache(maxsize=8192)
def piece_lines(each: Piece, columns: int = COLUMNS) -> tuple[str, ...]:
    """The lines of a piece, its mark in the margin."""
    if each.role == "heading":
        said = f"{each.text.upper()}  {each.mark}." if each.mark else each.text.upper()
        return ("", said[:columns])
    margin = MARGIN.get(each.role, 0)
    mark = WAY if each.role == "way" else each.mark
    first = f"{mark.rjust(margin - 1)} " if margin else ""
    text = re.sub(rf"(?<!\S)({MARK.pattern}) ", rf"\1{HELD}", each.text)
    lines = wrap(text, columns, initial_indent=first, subsequent_indent=" " * margin)
    return tuple(line.replace(HELD, " ") for line in lines)


def text_page(page: Page, form: Letters) -> list[str]:
    """The lines of a page, at most `LINES`."""
    number = f"   page {page.number}" if page.number else ""
    right = f"{page.subtitle}{number}"
    title = page.title.upper()[: max(COLUMNS - len(right) - 2, 0)]
    lines = [f"{title.ljust(COLUMNS - len(right))}{right}"[:COLUMNS], "=" * COLUMNS]
    lines += form.looks_lines(page.looks)
    return lines + form.lines((*page.body, *page.foot))


def markdown_page(page: Page) -> list[str]:
    """The same page in Markdown; its lines break where the reader's page is wide enough."""
    number = f" (page {page.number})" if page.number else ""
    lines = [f"# {marked(page.title)}, {marked(page.subtitle)}{number}"]
    for each in (*page.looks, *page.body, *page.foot):
        lines += ["", *_markdown(each)] if each.role not in ("way", "item") else _markdown(each)
    return lines


def _markdown(each: Piece) -> Iterator[str]:
    runs = (_run(style, marked(text)) for style, text in each.runs)
    text = " ".join(runs)
    if each.role == "heading":
        yield f"## {text}"
        yield from ("", f"{marked(each.mark)}.") if each.mark else ()
    elif each.role == "way":
        yield f"- {text}"
    elif each.mark:
        yield f"{'- ' if each.role == 'item' else ''}**{marked(each.mark)}** {text}"
    else:
        yield text


def _run(style: str, text: str) -> str:
    sign = {"bold": "**", "slanted": "*", "": ""}[style]
    return f"{sign}{text}{sign}"
