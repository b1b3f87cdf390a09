"""A person's own keys: which commands may have another key, and which keys they may have."""

from __future__ import annotations

from collections.abc import Mapping
from string import ascii_letters, punctuation

from textual.keys import _character_to_key

from weldwhy.plaintext import clean
from weldwhy.problems import did_you_mean
from weldwhy.tui.commands import BY_ID, COMMANDS, PROGRAM_WIDE, Command, key_name

FIXED = frozenset((
    "back", "none", "done", "page_down", "page_up", "next", "previous", "take", "next_group",
    "previous_group",
))  # fmt: skip
"""Commands that keep their keys: without them one could be lost on a screen."""

CHANGEABLE = tuple(command for command in COMMANDS if command.id not in FIXED)

LONGEST = 40
"""Letters of a faulty name or key that are shown."""
SIGNS = {_character_to_key(sign): sign for sign in ascii_letters + punctuation}
"""The letters and marks that can be keys, by what the framework calls them."""
_KEYS = {sign: key for key, sign in SIGNS.items()}
_FUNCTION = frozenset(f"f{number}" for number in range(1, 13))


def refused(command: Command, key: str, own: Mapping[str, str]) -> str:
    """Why `key` cannot be the key of `command`, in plain words; "" if it can."""
    shown = clean(key_name(key))[:LONGEST] or "that key"
    if key not in _FUNCTION and key not in SIGNS:
        return f"{shown} is needed for something else; take a letter, a mark or F1 to F12"
    for other in COMMANDS:
        taken = key in own.get(other.id, other.keys).split(",")
        if taken and other is not command and _meet(command, other):
            return f'{shown} is "{other.label}" already'
    return ""


def _meet(one: Command, two: Command) -> bool:
    """Whether both are ever on one screen."""
    wide = one.id in PROGRAM_WIDE or two.id in PROGRAM_WIDE
    return wide or bool(set(one.where) & set(two.where))


def usable(wanted: Mapping[str, str]) -> tuple[dict[str, str], list[str]]:
    """The keys that can be had of those wanted by command, and a plain line for each other.

    A mark may be written as itself or by its name: "?" or "question_mark".
    """
    own = {
        name: _KEYS.get(key, key)
        for name, key in wanted.items()
        if name in BY_ID and name not in FIXED
    }
    notices = [_unknown(name) for name in wanted if name not in own]
    # a command that keeps its first key may be in the way of another one: look again until none is
    while found := next((name for name in own if refused(BY_ID[name], own[name], own)), ""):
        reason = refused(BY_ID[found], own.pop(found), own)
        notices.append(f'your keys: "{BY_ID[found].label}" keeps its key, since {reason}')
    return own, notices


def _unknown(name: str) -> str:
    if name in BY_ID:
        return f'your keys: "{BY_ID[name].label}" keeps its key'
    return f'your keys: no command "{clean(name)[:LONGEST]}"{did_you_mean(name, BY_ID)}'
