"""Preferences: each line shows what is set, and its digit goes to the next value."""

from __future__ import annotations

from weldwhy.bench import Bench
from weldwhy.tui.cards.card import Card, Choice, text_body
from weldwhy.tui.commands import LIST, bindings_of
from weldwhy.tui.screens.cardscreen import CardScreen
from weldwhy.tui.screens.keys import KeysScreen
from weldwhy.tui.themes import look_of

UNITS = {
    "": "as each value was typed",
    "in": "inches (ipm, cfh)",
    "mm": "millimetres (m/min, L/min)",
}
PATIENCE = {
    "brisk": "brisk (fewer questions, remedies sooner)",
    "normal": "normal",
    "thorough": "thorough (more questions first)",
}
LOOKS = {"dark": "dark", "light": "light", "own": "the terminal's own"}
ON_OFF = {True: "on", False: "off"}
LATER = "From the next start on."


class PreferencesScreen(CardScreen[None]):
    """Changes and keeps what the person likes."""

    BINDINGS = bindings_of(LIST)

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench

    def card(self) -> Card:
        liked = self._bench.preferences
        choices = (
            Choice(f"Units: {UNITS[liked.units]}", "units"),
            Choice(f"Patience: {PATIENCE[self._bench.patience]}", "patience"),
            Choice(f"Plain ASCII signs only: {ON_OFF[liked.ascii]}", "ascii", note=LATER),
            Choice(f"Mouse: {ON_OFF[liked.mouse]}", "mouse", note=LATER),
            Choice(f"Colours: {LOOKS[look_of(self.program.theme)]}", "look"),
            Choice("Keys: give a command another key", "keys"),
        )
        said = [("Choose a line to change it.", "strong")]
        return Card(text_body(said), choices, where="Preferences")

    def chosen(self, choice: Choice) -> None:
        liked = self._bench.preferences
        if choice.act == "units":
            self._bench.prefer(units=_after(list(UNITS), liked.units))
        elif choice.act == "patience":
            self._bench.prefer(patience=_after(list(PATIENCE), self._bench.patience))
        elif choice.act == "ascii":
            self._bench.prefer(ascii=not liked.ascii)
        elif choice.act == "mouse":
            self._bench.prefer(mouse=not liked.mouse)
        elif choice.act == "look":
            self.program.action_colours()
        else:
            self.app.push_screen(KeysScreen())
        self.redraw()

    def action_preferences(self) -> None:
        self.action_back()


def _after(values: list[str], value: str) -> str:
    return values[(values.index(value) + 1) % len(values)]
