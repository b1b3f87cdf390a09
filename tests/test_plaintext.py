"""Nothing that is shown may drive the terminal."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.plaintext import clean, clean_lines, hidden

NASTY = st.text(alphabet="ab ;[]?\\0m\x07\x1b\x9b\x9d\x9c\n\r\t\u202e\u200b\u00e9\u2066\ud800")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("plain", "plain"),
        ("  two   blanks ", "two blanks"),
        ("\x1b[31mred\x1b[0m", "red"),
        ("\x1b]0;title\x07after", "after"),
        ("\x1b]8;;http://x\x1b\\link\x1b]8;;\x1b\\", "link"),
        ("\x9b2Jwiped", "wiped"),
        ("\x1bPdevice\x1b\\after", "after"),
        ("\x1b]never ends", ""),
        ("\x1b", ""),
        ("a\x1b(0b", "ab"),
        ("one\ntwo\r\nthree\tfour", "one two three four"),
        ("ab\u202ecd\u2066ef", "abcdef"),
        ("no\u00a0break", "no break"),
        ("caf\u00e9 \u00bd", "caf\u00e9 \u00bd"),
        ("[bold]not markup here[/]", "[bold]not markup here[/]"),
    ],
)
def test_only_what_can_be_seen_is_left(text: str, shown: str) -> None:
    assert clean(text) == shown


@given(NASTY)
def test_clean_text_is_one_printable_line_and_stays_clean(text: str) -> None:
    shown = clean(text)
    assert shown.isprintable()
    assert clean(shown) == shown
    assert hidden(shown) is None


@given(NASTY)
def test_clean_lines_are_printable(text: str) -> None:
    assert all(line.isprintable() for line in clean_lines(text))


def test_clean_lines_keep_their_margin() -> None:
    assert clean_lines("a\n  b \n\nc") == ["a", "  b", "", "c"]


def test_hidden_marks_are_found_and_tabs_and_line_ends_are_not_hidden() -> None:
    assert hidden("a\tb\nc\r") is None
    assert hidden("ab\x00") == 2
    assert hidden("\u2028") == 0
