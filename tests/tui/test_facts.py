"""The optional facts: picked or typed, checked at once, and never lost by a wrong key."""

from __future__ import annotations

import pytest

from weldwhy.case import Measured, Reported, Situated
from weldwhy.model import Machine
from weldwhy.tui.screens.typed import LONGEST
from weldwhy.units import parse

from .conftest import Begin
from .grid import text

OPEN = (Reported("holes"), Situated("process", "mig"))


async def test_a_value_is_typed_and_kept(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", "2", *"1/8 in", "enter")
        assert app.bench.case.entries[-1] == Situated("thickness", "1/8 in")
        assert "Thickness: 1/8 in" in text(app)


@pytest.mark.parametrize(("field", "typed"), [("2", "blue"), ("5", "900 V"), ("6", "3 mm")])
async def test_a_bad_value_gets_one_plain_line_under_its_field(
    begin: Begin, field: str, typed: str
) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", field, *typed, "enter")
        lines = text(app).splitlines()
        at = next(y for y, line in enumerate(lines) if f"{typed}_" in line)
        assert lines[at + 1].strip()
        assert "Such as" not in lines[at + 1]
        assert app.bench.case.entries == OPEN


async def test_a_bad_value_can_be_mended_or_left(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", "5", *"18.5 X", "enter", "backspace", "V", "enter")
        assert app.bench.case.entries[-1] == Measured("volts", "18.5 V")
        await pilot.press("5", "1", "escape")
        assert app.bench.case.measured == {"volts": "18.5 V"}
        await pilot.press("5", "ctrl+u", "enter")
        assert app.bench.case.measured == {}


async def test_letters_that_are_keys_elsewhere_are_only_letters_while_typing(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", "2", *"qsu0?:", "f1")
        assert "Thickness: qsu0?:_" in text(app)
        assert app.bench.case.entries == OPEN


async def test_a_long_value_is_cut_and_crashes_nothing(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", "2", *("9" * (LONGEST + 5)), "enter")
        assert app.bench.case.entries == OPEN


async def test_metal_place_and_job_are_picked(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", "1", "2", "3", "2", "4", "1", "0")
        case = app.bench.case
        assert (case.material, case.place, case.job) == ("alu", "outdoors", "scrap")


async def test_not_knowing_the_metal_is_told_so_that_it_is_not_asked_again(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f", "1", "0")
        assert app.bench.case.told("material") == ""


MARKED = Machine(
    "shed", "shed machine", ("mig",),
    dials={"volts": {"1": parse("14 V", "voltage"), "5": parse("22 V", "voltage")}},
)  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "kept"), [("4", "20 V"), ("mark 3", "18 V"), ("19 V", "19 V"), ("4.5", "21 V")]
)
async def test_a_mark_on_the_dial_will_do_where_its_marks_are_known(
    begin: Begin, typed: str, kept: str
) -> None:
    app = begin(*OPEN)
    app.bench.change_machine(MARKED)
    async with app.run_test() as pilot:
        await pilot.press("f", "5")
        assert "or the mark on your dial" in text(app)
        await pilot.press(*typed, "enter")
        assert app.bench.case.measured == {"volts": kept}


async def test_a_mark_that_the_dial_has_not_is_no_value(begin: Begin) -> None:
    app = begin(*OPEN)
    app.bench.change_machine(MARKED)
    async with app.run_test() as pilot:
        await pilot.press("f", "5", *"mark 9", "enter")
        assert app.bench.case.measured == {}
        assert 'cannot read "mark 9"' in text(app)
