"""The bottom line: at most five keys; one that does nothing now shows a dash for its key."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import ClassVar

from weldwhy.tui.page import Lines
from weldwhy.tui.rows import Row, Span, row


@dataclass(frozen=True, slots=True)
class FooterKey:
    """One key on the bottom line."""

    key: str
    label: str
    ready: bool = True


class Footer(Lines):
    """Draws the keys that its screen names; a click on one does nothing."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {"page--key", "page--dim"}

    def __init__(self, keys: Callable[[], Sequence[FooterKey]]) -> None:
        super().__init__(lambda width, _height: [footer_row(keys(), width)], "footer")


def footer_row(keys: Sequence[FooterKey], width: int) -> Row:
    """The keys in one row of at most `width` cells; one that does not fit whole is left out."""
    spans: list[Span] = []
    used = 0
    for key in keys:
        shown = key.key if key.ready else "-"
        needed = len(f"  {shown} {key.label} ")
        if used + needed > width:
            break
        used += needed
        role = "text" if key.ready else "dim"
        spans += [(f"  {shown}", "key" if key.ready else "dim"), (f" {key.label} ", role)]
    return row(*spans)
