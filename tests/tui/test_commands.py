"""One table of commands: bindings, bottom line, palette and help agree with it."""

from __future__ import annotations

import pytest
from textual.binding import Binding

from weldwhy.case import Answered, Passed, Reported, Situated
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.commands import ALL, COMMANDS, PROGRAM_WIDE, bindings_of, commands_of, footer_of
from weldwhy.tui.footer import FooterKey, footer_row
from weldwhy.tui.screens.arithmetic import SumScreen
from weldwhy.tui.screens.cardscreen import PickScreen
from weldwhy.tui.screens.case import CaseScreen
from weldwhy.tui.screens.facts import FactsScreen
from weldwhy.tui.screens.gallery import GalleryScreen
from weldwhy.tui.screens.help import HelpScreen
from weldwhy.tui.screens.leaf import LeafScreen
from weldwhy.tui.screens.lookup import LookupScreen
from weldwhy.tui.screens.plan import PlanScreen
from weldwhy.tui.screens.say import SayScreen

from .conftest import NOW, Begin
from .grid import text

OPEN = (Reported("holes"), Situated("process", "mig"))
SCREENS = {
    "case": CaseScreen, "list": PickScreen, "facts": FactsScreen, "plan": PlanScreen,
    "sum": SumScreen, "page": HelpScreen, "gallery": GalleryScreen, "say": SayScreen,
    "lookup": LookupScreen, "leaf": LeafScreen,
}  # fmt: skip


@pytest.mark.parametrize("place", ALL)
def test_five_keys_at_most_stand_on_the_bottom_line_and_fit_80_columns(place: str) -> None:
    commands = [c for c in COMMANDS if place in c.footer and place in c.where]
    assert len(commands) <= 5
    keys = [FooterKey("backspace" if c.id == "undo" else "F10", c.label) for c in commands]
    row = footer_row(keys, 80)
    assert row.width <= 80
    assert all(key.label in row.text for key in keys)


def test_a_key_that_does_not_fit_is_left_out_whole() -> None:
    keys = [FooterKey("a", "first"), FooterKey("b", "second")]
    assert footer_row(keys, 14).text.split() == ["a", "first"]


def test_ids_are_unique_and_every_command_is_explained() -> None:
    assert len({command.id for command in COMMANDS}) == len(COMMANDS)
    assert all(command.help.endswith((".", "?")) for command in COMMANDS)


@pytest.mark.parametrize("place", ALL)
def test_no_key_means_two_things_on_one_screen(place: str) -> None:
    keys = [key for command in commands_of(place) for key in command.keys.split(",")]
    assert len(set(keys)) == len(keys)
    assert not set(keys) & set("123456789")


@pytest.mark.parametrize("place", ALL)
def test_every_command_has_its_action(place: str) -> None:
    for command in commands_of(place):
        owner = WeldwhyApp if command.id in PROGRAM_WIDE else SCREENS[place]
        assert hasattr(owner, f"action_{command.id}"), command.id
    bound = {b.id for b in bindings_of(place) if isinstance(b, Binding) and b.id}
    assert bound == {c.id for c in commands_of(place)} - set(PROGRAM_WIDE)


async def test_help_explains_every_command_of_the_screen_it_was_asked_on(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test(size=(80, 60)) as pilot:
        await pilot.press("question_mark")
        shown = " ".join(text(app).split())
        assert all(f"{c.label}: {c.help}" in shown for c in commands_of("case"))
        await pilot.press("f1")
        assert "What does the flow gauge read" in text(app)


async def test_a_command_is_found_by_a_part_of_its_words(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f2", *"leave this", "1")
        assert app.bench.case.entries[-1] == Passed("flow", "skip")
        await pilot.press("f2", *"zzz")
        assert "Nothing found." in text(app)
        await pilot.press("enter", "escape")
        assert "Is the air moving" in text(app)


async def test_enter_takes_the_first_command_that_was_found(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("f2", *"patience", "enter")
        assert "Choose a line to change it." in text(app)


async def test_the_palette_can_leave_the_program(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f2", *"leave. the", "1")
    assert app.return_value == 0


async def test_keys_can_be_changed_and_are_shown_as_changed(begin: Begin) -> None:
    made = begin(*OPEN, Answered("flow", "right"))
    app = WeldwhyApp(
        made.bench.rules, made.bench.store, lambda: NOW, own_keys={"undo": "x", "facts": "f12"}
    )
    async with app.run_test() as pilot:
        await pilot.press("1")
        assert "x undo" in text(app)
        await pilot.press("u")
        assert len(app.bench.case.entries) == 3
        await pilot.press("x")
        assert len(app.bench.case.entries) == 2


async def test_preferences_are_kept_at_once(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f3", "1", "2", "3", "4")
        kept = app.bench.store.preferences
        assert (kept.units, kept.patience, kept.ascii, kept.mouse) == (
            "in",
            "thorough",
            True,
            False,
        )
        await pilot.press("escape")
        assert "What does the flow gauge read" in text(app)


async def test_every_look_can_be_had(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        seen = []
        for _ in range(4):
            seen.append(app.theme)
            await pilot.press("f4")
        assert seen == ["weldwhy-dark", "weldwhy-light", "weldwhy-ansi", "weldwhy-dark"]


@pytest.mark.parametrize(("key", "code"), [("q", 0), ("ctrl+c", 130)])
async def test_leaving_keeps_the_case(begin: Begin, key: str, code: int) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press(key)
    assert app.return_value == code
    left = app.bench.store.resume()
    assert left is not None
    assert left.entries == OPEN


async def test_everything_told_has_a_page(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("t")
        assert "1  holes in the bead" in text(app)


def test_footers_name_only_commands_of_their_screen() -> None:
    assert all(place in c.where for place in ALL for c in footer_of(place))
