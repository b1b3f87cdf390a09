"""Slips of the pen: every word one slip away, and no looking where none is worth while."""

from __future__ import annotations

import pytest

from weldwhy.slips import LONGEST, may_be_misspelt, slips


@pytest.mark.parametrize("typed", ["porsity", "poorosity", "porasity", "proosity"])
def test_one_letter_less_more_other_or_two_changed_about_leads_back(typed: str) -> None:
    assert "porosity" in set(slips(typed))


def test_two_slips_do_not_lead_back() -> None:
    assert "porosity" not in set(slips("prosty"))


@pytest.mark.parametrize("word", ["gas", "a" * (LONGEST + 1), "e7018", "bøad"])
def test_what_is_too_short_too_long_or_no_word_is_left_alone(word: str) -> None:
    assert not may_be_misspelt(word)
    assert may_be_misspelt("bead")
