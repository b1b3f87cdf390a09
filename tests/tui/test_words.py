"""Words on the screen that were once wrong."""

from __future__ import annotations

import pytest

from weldwhy.advice import SettingAdvice
from weldwhy.case import Reported, Situated
from weldwhy.report import setting_line
from weldwhy.tui.cards.table import settings_rows

from .conftest import Begin
from .grid import text

FEED = SettingAdvice("wire_feed", "wire feed", "250 ipm", "250 ipm", "170 ipm", "275 ipm")
VOLTS = SettingAdvice("volts", "volts", "22 V", "19 V", "17.5 V", "20.5 V")


def test_a_number_that_is_right_is_left_and_one_that_is_not_is_changed() -> None:
    table = " ".join(row.text for row in settings_rows([VOLTS, FEED], 80))
    assert "-> 19 V" in table
    assert "leave it" in table
    assert "-> 250 ipm" not in table
    assert "leave it" in setting_line(FEED)
    assert "try 19 V" in setting_line(VOLTS)


@pytest.mark.parametrize(("job", "ranked"), [("stairs", False), ("", True)])
async def test_a_weld_that_is_not_to_be_mended_here_gets_no_ranking(
    begin: Begin, job: str, ranked: bool
) -> None:
    told = (Reported("holes"), Situated("process", "mig"), Situated("material", "steel"))
    app = begin(*told, Situated("job", job))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert ("Most likely" in text(app)) is ranked
