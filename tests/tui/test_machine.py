"""The machine's form: every line is guided, checked, and kept as soon as it is entered."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.replay import shipped_rules

from weldwhy.store import Store
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.screens.machine import MachineScreen

from .conftest import NOW, Begin
from .grid import text

NAME, NOTE, START, FIRST_PROCESS, STICK = "1", "2", "3", "4", "7"
"""Digits of the first nine lines."""
VOLTS, FEED, AMPS, STICK_AMPS, DUTY, VOLT_MARKS = "1", "2", "3", "4", "6", "7"
"""Digits of the next nine."""


@pytest.fixture
def app(store: Store) -> WeldwhyApp:
    return WeldwhyApp(shipped_rules(), store, lambda: NOW)


def _file(store: Store) -> str:
    return (store.machine_text() or b"").decode()


async def test_a_key_goes_there_and_esc_goes_back_to_the_weld(app: WeldwhyApp) -> None:
    async with app.run_test() as pilot:
        before = text(app)
        await pilot.press("m")
        assert isinstance(app.screen, MachineScreen)
        assert "Name: small machine, 180 A class" in text(app)
        assert "The guide takes this one until you change a line." in text(app)
        await pilot.press("escape")
        assert text(app) == before
        await pilot.press("m", "0")
        assert text(app) == before


async def test_all_lines_can_be_reached_nine_at_a_time(app: WeldwhyApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("m")
        seen = text(app)
        for _ in range(2):
            await pilot.press("pagedown")
            seen += text(app)
    for name in (
        "Start from another machine", "Stick: yes", "TIG on AC (aluminium): no",
        "Volts: 13 V to 24 V",
        "Wire feed: 60 ipm to 500 ipm", "Amps: 30 A to 180 A", "Amps, stick: 20 A to 160 A",
        "Duty cycle: 20 % at 180 A", "Marks for volts: not told", "Marks for wire feed: not told",
        "Mains voltage: 230 V", "Breaker or fuse: 30 A", "Cable of gun or torch: 10 ft",
        "Work lead: 10 ft", "Section of the leads: 25 mm2", "Extension cord: not told",
    ):  # fmt: skip
        assert name in seen


async def test_a_line_that_is_typed_is_kept_at_once(app: WeldwhyApp, store: Store) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m", "pagedown", AMPS, "ctrl+u", *"25 A to 170 A", "enter")
        assert "Amps: 25 A to 170 A" in text(app)
        assert "amps: 25 A to 170 A" in _file(store)
        assert f"Yours, kept in {store.machine_file}"[:70] in text(app).replace("\n ", " ")
        await pilot.press(AMPS, "ctrl+u", *"30-180 A", "enter")
        assert "amps: 30 A to 180 A" in _file(store)


async def test_while_typing_it_is_said_what_the_line_is_for_and_where_it_is_read_off(
    app: WeldwhyApp,
) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m", "pagedown", DUTY)
        assert "How long of ten minutes it may weld" in text(app)
        assert "plate" in text(app)
        assert 'Such as "20 % at 180 A, 60 % at 104 A"' in text(app)


async def test_every_line_says_what_it_is_for(app: WeldwhyApp) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m")
        assert isinstance(app.screen, MachineScreen)
        for line in app.screen.fields():
            assert line.about or line.id.startswith(("can.", "start"))


@pytest.mark.parametrize(
    ("line", "typed", "fault"),
    [
        (VOLTS, "18 V", '"18 V" is no range; write it like "5 V to 60 V"'),
        (FEED, "30-80", "needs its unit"),
        (DUTY, "often", 'write it like "30 % at 130 A"'),
        (VOLT_MARKS, "1 = 13 V, 2 = 12 V, 3 = 13 V", "must all rise, or all fall"),
        (VOLT_MARKS, "high", 'write it like "1 = 13 V, 10 = 24 V"'),
    ],
)
async def test_bad_text_gets_one_plain_line_and_nothing_is_kept(
    app: WeldwhyApp, store: Store, line: str, typed: str, fault: str
) -> None:
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.press("m", "pagedown", line, "ctrl+u", *typed, "enter")
        lines = text(app).splitlines()
        at = next(y for y, shown in enumerate(lines) if f"{typed}_" in shown)
        assert fault in lines[at + 1]
        await pilot.press("escape")
        assert not store.machine_file.exists()


async def test_a_dial_with_many_marks_can_be_typed_whole(app: WeldwhyApp, store: Store) -> None:
    marks = ", ".join(f"{letter} = {13 + at} V" for at, letter in enumerate("ABCDEFGHIJ"))
    assert len(marks) > 60
    async with app.run_test() as pilot:
        await pilot.press("m", "pagedown", VOLT_MARKS, *marks, "enter")
        assert "J: 22 V" in _file(store)
        await pilot.press(VOLT_MARKS, "backspace", "V", "enter")
        assert "J: 22 V" in _file(store)


async def test_a_process_is_turned_off_and_on(app: WeldwhyApp, store: Store) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m", STICK)
        assert "Stick: no" in text(app)
        assert "smaw" not in _file(store).splitlines()[2]
        await pilot.press(STICK)
        assert "processes: [gmaw, fcaw-s, fcaw-g, smaw, gtaw-dc]" in _file(store)


async def test_the_last_process_cannot_be_turned_off(app: WeldwhyApp, store: Store) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m", *"45678")
        assert "A machine can do at least one of these." in text(app)
        assert "processes: [gtaw-dc]" in _file(store)
        await pilot.press("4")
        assert "A machine can do" not in text(app)


async def test_another_machine_can_be_started_from_and_yours_is_kept(
    app: WeldwhyApp, store: Store
) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m", NAME, "ctrl+u", *"blue box", "enter", START, "0")
        assert app.bench.machine.name == "blue box"
        await pilot.press(START, "2")
        assert "household machine" in text(app)
        assert "another machine was begun" in " ".join(text(app).split())
    (kept,) = store.folder.glob("*.kept")
    assert "blue box" in kept.read_text(encoding="utf-8")


async def test_a_broken_file_is_said_and_survives_a_change(app_folder: Path) -> None:
    broken = "name: x\nprocesses: [gmaw]\nsuply: 230 V\n"
    app_folder.mkdir(parents=True)
    (app_folder / "machine.yaml").write_text(broken, encoding="utf-8")
    app = WeldwhyApp(shipped_rules(), Store(app_folder), lambda: NOW)
    async with app.run_test() as pilot:
        assert 'unknown key "suply"' in text(app).replace("\n ", " ")
        await pilot.press("m")
        assert "A change here begins a new file" in " ".join(text(app).split())
        await pilot.press(NAME, "ctrl+u", *"mine", "enter")
        assert app.bench.machine.name == "mine"
        assert (app_folder / "machine.yaml.kept").read_text(encoding="utf-8") == broken


@pytest.fixture
def app_folder(tmp_path: Path) -> Path:
    return tmp_path / "cases"


async def test_the_guide_uses_the_machine_from_the_next_screen_on(app: WeldwhyApp) -> None:
    async with app.run_test() as pilot:
        await pilot.press("m", "pagedown", AMPS, "ctrl+u", *"30 A to 90 A", "enter", "escape")
        machine = app.bench.interview.machine
        assert machine is not None
        assert [end.value for end in machine.limits["amps"]] == [30, 90]


async def test_rules_without_machines_or_settings_break_nothing(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("m")
        assert "Name: any machine" in text(app)
        await pilot.press(START)
        await pilot.press("escape", NAME, "ctrl+u", *"mine", "enter")
        assert app.bench.machine.name == "mine"


async def test_each_nine_lines_fit_a_small_terminal_whole(app: WeldwhyApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("m")
        for ends in ("1 to 9", "10 to 18", "19 to 24"):
            shown = text(app)
            assert shown.isascii()
            assert f"{ends} of 24" in shown
            assert "Back to the weld" in shown
            await pilot.press("pagedown")


async def test_every_line_can_be_reached_on_the_smallest_terminal(app: WeldwhyApp) -> None:
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("m")
        seen = ""
        for _ in range(8):
            seen += text(app)
            await pilot.press("pagedown")
    assert "Name: small machine" in seen
    assert "Extension cord: not told" in seen
