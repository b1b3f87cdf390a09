"""Help: what the keys do on the screen one came from, made from the table of commands."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.tui.commands import (
    ALL,
    CASE,
    FACTS,
    GALLERY,
    LEAF,
    LIST,
    LOOKUP,
    PAGE,
    PLAN,
    SAY,
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
    GALLERY: (
        "Each picture is drawn from above and cut through, or shows the wire, the arc or the "
        "hook-up. A digit looks at one closely; what is often taken for it can be compared there.",
        "A picture that is picked counts as what it shows, or as one of those that look like it: "
        "the guide goes on asking until it knows which.",
    ),
    SAY: (
        "Write as you would tell a mate: what you see and hear, on what, with which settings, what "
        "you changed and what you tried. Enter ends it.",
        "What was understood comes back as lines to be struck out; what was not is said. Nothing "
        "of it leaves this machine.",
    ),
    LOOKUP: (
        "Type what you look for: a name, another name, or how you would say it. What is found "
        "stands below, the best first; its digit opens the page, enter the first one.",
        "A digit goes on writing where a name goes on with it, as in E7018; a number such as 6061 "
        "begins with a blank. With nothing typed you can browse. Other places have F5 to F9 here.",
    ),
    LEAF: (
        "A digit follows the link before which it stands; on each part the digits begin anew. "
        "Esc or backspace goes back the way you came.",
        "Where two things have to do with each other, the page of each leads to the other.",
    ),
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
