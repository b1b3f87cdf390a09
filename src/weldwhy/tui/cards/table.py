"""The corrective settings: yours -> try -> allowed range."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from weldwhy.report import setting_line
from weldwhy.tui.rows import Row, beside, fit, inset, row, tied

if TYPE_CHECKING:
    from weldwhy.advice import SettingAdvice

YOURS, TRY = 13, 16
NARROW = 66
"""Below this width each setting is a line of words instead of a row of a table."""

APART = 3
"""Cells between the table and a picture beside it."""

NOTHING_KNOWN = "Tell metal, thickness and sizes (facts) to get numbers for: {}."


def settings_rows(settings: Sequence[SettingAdvice], width: int) -> list[Row]:
    """The table, the settings nothing is known of in one line, and the notes."""
    known = [s for s in settings if s.yours or s.best]
    rows = _table(known, width) if width >= NARROW else _lines(known, width)
    notes = list(dict.fromkeys(s.note for s in known if s.note))
    unknown = [s.name for s in settings if not s.best]
    if unknown and not notes:
        notes = [NOTHING_KNOWN.format(", ".join(unknown))]
    for note in notes:
        rows += inset(note, width, "dim")
    return rows


def pictured_rows(
    settings: Sequence[SettingAdvice], drawing: Sequence[Row], width: int
) -> list[Row]:
    """The table with a picture at its right where the page is wide, else below it."""
    room = width - max((line.width for line in drawing), default=0) - APART
    if drawing and room >= NARROW:
        return beside(settings_rows(settings, room), drawing, room + APART)
    return [*settings_rows(settings, width), *tied(drawing)]


def _table(settings: Sequence[SettingAdvice], width: int) -> list[Row]:
    if not settings:
        return []
    name = max(len(s.name) for s in settings) + 2
    head = f" {'':{name}}{'yours':<{YOURS}}{'   try':<{TRY}}allowed"
    rows = [row((head, "dim"))]
    for s in settings:
        better = "leave it" if s.best == s.yours else f"-> {s.best}"
        rows.append(
            row(
                (f" {fit(s.name, name)}{fit(s.yours or 'not told', YOURS)}", "text"),
                (fit(better if s.best else "", TRY), "strong"), (s.allowed, "text"),
            )
        )  # fmt: skip
    return rows


def _lines(settings: Sequence[SettingAdvice], width: int) -> list[Row]:
    return [line for s in settings for line in inset(setting_line(s).partition(" (")[0], width)]
