"""Keys of one's own: pick a command, press the key it shall have."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from textual import events

from weldwhy.tui.cards.card import Card, Choice, text_body
from weldwhy.tui.commands import BY_ID, LIST, PAGE, Command, bindings_of, shown_keys
from weldwhy.tui.keymap import CHANGEABLE, refused
from weldwhy.tui.rows import BLANK, Row, inset
from weldwhy.tui.screens.base import PageScreen
from weldwhy.tui.screens.cardscreen import CardScreen


class KeysScreen(CardScreen[None]):
    """Lists the commands with their keys, and changes one at a time."""

    BINDINGS = bindings_of(LIST)

    def card(self) -> Card:
        own = self.program.own_keys
        shared = Counter(command.label for command in CHANGEABLE)
        choices = tuple(
            Choice(
                f"{', '.join(shown_keys(command, own))}: {command.label}",
                command.id,
                note=command.help if shared[command.label] > 1 else "",
                beside=True,
            )
            for command in CHANGEABLE
        )
        said = [("Which command shall have another key?", "strong")]
        usual = Choice("All keys as they were at first", "usual", key="0")
        return Card(text_body(said), choices, (usual,) if own else (), where="Keys")

    def chosen(self, choice: Choice) -> None:
        if choice.act == "usual":
            self.program.use_keys({})
            self.redraw()
            return
        command = BY_ID[str(choice.act)]

        def pressed(key: str | None) -> None:
            if key is not None:
                self.program.use_keys({**self.program.own_keys, command.id: key})
                self.redraw()

        self.app.push_screen(PressScreen(command), pressed)


class PressScreen(PageScreen[str]):
    """Waits for the new key of a command and returns it; None if it is to stay as it is."""

    BINDINGS = bindings_of(PAGE)

    def __init__(self, command: Command) -> None:
        super().__init__()
        self._command = command
        self._refused = ""

    def title_texts(self) -> tuple[str, str]:
        return "Keys", ""

    def rows(self, width: int, height: int) -> Sequence[Row]:
        words = f'Press the new key for "{self._command.label}". Esc: leave it as it is.'
        rows = [BLANK, *inset(words, width, "strong"), *inset(self._command.help, width)]
        return rows + ([BLANK, *inset(self._refused, width, "notice")] if self._refused else [])

    def on_key(self, event: events.Key) -> None:
        if event.key in ("escape", "ctrl+c"):
            return
        event.stop()
        event.prevent_default()
        reason = refused(self._command, event.key, self.program.own_keys)
        if reason:
            self._refused = f"{reason[:1].upper()}{reason[1:]}."
            self.redraw()
        else:
            self.dismiss(event.key)
