"""What is always in sight: likeliest causes, whose share it is, minutes to go, what was told."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.interview import Interview, Ranked
from weldwhy.model import Share
from weldwhy.report import minutes, percent
from weldwhy.tui.rows import BLANK, Row, bar, fit, row, rule, wrap

SHARE_WORDS = {
    "operator": "me",
    "machine": "machine",
    "material": "material",
    "consumable": "consumable",
}
"""A share as the welder says it."""

NARROW_TOP, LEAST_SHOWN = 3, 0.01


def side_rows(
    interview: Interview, width: int, height: int, wide: bool, ascii_only: bool
) -> list[Row]:
    """The side for its size: three causes and two lines, or full panels where there is room."""
    if not interview.ranked:
        return _told_rows(interview, width, height) if wide else []
    if wide:
        return _wide_rows(interview, width, height, ascii_only)
    return _narrow_rows(interview, width, height, ascii_only)


def to_go(interview: Interview) -> str:
    """The expected minutes in words; nothing where none can be told."""
    if not interview.ranked or interview.case.sound:
        return ""
    return f"{minutes(interview.expected_minutes).replace('minutes', 'min')} to a sound bead"


def _narrow_rows(interview: Interview, width: int, height: int, ascii_only: bool) -> list[Row]:
    """A heading that also tells the shares, the causes, and the last thing told."""
    shares = share_line(interview.shares, width - 1)
    roomy = len(shares) + 18 <= width
    rows = [rule("Most likely", width, shares if roomy else "")]
    lines = 2 if roomy else 3
    for ranked in interview.ranked[: max(height - lines, 1)]:
        rows.append(_one_line(interview, ranked, width, ascii_only))
    if not roomy:
        rows.append(row((f" {fit(shares, width - 1)}", "text")))
    told = interview.told
    if told:
        rows.append(row((" Told   ", "head"), (cut_front(told[-1], width - 9), "dim")))
    return rows[:height]


def share_line(shares: Mapping[Share, float], width: int) -> str:
    """Whose share it is, in words; where not all of them fit, the least are left out whole."""
    told = [(f"{SHARE_WORDS[share]} {percent(p)}", p) for share, p in shares.items()]
    whole = ", ".join(words for words, _ in told)
    if len(whole) <= width:
        return whole
    return ", ".join(words for words, p in told if p >= LEAST_SHOWN)


def _one_line(interview: Interview, ranked: Ranked, width: int, ascii_only: bool) -> Row:
    word = interview.likelihood_word(ranked.probability)
    number = _number(ranked.probability)
    bar_width = 12 if width >= 76 else 6
    name = width - bar_width - len(number) - 18
    return row(
        (f" {fit(ranked.cause.name, name)} ", "text"),
        *bar(ranked.probability, bar_width, ascii_only),
        (number, "strong"), (f"  {fit(word, 14)}", "text"),
    )  # fmt: skip


def _number(probability: float) -> str:
    """A percentage in its own column, clear of the bar before it."""
    return f" {percent(probability):>9}"


def _wide_rows(interview: Interview, width: int, height: int, ascii_only: bool) -> list[Row]:
    rows = [rule("Most likely", width)]
    top = 5 if height < 34 else 6
    for ranked in interview.ranked[:top]:
        if ranked.probability < LEAST_SHOWN and len(rows) > 2 * NARROW_TOP:
            break
        rows += _two_lines(interview, ranked, width, ascii_only)
    rows.append(row((f"something not in this list: {percent(interview.unlisted)}", "dim")))
    rows += [BLANK, rule("Is it me?", width)]
    for share, p in interview.shares.items():
        rows.append(
            row((fit(SHARE_WORDS[share], 12), "text"), *bar(p, width - 23, ascii_only),
                (_number(p), "strong"))
        )  # fmt: skip
    rows.append(BLANK)
    if height - len(rows) > 2:
        rows += _told_rows(interview, width, height - len(rows))
    return rows[:height]


def _two_lines(interview: Interview, ranked: Ranked, width: int, ascii_only: bool) -> list[Row]:
    word = interview.likelihood_word(ranked.probability)
    return [
        row((fit(ranked.cause.name, width), "text")),
        row(*bar(ranked.probability, width - 27, ascii_only),
            (_number(ranked.probability), "strong"), (f"  {word:<14}", "text")),
    ]  # fmt: skip


def _told_rows(interview: Interview, width: int, height: int) -> list[Row]:
    """The last things told, newest first, as many as there is room for."""
    rows = [rule("Told so far", width, "u undo" if interview.told else "")]
    for line in reversed(interview.told):
        if len(rows) >= height:
            break
        lines = wrap(line, width - 2)
        if len(lines) > 2:  # the answer stands at the end, so the front goes
            lines = wrap(cut_front(line, 2 * (width - 4)).rstrip(), width - 2)
        rows.append(row(("- ", "dim"), (lines[0], "text")))
        rows += [row(("  ", "dim"), (text, "text")) for text in lines[1:]]
    return rows[:height]


def cut_front(text: str, width: int) -> str:
    """`text` in at most `width` letters; what is cut is its beginning, at a word."""
    if len(text) <= width:
        return text
    kept = text[-(width - 3) :] if width > 3 else ""
    return f".. {kept.partition(' ')[2] or kept}"
