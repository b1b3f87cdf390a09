"""The program with screens: themes, keys that work everywhere, and a clean way out."""

from __future__ import annotations

import asyncio
import signal
from collections.abc import Mapping
from functools import partial
from typing import TYPE_CHECKING, Any

from textual.app import App

from weldwhy.bench import Bench, Clock, InterviewFactory
from weldwhy.interview import Interview
from weldwhy.tui.cards.card import Act
from weldwhy.tui.commands import PLACES, PROGRAM_WIDE, commands_of, program_bindings
from weldwhy.tui.driver import driver_for
from weldwhy.tui.keymap import usable
from weldwhy.tui.screens.case import CaseScreen
from weldwhy.tui.terminal import Terminal
from weldwhy.tui.themes import THEMES, first_theme, look_of, next_theme
from weldwhy.tui.thrift import Thrift

if TYPE_CHECKING:
    from textual.screen import Screen

    from weldwhy.model import RuleBase
    from weldwhy.store import Store
    from weldwhy.tui.screens.base import PageScreen

INTERRUPTED, SIGNALLED = 130, 128
"""Exit codes: Ctrl-C, and what is added to the number of a signal."""


class WeldwhyApp(App[int]):
    """Shows the case on the bench; ends with an exit code."""

    CSS_PATH = "app.tcss"
    TITLE = "weldwhy"
    ENABLE_COMMAND_PALETTE = False
    ALLOW_SELECT = False
    BINDINGS = program_bindings()

    def __init__(
        self,
        rules: RuleBase,
        store: Store,
        clock: Clock,
        terminal: Terminal | None = None,
        interview_factory: InterviewFactory = Interview,
        own_keys: Mapping[str, str] | None = None,
    ) -> None:
        self.terminal = terminal or Terminal()
        super().__init__(driver_class=driver_for(self.terminal))
        self.animation_level = "none"
        self.bench = Bench(rules, store, interview_factory, clock)
        wanted = self.bench.preferences.keys if own_keys is None else own_keys
        self.own_keys, notices = usable(wanted)
        self.bench.notices += notices
        for place in PLACES:
            self.add_mode(place, partial(self._first_screen, place))
        for theme in THEMES:
            self.register_theme(theme)
        self.theme = first_theme(self.terminal, self.bench.preferences.look)

    DEFAULT_MODE = "diagnose"

    def _first_screen(self, place: str) -> Screen[None]:
        """The screen a place begins with; what it needs is imported when it is first gone to."""
        if place == "setup":
            from weldwhy.tui.screens.setup import SetupScreen

            return SetupScreen(self.bench)
        if place == "machine":
            from weldwhy.tui.screens.machine import MachineScreen

            return MachineScreen(self.bench)
        if place == "arithmetic":
            from weldwhy.tui.screens.arithmetic import ArithmeticScreen

            return ArithmeticScreen(self.bench)
        if place == "lookup":
            from weldwhy.tui.screens.lookup import LookupScreen

            return LookupScreen(self.bench)
        return CaseScreen(self.bench)

    async def action_diagnose(self) -> None:
        await self.switch_mode("diagnose")

    async def action_setup(self) -> None:
        await self.switch_mode("setup")

    async def action_machine(self) -> None:
        await self.switch_mode("machine")

    async def action_arithmetic(self) -> None:
        await self.switch_mode("arithmetic")

    async def action_lookup(self) -> None:
        await self.switch_mode("lookup")

    async def show_new_case(self, notes: list[str]) -> None:
        """Go to the case that another place has begun, with notes above its first step."""
        await self.action_diagnose()
        while len(self.screen_stack) > 1:
            await self.pop_screen()
        case = self.screen
        assert isinstance(case, CaseScreen)
        case.show_new(notes)

    def on_mount(self) -> None:
        if self.own_keys:
            self.set_keymap(self.own_keys)
        self._leave_on_signals()

    def on_resize(self) -> None:
        self._forget_screen()

    def _forget_screen(self) -> None:
        """Have everything sent again: nobody knows what the terminal shows."""
        thrift = getattr(self._driver, "thrift", None)
        if isinstance(thrift, Thrift):
            thrift.forget()

    def action_redraw(self) -> None:
        self._forget_screen()
        self.screen.refresh(layout=True)

    def _leave_on_signals(self) -> None:
        """A signal that ends us must not leave the terminal in our state."""
        loop = asyncio.get_running_loop()
        for name in ("SIGTERM", "SIGHUP", "SIGINT"):
            number = getattr(signal, name, None)
            if number is not None:
                try:
                    loop.add_signal_handler(number, self.exit, SIGNALLED + number)
                except (NotImplementedError, RuntimeError, ValueError):
                    return  # no signals here: Windows, or not the main thread

    def show_help(self, place: str) -> None:
        """What the keys do on a screen of this place."""
        from weldwhy.tui.screens.help import HelpScreen

        self.push_screen(HelpScreen(place))

    def show_preferences(self) -> None:
        """Change what the person likes."""
        from weldwhy.tui.screens.preferences import PreferencesScreen

        self.push_screen(PreferencesScreen(self.bench))

    def show_palette(self, over: PageScreen[Any]) -> None:
        """Every command of a screen that can be used now; the picked one is carried out there."""
        from weldwhy.tui.screens.palette import PaletteScreen

        usable = [
            command
            for command in commands_of(over.place)
            if command.palette and over.check_action(command.id, ())
        ]

        async def carry_out(act: Act | None) -> None:
            if isinstance(act, str):
                await over.run_action(f"app.{act}" if act in PROGRAM_WIDE else act)

        self.push_screen(PaletteScreen(usable), carry_out)

    def use_keys(self, keys: Mapping[str, str]) -> None:
        """Give commands other keys, by id, from now on."""
        self.own_keys = dict(keys)
        self.set_keymap(self.own_keys)
        self.bench.prefer(keys=self.own_keys)

    def action_colours(self) -> None:
        self.theme = next_theme(self.theme)
        self.bench.prefer(look=look_of(self.theme))

    async def action_quit(self) -> None:
        self.exit(0)

    def action_interrupt(self) -> None:
        self.exit(INTERRUPTED)
