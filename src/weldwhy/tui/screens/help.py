"""Help: what the keys do on the screen one came from, made from the table of commands."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.tui.commands import (
    ALL,
    CASE,
    FACTS,
    LIST,
    PAGE,
    PLAN,
    SUM,
    bindings_of,
    commands_of,
    shown_keys,
)
from weldwhy.tui.rows import BLANK, Row, inset, paragraph, row, rule
from weldwhy.tui.screens.base import PageScreen

ABOUT = {
    CASE: (
        "The guide asks one thing at a time. Answer with the digit before the answer; 0 is "
        "always don't know. Cautions stand above the step they belong to: read them first.",
        "Percentages say how likely each cause is with what was told so far. Nothing is ever "
        "certain: a test bead decides.",
    ),
    LIST: ("Choose with a digit, or with the arrow keys and enter.",),
    FACTS: (
        "Choose a line with its digit and fill it in. Whatever you leave blank counts as "
        "don't know. Numbers may have any unit: 1/8 in, 18 ga, 3 mm, 250 ipm, 25 cfh.",
    ),
    SUM: (
        "A line's digit opens it; Enter keeps what is typed, esc leaves it as it was.",
        "The result is worked out anew with every letter. What you did not fill in stands at an "
        "example; 0 goes back to the list.",
    ),
    PLAN: (
        "PgDn leads through the plan: hook-up, what goes in, start values, checklist, test bead. "
        "A digit ticks a step off. Ticks are kept; they go when you change what is wanted.",
    ),
    PAGE: ("A page to read. Esc goes back.",),
}


class HelpScreen(PageScreen[None]):
    """Explains the commands of one place."""

    BINDINGS = bindings_of(PAGE)

    def __init__(self, about: str) -> None:
        super().__init__()
        self._about = about if about in ALL else PAGE

    def title_texts(self) -> tuple[str, str]:
        return "Help", ""

    def rows(self, width: int, height: int) -> Sequence[Row]:
        rows: list[Row] = []
        for text in ABOUT[self._about]:
            rows += inset(text, width)
        rows += [BLANK, rule("Keys", width)]
        if self._about != PAGE:
            rows.append(row((f" {'1 to 9':<13}", "key"), ("take the line of that number", "text")))
        for command in commands_of(self._about):
            keys = ", ".join(shown_keys(command, self.program.own_keys))
            text = f"{command.label}: {command.help}"
            rows += paragraph(text, width - 1, "text", (f" {keys:<13}", "key"))
        return rows

    def action_help(self) -> None:
        self.action_back()
