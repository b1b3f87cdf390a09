"""A line of text being typed on a screen that shows cards."""

from __future__ import annotations

from textual import events

LONGEST = 60
"""Letters of the longest value worth typing here."""


class TypedLine:
    """Keeps what is typed, up to `longest` letters; knows letters, backspace and nothing else.

    Of pasted lines only the first counts, unless they are to be joined with blanks.
    """

    def __init__(self, text: str = "", longest: int = LONGEST, joins: bool = False) -> None:
        self.text = text
        self._longest = longest
        self._joins = joins

    def take(self, event: events.Key) -> bool:
        """Take one key; False for a key that means nothing in a line of text."""
        if event.key in ("backspace", "ctrl+h"):
            self.text = self.text[:-1]
        elif event.key in ("ctrl+u", "delete"):
            self.text = ""
        elif event.character is not None and event.is_printable:
            self.add(event.character)
        else:
            return False
        return True

    def add(self, text: str) -> None:
        """Add typed or pasted text."""
        lines = text.splitlines()
        line = " ".join(lines) if self._joins else lines[0] if lines else ""
        self.text = (self.text + "".join(m for m in line if m.isprintable()))[: self._longest]
