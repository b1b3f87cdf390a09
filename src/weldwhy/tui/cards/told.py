"""Everything told so far, on a page of its own."""

from __future__ import annotations

from weldwhy.interview import Interview
from weldwhy.tui.cards.card import Card
from weldwhy.tui.rows import Row, inset, paragraph


def told_card(interview: Interview) -> Card:
    """All that was told, oldest first and numbered."""

    def body(width: int, room: int) -> list[Row]:
        rows = inset("Told so far, oldest first", width, "strong")
        for number, line in enumerate(interview.told, 1):
            rows += paragraph(line, width - 1, "text", (f" {number:>3}  ", "key"))
        for line in interview.follows:
            rows += paragraph(f"from the bead: {line}", width - 1, "dim", ("      ", "text"))
        return rows

    return Card(body, where="Told")
