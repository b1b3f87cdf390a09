"""What was heard in a text: entries for a case with the words they came from, and the rest."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy.case import Entry

SURE = 0.7
"""From this confidence on a thing counts as told; below, it is only supposed and weighs softly."""


@dataclass(frozen=True, slots=True)
class Understood:
    """One entry, the words it came from (as written, cleaned), and how surely (0 to 1)."""

    text: str
    entry: Entry
    confidence: float

    @property
    def sure(self) -> bool:
        """Whether it counts as told."""
        return self.confidence >= SURE


@dataclass(frozen=True, slots=True)
class Heard:
    """All that a text was taken to say, in the order in which it enters the case."""

    understood: tuple[Understood, ...] = ()
    not_understood: tuple[str, ...] = ()

    @property
    def entries(self) -> tuple[Entry, ...]:
        """The entries alone, ready for `Case.with_`."""
        return tuple(each.entry for each in self.understood)
