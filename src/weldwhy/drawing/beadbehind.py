"""The back of a joint: the root as it shows from behind, and a joint that holds by tacks only."""

from __future__ import annotations

from weldwhy.drawing.beadabove import Run
from weldwhy.drawing.beadgas import room
from weldwhy.drawing.beadparts import Bead
from weldwhy.drawing.beadshape import places, rounded, wave
from weldwhy.drawing.pane import METAL, Pane, near

_LUMPS = {"drops": 0.1, "sugared": 0.25}
"""How uneven the edges of a root are."""


def laid(bead: Bead, pane: Pane) -> Run:
    """Plates and root painted on a bare pane."""
    width, height = pane.width, pane.height
    wide = {"drops": 0.11, "sugared": 0.2}.get(bead.root, 0.13)
    half = max(height * wide, 0.6)
    run = Run(pane, (height - 1) / 2, half, 0, width - 1)
    pane.fill(0, 0, width - 1, height - 1, "plate")
    zone = max(near(height * 0.1 * bead.heat), 1)
    pane.fill(0, near(run.middle - height * 0.14) - zone, width - 1,
              near(run.middle + height * 0.14) + zone, "heat")  # fmt: skip
    lumps = _LUMPS.get(bead.root, 0.0)
    for at in range(width):
        along = at / max(width - 1, 1)
        run.tops.append(near(run.middle - half * (1 + lumps * wave(along * 1.3, 1.0))))
        run.bottoms.append(near(run.middle + half * (1 + lumps * wave(along * 1.3, 5.0))))
    _root(bead, run)
    return run


def _root(bead: Bead, run: Run) -> None:
    pane = run.pane
    if bead.root == "none":
        _line(run, near(run.middle), bead.gap)
        return
    for at, (top, bottom) in enumerate(zip(run.tops, run.bottoms, strict=True)):
        pane.column(at, top, bottom, "weld")
        if bottom > top + 1:
            pane.dot(at, bottom, "ripple")
    pitch = max(near(run.half * 1.1), 3)
    for x in range(pitch // 2, pane.width, pitch if bead.root not in _LUMPS else pane.width):
        pane.column(x, run.tops[x] + 1, run.bottoms[x] - 1, "ripple")
    if bead.root == "one-edge":
        _line(run, run.tops[0], 0.0)
        pane.fill(0, run.tops[0] + 1, pane.width - 1, near(run.middle) - 1, "weld")
    elif bead.root in _EXTRA:
        _EXTRA[bead.root](run)


def _line(run: Run, y: int, gap: float) -> None:
    """The edge of a plate as it was cut: dead straight."""
    deep = near(run.pane.height * 0.05 + gap * run.pane.height * 0.15)
    run.pane.fill(0, y, run.pane.width - 1, y + max(deep, 1) - 1, "hole")


def _drops(run: Run) -> None:
    """Drops of sound metal, each with its shadow."""
    count = room(run.length, run.half * 5, 6)
    for step, (along, across, size) in enumerate(places(count, 3)):
        radius = max(run.half * (1.2 + 1.1 * size), 1.6)
        x = run.x((step + 0.35 + 0.3 * along) / count)
        y = run.middle + (across - 0.4) * run.half * 1.2
        run.pane.disc(x + 0.4, y + 0.6, radius + 0.8, "ripple")
        run.pane.disc(x, y, radius, "weld")


def _sucked(run: Run) -> None:
    for at in range(run.first, run.last + 1):
        run.pane.column(at, run.tops[at], near(run.middle - run.half * 0.4), "ripple")


def _sugared(run: Run) -> None:
    """A black crust of lumps and pits."""
    for at in range(run.first, run.last + 1):
        run.pane.column(at, run.tops[at], run.bottoms[at], "slag")
    count = max(2 * run.pane.width // max(near(run.half), 1), 10)
    for step, (along, across, size) in enumerate(places(count, 7)):
        x = run.x(along)
        y = run.middle + (across * 2 - 1) * run.half * 1.4
        radius = run.half * (0.25 + 0.4 * size)
        run.pane.disc(x + 0.6, y + 0.8, radius, "hole")
        run.pane.disc(x, y, radius, "slag")
        run.pane.dot(near(x - 1), near(y - 1), "ripple", frozenset({"slag"}))
        if step % 3 == 0:
            run.pane.disc(x + run.half * 0.3, y - run.half * 0.2, run.half * 0.15, "hole")
        if step % 5 == 0:
            run.pane.disc(x - run.half * 0.3, y, run.half * 0.12, "heat")


def _whiskers(run: Run) -> None:
    """Ends of wire that stand out of the root to both sides."""
    long = run.pane.height * 0.3
    count = room(run.length, 5, 9)
    for step, (along, across, size) in enumerate(places(count, 2)):
        x = run.x((step + 0.4 + 0.4 * along) / count)
        side = 1 if step % 2 else -1
        lean = (across - 0.5) * long * 0.9
        reach = long * (0.65 + 0.5 * size)
        run.pane.stroke(
            [(x, run.middle), (x + lean, run.middle + side * (run.half + reach))], "weld"
        )


_EXTRA = {"drops": _drops, "sucked": _sucked, "sugared": _sugared, "whiskers": _whiskers}


def tacked(bead: Bead, pane: Pane) -> Run:
    """Plates held by three tacks; cracked, the first has torn and the gap opens."""
    width, height = pane.width, pane.height
    half = max(height * 0.17, 1.0)
    run = Run(pane, (height - 1) / 2, half, 0, width - 1, [], [])
    pane.fill(0, 0, width - 1, height - 1, "plate")
    cracked = bead.tacks == "cracked"
    for at in range(width):
        open_by = (1 - at / width) * height * 0.13 if cracked else 0.0
        pane.column(at, near(run.middle - open_by), near(run.middle + open_by), "hole")
    reach = max(width * 0.075, 2.0)
    for along in (0.17, 0.53, 0.87):
        x = along * width
        for at in range(near(x - reach), near(x + reach) + 1):
            wide = half * rounded(reach - abs(at - x) + 0.6, reach)
            pane.column(at, near(run.middle - wide) - 1, near(run.middle + wide) + 1, "heat")
            pane.column(at, near(run.middle - wide), near(run.middle + wide), "weld")
        pane.column(near(x), near(run.middle - half * 0.5), near(run.middle + half * 0.5), "ripple")
    if cracked:
        for along, tilt in ((0.17, 0.35), (0.53, -0.25)):
            points = [
                (along * width + tilt * half * off, run.middle + half * down)
                for off, down in ((-1.25, -1.25), (0.75, -0.25), (-0.5, 0.38), (1.25, 1.25))
            ]
            pane.stroke(points, "hole", METAL)
    run.tops = [near(run.middle - half)] * width
    run.bottoms = [near(run.middle + half)] * width
    return run
