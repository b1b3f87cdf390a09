"""What is sent to the terminal: only what it can take, little of it, and it is left in order."""

from __future__ import annotations

import re
import signal
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from rich.cells import cell_len

from weldwhy.case import Case, Reported, Situated
from weldwhy.store import Store
from weldwhy.tui.driver import to_ascii, to_colours
from weldwhy.tui.terminal import Terminal, look
from weldwhy.tui.themes import first_theme
from weldwhy.tui.thrift import Thrift

from .emulator import Emulator
from .onpty import OnPty

UTF8 = {"TERM": "xterm-256color", "COLORTERM": "truecolor", "LANG": "C.UTF-8"}
CONSOLE = {"TERM": "linux", "LANG": "C.UTF-8"}
POOR = {
    "TERM": "linux", "LC_ALL": "C", "NO_COLOR": "1", "PYTHONUTF8": "0",
    "PYTHONCOERCECLOCALE": "0",
}  # fmt: skip
OPEN = Case((Reported("porosity"), Situated("process", "gmaw"), Situated("material", "mild-steel")))


@pytest.mark.parametrize(
    ("environ", "encoding", "expected"),
    [
        (UTF8, "utf-8", Terminal(False, "many")),
        (CONSOLE, "UTF-8", Terminal(False, "8")),
        ({"TERM": "xterm-16color"}, "utf-8", Terminal(False, "16")),
        ({"TERM": "screen", "LANG": "C"}, "ANSI_X3.4-1968", Terminal(True, "8")),
        ({**UTF8, "LC_ALL": "C"}, "utf-8", Terminal(True, "many")),
        ({**UTF8, "LC_ALL": "POSIX"}, "utf-8", Terminal(True, "many")),
        ({**UTF8, "LC_ALL": "C.UTF-8"}, "utf-8", Terminal(False, "many")),
        ({**UTF8, "NO_COLOR": "1"}, "latin-1", Terminal(True, "none")),
        ({**UTF8, "COLORFGBG": "0;15"}, None, Terminal(True, "many", dark=False)),
    ],
)
def test_the_poorer_reading_wins_when_in_doubt(
    environ: dict[str, str], encoding: str | None, expected: Terminal
) -> None:
    assert look(environ, encoding) == expected


def test_only_a_terminal_with_many_colours_gets_a_tinted_look() -> None:
    assert first_theme(Terminal()) == "weldwhy-dark"
    assert first_theme(Terminal(dark=False)) == "weldwhy-light"
    assert first_theme(Terminal(colours="8")) == first_theme(Terminal(colours="none"))


@example("\u3250\uff21")  # wide signs that stand for narrow letters
@given(st.text(max_size=60))
def test_ascii_keeps_the_width(text: str) -> None:
    made = to_ascii(text)
    assert made.isascii()
    assert len(made) == sum(1 if mark.isascii() else cell_len(mark) for mark in text)


@pytest.mark.parametrize(
    ("colours", "sent"),
    [
        ("none", "\x1b[1mA\x1b[0mB\x1b[7mC\x1b[2;4HD"),
        ("8", "\x1b[1;31;40mA\x1b[0mB\x1b[7mC\x1b[2;4HD"),
    ],
)
def test_colours_are_reduced_and_nothing_else(colours: str, sent: str) -> None:
    data = "\x1b[1;91;40mA\x1b[0m\x1b[38;2;1;2;3mB\x1b[48;5;9;7mC\x1b[2;4HD"
    assert to_colours(data, colours) == sent  # type: ignore[arg-type]


def test_bright_black_does_not_vanish_on_a_black_screen() -> None:
    assert to_colours("\x1b[90mA", "8") == "\x1b[37mA"


STYLES = st.sampled_from(["", "1", "7;31", "38;2;1;2;3;48;2;39;49;0"])
WORDS = st.lists(st.sampled_from(["a", "b", " ", "\u6f22", "e\u0301"]), max_size=8).map("".join)
PIECES = st.one_of(
    st.builds(lambda y, x: f"\x1b[{y};{x}H", st.integers(1, 4), st.integers(1, 12)),
    st.builds(lambda style, text: f"\x1b[{style}m{text}\x1b[0m" if style else text, STYLES, WORDS),
    st.sampled_from(["\x1b[?25l", "\x1b[2J\x1b[H", "\x1b]52;c;YQ==\x07"]),
)


@example([["a", "\x1b[1;3H", "a"]])
@example([["\u6f22", "\x1b[1;1H", "a"]])
@example([["\u6f22", "\x1b[1;2H", "a"]])  # the right half of a wide sign is written over
@example([["a\u6f22b"], ["a\u6f22a"]])
@example([["e\u0301b"], ["e\u0301a"]])
@given(st.lists(st.lists(PIECES, max_size=6), max_size=6))
def test_thrift_changes_what_is_sent_and_not_what_is_seen(writes: list[list[str]]) -> None:
    plain, thrifty, thrift = Emulator(), Emulator(), Thrift()
    for pieces in writes:
        # Every write of the framework says first where it writes.
        data = "\x1b[1;1H" + "".join(pieces)
        plain.take(data)
        thrifty.take(thrift.reduce(data))
        assert thrifty.seen() == plain.seen()


def test_thrift_sends_nothing_when_nothing_changes() -> None:
    thrift = Thrift()
    thrift.reduce("\x1b[1;1H\x1b[1mone\x1b[0m two")
    assert thrift.reduce("\x1b[1;1H\x1b[1mone\x1b[0m two") == ""
    assert thrift.reduce("\x1b[1;1H\x1b[1mone\x1b[0m tea") == "\x1b[1;6Hea"
    thrift.forget()
    assert "one" in thrift.reduce("\x1b[1;1H\x1b[1mone\x1b[0m two")


@pytest.fixture
def home(tmp_path: Path) -> Path:
    Store(tmp_path).save(OPEN)
    return tmp_path


@pytest.mark.parametrize("environ", [UTF8, CONSOLE, POOR])
def test_an_answer_costs_few_bytes_and_what_is_seen_is_right(
    package: Path, home: Path, environ: dict[str, str]
) -> None:
    with OnPty(package, home, environ) as line:
        line.read_until(b"Go on with it")
        line.press("1")
        line.read_until(b"Most likely")
        costs = []
        for _ in range(5):
            line.press("0")
            costs.append(len(line.read_until(b"\x1b[")))
        assert sum(costs) / 5 < (2500 if environ is UTF8 else 1300)
        seen = Emulator()
        seen.take(line.sent.decode())
        rows = seen.text()
        assert rows[0].startswith(" weldwhy")
        assert "undo" in rows[23]
        assert "(don't know)" in rows[22]


def test_a_poor_terminal_gets_ascii_and_no_colour_code(package: Path, home: Path) -> None:
    with OnPty(package, home, POOR) as line:
        line.read_until(b"Go on with it")
        for keys, wanted in (("1", b"Most likely"), ("c", b"Causes"), ("1", b"What to do")):
            line.press(keys)
            line.read_until(wanted)
        assert line.sent.isascii()
        assert _codes(line.sent) <= {"", "0", "1", "2", "7"}


@pytest.mark.parametrize(
    "steps",
    [
        (("i", b"In your own words"), ("porosity, it is windy\r", b"This was understood")),
        (("g", b"Pictures"), ("\t", b"1 to"), ("1", b"looks")),
        (("l", b"Look up"), ("undercut", b"Undercut"), ("\r", b"begin")),
        (("\x1bOR", b"Preferences"), ("6", b"another key"), ("1", b"Press the new key")),
    ],
    ids=["say", "gallery", "lookup", "keys"],
)
def test_a_poor_terminal_gets_no_more_than_it_can_show_on_any_other_screen(
    package: Path, home: Path, steps: tuple[tuple[str, bytes], ...]
) -> None:
    with OnPty(package, home, POOR) as line:
        line.read_until(b"Go on with it")
        for keys, wanted in (("1", b"Most likely"), *steps):
            line.press(keys)
            line.read_until(wanted)
        assert line.sent.isascii()
        assert _codes(line.sent) <= {"", "0", "1", "2", "7"}


def test_a_terminal_of_eight_colours_gets_no_code_beyond_them(package: Path, home: Path) -> None:
    with OnPty(package, home, CONSOLE) as line:
        line.read_until(b"Go on with it")
        line.press("1")
        line.read_until(b"Most likely")
        allowed = {*map(str, range(30, 38)), *map(str, range(40, 48)), "39", "49"}
        assert _codes(line.sent) <= {"", "0", "1", "2", "7", *allowed}


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT])
def test_a_signal_leaves_the_terminal_in_order_and_the_case_on_the_disk(
    package: Path, home: Path, number: signal.Signals
) -> None:
    with OnPty(package, home, UTF8) as line:
        line.read_until(b"Go on with it")
        line.press("1")
        line.read_until(b"Most likely")
        assert line.end(number) == 128 + number
        for ending in (b"\x1b[?1049l", b"\x1b[?25h", b"\x1b[?1000l", b"\x1b[?2004l"):
            assert ending in line.sent
    assert Store(home).resume() == OPEN


def test_a_letter_in_another_encoding_does_not_end_the_program(package: Path, home: Path) -> None:
    with OnPty(package, home, POOR) as line:
        line.read_until(b"Go on with it")
        line.press_bytes(b"\xe9\xff1")
        line.read_until(b"Most likely")


def _codes(sent: bytes) -> set[str]:
    return {code for found in re.findall(rb"\x1b\[([0-9;]*)m", sent)
            for code in found.decode().split(";")}  # fmt: skip
