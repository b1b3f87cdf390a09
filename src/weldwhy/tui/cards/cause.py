"""A cause opened: why, what would change the guide's mind, how to confirm it, what to do."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from weldwhy.advice import Advice
from weldwhy.interview import Interview
from weldwhy.model import Check
from weldwhy.plaintext import capital
from weldwhy.report import minutes, percent, reason_line, source_lines
from weldwhy.tui.cards.card import PER_WINDOW, Card, Choice, opening
from weldwhy.tui.cards.side import SHARE_WORDS
from weldwhy.tui.cards.step import caution_rows
from weldwhy.tui.cards.table import pictured_rows
from weldwhy.tui.rows import BLANK, Row, inset, paragraph, rule

Drawings = Mapping[str, Sequence[Row]]
"""Pictures by the id of the remedy they stand with."""


def causes_card(interview: Interview) -> Card:
    """Every cause in play, likeliest first, to open one."""
    choices = tuple(
        Choice(
            f"{capital(ranked.cause.name)}: {percent(ranked.probability)}, "
            f"{interview.likelihood_word(ranked.probability)}",
            ranked.cause.id,
        )
        for ranked in interview.ranked
    )
    unlisted = f"Something not in this list: {percent(interview.unlisted)}."

    def body(width: int, room: int) -> list[Row]:
        title = inset("Which cause do you want to open?", width, "strong")
        return title + inset(unlisted, width, "dim")

    return Card(body, choices, where="Causes")


def cause_card(interview: Interview, cause_id: str, letters: bool = False) -> Card:
    """One cause in full; the digits before its remedies and checks do them now.

    With `letters` the picture of its operating window is made of letters.
    """
    barred = any(caution.stop for caution in interview.standing_cautions)
    advices = interview.remedies(cause_id)
    tried = [] if barred else [at for at, a in enumerate(advices) if not a.remedy.stop]
    remedies = [Choice(advices[at].remedy.do, f"try:{at}") for at in tried]
    checks = [Choice(check.ask, f"check:{check.id}") for check in confirming(interview, cause_id)]
    choices = tuple((remedies + checks)[:PER_WINDOW])
    drawings = _drawings(interview, advices, letters)

    def body(width: int, room: int) -> list[Row]:
        rows = _head_rows(interview, cause_id, width)
        rows += [BLANK, rule("What to do", width, "its digit: do it now" if remedies else "")]
        rows += _advices_rows(advices, tried, width, drawings)
        rows += [BLANK, rule("Why", width, "3: twice as likely, 10: ten times")]
        rows += _why_rows(interview, cause_id, width)
        rows += _confirm_rows(interview, cause_id, len(remedies), width)
        return rows + _rest_rows(interview, cause_id, width)

    where = interview.rules.causes[cause_id].name
    return Card(body, choices, where=where, in_body=True)


def _head_rows(interview: Interview, cause_id: str, width: int) -> list[Row]:
    cause = interview.rules.causes[cause_id]
    found = next((r.probability for r in interview.ranked if r.cause.id == cause_id), 0.0)
    likely = f"{capital(cause.name)}: {percent(found)}, {interview.likelihood_word(found)}"
    return [
        *inset(likely, width, "strong"),
        *inset(cause.what, width),
        *inset(f"Lies with: {SHARE_WORDS[cause.share]}. Family: {cause.family}.", width, "dim"),
    ]


def _advices_rows(
    advices: tuple[Advice, ...], tried: list[int], width: int, drawings: Drawings
) -> list[Row]:
    rows: list[Row] = []
    warned: set[str] = set()
    for at, advice in enumerate(advices):
        rows += caution_rows([c for c in advice.cautions if c.id not in warned], width)
        warned |= {caution.id for caution in advice.cautions}
        number = tried.index(at) + 1 if at in tried else None
        rows += _advice_rows(advice, number, width, drawings.get(advice.remedy.id, ()))
    return rows


def _drawings(interview: Interview, advices: tuple[Advice, ...], letters: bool) -> Drawings:
    """The picture, by the first remedy whose settings it concerns."""
    # imported when it is first needed: the first screen of all is there sooner
    from weldwhy.tui.cards.caseview import drawing_of

    for advice in advices:
        rows = drawing_of(interview, advice.settings, letters)
        if rows:
            return {advice.remedy.id: rows}
    return {}


def _advice_rows(
    advice: Advice, number: int | None, width: int, drawing: Sequence[Row]
) -> list[Row]:
    remedy = advice.remedy
    text = remedy.do if remedy.stop else f"{remedy.do} ({minutes(remedy.minutes)}, a test bead)"
    first = opening(number) if number else (" STOP     " if remedy.stop else "     ", "caution")
    rows = _picked(paragraph(text, width - 1, "text", first), number)
    if remedy.call:
        rows += paragraph(f"Call {remedy.call}.", width - 1, "strong", ("     ", "text"))
    if advice.settings:
        rows += pictured_rows(advice.settings, drawing, width)
    return rows


def _picked(rows: list[Row], number: int | None) -> list[Row]:
    return [Row(line.spans, number) for line in rows]


def _confirm_rows(interview: Interview, cause_id: str, before: int, width: int) -> list[Row]:
    rows: list[Row] = []
    for number, check in enumerate(confirming(interview, cause_id), before + 1):
        text = f"{check.ask} ({minutes(check.minutes)})"
        first = opening(number) if number <= PER_WINDOW else ("     ", "text")
        picked = number if number <= PER_WINDOW else None
        rows += _picked(paragraph(text, width - 1, "text", first), picked)
    title = rule("How to confirm it", width, "its digit: check it now")
    return [BLANK, title, *rows] if rows else []


def _rest_rows(interview: Interview, cause_id: str, width: int) -> list[Row]:
    cause = interview.rules.causes[cause_id]
    parts = (
        ("What would change the guide's mind", list(interview.mind_changers)),
        ("To keep it from coming back", [cause.prevent] if cause.prevent else []),
        ("Source", [line.removeprefix("- ") for line in source_lines(interview.rules, cause)]),
    )
    rows: list[Row] = []
    for title, lines in parts:
        rows += [BLANK, rule(title, width)] if lines else []
        rows += [line for text in lines for line in _item(text, width)]
    return rows


def confirming(interview: Interview, cause_id: str) -> list[Check]:
    """The checks that would confirm a cause and were not answered yet."""
    open_checks = {check.id for check in interview.open_checks}
    return [check for check in interview.confirm(cause_id) if check.id in open_checks]


def _why_rows(interview: Interview, cause_id: str, width: int) -> list[Row]:
    reasons = interview.why(cause_id)
    if not reasons:
        return inset("Nothing told so far speaks for or against it.", width, "dim")
    return [line for reason in reasons for line in _item(reason_line(reason), width)]


def _item(text: str, width: int) -> list[Row]:
    return paragraph(text, width - 1, "text", (" - ", "dim"))
