"""What the program finds around it: the environment, the terminal, files named by the person.

Part of the command line: nothing below it reads the environment. Holds the words of failure too,
because a bad folder or file is met here first.
"""

# pathlib alone would be a tenth of the time of a one-shot answer, so it comes in only when needed.
# ruff: noqa: PTH111, PTH112, PTH117, PTH118, PTH123

from __future__ import annotations

import os
import sys
from collections.abc import Mapping
from enum import IntEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

MOST_BYTES = 1_000_001
"""Bytes read of a case file: one more than the reader takes, so that it can say "too large"."""


class ExitCode(IntEnum):
    """What the program's exit code means. Scripts rely on these numbers."""

    FINE = 0
    FINDINGS = 1
    USAGE = 2
    INTERRUPTED = 130


class UsageError(Exception):
    """The command cannot be carried out as given; str() is one plain line."""


def data_folder(environment: Mapping[str, str]) -> Path:
    """Where a person's cases live: $WELDWHY_HOME, else the XDG data folder, else ~/.local/share."""
    from pathlib import Path

    return Path(_data_folder(environment))


def _data_folder(environment: Mapping[str, str]) -> str:
    own = environment.get("WELDWHY_HOME", "")
    if own:
        return own
    shared = environment.get("XDG_DATA_HOME", "")
    # The XDG base directory specification says that a relative path is to be ignored.
    if os.path.isabs(shared):
        return os.path.join(shared, "weldwhy")
    home = os.path.expanduser("~")
    if not os.path.isabs(home):
        raise UsageError("there is no home folder; set WELDWHY_HOME to a folder for your cases")
    return os.path.join(home, ".local", "share", "weldwhy")


def own_file(environment: Mapping[str, str], name: str) -> str:
    """The path of a file in the folder of a person's cases, whether or not it is there."""
    return os.path.join(_data_folder(environment), name)


def own_rules(named: str | None, environment: Mapping[str, str]) -> Path | None:
    """The operator's own rules folder: --rules, else $WELDWHY_RULES, else `rules` with the cases.

    A folder that was named must be there; the last one may be missing.
    """
    wanted = named or environment.get("WELDWHY_RULES", "")
    if wanted and not os.path.isdir(wanted):
        raise UsageError(f'there is no rules folder "{wanted}"')
    if not wanted:
        try:
            wanted = os.path.join(_data_folder(environment), "rules")
        except UsageError:
            return None
        if not os.path.isdir(wanted):
            return None
    from pathlib import Path

    return Path(wanted)


def can_show_screens(environment: Mapping[str, str]) -> bool:
    """Whether the screens would be seen and answered here; where not, plain mode is used.

    The screens are drawn on stderr, so that must be a terminal too. A dumb terminal would get
    colour codes it cannot take.
    """
    streams = (sys.stdin, sys.stdout, sys.stderr)
    if not all(stream is not None and stream.isatty() for stream in streams):
        return False
    return environment.get("TERM", "") not in ("", "dumb")


def file_bytes(name: str) -> bytes:
    """The bytes of a file the person named; "-" is standard input. At most `MOST_BYTES`."""
    try:
        if name == "-":
            return sys.stdin.buffer.read(MOST_BYTES) if sys.stdin is not None else b""
        with open(name, "rb") as file:
            return file.read(MOST_BYTES)
    except (OSError, ValueError) as fault:
        reason = fault.strerror if isinstance(fault, OSError) else "this is no file name"
        raise UsageError(f'cannot read "{name}": {reason}') from None


def environment() -> Mapping[str, str]:
    """The environment, read here only."""
    return os.environ
