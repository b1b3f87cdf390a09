"""The gallery: drawn pictures in columns, each with its digit and name; and one of them, large."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from weldwhy.case import Reported, Resembled
from weldwhy.drawing import draw
from weldwhy.interview import Interview
from weldwhy.model import RuleBase, Symptom
from weldwhy.plaintext import capital
from weldwhy.steps import symptoms_of
from weldwhy.tui.canvas import rows_of
from weldwhy.tui.cards.card import PER_WINDOW, ROOMY, Card, Choice, opening
from weldwhy.tui.rows import BLANK, Row, beside, fit, inset, paragraph, row

GAP = 2
"""Cells between two pictures."""
COLUMN = draw.LEAST[0] + GAP
CAPTION = 1
LINKING = ("and", "or", "at", "in", "of", "to", "the")
"""Words that do not end a caption that is cut."""
HEAD = 2
"""Rows above the pictures: the question and what is filtered."""
SIDE_BY_SIDE = 76
"""Cells from which a picture looked at closely stands beside its words."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """How many pictures stand side by side and below each other, and the cells of each."""

    columns: int
    lines: int
    width: int
    height: int

    @property
    def count(self) -> int:
        """Pictures on the leaf; each has a digit."""
        return min(self.columns * self.lines, PER_WINDOW)


def leaf_for(width: int, height: int) -> Leaf:
    """The leaf of a page of this size: as many pictures as can be told apart, at most nine."""
    columns = min(max(width // COLUMN, 1), 3)
    lines = min(max((height - HEAD) // (draw.LEAST[1] + CAPTION), 1), 3)
    return Leaf(columns, lines, width // columns - GAP, (height - HEAD) // lines - CAPTION)


def drawn(rules: RuleBase, process: str, group: str = "") -> list[Symptom]:
    """The symptoms that have a picture, those of one group if it is told, commonest first."""
    return [s for s in symptoms_of(rules, process, group) if s.id in rules.pictures]


def groups_drawn(rules: RuleBase, process: str) -> list[str]:
    """The groups that have pictures, in their order, after "" for all."""
    present = {symptom.group for symptom in drawn(rules, process)}
    return ["", *(group for group in rules.groups if group in present)]


def gallery_rows(
    rules: RuleBase,
    shown: Sequence[Symptom],
    head: str,
    leaf: Leaf,
    letters: bool,
    process: str = "",
) -> list[Row]:
    """The pictures with their captions, in columns, below the question."""
    rows = [row((" Which looks most like yours?", "strong")), row((f" {head}", "dim"))]
    for first in range(0, len(shown), leaf.columns):
        line: list[Row] = []
        for at, symptom in enumerate(shown[first : first + leaf.columns], first):
            block = _captioned(rules, symptom, at + 1, leaf, letters, process)
            line = beside(line, block, (at - first) * (leaf.width + GAP)) if line else block
        rows += line
    return rows


def _captioned(
    rules: RuleBase, symptom: Symptom, number: int, leaf: Leaf, letters: bool, process: str
) -> list[Row]:
    name = _whole_words(capital(symptom.name.partition(" (")[0]), leaf.width - 4)
    caption = row((f" {number}  ", "key"), (fit(name, leaf.width - 4), "text"))
    size = leaf.width, leaf.height
    return [caption, *picture_rows(rules, symptom.id, *size, letters, process)]


def _whole_words(name: str, width: int) -> str:
    """The name, or as many of its words as there is room for."""
    if len(name) <= width:
        return name
    words = name[: width - 2].split(" ")[:-1]
    while len(words) > 1 and words[-1] in LINKING:
        words.pop()
    return f"{' '.join(words)} .."


def picture_rows(
    rules: RuleBase, symptom: str, width: int, height: int, letters: bool, process: str = ""
) -> list[Row]:
    """The symptom's picture as rows of just this width; none where there is none, or no room."""
    canvas = draw.picture(rules, symptom, width, height, process)
    return rows_of(canvas, letters) if canvas else []


SHARE = 0.4
"""Part of the page's width that a picture looked at closely has beside its words."""
TALLEST = 16
"""Cells of height that are enough for a picture looked at closely."""


def picture_card(interview: Interview, symptom_id: str, letters: bool) -> Card:
    """One picture, large, with what it shows, what it is taken for, and what to do with it.

    On a page narrower than SIDE_BY_SIDE the body shows the choices, above the words.
    """
    rules, case = interview.rules, interview.case
    symptom = rules.symptoms[symptom_id]
    name = symptom.name.partition(" (")[0]

    def words(width: int) -> list[Row]:
        rows = inset(symptom.looks, width)
        if symptom.confused_with:
            rows += [BLANK, *inset(f"Often taken for it: {symptom.confused_with}", width, "dim")]
        return rows

    def body(width: int, room: int) -> list[Row]:
        head = inset(capital(symptom.name), width, "strong")
        if width < SIDE_BY_SIDE:
            size = width - GAP, draw.LEAST[1]
            drawn = picture_rows(rules, symptom_id, *size, letters, case.process)
            numbered = enumerate(choices, 1)
            marked = (line for at, each in numbered for line in _choice(at, each, width))
            return [*head, *drawn, *marked, *words(width)]
        cells = int(width * SHARE)
        told = words(width - cells - GAP)
        high = TALLEST if room == ROOMY else min(max(len(told), draw.LEAST[1]), TALLEST)
        drawn = picture_rows(rules, symptom_id, cells, high, letters, case.process)
        return [*head, *(beside(drawn, told, cells + 1) if drawn else told)]

    choices = [
        Choice("Mine looks most like this", (Resembled(symptom_id),)),
        Choice(f"I am sure that it is {name}", (Reported(symptom_id),)),
    ]
    for other in looks_alike(rules, symptom_id, case.process):
        choices.append(Choice(f"Compare: {other.name.partition(' (')[0]}", other.id))
    return Card(body, tuple(choices), where="Pictures")


def _choice(number: int, choice: Choice, width: int) -> list[Row]:
    """A choice as the body shows it: below the picture, so that it is in sight with it."""
    lines = paragraph(choice.text, width - 1, "text", opening(number))
    return [Row(line.spans, number) for line in lines]


COMPARED = 3
"""Look-alikes offered beside a picture: the likeliest ones."""


def looks_alike(rules: RuleBase, symptom: str, process: str) -> list[Symptom]:
    """The symptoms most often taken for this one that the process can show, with a picture."""
    like = rules.pictures[symptom].like if symptom in rules.pictures else {}
    found = [
        rules.symptoms[other]
        for other in sorted(like, key=lambda each: -like[each])
        if other in rules.pictures and process in ("", *rules.symptoms[other].processes)
    ]
    return found[:COMPARED]


def no_pictures(width: int) -> list[Row]:
    """What stands there when a process or group has none."""
    return [BLANK, *inset("No picture here; pick it from the list instead.", width)]
