"""Lines in and out of plain mode: wrapped, safe, and with no cursor control whatever."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TextIO

from weldwhy.lines import safe, wrapped
from weldwhy.plaintext import clean


class Leave(Exception):
    """The person wants to stop, or the input has ended."""


class Console:
    """Two streams of text; either may be missing, as when a program closed them."""

    def __init__(self, source: TextIO | None, sink: TextIO | None) -> None:
        self._source = source
        self._sink = sink

    def say(self, *lines: str) -> None:
        """Print lines, none wider than a small terminal."""
        if self._sink is None:
            return
        for line in wrapped(safe(lines)):
            print(line, file=self._sink)
        self._sink.flush()

    def hear(self) -> str:
        """The next line typed, made safe to say back; raises Leave when there is none."""
        if self._source is None:
            raise Leave
        if self._sink is not None and self._source.isatty():
            print("> ", end="", file=self._sink, flush=True)
        line = self._source.readline()
        if not line:
            raise Leave
        return clean(line)

    def choose(self, choices: Iterable[str]) -> int:
        """Put numbered choices until one is typed, and return its number; `q` leaves."""
        texts = list(choices)
        self.say(*(f"{number}. {text}" for number, text in enumerate(texts, 1)))
        numbers = [str(number) for number in range(1, len(texts) + 1)]
        while (line := self.hear()) not in numbers:
            if line == "q":
                raise Leave
            self.say(f"Type a number from 1 to {len(texts)}, or q to stop.")
        return int(line)
