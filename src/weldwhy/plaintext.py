"""Text from files or people, made safe to show: no escape sequences, controls or hidden marks.

A terminal obeys what is printed on it. A rule file, a case file or an operator's answer may hold
anything, so every text that is shown passes through here. Knows nothing of files or screens.
"""

from __future__ import annotations

import re

# One escape sequence: operating-system and device strings up to their end (or the end of the
# text, if they never end), control sequences, and the short forms.
_ESCAPE = re.compile(
    r"(?:\x1b[\]PX^_]|[\x90\x98\x9d-\x9f])[^\x07\x1b\x9c]*(?:\x07|\x1b\\|\x9c|\Z)?"
    r"|(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]?"
    r"|\x1b[ -/]*[0-~]?"
)

_ALLOWED = {ord(mark): None for mark in "\t\n\r"}


def clean(text: str) -> str:
    """`text` as one safe line: blanks joined to one space, and only what can be seen is left.

    >>> clean("red \\x1b[31malert\\x1b[0m\\nnext")
    'red alert next'
    """
    if text.isascii() and text.isprintable() and "  " not in text:
        return text.strip(" ")
    shown = (_seen(mark) for mark in _ESCAPE.sub("", text))
    return " ".join("".join(shown).split())


def clean_lines(text: str) -> list[str]:
    """`text` as safe lines, cut at its own line ends; blanks at the start of a line stay.

    >>> clean_lines("one\\r\\n  two\\x07")
    ['one', '  two']
    """
    lines = _ESCAPE.sub("", text).replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return ["".join(_seen(mark) for mark in line).rstrip(" ") for line in lines]


def hidden(text: str) -> int | None:
    """Where the first mark stands that must not be shown (tab and line end are allowed), or None.

    >>> hidden("plain"), hidden("a\\u202eb")
    (None, 1)
    """
    if text.translate(_ALLOWED).isprintable():
        return None
    for place, mark in enumerate(text):
        if not mark.isprintable() and mark not in "\t\n\r" and not _is_blank(mark):
            return place
    return None


def name_of(mark: str) -> str:
    """What to call a mark that cannot be shown: its number, as an editor finds it.

    >>> name_of("\\x1b")
    'U+001B'
    """
    return f"U+{ord(mark):04X}"


def capital(text: str) -> str:
    """`text` with a capital at its beginning."""
    return text[:1].upper() + text[1:]


def _seen(mark: str) -> str:
    if mark.isprintable():
        return mark
    # Every blank, line end or separator becomes a space, so that words stay apart.
    return " " if mark.isspace() else ""


def _is_blank(mark: str) -> bool:
    """A blank that is wider or narrower than a space, such as the no-break space."""
    return mark.isspace() and mark not in "\x0b\x0c\x1c\x1d\x1e\x1f\x85\u2028\u2029"
