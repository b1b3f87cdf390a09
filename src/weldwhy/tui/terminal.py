"""What the terminal can show, told from the environment and the encoding alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Colours = Literal["none", "8", "16", "many"]

PLAIN = ("C", "POSIX")
"""Locales of a person who wants ASCII and nothing else."""


@dataclass(frozen=True, slots=True)
class Terminal:
    """Signs and colours that are safe to send. `dark` is a guess where nothing tells."""

    ascii: bool = False
    colours: Colours = "many"
    dark: bool = True

    @property
    def letters(self) -> bool:
        """Whether a picture must be made of letters: no blocks, or no colours to tell apart."""
        return self.ascii or self.colours == "none"


def look(environ: Mapping[str, str], encoding: str | None, ascii_wanted: bool = False) -> Terminal:
    """The terminal as the environment describes it; when in doubt, the poorer one.

    >>> look({"TERM": "linux"}, "utf-8").colours
    '8'
    """
    name = (encoding or "ascii").lower().replace("-", "").replace("_", "")
    return Terminal(
        # Python speaks UTF-8 in a plain locale too, whatever the terminal takes
        ascii=ascii_wanted or not name.startswith("utf") or environ.get("LC_ALL") in PLAIN,
        colours=_colours(environ),
        dark=_dark(environ.get("COLORFGBG", "")),
    )


def _colours(environ: Mapping[str, str]) -> Colours:
    if "NO_COLOR" in environ:
        return "none"
    term = environ.get("TERM", "")
    rich = environ.get("COLORTERM", "").lower() in ("truecolor", "24bit")
    if rich or any(word in term for word in ("256color", "truecolor", "direct", "kitty")):
        return "many"
    return "16" if "16color" in term else "8"


def _dark(own: str) -> bool:
    """COLORFGBG is "text;background" with numbers 0-15; 7 and 9-15 are light backgrounds."""
    background = own.rpartition(";")[2]
    return not (background.isdecimal() and int(background) in (7, *range(9, 16)))
