"""What a drawn bead is like: the parameters of a rule file, with those of a sound bead to begin."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Bead:
    """One bead. The words and what they mean are declared in `beadforms`.

    Lengths are in parts of a sound bead's; an empty word is a fault that is not there.
    """

    joint: str = "butt"
    seen: str = "above"
    more: str = ""
    width: float = 1.0
    height: float = 1.0
    hollow: float = 0.0
    penetration: float = 1.0
    gap: float = 0.0
    toe: str = "smooth"
    uneven: float = 0.0
    varies: float = 0.0
    wanders: float = 0.0
    runs: float = 1.0
    ripple: str = "fine"
    heat: float = 1.0
    undercut: str = ""
    overlap: str = ""
    unfused: str = ""
    root: str = "sound"
    holes: float = 0.0
    pores: str = ""
    pore_count: str = "some"
    pore_size: str = "middle"
    crack: str = ""
    crack_too: str = ""
    crater: str = "filled"
    restart: str = ""
    spatter: str = ""
    strikes: str = ""
    slag: str = ""
    dust: str = ""
    specks: str = ""
    colour: str = ""
    bend: float = 0.0
    metal: str = "rolled"
    broken: bool = False
    late: bool = False
    tacks: str = ""

    @property
    def cracks(self) -> tuple[str, ...]:
        """Where it is cracked."""
        return tuple(where for where in (self.crack, self.crack_too) if where)

    @property
    def plate(self) -> str:
        """What the plates are painted with."""
        return "pale" if self.metal == "aluminium" else "plate"

    @property
    def heated_through(self) -> bool:
        """Whether the whole part was hot, not only the zone beside the bead."""
        return self.heat >= 3

    @property
    def cornered(self) -> bool:
        """Whether it lies in the corner of two plates, not on a level face."""
        return self.joint in ("fillet", "lap", "corner")


def read(parts: Mapping[str, Any]) -> Bead:
    """The bead that a rule file's parameters describe."""
    return Bead(**parts)
