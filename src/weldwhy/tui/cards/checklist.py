"""The checklist of a plan: each step with its digit and its tick, its cautions before it."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from weldwhy.checklist import ChecklistStep
from weldwhy.tui.cards.card import PER_WINDOW, Card, Choice, opening
from weldwhy.tui.cards.step import caution_rows
from weldwhy.tui.rows import Row, inset, paragraph

Steps = Sequence[ChecklistStep]

TICKED, OPEN = "[x]", "[ ]"
TICK = "tick:"
"""What the act of a step begins with; its text follows."""
AROUND = 5
"""Rows of a leaf that are no steps: what to do with them, blanks, and what comes next."""


def packed(steps: Steps, width: int, height: int) -> Sequence[Steps]:
    """The steps in leaves that are not cut: no caution is ever on another part than its step."""
    leaves: list[list[ChecklistStep]] = []
    said: set[str] = set()
    left = 0
    for step in steps:
        rows = len(_step_rows(step, 1, False, said, width))
        if not leaves or rows > left or len(leaves[-1]) == PER_WINDOW:
            leaves.append([])
            said, left = set(), height - AROUND
            rows = len(_step_rows(step, 1, False, said, width))
        leaves[-1].append(step)
        said |= {caution.id for caution in step.cautions}
        left -= rows
    return leaves


def checklist_card(steps: Steps, done: Collection[str], others: tuple[Choice, ...]) -> Card:
    """One leaf of steps; a digit ticks one off, and once more takes the tick back."""
    choices = tuple(Choice(step.text, f"{TICK}{step.text}") for step in steps)

    def body(width: int, room: int) -> list[Row]:
        text = "Its digit ticks a step off. Read what stands before it first."
        return inset(text, width, "dim") + _rows(steps, done, width)

    return Card(body, choices, others, in_body=True)


def _rows(steps: Steps, done: Collection[str], width: int) -> list[Row]:
    rows: list[Row] = []
    said: set[str] = set()
    for number, step in enumerate(steps, 1):
        rows += _step_rows(step, number, step.text in done, said, width)
        said |= {caution.id for caution in step.cautions}
    return rows


def _step_rows(
    step: ChecklistStep, number: int, done: bool, said: Collection[str], width: int
) -> list[Row]:
    """The step after its cautions; one that is in sight already is not said again."""
    rows = caution_rows([c for c in step.cautions if c.id not in said], width)
    key, role = opening(number)
    tick = f"{key}{TICKED if done else OPEN} "
    lines = paragraph(step.text, width - 1, "dim" if done else "text", (tick, role))
    return rows + [Row(line.spans, number) for line in lines]
