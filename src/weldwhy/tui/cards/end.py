"""The end of a case: what it was, how to keep it from coming back, and what to do with it."""

from __future__ import annotations

from weldwhy.case import Case
from weldwhy.interview import Interview
from weldwhy.tui.cards.card import Card, Choice, text_body


def end_card(interview: Interview) -> Card:
    """Shown when the last test bead was sound."""
    said = [("The bead is sound.", "strong")]
    tried = interview.case.tried
    cause = interview.rules.causes.get(tried[-1].cause) if tried else None
    if cause is not None:
        said.append((f"Most likely it was: {cause.name}. {cause.what}", "text"))
        before = [
            interview.rules.causes[t.cause].name
            for t in tried[:-1]
            if t.result == "better" and t.cause in interview.rules.causes and t.cause != cause.id
        ]
        if before:
            said.append((f"Put right before it: {', '.join(dict.fromkeys(before))}.", "text"))
        if cause.prevent:
            said.append((f"To keep it from coming back: {cause.prevent}", "strong"))
    choices = (
        Choice("Copy the case as plain text", "copy"),
        Choice("Save it as a file", "save"),
        Choice("Put it away and start a new case", "put_away"),
        Choice("Put it away and leave", "leave"),
    )
    undo = Choice("Not sound after all: take that back", "undo", key="u")
    return Card(text_body(said), choices, (undo,), where="Done")


def put_back(case: Case, interview: Interview) -> str:
    """What to do first when the last test bead was worse, else nothing."""
    last = case.entries[-1] if case.entries else None
    if last is None or not case.tried or last != case.tried[-1] or case.tried[-1].result != "worse":
        return ""
    cause = interview.rules.causes.get(case.tried[-1].cause)
    name = f' for "{cause.name}"' if cause else ""
    return f"Worse: put it back first. Undo the change you made{name}, then go on here."
