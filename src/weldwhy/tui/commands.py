"""Every command once: its id, keys, label and help. Bindings, footer, palette and help read it.

`Command.where` names the screens that have it. The action of a command is its id, so a screen
offers a command by having a method `action_<id>`. Keys can be changed by id.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from textual.binding import Binding, BindingType
from textual.keys import key_to_character

CASE, LIST, FACTS, SUM, PLAN, PAGE = "case", "list", "facts", "sum", "plan", "page"
GALLERY, SAY = "gallery", "say"
LOOKUP, LEAF = "lookup", "leaf"
ALL = (CASE, LIST, FACTS, SUM, PLAN, PAGE, GALLERY, SAY, LOOKUP, LEAF)
CARDS = (CASE, LIST, FACTS, SUM, PLAN, LOOKUP, LEAF)


@dataclass(frozen=True, slots=True)
class Command:
    """One thing a person can ask for. `footer`: the screens whose bottom line shows it."""

    id: str
    keys: str
    label: str
    help: str
    where: tuple[str, ...] = ALL
    footer: tuple[str, ...] = ()
    palette: bool = True


COMMANDS: tuple[Command, ...] = (
    Command(
        "dont_know", "0", "don't know", "You cannot tell: the guide does not hold it against you.",
        (CASE,),
    ),
    Command("skip", "s", "skip", "Leave this step out; it is not offered again.", (CASE,)),
    Command(
        "undo", "u,backspace", "undo", "Take back the last thing you told.", (CASE,), (CASE,)
    ),
    Command(
        "causes", "c", "causes", "All causes; open one to see why, and what to do.", (CASE,),
        (CASE,),
    ),
    Command(
        "questions", "o", "questions", "Answer any other open question, out of order.", (CASE,),
        (CASE,),
    ),
    Command(
        "facts", "f", "facts", "Tell or change metal, thickness, place, job and settings.",
        (CASE,), (CASE,),
    ),
    Command(
        "reading", "v", "value", "Type the reading as a number instead of picking an answer.",
        (CASE,),
    ),
    Command("symptom", "a", "add symptom", "Tell another thing that is wrong.", (CASE,)),
    Command(
        "say", "i", "in words", "Say it in your own words; what was understood you can strike out.",
        (CASE,),
    ),
    Command(
        "gallery", "g", "pictures", "Drawn beads and faults: pick what looks most like yours.",
        (CASE,),
    ),
    Command(
        "next_group", "right,tab", "next kind", "The next kind of trouble.", (GALLERY,), (GALLERY,)
    ),
    Command("previous_group", "left", "kind before", "The kind before.", (GALLERY,)),
    Command("told", "t", "told", "All that was told so far.", (CASE,)),
    Command("copy", "y", "copy", "Copy the case as plain text to the clipboard.", (CASE,)),
    Command("save", "w", "save", "Save the case: as plain text, Markdown or HTML.", (CASE,)),
    Command("copy_sheet", "y", "copy", "Copy the set-up sheet to the clipboard.", (PLAN,), (PLAN,)),
    Command("save_sheet", "w", "save", "Save the set-up sheet as a text file.", (PLAN,), (PLAN,)),
    Command("copy_result", "y", "copy", "Copy inputs, results and formulas to the clipboard.",
            (SUM,), (SUM,)),
    Command("new_case", "n", "new case", "Put this case away and start a new one.", (CASE,)),
    Command("search", "slash", "search", "Look for something else.", (LEAF,), (LEAF,)),
    Command("begin", "b", "begin", "A case with this symptom, or the sum of this calculator.",
            (LEAF,), (LEAF,)),
    Command(
        "back", "escape", "back", "Back to where you came from.", ALL,
        (LIST, FACTS, SUM, PLAN, PAGE, GALLERY, SAY, LOOKUP, LEAF),
        palette=False,
    ),
    Command("none", "0", "none", "Nothing here fits, or you don't know.",
            (LIST, GALLERY), (GALLERY,), palette=False),
    Command("done", "0", "go on", "Go on with what is filled in.", (FACTS, SUM), (FACTS, SUM)),
    Command("page_down", "pagedown,space", "more", "The next part, when a page is cut.",
            ALL, (LIST, SUM, PLAN, PAGE, GALLERY, LOOKUP, LEAF), palette=False),
    Command("page_up", "pageup", "before", "The part before.", ALL, (PAGE,), palette=False),
    Command("next", "down", "down", "Move the mark to the next line.", CARDS, palette=False),
    Command("previous", "up", "up", "Move the mark to the line before.", CARDS, palette=False),
    Command("take", "enter", "take", "Take the line with the mark, or what is typed.",
            (*CARDS, SAY), (SAY, LOOKUP), palette=False),
    Command("help", "question_mark,f1", "help", "What the keys do here.", ALL, ALL),
    Command("palette", "f2,colon", "commands", "Find a command by typing a part of it."),
    Command(
        "preferences", "f3", "preferences", "Inches or millimetres, patience, mouse, signs."
    ),
    Command("colours", "f4", "colours", "Dark, light, or the terminal's own colours."),
    Command("diagnose", "d,f5", "diagnose", "Find out why a bead is bad, or why the wire sticks."),
    Command("setup", "p,f6", "set up", "Before the first bead: what to choose, hook up and set."),
    Command("machine", "m,f7", "my machine", "What your machine reaches, so that targets fit it."),
    Command("arithmetic", "r,f8", "arithmetic", "Heat input, gas left, duty cycle and the like."),
    Command("lookup", "l,f9", "look up", "Every symptom, cause, check and word of the trade."),
    Command("redraw", "ctrl+l", "draw again", "When the line has garbled the screen."),
    Command("quit", "q,ctrl+c", "quit", "Leave. The open case is kept; come back any time."),
)  # fmt: skip

BY_ID: Mapping[str, Command] = {command.id: command for command in COMMANDS}

PLACES = ("diagnose", "setup", "machine", "arithmetic", "lookup")
"""The places of the program: each keeps what is open in it."""

PROGRAM_WIDE = ("colours", *PLACES, "redraw", "quit")
"""Commands of the program itself: their keys work on every screen."""

DIGITS = "123456789"

_SHOWN = {
    "question_mark": "?", "colon": ":", "slash": "/", "escape": "esc",
    "pagedown": "PgDn", "pageup": "PgUp",
    "backspace": "backspace", "space": "space", "ctrl+c": "Ctrl-C", "down": "down", "up": "up",
    "left": "left", "right": "right", "tab": "Tab", "enter": "Enter", "ctrl+l": "Ctrl-L",
}  # fmt: skip


def key_name(key: str) -> str:
    """A key as a person reads it: the sign itself where it has one."""
    if key in _SHOWN:
        return _SHOWN[key]
    return key_to_character(key) or key.upper()


def commands_of(place: str) -> tuple[Command, ...]:
    """The commands of a screen, in the order they are explained."""
    return tuple(command for command in COMMANDS if place in command.where)


def footer_of(place: str) -> tuple[Command, ...]:
    """The commands on a screen's bottom line: five at most."""
    return tuple(command for command in commands_of(place) if place in command.footer)[:5]


def bindings_of(place: str) -> list[BindingType]:
    """A screen's key bindings, digits included."""
    made: list[BindingType] = [
        Binding(command.keys, command.id, command.label, show=False, id=command.id)
        for command in commands_of(place)
        if command.id not in PROGRAM_WIDE
    ]
    made += [Binding(digit, f"answer({digit})", show=False) for digit in DIGITS]
    return made


def program_bindings() -> list[BindingType]:
    """Keys that work on every screen; Ctrl-C even while text is typed."""
    return [
        Binding("ctrl+c", "interrupt", show=False, priority=True, system=True),
        *(
            Binding(BY_ID[name].keys.removesuffix(",ctrl+c"), name, show=False, id=name)
            for name in PROGRAM_WIDE
        ),
    ]


def shown_keys(command: Command, keymap: Mapping[str, str]) -> tuple[str, ...]:
    """The keys of a command as a person reads them, after the person's own changes."""
    keys = keymap.get(command.id, command.keys).split(",")
    return tuple(key_name(key) for key in keys)


def shown_key(command_id: str, keymap: Mapping[str, str]) -> str:
    """The first key of a command as a person reads it."""
    return shown_keys(BY_ID[command_id], keymap)[0]
