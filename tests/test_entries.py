"""What people typed, as entries: of a kept case only what these rules know is taken up again."""

from __future__ import annotations

import pytest

from weldwhy.case import Answered, Case, Entry, Reported, Resembled, Supposed, Suspected
from weldwhy.entries import still_known
from weldwhy.model import RuleBase

from .engine.small import base, cause, check

RULES: RuleBase = base([cause("tip-worn")], [check("tip-look")])
KNOWN: tuple[Entry, ...] = (
    Reported("bad"), Resembled("bad"), Answered("tip-look", "yes"), Supposed("tip-look", "yes"),
    Suspected("tip-worn"),
)  # fmt: skip


def test_what_the_rules_know_is_all_kept() -> None:
    assert still_known(RULES, Case(KNOWN)) == (Case(KNOWN), 0)


@pytest.mark.parametrize(
    "gone",
    [
        Reported("gone"), Resembled("gone"), Answered("gone", "yes"), Answered("tip-look", "gone"),
        Supposed("gone", "yes"), Supposed("tip-look", "gone"), Suspected("gone"),
    ],
)  # fmt: skip
def test_what_they_no_longer_know_is_left_out_and_counted(gone: Entry) -> None:
    assert still_known(RULES, Case((*KNOWN, gone))) == (Case(KNOWN), 1)
