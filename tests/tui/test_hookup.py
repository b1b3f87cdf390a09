"""The drawn hook-up: what hangs on which terminal can be seen, in any terminal."""

from __future__ import annotations

import pytest

from weldwhy.tui.cards.hookup import HookUp, hookup_rows, hookup_words
from weldwhy.tui.rows import joined

MIG = HookUp("gun", "plus", "minus", gas=True)
STICK = HookUp("rod holder", "plus", "minus", gas=False)
GASLESS = HookUp("gun", "minus", "plus", gas=False)
AC = HookUp("torch", "ac", "ac", gas=True)


def _row_with(hook: HookUp, text: str) -> str:
    return next(line.text for line in hookup_rows(hook, True) if text in line.text)


@pytest.mark.parametrize(
    ("hook", "gun", "clamp"),
    [(MIG, "plus (+)", "minus (-)"), (GASLESS, "minus (-)", "plus (+)"), (AC, "AC", "AC")],
)
def test_a_lead_joins_each_terminal_to_what_hangs_on_it(hook: HookUp, gun: str, clamp: str) -> None:
    assert f"{gun} +---+ {hook.holder}" in _row_with(hook, f"+ {hook.holder}")
    assert f"{clamp} +---+ work clamp" in _row_with(hook, "work clamp")


def test_the_words_say_the_same_as_the_drawing() -> None:
    assert hookup_words(GASLESS) == "Gun to minus (-), work clamp to plus (+)."
    assert hookup_words(STICK) == "Rod holder to plus (+), work clamp to minus (-)."
    assert "neither side is plus" in hookup_words(AC)


@pytest.mark.parametrize("hook", [MIG, STICK, GASLESS, AC])
def test_gas_is_drawn_only_where_there_is_gas(hook: HookUp) -> None:
    shown = joined(hookup_rows(hook, False))
    assert ("cylinder" in shown) is hook.gas
    assert ("regulator" in shown) is hook.gas
    assert ("gas in" in shown) is hook.gas


@pytest.mark.parametrize("ascii_only", [True, False])
@pytest.mark.parametrize("hook", [MIG, STICK, AC])
def test_the_drawing_fits_the_smallest_screen(hook: HookUp, ascii_only: bool) -> None:
    rows = hookup_rows(hook, ascii_only)
    assert len(rows) == 7
    assert all(line.width <= 59 for line in rows)
    assert all(line.text.isascii() for line in rows) or not ascii_only


def test_both_looks_have_the_same_words_in_the_same_places() -> None:
    def words(ascii_only: bool) -> list[str]:
        lines = (line.text for line in hookup_rows(MIG, ascii_only))
        return ["".join(c if c.isalnum() else " " for c in line).rstrip() for line in lines]

    assert words(True) == words(False)
