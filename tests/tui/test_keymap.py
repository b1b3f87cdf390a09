"""Keys of one's own: kept, shown, refused where they would do harm, and never lost for good."""

from __future__ import annotations

import json

import pytest

from weldwhy.case import Reported, Situated
from weldwhy.store import Preferences, Store
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.commands import ALL, BY_ID, commands_of
from weldwhy.tui.keymap import CHANGEABLE, FIXED, refused, usable
from weldwhy.tui.terminal import Terminal
from weldwhy.tui.themes import first_theme

from . import fake
from .conftest import NOW, Begin
from .grid import text

OPEN = (Reported("holes"), Situated("process", "mig"))


@pytest.mark.parametrize("key", ["1", "0", "escape", "enter", "down", "space", "ctrl+c", "tab", ""])
def test_keys_that_one_needs_are_refused(key: str) -> None:
    assert refused(BY_ID["undo"], key, {})


def test_a_key_of_another_command_on_the_same_screen_is_refused() -> None:
    assert refused(BY_ID["undo"], "s", {}) == 's is "skip" already'
    assert refused(BY_ID["undo"], "s", {"skip": "x"}) == ""
    assert refused(BY_ID["undo"], "q", {}) == 'q is "quit" already'


@pytest.mark.parametrize("place", ALL)
def test_no_two_commands_share_a_key_whatever_is_wanted(place: str) -> None:
    wanted = {command.id: "x" for command in CHANGEABLE} | {"help": "s", "skip": "h"}
    own, notices = usable(wanted)
    keys = [key for c in commands_of(place) for key in own.get(c.id, c.keys).split(",")]
    assert len(keys) == len(set(keys))
    assert len(own) + len(notices) == len(wanted)


def test_a_mark_written_as_itself_is_the_key_of_that_name() -> None:
    assert usable({"undo": ","}) == ({"undo": "comma"}, [])
    assert usable({"undo": "/", "search": "x"})[0] == {"undo": "slash", "search": "x"}
    own, notices = usable({"undo": "?"})
    assert own == {}
    assert '? is "help" already' in notices[0]


def test_who_wants_the_key_of_one_that_stays_cannot_have_it() -> None:
    """skip cannot have q, so it keeps s, so undo cannot have s: refusals are followed through."""
    own, notices = usable({"undo": "s", "skip": "q"})
    assert own == {}
    assert len(notices) == 2


def test_two_commands_can_trade_their_keys() -> None:
    assert usable({"undo": "s", "skip": "u"}) == ({"undo": "s", "skip": "u"}, [])


def test_what_cannot_be_had_is_said_in_a_line_each() -> None:
    own, notices = usable({"undoo": "x", "back": "x", "undo": "9", "facts": "x\x1b[2J"})
    assert own == {}
    assert len(notices) == 4
    assert 'did you mean "undo"?' in notices[0]
    assert all(line.isprintable() for line in notices)


def test_a_faulty_name_or_key_of_any_length_makes_one_short_line() -> None:
    _, notices = usable({"n" * 9000: "x", "undo": "k" * 9000, "skip": "\x1b[2J"})
    assert len(notices) == 3
    assert all(len(line) < 200 for line in notices)
    assert "that key is needed" in notices[2]


async def test_a_new_key_is_taken_shown_and_kept(begin: Begin, store: Store) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        at = [command.id for command in CHANGEABLE].index("undo") + 1
        await pilot.press("f3", "6", str(at), "s")
        assert 'S is "skip" already.' in text(app)
        await pilot.press("x")
        assert "x: undo" in text(app)
        await pilot.press("escape", "escape", "x")
        assert len(app.bench.case.entries) == 1
    again = WeldwhyApp(fake.rules(), Store(store.folder), lambda: NOW)
    assert again.own_keys == {"undo": "x"}


async def test_a_second_key_of_ones_own_leaves_the_first(begin: Begin, store: Store) -> None:
    store.preferences = Preferences(keys={"undo": "x"})
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        at = [command.id for command in CHANGEABLE].index("skip") + 1
        await pilot.press("f3", "6", str(at), "z", "escape", "escape")
    assert store.preferences.keys == {"undo": "x", "skip": "z"}


async def test_all_keys_go_back_to_what_they_were(begin: Begin, store: Store) -> None:
    store.preferences = Preferences(keys={"undo": "x"})
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f3", "6", "0", "escape", "escape", "u")
        assert len(app.bench.case.entries) == 1
    assert store.preferences.keys == {}


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_commands_of_one_name_are_told_apart(begin: Begin, size: tuple[int, int]) -> None:
    app = begin()
    async with app.run_test(size=size) as pilot:
        await pilot.press("f3", "6", "pagedown")
        shown = " ".join(text(app).split())
        assert "y: copy Copy the case as plain text to the clipboard." in shown
        assert "y: copy Copy the set-up sheet to the clipboard." in shown
        assert "part 1 of" not in shown


async def test_a_key_may_be_left_as_it_is(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f3", "6", "1", "escape", "escape", "escape")
        assert app.own_keys == {}
        assert "What does the flow gauge read" in text(app)


async def test_faulty_keys_in_the_file_are_said_and_do_no_harm(begin: Begin, store: Store) -> None:
    store.preferences = Preferences()
    path = store.folder / "preferences.json"
    wanted = {"undo": "5", "nonsense": "x", "skip": 7}
    path.write_text(json.dumps({"version": 1, "keys": wanted}), encoding="utf-8")
    app = WeldwhyApp(fake.rules(), Store(store.folder), lambda: NOW)
    async with app.run_test():
        shown = " ".join(text(app).split())
        assert 'no command "nonsense"' in shown
        assert '"undo" keeps its key' in shown
    assert app.own_keys == {}


async def test_the_look_is_kept(begin: Begin, store: Store) -> None:
    app = begin(*OPEN)
    async with app.run_test() as pilot:
        await pilot.press("f3", "5")
        assert "Colours: light" in text(app)
    again = WeldwhyApp(fake.rules(), Store(store.folder), lambda: NOW)
    assert again.theme == "weldwhy-light"


@pytest.mark.parametrize("colours", ["none", "8", "16"])
def test_a_terminal_of_few_colours_has_its_own_whatever_is_liked(colours: str) -> None:
    terminal = Terminal(colours=colours)  # type: ignore[arg-type]
    assert first_theme(terminal, "light") == "weldwhy-ansi"


def test_keys_one_could_be_lost_without_are_fixed() -> None:
    assert {"back", "take", "next"} <= FIXED
    assert {command.id for command in CHANGEABLE}.isdisjoint(FIXED)
