"""The plot of an operating window: ranges as paint, then machine's ends and points as signs."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from weldwhy.drawing.canvas import Canvas
from weldwhy.tui.cards.axis import Axis, axis, own_unit
from weldwhy.tui.cards.windowview import AMPS, FEED, VOLTS, Targets, View
from weldwhy.units import Quantity, Target

TRY, YOURS = "O", "X"


class Plot:
    """A view painted on a canvas of cells; `end` is the sign of a machine's end.

    Volts over wire feed, or amps over thickness.
    """

    def __init__(self, view: View, width: int, height: int, end: str) -> None:
        self.view = view
        self.canvas = Canvas(width, height)
        self.up = self._axis(view.settings[0], 2 * height)
        if view.thickness is None or view.settings[0] == VOLTS:
            self.across = self._axis(FEED, width)
            self._boxes()
        else:
            thick = [view.thickness, *(t for t, _ in view.neighbours)]
            self.across = axis(thick, own_unit(view.thickness, view.system), width)
            self._band(self.across.place(view.thickness))
        self._ends(end)
        self._point(view.begin, TRY)
        self._point(view.yours, YOURS)

    def _axis(self, setting: str, steps: int) -> Axis:
        view = self.view
        unit = own_unit(view.targets[setting].best, view.system)
        return axis([*view.spread(setting), *view.ends(setting)], unit, steps)

    def _boxes(self) -> None:
        """A box of volts and feed for each thickness, the own one over the others."""
        for thickness, targets in self.view.neighbours:
            if thickness != self.view.thickness:  # the own one may be cut off by the machine
                self._box(targets, "elsewhere")
        self._box(self.view.targets, "allowed")

    def _box(self, targets: Targets, paint: str) -> None:
        feed = targets[FEED]
        ends = self.across.place(feed.low), self.across.place(feed.high)
        self._column(ends, targets[VOLTS], paint)

    def _band(self, here: int) -> None:
        """The amps from the thinnest to the thickest, and those of the own thickness."""
        for one, two in pairwise(self.view.neighbours):
            self._slope(one, two)
        self._column((here - 1, here + 1), self.view.targets[AMPS], "allowed")

    def _slope(self, thin: tuple[Quantity, Targets], thick: tuple[Quantity, Targets]) -> None:
        """The range of amps between two thicknesses, a straight line from one to the other."""
        first, last = self.across.place(thin[0]), self.across.place(thick[0])
        one, two, up = thin[1][AMPS], thick[1][AMPS], self.up
        lows, highs = (
            (up.place(one.low), up.place(two.low)),
            (up.place(one.high), up.place(two.high)),
        )
        for x in range(first, last + 1):
            part = (x - first) / max(last - first, 1)
            low, high = (round(a + (b - a) * part) for a, b in (lows, highs))
            self._fill((x, x), low, high, "elsewhere")

    def _column(self, ends: tuple[int, int], target: Target, paint: str) -> None:
        self._fill(ends, self.up.place(target.low), self.up.place(target.high), paint)

    def _fill(self, ends: tuple[int, int], low: int, high: int, paint: str) -> None:
        """Paint between two places of each axis; the canvas counts downwards."""
        top = self.up.steps - 1
        self.canvas.fill(ends[0], top - high, ends[1], top - low, paint)

    def _ends(self, sign: str) -> None:
        """A line where the machine ends."""
        canvas = self.canvas
        for setting in self.view.settings:
            for limit in self.view.ends(setting):
                if setting == FEED:
                    for y in range(canvas.height):
                        canvas.put(self.across.place(limit), y, sign, "caution")
                else:
                    canvas.put(0, self._row(limit), sign * canvas.width, "caution")

    def _point(self, at: Mapping[str, Quantity], letter: str) -> None:
        """A letter at the settings; what is not told of them stands at the edge."""
        settings = self.view.settings
        if set(settings) & set(at):
            level = at.get(FEED) if FEED in settings else self.view.thickness
            x = self.across.place(level) if level else 0
            upright = at.get(settings[0])
            y = self._row(upright) if upright else self.canvas.height - 1
            self.canvas.put(x, y, letter, "strong")

    def _row(self, q: Quantity) -> int:
        """The row of cells of a quantity along the upright axis."""
        return (self.up.steps - 1 - self.up.place(q)) // 2
