"""The drawing of a bead: from above (or from behind) and cut through, in the room there is."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from weldwhy.drawing import beadabove, beadbehind, beadcrack, beadgas, beadsection, beadskin
from weldwhy.drawing.beadparts import Bead, read
from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.pane import Pane, near

LABELLED = (50, 14)
"""Cells from which on each view has its words."""
ROOMY = (32, 10)
"""Cells from which on both views are drawn; below, only the one said to show more, if one is."""

SOUND: Mapping[str, Mapping[str, Any]] = {
    "smaw": {"ripple": "coarse"}, "gtaw-dc": {"ripple": "coarse", "height": 0.8},
    "gtaw-ac": {"ripple": "coarse", "height": 0.8},
    "fillet": {"joint": "fillet"}, "lap": {"joint": "lap"}, "corner": {"joint": "corner"},
    "plate": {"joint": "plate"}, "behind": {"seen": "behind"},
}  # fmt: skip
"""How a sound bead of a process, or in a joint, differs from that of MIG in a butt."""


def sound(of: str, width: int, height: int) -> Canvas:
    """A sound bead of a process or in a joint, to be compared with."""
    canvas = Canvas(width, height)
    paint(canvas, SOUND.get(of, {}))
    return canvas


def paint(canvas: Canvas, parts: Mapping[str, Any]) -> None:
    """Paint a bead with these parameters over the whole of a bare canvas, whatever its size."""
    bead = read(parts)
    labelled = canvas.width >= LABELLED[0] and canvas.height >= LABELLED[1]
    lift = 2 if labelled else 0
    boxes = _boxes(bead, canvas.width, canvas.height)
    words = (
        "from behind" if bead.seen == "behind" else "from above",
        "broken open" if bead.broken else "cut through",
    )
    for box, word, view in zip(boxes, words, (_above, beadsection.paint), strict=True):
        left, top, width, height = box
        pane = Pane(width, height - lift)
        if pane.width > 0 and pane.height > 0:
            pane = view(bead, pane)
            pane.paste(canvas, left, top + lift)
            if bead.metal in MARKS and (view is _above or boxes[0] == NOWHERE):
                _mark(canvas, left + width - 3, (top + lift) // 2 + 1, MARKS[bead.metal])
        if labelled:
            canvas.put(left, top // 2, word, "dim")


def _mark(canvas: Canvas, x: int, y: int, text: str) -> None:
    """Letters stamped on a plate, where there is a row of it for them."""
    if x < 0 or y >= canvas.height:
        return
    canvas.fill(x, 2 * y, x + len(text) - 1, 2 * y + 1, "")
    canvas.put(x, y, text, "strong")


MARKS = {"aluminium": "Al"}
"""What is stamped on the plate, where the metal cannot be told from its colour."""

Box = tuple[int, int, int, int]
"""Left, top, width and height of a view, in half cells."""
NOWHERE: Box = (0, 0, 0, 0)


def _boxes(bead: Bead, width: int, lines: int) -> tuple[Box, Box]:
    """Where both views lie: one over the other, a fillet side by side; or one by itself."""
    small = width < ROOMY[0] or lines < ROOMY[1]
    height = 2 * lines
    whole = (0, 0, width, height)
    if small and bead.more:
        return (whole, NOWHERE) if bead.more == "above" else (NOWHERE, whole)
    share = {"above": 0.6, "cut": 0.4}.get(bead.more, 0.5)
    if bead.cornered or width > 3 * height:
        apart = 2 if width >= 40 else 1
        first = max(near((width - apart) * share), 0)
        return (0, 0, first, height), (first + apart, 0, max(width - first - apart, 0), height)
    first = 2 * near(height * share / 2)
    apart = 1 if first < height - 1 else 0
    if first + apart + 4 < height:
        apart = 2 - first % 2
    return (0, 0, width, first), (0, first + apart, width, height - first - apart)


def _above(bead: Bead, pane: Pane) -> Pane:
    """The bead as it lies; upright where there is more room so, its left edge at the left."""
    if pane.height > pane.width:
        return _lying(bead, Pane(pane.height, pane.width)).turned()
    return _lying(bead, pane)


def _lying(bead: Bead, pane: Pane) -> Pane:
    high = pane.height
    pane = Pane(pane.width, high - near(high * 0.3 * bead.bend))
    if bead.seen == "behind":
        run = beadbehind.laid(bead, pane)
    elif bead.tacks:
        run = beadbehind.tacked(bead, pane)
    else:
        run = beadabove.laid(bead, pane)
        beadskin.restart(bead, run)
        beadgas.end(bead, run)
        beadskin.colour(bead, run)
        beadskin.slag(bead, run)
        beadcrack.edges(bead, run)
    if bead.metal == "cast":
        beadskin.casting(run.pane)
        beadskin.flange(run.pane)
    beadskin.dust(bead, run)
    beadskin.thrown(bead, run)
    if bead.pores:
        beadgas.pores(bead, run)
    beadgas.holes(bead, run)
    beadcrack.cracks(bead, run)
    if bead.broken:
        beadcrack.broken(run)
    return _bowed(pane, high) if high > pane.height else pane


def _bowed(pane: Pane, height: int) -> Pane:
    """The part bent like a bow along its length, on a pane of so many rows."""
    most = height - pane.height
    columns = []
    for x, column in enumerate(zip(*pane.rows, strict=True)):
        off = 2 * x / max(pane.width - 1, 1) - 1
        down = min(near(most * off * off), most)
        columns.append([""] * down + list(column) + [""] * (most - down))
    made = Pane(pane.width, height)
    made.rows = [list(row) for row in zip(*columns, strict=True)]
    return made
