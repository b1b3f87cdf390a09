"""Terminal drivers that send only what the terminal can take: ASCII, eight colours, or none."""

from __future__ import annotations

import re
import sys
import unicodedata
from codecs import getincrementaldecoder
from functools import partial
from typing import TYPE_CHECKING

from rich.cells import cell_len

from weldwhy.tui.thrift import Thrift

if TYPE_CHECKING:
    from textual.driver import Driver

    from weldwhy.tui.terminal import Colours, Terminal

_SIGNS = {
    "\u2500": "-", "\u2501": "=", "\u2502": "|", "\u2503": "|", "\u2014": "-", "\u2013": "-",
    "\u2018": "'", "\u2019": "'", "\u201c": '"', "\u201d": '"', "\u2026": ".", "\u2192": ">",
    "\u2190": "<", "\u00b0": "o", "\u00b7": ".", "\u00d7": "x", "\u2022": "*", "\u00a0": " ",
}  # fmt: skip

_SGR = re.compile(r"\x1b\[([0-9;]*)m")


def to_ascii(text: str) -> str:
    """`text` with every sign outside ASCII replaced by one of the same width."""
    return text if text.isascii() else "".join(_sign(mark) for mark in text)


def _sign(mark: str) -> str:
    if mark.isascii():
        return mark
    if mark in _SIGNS:
        return _SIGNS[mark]
    if "\u2500" <= mark <= "\u257f":
        return "+"
    if "\u2580" <= mark <= "\u259f":
        return "#"
    plain = unicodedata.normalize("NFKD", mark)[0]
    width = cell_len(mark)  # a letter may come from a sign two cells wide
    return plain.ljust(width)[:width] if plain.isascii() and plain.isprintable() else "?" * width


def to_colours(text: str, colours: Colours) -> str:
    """`text` with its colour codes reduced to what `colours` allows; other codes stay."""
    if colours in ("16", "many") or "\x1b[" not in text:
        return text
    return _SGR.sub(partial(_reduced, none=colours == "none"), text)


def _reduced(found: re.Match[str], none: bool) -> str:
    codes, kept = found[1].split(";") if found[1] else ["0"], []
    while codes:
        code = codes.pop(0)
        if code in ("38", "48"):
            codes = codes[2:] if codes[:1] == ["5"] else codes[4:]
            continue
        number = int(code or 0)
        if 30 <= number <= 49 or 90 <= number <= 107:
            if none:
                continue
            if number == 90:  # bright black would vanish on black
                number = 37
            elif number >= 90:
                number -= 60
        kept.append(str(number))
    return f"\x1b[{';'.join(kept)}m" if kept else ""


def driver_for(terminal: Terminal) -> type[Driver] | None:
    """A driver class for this terminal; None where the framework's own must do (Windows)."""
    if sys.platform == "win32":
        return None
    from textual.drivers import linux_driver

    # A terminal that is not UTF-8 sends bytes that are not UTF-8; they must not end the program.
    lenient = partial(getincrementaldecoder("utf-8"), errors="replace")
    linux_driver.getincrementaldecoder = lambda _name: lenient  # type: ignore[attr-defined]

    class CarefulDriver(linux_driver.LinuxDriver):
        """Sends what the terminal can take, and of that only what changes it."""

        thrift = Thrift()

        def write(self, data: str) -> None:
            if terminal.ascii:
                data = to_ascii(data)
            super().write(self.thrift.reduce(to_colours(data, terminal.colours)))

    return CarefulDriver
