"""What a picture of an operating window shows, before anything is drawn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from weldwhy.units import Quantity, Target

Targets = Mapping[str, Target]

VOLTS, FEED, AMPS = "volts", "wire_feed", "amps"
"""The settings that can be drawn."""
NEAR = 0.25
"""A machine's end is drawn if it lies this part of the range outside it, or nearer."""


@dataclass(frozen=True, slots=True)
class View:
    """What is drawn, by setting id. `elsewhere` are the targets at other thicknesses, thin first.

    `tries` are the values to try where they are not the best of the target. `reach` is what the
    machine can do, `names` what the settings are called.
    """

    targets: Targets
    names: Mapping[str, str]
    thickness: Quantity | None = None
    elsewhere: Sequence[tuple[Quantity, Targets]] = ()
    yours: Mapping[str, Quantity] = field(default_factory=dict)
    tries: Mapping[str, Quantity] = field(default_factory=dict)
    reach: Mapping[str, tuple[Quantity, Quantity]] = field(default_factory=dict)
    system: str | None = None

    @property
    def settings(self) -> tuple[str, ...]:
        """The settings that are drawn, the upright one first; none: nothing can be drawn."""
        if VOLTS in self.targets and FEED in self.targets:
            return VOLTS, FEED
        return (AMPS,) if AMPS in self.targets and self.thickness else ()

    @property
    def neighbours(self) -> list[tuple[Quantity, Targets]]:
        """The other thicknesses that can be drawn."""
        return [(t, targets) for t, targets in self.elsewhere if set(self.settings) <= set(targets)]

    @property
    def begin(self) -> dict[str, Quantity]:
        """Where to begin: what is to be tried, else the best of the target."""
        return {name: self.tries.get(name, self.targets[name].best) for name in self.settings}

    def spread(self, setting: str) -> list[Quantity]:
        """Everything of a setting that must have its place, but for the machine's ends."""
        every = [self.targets, *(targets for _, targets in self.neighbours)]
        found = [end for targets in every for end in (targets[setting].low, targets[setting].high)]
        return [*found, self.yours[setting]] if setting in self.yours else found

    def ends(self, setting: str) -> list[Quantity]:
        """The ends of the machine's reach that are near enough to matter."""
        values = [q.value for q in self.spread(setting)]
        low, high = min(values), max(values)
        near = (high - low) * NEAR
        return [q for q in self.reach.get(setting, ()) if low - near <= q.value <= high + near]
