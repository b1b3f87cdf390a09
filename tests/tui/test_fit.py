"""With the rules that come with the program, a step and the top three causes fit 80x24."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.case import Case, Reported, Situated
from weldwhy.interview import Interview
from weldwhy.tui.cards.card import lay_out
from weldwhy.tui.cards.step import step_card

WIDTH, ROWS = 80, 24 - 1 - 5 - 1
"""The window without the top line, the causes (a heading, three, what was told), the keys."""


def _interview(process: str) -> Interview:
    return Interview(shipped_rules(), Case((Reported("porosity"), Situated("process", process))))


@pytest.mark.parametrize("check", list(shipped_rules().checks))
def test_a_check_fits_with_its_cautions_and_answers(check: str) -> None:
    about = shipped_rules().checks[check]
    process = about.processes[0] if about.processes else "gmaw"
    card = step_card(_interview(process).ask(check), "", reading="gas flow" * bool(about.setting))
    rows = lay_out(card, WIDTH, ROWS)
    assert len(rows) <= ROWS, "shorten the question, its answers, or its cautions"
    assert all(row.width <= WIDTH for row in rows)


@pytest.mark.parametrize("cause", list(shipped_rules().causes))
def test_a_remedy_fits_or_at_least_begins_with_all_its_cautions(cause: str) -> None:
    interview = _interview(shipped_rules().causes[cause].processes[0])
    for number, advice in enumerate(interview.remedies(cause)):
        card = step_card(interview.remedy(cause, number), "", advice.settings, lens=interview.lens)
        rows = lay_out(card, WIDTH, ROWS)
        if len(rows) > ROWS:  # cut in two: what is done must stand on the first part
            first = " ".join(" ".join(row.text for row in rows[: ROWS - 1]).split())
            assert " ".join(advice.remedy.do.split()) in first
        assert all(row.width <= WIDTH for row in rows)
