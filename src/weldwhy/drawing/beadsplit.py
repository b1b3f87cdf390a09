"""Where the metal of a bead that is cut through is parted: cracks, breaks, holes and craters."""

from __future__ import annotations

from weldwhy.drawing.beadbutt import Cut
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import jagged
from weldwhy.drawing.pane import METAL, near


def crack(where: str, made: Cut) -> None:
    """A crack where it runs in the cut; one that does not reach it is left out."""
    pane, half, deep = made.pane, made.half, made.deep
    toe = made.toes[1]
    if where in ("centre", "crater"):
        x = float(int(made.x))
        top = pane.top(near(x))
        long = (made.root[1] - top) * (0.95 if where == "centre" else 0.5)
        points = [
            (x + off * half * 0.1, top + long * step / 6) for step, off in enumerate(jagged(7, 2))
        ]
    elif where == "toe":
        points = [(toe[0] - 0.5 + off * half * 0.06, toe[1] + deep * 0.27 * step)
                  for step, off in enumerate(jagged(4, 2))]  # fmt: skip
    elif where == "under":
        points = _under(made)
    elif where == "lamellar":
        _steps(made)
        return
    elif where == "beside":
        x = toe[0] + max(half * 0.3, 1.0)
        points = [(x - half * 0.06 * step + off * half * 0.08, toe[1] + deep * 0.95 * step / 4)
                  for step, off in enumerate(jagged(5, 4))]  # fmt: skip
        fork = points[2]
        long = max(deep * 0.4, 1.0)
        pane.stroke([fork, (fork[0] + long, fork[1] + long)], "hole", METAL)
    else:
        return
    pane.stroke(points, "hole", METAL)


def _under(made: Cut) -> list[tuple[float, float]]:
    """In the hard zone under the bead, along its edge and up into one toe."""
    pane, points = made.pane, []
    right = near(made.toes[1][0]) - 1
    for x in range(near(made.x - made.half * 0.75), right + 1):
        below = [y for y in range(made.floor, pane.height) if pane.at(x, y) == "heat"]
        below = below or [y for y in range(pane.height) if pane.at(x, y) == "weld"][-1:]
        if below:
            points.append((float(x), float(below[len(below) // 3])))
    return [*points, (right + 1.0, float(made.floor))]


def _steps(made: Cut) -> None:
    """A tear in the lower plate that goes along and down by turns, like torn wood."""
    x, y = made.root[0] - made.half * 0.7, made.floor + made.deep * 0.5
    run, fall = made.half * 0.38, max(made.deep * 0.2, 1.0)
    points = [(x, y)]
    for step in range(5):
        x += run
        points.append((x, y))
        y += fall if step % 2 else -fall
        points.append((x, y))
    made.pane.stroke(points, "hole")


def hole(made: Cut) -> None:
    """The metal is gone right through; what is left hangs down at both sides."""
    pane, half = made.pane, made.half
    bottom = made.floor + int(made.deep)
    for side in (-1, 1):
        pane.disc(made.x + side * half * 0.85, bottom, max(half * 0.25, 1.0), "weld")
    wide = half * 0.6
    for y in range(pane.height):
        pane.line(y, near(made.x - wide), near(made.x + wide), "")


def broken(made: Cut) -> None:
    """The face of a break: coarse bright grains from toe to root."""
    pane = made.pane
    grain = max(made.half * 0.22, 1.0)
    for y in range(pane.height):
        for x in range(pane.width):
            if pane.rows[y][x] in ("weld", "heat"):
                pane.rows[y][x] = _GRAINS[(int(x / grain) * 3 + int(y / grain) * 5) % 7 % 4]


_GRAINS = ("weld", "plate", "ripple", "hole")
"""What a coarse break glitters with."""


def crater(bead: Bead, made: Cut) -> None:
    """The hollow where the bead ends; the pipe goes down from it."""
    pane = made.pane
    top = pane.top(near(made.x))
    wide = made.half * 0.45
    for down in range(max(near(made.deep * 0.2), 1)):
        pane.line(top + down, near(made.x - wide), near(made.x + wide), "")
        wide *= 0.7
    if bead.crater == "pipe":
        end = made.root[1] - made.deep * 0.15
        for y in range(pane.top(near(made.x)), near(end) + 1):
            reach = made.half * 0.16 * (1 - 0.6 * (y - top) / max(end - top, 1))
            pane.line(y, near(made.x - reach), near(made.x + reach), "hole")
