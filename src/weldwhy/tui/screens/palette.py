"""Find a command by typing a part of its name or of what it does."""

from __future__ import annotations

from collections.abc import Sequence

from textual import events

from weldwhy.tui.cards.card import Act, Card, Choice
from weldwhy.tui.commands import LIST, Command, bindings_of, shown_keys
from weldwhy.tui.rows import Row, inset, row
from weldwhy.tui.screens.cardscreen import CardScreen
from weldwhy.tui.screens.typed import TypedLine


class PaletteScreen(CardScreen[Act]):
    """Returns the id of the command that was picked."""

    BINDINGS = bindings_of(LIST)

    def __init__(self, commands: Sequence[Command]) -> None:
        super().__init__()
        self._commands = commands
        self._line = TypedLine()

    def card(self) -> Card:
        keys = self.program.own_keys
        choices = tuple(
            Choice(f"{c.label} ({', '.join(shown_keys(c, keys))}): {c.help}", c.id)
            for c in self._found()
        )
        return Card(self._body, choices, where="Commands")

    def _found(self) -> list[Command]:
        words = self._line.text.lower().split()
        return [
            command
            for command in self._commands
            if all(w in f"{command.id} {command.label} {command.help}".lower() for w in words)
        ]

    def _body(self, width: int, room: int) -> list[Row]:
        line = row((" Type to find: ", "strong"), (self._line.text, "text"), (" ", "edit"))
        found = bool(self._found())
        hint = "Then its number, or the arrow keys and enter." if found else "Nothing found."
        return [line, *inset(hint, width, "dim")]

    def on_key(self, event: events.Key) -> None:
        if (event.character or "") in "123456789" and event.character:
            return  # digits pick
        if self._line.take(event):
            event.stop()
            event.prevent_default()
            self.redraw(to_top=True)

    def action_take(self) -> None:
        """The marked line, or the first one once something is typed."""
        if self.main.mark is None and self._line.text:
            self.action_answer(1)
        else:
            super().action_take()

    def chosen(self, choice: Choice) -> None:
        self.dismiss(choice.act)

    def action_palette(self) -> None:
        self.action_back()
