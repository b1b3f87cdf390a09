"""A card: text above, numbered choices below, laid out for a width and height."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from weldwhy.case import Entry
from weldwhy.tui.rows import BLANK, Row, Span, inset, paragraph, row, tied

PER_WINDOW = 9
"""Choices that have a digit at the same time."""

SHORT = 24
"""Letters of a choice that may stand beside others."""

ROOMY, CLOSE, TIGHT, CRAMPED, SQUEEZED = 4, 3, 2, 1, 0
"""How much room a card has. ROOMY: blank rows between choices. CLOSE: between parts only. TIGHT:
choices with their own keys side by side. CRAMPED: all choices. SQUEEZED: cautions run on."""

Body = Callable[[int, int], list[Row]]
"""Makes the text above the choices, for a width and the room there is."""

Act = tuple[Entry, ...] | str
"""What a choice does: entries for the case, or a word its screen knows."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One line to choose. A `heading` opens a group; a `note` stands under the text.

    `beside`: the note stands behind the text where it fits there.
    """

    text: str
    act: Act
    heading: str = ""
    note: str = ""
    key: str = ""
    note_role: str = "dim"
    beside: bool = False


@dataclass(frozen=True, slots=True)
class Card:
    """What one step shows. `others` are choices with their own keys, after the numbered ones.

    `in_body`: the body itself shows the choices, at the places they belong to.
    """

    body: Body
    choices: tuple[Choice, ...] = ()
    others: tuple[Choice, ...] = ()
    where: str = ""
    in_body: bool = False

    def window(self, first: int) -> tuple[Choice, ...]:
        """The choices that have digits when the window begins at `first`."""
        return self.choices[first : first + PER_WINDOW]


def lay_out(card: Card, width: int, height: int, first: int = 0) -> list[Row]:
    """The card's rows. Where it does not fit, blank rows go first, then short choices stand
    side by side; no word is ever dropped."""
    rows = _rows(card, width, first, ROOMY)
    if card.in_body or len(rows) <= height:
        return rows
    for room in (CLOSE, TIGHT, CRAMPED):
        rows = _without_blanks(_rows(card, width, first, room), height)
        if len(rows) <= height:
            return rows
    return _rows(card, width, first, SQUEEZED)


def _without_blanks(rows: list[Row], height: int) -> list[Row]:
    """Only as many blank rows as there is room for: the first goes first, then from the end."""
    blanks = [at for at, line in enumerate(rows) if line == BLANK]
    dropped = set([*blanks[:1], *reversed(blanks[1:])][: max(len(rows) - height, 0)])
    return [line for at, line in enumerate(rows) if at not in dropped]


def opening(number: int) -> Span:
    """What opens a numbered line."""
    return f"  {number:<2} ", "key"


def _rows(card: Card, width: int, first: int, room: int) -> list[Row]:
    gap = [BLANK] if room > SQUEEZED else []
    rows = [*gap, *card.body(width, room), *gap]
    window, others = card.window(first), card.others
    short = all(len(c.text) <= SHORT and not (c.heading or c.note) for c in window)
    if room <= CRAMPED and short and not card.in_body:
        numbered = [replace(choice, key=str(at)) for at, choice in enumerate(window, 1)]
        return rows + _side_by_side([*numbered, *others], width)
    rows += [] if card.in_body else _numbered(card, width, first, room)
    if others and room > TIGHT:
        rows += [*gap, *(line for o in others for line in _choice_rows(o, o.key, None, width))]
    elif others:
        rows += [*gap, *_side_by_side(others, width)]
    if len(card.choices) > PER_WINDOW:
        rows += [*gap, _window_row(card, first)]
    return rows


def _numbered(card: Card, width: int, first: int, room: int) -> list[Row]:
    between = [BLANK] if room == ROOMY and len(card.choices) <= PER_WINDOW else []
    rows: list[Row] = []
    for number, choice in enumerate(card.window(first), 1):
        if choice.heading:
            rows += [BLANK] if number > 1 and room > SQUEEZED else []
            rows.append(row((f"  {choice.heading}", "head")))
        elif number > 1:
            rows += between
        rows += _choice_rows(choice, str(number), number, width)
    return rows


def _side_by_side(choices: Sequence[Choice], width: int) -> list[Row]:
    """Choices one after the other, where rows are scarce."""
    rows: list[Row] = []
    spans: list[Span] = []
    used = 0
    for choice in choices:
        key, text = f"  {choice.key:<2} ", f"{choice.text} "
        if spans and used + len(key) + len(text) > width:
            rows.append(row(*spans))
            spans, used = [], 0
        spans += [(key, "key"), (text, "text")]
        used += len(key) + len(text)
    return [*rows, row(*spans)]


def _choice_rows(choice: Choice, key: str, number: int | None, width: int) -> list[Row]:
    """One choice with its note; a page that is cut is not cut inside it."""
    lines = paragraph(choice.text, width - 1, "text", (f"  {key:<2} ", "key"))
    if choice.note and choice.beside and lines[-1].width + len(choice.note) + 2 < width:
        lines[-1] = row(*lines[-1].spans, (f"  {choice.note}", choice.note_role))
    elif choice.note:
        lines += paragraph(choice.note, width - 1, choice.note_role, ("     ", "text"))
    return tied([Row(line.spans, number) for line in lines])


def _window_row(card: Card, first: int) -> Row:
    count = len(card.choices)
    last = min(first + PER_WINDOW, count)
    return row((f"  {first + 1} to {last} of {count}: PgDn, PgUp for the others", "key"))


def text_body(paragraphs: Sequence[tuple[str, str]]) -> Body:
    """A body of plain paragraphs, each with its role."""

    def made(width: int, room: int) -> list[Row]:
        rows: list[Row] = []
        for text, role in paragraphs:
            if rows and room > SQUEEZED:
                rows.append(BLANK)
            rows += inset(text, width, role)
        return rows

    return made


def with_notes(card: Card, notes: Sequence[str]) -> Card:
    """The card with notes above everything else, each behind the word NOTE."""
    if not notes:
        return card
    below = card.body

    def made(width: int, room: int) -> list[Row]:
        rows: list[Row] = []
        for note in notes:
            rows += paragraph(note, width - 1, "notice", (" NOTE     ", "notice"))
        return [*rows, *([BLANK] if room > SQUEEZED else []), *below(width, room)]

    return replace(card, body=made)
