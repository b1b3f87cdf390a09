"""Our own looks: the tints steel takes when it is heated, on graphite or on paper; and ANSI.

Straw marks a caution (always with its word), violet what is chosen. Nothing is told by colour
alone. The ANSI look uses only the terminal's own colours and text styles.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.theme import Theme

if TYPE_CHECKING:
    from weldwhy.tui.terminal import Terminal

DARK = Theme(
    name="weldwhy-dark",
    primary="#b9a6d9",
    secondary="#8fb0bd",
    accent="#b9a6d9",
    warning="#e3c07a",
    error="#e39a8a",
    success="#a9c59a",
    foreground="#e6e2da",
    background="#1d1e20",
    surface="#1d1e20",
    panel="#2b2c30",
    dark=True,
)

LIGHT = Theme(
    name="weldwhy-light",
    primary="#55407f",
    secondary="#2f5563",
    accent="#55407f",
    warning="#6b4a00",
    error="#8a2c1c",
    success="#2f5a24",
    foreground="#222226",
    background="#f6f4ee",
    surface="#f6f4ee",
    panel="#e5e1d6",
    dark=False,
)

ANSI = Theme(
    name="weldwhy-ansi",
    ansi=True,
    primary="ansi_default",
    secondary="ansi_default",
    accent="ansi_default",
    warning="ansi_default",
    error="ansi_default",
    success="ansi_default",
    foreground="ansi_default",
    background="ansi_default",
    surface="ansi_default",
    panel="ansi_default",
    dark=True,
    # The framework's own style sheet asks an ANSI look for these.
    variables={"ansi-background": "ansi_default", "ansi-foreground": "ansi_default"},
)

THEMES = (DARK, LIGHT, ANSI)


LOOKS = {"dark": DARK.name, "light": LIGHT.name, "own": ANSI.name}
"""The looks as preferences name them."""


def look_of(theme: str) -> str:
    """What preferences call a theme."""
    return next(look for look, name in LOOKS.items() if name == theme)


def first_theme(terminal: Terminal, liked: str = "") -> str:
    """The look to begin with on this terminal: the one liked, where it can show it."""
    if terminal.colours != "many":
        return ANSI.name
    if liked in LOOKS:
        return LOOKS[liked]
    return DARK.name if terminal.dark else LIGHT.name


def next_theme(name: str) -> str:
    """The look after this one."""
    names = [theme.name for theme in THEMES]
    return names[(names.index(name) + 1) % len(names)] if name in names else names[0]
