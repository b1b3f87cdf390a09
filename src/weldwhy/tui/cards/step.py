"""One step of the case: a check, a remedy, or to stop; cautions always stand before the step."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from weldwhy.case import BETTER, NO_CHANGE, SOUND, WORSE, Tried, entry_for
from weldwhy.model import Caution
from weldwhy.plaintext import capital
from weldwhy.report import minutes
from weldwhy.steps import Step
from weldwhy.tui.cards.card import ROOMY, SQUEEZED, Card, Choice
from weldwhy.tui.cards.table import pictured_rows
from weldwhy.tui.rows import BLANK, Row, inset, paragraph

if TYPE_CHECKING:
    from weldwhy.advice import SettingAdvice

DOING = {"ask": "Question", "check": "Check", "remedy": "Try this", "stop": "Stop and call"}
"""What a step is called, by its kind."""

RESULTS = (
    (SOUND, "Sound"),
    (BETTER, "Better, not sound yet"),
    (NO_CHANGE, "No change"),
    (WORSE, "Worse"),
)


def caution_rows(cautions: Sequence[Caution], width: int, squeezed: bool = False) -> list[Row]:
    """The box that stands before a step: the word CAUTION or STOP, then the whole text.

    Squeezed, cautions run on in one block; each still begins with its word.
    """
    rows: list[Row] = []
    stops = [caution for caution in cautions if caution.stop]
    for caution in stops:
        rows += paragraph(caution.text, width - 1, "caution", (" STOP     ", "caution"))
        if caution.call:
            rows += paragraph(f"Call {caution.call}.", width - 1, "strong", (" " * 10, "text"))
    texts = [caution.text for caution in cautions if not caution.stop]
    if squeezed:
        block = " ".join(f"CAUTION: {text}" for text in texts)
        return rows + (paragraph(block, width - 1, "caution", (" ", "caution")) if block else [])
    for text in texts:
        rows += paragraph(text, width - 1, "caution", (" CAUTION  ", "caution"))
    return rows


def _body_rows(
    step: Step,
    settings: Sequence[SettingAdvice],
    lens: str,
    drawing: Sequence[Row],
    width: int,
    room: int,
) -> list[Row]:
    gap = [BLANK] if room > SQUEEZED else []
    rows = caution_rows(step.cautions, width, squeezed=room == SQUEEZED)
    rows += gap if rows else []
    already = step.kind == "stop" and any(c.text == step.text for c in step.cautions)
    if not already:
        rows += inset(_why_now(step), width, "dim")
        rows += inset(step.text, width, "strong")
    if step.call and not already:
        rows += inset(f"Call {step.call}.", width, "strong")
    if settings:
        rows += [*gap, *pictured_rows(settings, drawing if room == ROOMY else (), width)]
    if step.cause:
        bead = f"{lens} Then run a test bead. How is it?".strip()
        rows += [*gap, *inset(bead, width, "strong")]
    return rows


def _why_now(step: Step) -> str:
    doing = DOING.get(step.kind, "Step")
    if step.minutes >= 0.05 and step.kind != "stop":
        bead = " and a test bead" if step.cause else ""
        doing += f" ({minutes(step.minutes)}{bead})"
    return f"{doing}: {step.reason}" if step.reason else doing


def step_card(
    step: Step,
    where: str,
    settings: Sequence[SettingAdvice] = (),
    out_of_order: bool = False,
    reading: str = "",
    lens: str = "",
    drawing: Sequence[Row] = (),
) -> Card:
    """The card of a step. `reading` is the name of the setting that may be typed instead.

    `lens` is the lightest lens shade, said before a test bead. `drawing`, the picture of the
    operating window, stands with the settings only where there is room for all of it.
    """
    choices, others = _choices(step, reading)
    if out_of_order:
        others = (*others, Choice("Back to the guide's own step", "back", key="esc"))

    def body(width: int, room: int) -> list[Row]:
        shade = lens if step.kind == "remedy" else ""
        return _body_rows(step, settings, shade, drawing, width, room)

    return Card(body, choices, others, where)


def _choices(step: Step, reading: str) -> tuple[tuple[Choice, ...], tuple[Choice, ...]]:
    away = Choice("Put this case away", "put_away")
    if step.cause:
        results = [Choice(text, (Tried(step.cause, step.id, r),)) for r, text in RESULTS]
        results.append(Choice("Another symptom now", "other_symptom"))
        results += [away] if step.kind == "stop" else []
        skip = (Choice("Cannot do this now: leave it out", "skip", key="s"),)
        return tuple(results), skip if step.kind == "remedy" else ()
    if step.kind == "stop":
        by_job = any(caution.text == step.text for caution in step.cautions)
        return (
            (away, Choice("Practise on scrap, or the job is another one", "change_job"))
            if by_job
            else (away,)
        ), ()
    answers = tuple(Choice(capital(a.text), (entry_for(step.id, a.id),)) for a in step.answers)
    others = [Choice("Don't know", "dont_know", key="0"), Choice("Skip", "skip", key="s")]
    if reading:
        others.append(Choice(f"Type the {reading} instead", "reading", key="v"))
    return answers, tuple(others)
