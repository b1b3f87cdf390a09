"""The same work at other thicknesses: its targets among those of its neighbours."""

from __future__ import annotations

from weldwhy import readings
from weldwhy.advice import read_thickness
from weldwhy.case import Case
from weldwhy.consumables import size_of
from weldwhy.model import RuleBase, Window
from weldwhy.units import Quantity, Target, show
from weldwhy.windowrows import usual_size
from weldwhy.windows import find

Neighbour = tuple[Quantity, dict[str, Target]]


def neighbours(rules: RuleBase, case: Case, material: str, window: Window) -> tuple[Neighbour, ...]:
    """The targets at each thickness the window has a row for, thin first, all for one size.

    The size is the one told in the case, or the usual one at its thickness. What joint, position
    and place change is in them, so that they compare with the targets of the case itself.
    """
    settings = readings.told(rules, case.measured)
    told = settings.get(window.size_of)
    if size_of(told) is None:
        size = usual_size(window, read_thickness(case.thickness))
        if size is None:
            return ()
        # a class that was told by itself still chooses the window
        settings[window.size_of] = f"{show(size)} {told}" if told else size
    found = []
    for thick in sorted({r.thickness for r in window.rows if r.thickness}, key=lambda q: q.value):
        there = find(
            rules, case.process, material, thick, settings, case.place,
            joint=case.joint, position=case.position,
        )  # fmt: skip
        if there is not None and there.window is window:
            found.append((thick, dict(there.targets)))
    return tuple(found)
