"""What was understood of a person's own words, as ticks that can be struck out."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from weldwhy.case import Hinted
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.told import in_short
from weldwhy.tui.cards.card import PER_WINDOW, ROOMY, Card, Choice
from weldwhy.tui.cards.checklist import OPEN, TICKED
from weldwhy.tui.rows import BLANK, Row, inset, paragraph, row
from weldwhy.understanding.heard import Heard, Understood

ON, AGAIN = "on", "again"
"""Acts: go on with what is ticked; say it once more."""
STRIKE = "strike:"
"""What the act of a tick begins with; its number follows."""
QUOTED = 40
"""Letters of a person's own words that are enough to know them by."""
LOST = 5
"""How many stretches of a text are named that were not understood."""


def heard_card(rules: RuleBase, heard: Heard, struck: Collection[int]) -> Card:
    """Each thing understood with its tick and the words it came from; then what was not."""
    choices = tuple(
        Choice(
            f"{OPEN if at in struck else TICKED} {capital(in_short(rules, each.entry))}",
            f"{STRIKE}{at}",
            note=_from(each),
            beside=True,
        )
        for at, each in enumerate(heard.understood)
    )
    ticked = len(choices) - len(struck)
    go = f"Go on with {'what is ticked' if ticked else 'nothing of this'}"
    if not choices:
        go = "Go on; your words are kept for the report"
    go += " (or Enter)" if len(choices) <= PER_WINDOW else ""
    others = (Choice(go, ON, key="0"), Choice("Say it differently", AGAIN, key="esc"))

    def body(width: int, room: int) -> list[Row]:
        gap = [BLANK] if room == ROOMY else []
        if choices:
            rows = inset("This was understood. Its digit strikes a line out.", width, "strong")
        else:
            rows = inset("Nothing of this was understood.", width, "strong")
        if heard.not_understood:
            lost = _lost(heard.not_understood)
            rows += paragraph(lost, width - 1, "text", (" NOT UNDERSTOOD  ", "notice"))
        return rows + gap

    return Card(body, choices, others, where="In your own words")


def _from(each: Understood) -> str:
    """The words it was taken from, the first of many, and whether it counts in full."""
    if each.sure:
        return f"from {_quoted(each.text)}"
    doubt = "will be asked" if isinstance(each.entry, Hinted) else "weighs little"
    return f"from {_quoted(each.text)}: not certain, {doubt}"


def _lost(texts: Sequence[str]) -> str:
    """What was not understood in one paragraph; of much of it only how much more there is."""
    told = [_quoted(text) for text in texts[:LOST]]
    more = [f"and {len(texts) - LOST} more"] if len(texts) > LOST else []
    return ", ".join([*told, *more])


def _quoted(text: str) -> str:
    """A person's own words between quotes, the first of many."""
    words = text if len(text) <= QUOTED else f"{text[:QUOTED].rpartition(' ')[0]} .."
    return f'"{words}"'


def say_rows(text: str, width: int) -> list[Row]:
    """The box to type into."""
    rows = inset("Say what you see, hear and did, in your own words.", width, "strong")
    rows += inset(
        'Such as: "mig on 3 mm plate, bubbles all over, turned the gas up and no change, '
        'windy today".', width, "dim",
    )  # fmt: skip
    lines = paragraph(text, width - 2, "text", (" ", "text"))
    last = row(*lines[-1].spans, (" ", "edit"))
    rows += [BLANK, *lines[:-1], last, BLANK]
    return rows + inset("Enter when done. Nothing leaves this machine.", width, "dim")
