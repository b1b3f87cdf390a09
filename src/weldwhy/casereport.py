"""A case as a report, finished or not: text, Markdown and HTML from one set of boxes.

It tells what was seen, told and tried, what it is or is likely to be and why, and what comes next
or put it right. Nothing in it can drive a terminal: every box is cleaned as it is made.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from weldwhy import casefacts
from weldwhy.blocks import WRITERS, Block, plain_lines
from weldwhy.case import Case, Tried
from weldwhy.casetried import cure_lines, put_right_before, tried_lines
from weldwhy.lines import safe, wrapped
from weldwhy.plaintext import capital, clean
from weldwhy.report import (
    TOP,
    Once,
    caution_lines,
    ended,
    percent,
    ranked_line,
    ranking_lines,
    ranking_title,
    reason_line,
    remedy_lines,
    remedy_settings,
    step_lines,
)
from weldwhy.steps import HELP, NOT_FOR
from weldwhy.told import entry_line

if TYPE_CHECKING:
    from weldwhy.interview import Interview
    from weldwhy.model import Cause

SCALE = "In brackets: decibans. +3 doubles the odds, +10 makes them ten times as high."
RELY = (
    "This is advice, worked out from the rules and from what was told. The weld itself decides: "
    "run a test bead after every change.",
    NOT_FOR,
    "Local codes and licensed practice come before this guide; mains wiring is for a licensed "
    "electrician.",
    f"If it does not come right, or you are not sure that it is safe: stop. Call {HELP}.",
)
"""Stands at the end of every report."""


def case_report(interview: Interview, form: str) -> list[str]:
    """The lines of the report in one of `blocks.FORMATS`."""
    if form == "text":
        return list(wrapped(case_text(interview)))
    return WRITERS[form](_head(interview), list(case_blocks(interview)))


def case_text(interview: Interview) -> list[str]:
    """The report as plain lines that are not wrapped yet."""
    return plain_lines(_head(interview), case_blocks(interview), ":")


def _head(interview: Interview) -> list[str]:
    rules, case = interview.rules, interview.case
    names = [rules.symptoms[s].name for s in case.symptoms if s in rules.symptoms]
    nothing = "not certain yet" if interview.supposed else "nothing reported yet"
    if any(caution.stop for caution in interview.standing_cautions):
        state = "Stop: this is not a weld to put right by a guide."
    elif case.sound:
        state = "Done: the last test bead was sound."
    else:
        state = "Not done yet: the next step stands below."
    return safe(
        [
            f"Weld case: {', '.join(names) or nothing}",
            "By weldwhy: why this weld is bad and how to put it right.",
            state,
        ]
    )


def case_blocks(interview: Interview) -> Iterator[Block]:
    """The boxes of the report, in order; an empty one is left out."""
    for block in _blocks(interview):
        lines = safe(line for line in block.lines if line)
        table = tuple(tuple(map(clean, row)) for row in block.table)
        if lines or table:
            yield Block(clean(block.title), tuple(lines), table=table, listed=block.listed)


def _blocks(interview: Interview) -> Iterator[Block]:
    rules, case = interview.rules, interview.case
    stops = [caution for caution in interview.standing_cautions if caution.stop]
    yield _block("Stop", caution_lines(stops))
    yield _block("All the time", _all_the_time(interview))
    yield _listed("What was seen", casefacts.seen(rules, case))
    yield _listed("The work", casefacts.work(rules, case))
    yield _listed("In the person's own words", casefacts.own_words(rules, case))
    yield _listed("What was told", casefacts.answers(rules, case))
    notes = tuple(casefacts.setting_notes(interview))
    yield Block("Settings", notes, table=tuple(casefacts.settings(interview)))
    yield _listed("From the bead", interview.follows)
    if stops:  # what was tried is told, but no remedy is put into words
        yield _listed("What was tried", [entry_line(rules, tried) for tried in case.tried])
    else:
        yield from _finding(interview)
    yield _block("Before you rely on this", RELY)


def _finding(interview: Interview) -> Iterator[Block]:
    """What it is, or is likely to be, what was done, and what is left to do."""
    if interview.case.sound:
        yield from _finished(interview)
        return
    leader = interview.ranked[0].cause if interview.ranked else None
    yield _block("What was tried", tried_lines(interview, interview.case.entries))
    if leader is not None:
        yield _block(ranking_title(interview), ranking_lines(interview))
        yield from _leading(interview, leader)
    yield _block("Next step", _next_step(interview))
    yield _listed("Sources", casefacts.sources(interview, [leader] if leader else []))


def _all_the_time(interview: Interview) -> list[str]:
    """The cautions of the job and the metal that let one go on, and the lens."""
    cautions = caution_lines(c for c in interview.standing_cautions if not c.stop)
    stops = any(caution.stop for caution in interview.standing_cautions)
    return cautions if stops else [*cautions, interview.lens]


# a case that is not done


def _leading(interview: Interview, cause: Cause) -> Iterator[Block]:
    """The likeliest cause opened."""
    yield _block(f"About {cause.name}", [cause.what])
    yield _why(interview, cause)
    yield _block("To confirm it", _confirming(interview, cause))
    yield _block("What would change this", _changers(interview))
    yield _block("What to do", remedy_lines(interview, cause.id))
    yield _block("To keep it from coming back", [cause.prevent])


def _confirming(interview: Interview, cause: Cause) -> list[str]:
    """The open checks that decide on the cause, the cautions of each before it."""
    still_open = {check.id for check in interview.open_checks}
    said, lines = Once(), []
    for check in interview.confirm(cause.id):
        if check.id in still_open:
            lines += said.lines(interview.ask(check.id).cautions)
            lines.append(check.ask)
    return lines


def _changers(interview: Interview) -> list[str]:
    """What would put another cause first, the cautions of the check before each."""
    said, lines = Once(), []
    for line in interview.mind_changers[:TOP]:
        for check in interview.open_checks:
            if line.startswith(check.ask):
                lines += said.lines(interview.ask(check.id).cautions)
        lines.append(line)
    return lines


def _next_step(interview: Interview) -> list[str]:
    step = interview.step
    lines = [*step_lines(step), *remedy_settings(interview, step)]
    if step.kind == "remedy":
        lines.append("Then run a test bead.")
    asked_back = step.id == "symptom" and interview.supposed
    if asked_back or step.id in interview.rules.checks:
        lines.append(ended(f"Answers: {'; '.join(answer.text for answer in step.answers)}"))
    return lines


# a case that is done


def _finished(interview: Interview) -> Iterator[Block]:
    rules, entries = interview.rules, interview.case.entries
    at = max(n for n, entry in enumerate(entries) if isinstance(entry, Tried))
    last = interview.case.tried[-1]
    # Since the bead is sound, the guide holds that nothing is wrong: what was believed, and why,
    # is what it thought before it knew.
    before = interview.of(Case(entries[:at]))
    cause = rules.causes.get(last.cause)
    if cause is None:
        yield _block("What it was", ["It came right, by something that is not in these rules."])
    else:
        yield _block(
            "What it was", [f"{capital(cause.name)}. {cause.what}", *_how_sure(before, cause)]
        )
        yield _why(before, cause)
    yield _block("What was tried", tried_lines(interview, entries, at))
    yield _block("What put it right", cure_lines(interview, before, last))
    others = put_right_before(interview)
    causes = [*([cause] if cause else []), *others]
    yield _block("To keep it from coming back", [each.prevent for each in causes])
    yield _block("What else was considered", _others(before, last.cause))
    yield _listed("Sources", casefacts.sources(interview, causes))


def _how_sure(before: Interview, cause: Cause) -> Iterator[str]:
    held = next((r.probability for r in before.ranked if r.cause.id == cause.id), None)
    if held is None:
        yield "How sure: the guide had no reason to think of it before its remedy was tried."
    else:
        word = before.likelihood_word(held)
        yield f"How sure: {word}, {percent(held)}, before its remedy was tried."
    yield (
        "The test bead after the remedy was sound. That speaks for it, and is no proof: something "
        "else may have changed at the same time."
    )


def _why(interview: Interview, cause: Cause) -> Block:
    """The reasons for and against, as they were held by this interview."""
    lines = [reason_line(reason) for reason in interview.why(cause.id)]
    return _listed("Why", [*lines, SCALE] if lines else [])


def _others(before: Interview, found: str) -> list[str]:
    """The likeliest of the other causes before the last remedy."""
    others = [ranked for ranked in before.ranked if ranked.cause.id != found][:TOP]
    lines = [ranked_line(before, number, ranked) for number, ranked in enumerate(others, 1)]
    return [*lines, f"Something not in this list: {percent(before.unlisted)}"] if lines else []


def _block(title: str, lines: Iterable[str]) -> Block:
    return Block(title, tuple(lines))


def _listed(title: str, lines: Iterable[str]) -> Block:
    return Block(title, tuple(lines), listed=True)
