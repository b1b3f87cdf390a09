"""A page that is looked up, cut into sheets: the digits lead to what is in sight."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from weldwhy.lookup.drawn import drawn
from weldwhy.lookup.leaf import Leaf, Line, Part
from weldwhy.lookup.things import KINDS, Ref, in_short
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.tui.canvas import rows_of
from weldwhy.tui.cards.card import PER_WINDOW, opening
from weldwhy.tui.rows import BLANK, Row, beside, inset, paragraph, row, rule, wrap

SIDE_BY_SIDE = 100
"""Cells from which a picture stands beside its words."""
PICTURE, LOW, TALL = (56, 12), 8, 30
"""Cells of a picture; its height on a page of fewer rows than TALL."""


@dataclass(frozen=True, slots=True)
class Block:
    """Rows that stay together. A link has its place `to`; `title` is the heading it is under."""

    rows: tuple[Row, ...]
    to: Ref | None = None
    title: str = ""
    heads: bool = False


@dataclass(frozen=True, slots=True)
class Sheet:
    """As much of a page as is seen at once, and where its digits lead."""

    rows: tuple[Row, ...]
    links: tuple[Ref, ...]


def sheets(blocks: Sequence[Block], width: int, height: int) -> list[Sheet]:
    """The blocks cut into sheets of this height, none with more links than there are digits."""
    whole = _cut(blocks, width, height)
    if len(whole) == 1:
        return whole
    cut = _cut(blocks, width, max(height - 1, 1))
    return [
        replace(sheet, rows=(*_filled(sheet.rows, height - 1), _turning(at, len(cut))))
        for at, sheet in enumerate(cut)
    ]


def _filled(rows: tuple[Row, ...], height: int) -> tuple[Row, ...]:
    return (*rows, *[BLANK] * (height - len(rows)))


def _turning(at: int, count: int) -> Row:
    turn = "PgDn" if at + 1 < count else "PgUp"
    return row((f"  part {at + 1} of {count}: {turn} for the rest", "key"))


def _cut(blocks: Sequence[Block], width: int, room: int) -> list[Sheet]:
    """The blocks on sheets of so many rows. A heading stays with what follows it, and is said
    again where its part goes on overleaf."""
    done: list[Sheet] = []
    rows: list[Row] = []
    links: list[Ref] = []

    def turn() -> None:
        done.append(Sheet(tuple(rows), tuple(links)))
        rows.clear()
        links.clear()

    for at, block in enumerate(blocks):
        following = blocks[at + 1 : at + 2] if block.heads else []
        needed = sum(len(each.rows) for each in (block, *following))
        many = len(links) == PER_WINDOW and any(each.to for each in (block, *following))
        if rows and (many or len(rows) + needed > room):
            turn()
            if block.title and not block.heads and needed < room:
                rows.append(rule(in_short(block.title, width - 20), width, "goes on"))
        shown = _numbered(block, len(links) + 1)
        while len(rows) + len(shown) > room:  # longer than a sheet: cut where it ends
            fits = room - len(rows)
            rows += shown[:fits]
            shown = shown[fits:]
            turn()
        rows += shown if rows or not block.heads else _without_gap(shown)
        links += [block.to] if block.to else []
    if rows or not done:
        turn()
    return done


def _without_gap(rows: Sequence[Row]) -> list[Row]:
    """The rows without the blank one that opens them."""
    return list(rows[1:] if rows[:1] == [BLANK] else rows)


def _numbered(block: Block, number: int) -> list[Row]:
    """The rows of a block; those of a link opened by its number."""
    if block.to is None:
        return list(block.rows)
    first, *rest = block.rows
    opened = Row((opening(number), *first.spans[1:]), number)
    return [opened, *(Row(line.spans, number) for line in rest)]


def leaf_blocks(
    rules: RuleBase, leaf: Leaf, width: int, height: int, letters: bool, key: Row | None
) -> list[Block]:
    """The page as blocks for this size: the picture with the first words, then part by part.

    `key` is the row that says what can be begun from here.
    """
    first, *others = leaf.parts or (Part("", ()),)
    plain = not first.title and not any(line.to for line in first.lines)
    blocks = [Block((_title(leaf, width), *([key] if key else [])))]
    words = first.lines if plain else ()
    blocks += _opened(rules, leaf, words, width, height, letters)
    for each in others if plain else leaf.parts:
        blocks += _part_blocks(each, width)
    return blocks


def _title(leaf: Leaf, width: int) -> Row:
    """Title and kind in one row, the title cut where it must be."""
    kind = f"  [{KINDS[leaf.ref.kind].one}]"
    name = wrap(leaf.title, width - len(kind) - 1)
    shown = name[0] if len(name) == 1 else f"{name[0][: width - len(kind) - 4]} .."
    return row((f" {shown}", "strong"), (kind, "dim"))


def _opened(
    rules: RuleBase, leaf: Leaf, words: Sequence[Line], width: int, height: int, letters: bool
) -> Iterator[Block]:
    """The picture and the first words: side by side on a wide page, else one above the other."""
    across, down = PICTURE
    canvas = drawn(rules, leaf, min(across, width - 2), down if height >= TALL else LOW)
    picture = (
        [Row(((" ", "text"), *line.spans)) for line in rows_of(canvas, letters)] if canvas else []
    )
    if picture and width >= SIDE_BY_SIDE:
        told = [line for each in words for line in _text_rows(each, width - across - 3)]
        yield Block(tuple(beside(picture, told, across + 3)))
        return
    if picture:
        yield Block(tuple(picture))
    for line in words:
        yield Block(tuple(_text_rows(line, width)))


def _part_blocks(part: Part, width: int) -> Iterator[Block]:
    if part.title:
        title = part.title
        yield Block((BLANK, *_heading(title, width)), title=title, heads=True)
    else:
        yield Block((BLANK,), heads=True)
    for line in part.lines:
        rows = _link_rows(line, width) if line.to else _text_rows(line, width)
        yield Block(tuple(rows), line.to, part.title)


def _heading(title: str, width: int) -> list[Row]:
    """A heading as a rule; one that is too long for it as text."""
    if len(title) <= width - 8:
        return [rule(title, width)]
    return inset(title, width, "head")


def _text_rows(line: Line, width: int) -> list[Row]:
    return inset(line.text, width, line.role)


def _link_rows(line: Line, width: int) -> list[Row]:
    """A link with a place for its number; its note goes beside it where there is room."""
    rows = paragraph(capital(line.text), width - 1, line.role, opening(0))
    if not line.note:
        return rows
    last = rows[-1]
    if last.width + len(line.note) + 3 < width:
        return [*rows[:-1], Row((*last.spans, (f"  {line.note}", "dim")))]
    return [*rows, *paragraph(line.note, width - 1, "dim", ("     ", "text"))]
