"""Rows: nothing is lost, nothing is too wide, whatever the text."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from weldwhy.model import Share
from weldwhy.plaintext import clean
from weldwhy.tui.cards.card import Card, Choice, lay_out, text_body
from weldwhy.tui.cards.side import cut_front, share_line
from weldwhy.tui.rows import bar, fit, joined, paragraph, rule, wrap

TEXTS = st.text(max_size=200)
WIDTHS = st.integers(2, 120)


@given(TEXTS, WIDTHS, st.integers(0, 12))
def test_wrapping_loses_no_letter_and_passes_no_edge(text: str, width: int, taken: int) -> None:
    lines = wrap(text, width, taken)
    assert "".join("".join(lines).split()) == "".join(clean(text).split())
    assert all(cell_len(line) <= width for line in lines)
    assert cell_len(lines[0]) <= max(width - taken, 2)


@given(TEXTS, st.integers(0, 120))
def test_fitting_gives_exactly_the_width(text: str, width: int) -> None:
    assert cell_len(fit(text, width)) == width


@given(st.text(st.characters(codec="ascii"), max_size=80), st.integers(30, 100))
def test_a_heading_is_as_wide_as_its_page(title: str, width: int) -> None:
    assert rule(title[: width - 10], width).width == width


def test_a_bar_is_as_wide_as_asked_and_never_empty_for_a_live_cause() -> None:
    for share in (0.0, 0.01, 0.5, 1.0):
        full, rest = bar(share, 16)
        assert len(full[0]) + len(rest[0]) == 16
    assert bar(0.01, 16)[0][0] == " "
    assert bar(0.5, 16, ascii_only=True)[0] == ("#" * 8, "text")


@given(st.text(st.characters(codec="ascii"), max_size=80), st.integers(4, 60))
def test_what_is_cut_is_the_front(text: str, width: int) -> None:
    assert len(cut_front(text, width)) <= width
    assert cut_front(text, width)[-1:] == text[-1:]


def test_whose_share_it_is_is_told_whole_or_without_the_least() -> None:
    shares: dict[Share, float] = {
        "operator": 0.91,
        "machine": 0.004,
        "material": 0.004,
        "consumable": 0.08,
    }
    whole = "me 91 %, machine under 1 %, material under 1 %, consumable 8 %"
    assert share_line(shares, len(whole)) == whole
    assert share_line(shares, len(whole) - 1) == "me 91 %, consumable 8 %"


def test_a_short_first_line_hangs_under_what_opens_it() -> None:
    rows = paragraph("one two three", 12, "text", ("  1  ", "key"))
    assert joined(rows) == "  1  one two\n     three"


def test_no_cut_of_a_page_parts_a_choice_from_its_note() -> None:
    choices = (Choice("Yes", "y", note="a long note of two rows"), Choice("No", "n"))
    rows = lay_out(Card(text_body([("Ask?", "strong")]), choices), 20, 40)
    cuts = [line.text.strip() for line in rows if line.spans and not line.tied]
    assert cuts == ["Ask?", "1  Yes", "2  No"]


def test_blank_rows_go_before_choices_stand_side_by_side() -> None:
    card = Card(text_body([("Ask?", "strong")]), (Choice("Yes", "y"), Choice("No", "n")))
    assert joined(lay_out(card, 40, 9)) == "\n Ask?\n\n  1  Yes\n\n  2  No"
    assert joined(lay_out(card, 40, 5)) == "\n Ask?\n\n  1  Yes\n  2  No"
    assert joined(lay_out(card, 40, 3)) == " Ask?\n  1  Yes\n  2  No"
    assert joined(lay_out(card, 40, 2)) == " Ask?\n  1  Yes   2  No"
