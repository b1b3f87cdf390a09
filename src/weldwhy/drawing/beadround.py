"""What is round about a bead that is cut through: a furnace, a clock, the tungsten over it."""

from __future__ import annotations

from weldwhy.drawing.beadbutt import Cut
from weldwhy.drawing.pane import Pane, near

BARE = frozenset({""})


def furnace(made: Cut) -> None:
    """The box that the whole part lies in, with glowing coils above and below it."""
    pane = made.pane
    wall = max(near(pane.height * 0.05), 1)
    right, foot = pane.width - 1, pane.height - 1
    pane.fill(0, 0, right, wall - 1, "ripple")
    pane.fill(0, foot - wall + 1, right, foot, "ripple")
    pane.fill(0, 0, wall - 1, foot, "ripple")
    pane.fill(right - wall + 1, 0, right, foot, "ripple")
    turn = max(near(pane.height * 0.07), 1)
    for x in range(wall + 1, right - wall):
        off = abs(x % (2 * turn) - turn)
        for y in (wall + off, foot - wall - off):
            pane.dot(x, y, "hot", BARE)
    under = made.floor + int(made.deep)
    for x in (pane.width // 4, pane.width - 1 - pane.width // 4):  # it stands on blocks
        pane.column(x, under, foot - wall, "ripple")


def clock(made: Cut) -> None:
    """A clock at the left, for the hours that go by; a flake of frost at the right."""
    pane = made.pane
    radius = max(pane.height * 0.17, 2.4)
    x, y = near(radius + 1), near(radius)
    pane.disc(x, y, radius + 0.4, "ripple")
    pane.disc(x, y, radius - 0.6, "plate")
    pane.column(x, y - near(radius * 0.6), y, "hole")
    pane.line(y, x, x + near(radius * 0.5), "hole")
    _flake(pane, pane.width - 1 - x, y, near(radius))


def _flake(pane: Pane, x: int, y: int, reach: int) -> None:
    for across, down in ((1, 0), (0, 1), (0.7, 0.7), (0.7, -0.7)):
        far = across * reach, down * reach
        pane.stroke([(x - far[0], y - far[1]), (x + far[0], y + far[1])], "tint", BARE)


def thickness(made: Cut) -> int:
    """Half the thickness of the tungsten over a bead, and of the piece that broke off it."""
    return max(near(made.pane.height * 0.07), 1)


def electrode(made: Cut) -> None:
    """A tungsten in its cup over the bead, broken off, and dashes where its point was."""
    pane, middle = made.pane, near(made.x)
    tip = pane.top(middle) - 1
    half = thickness(made)
    end = max(near(tip * 0.5), 2)
    pane.fill(middle - 4 * half, 0, middle + 4 * half, max(near(tip * 0.2), 1) - 1, "heat")
    for x in (middle - half - 1, middle + half + 1):
        pane.column(x, 0, end, "ripple")
    for x in range(middle - half, middle + half + 1):
        pane.column(x, 0, end - (x - middle + half) % 2 * half, "pale")
    for y in range(end + 2, tip + 1, 2):
        off = near(half * (tip - y) / max(tip - end - 1, 1))
        for x in {middle - off, middle + off}:
            pane.dot(x, y, "ripple", BARE)
