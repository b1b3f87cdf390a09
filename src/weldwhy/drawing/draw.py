"""The picture of a symptom: which drawing it is, painted in the room there is."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from weldwhy.drawing import arc, bead, circuit, gasline, leads, rod, tungsten, wirepath
from weldwhy.drawing.canvas import Canvas
from weldwhy.model import RuleBase

LEAST = (24, 8)
"""Cells below which nothing can be told from a picture."""

Painter = Callable[[Canvas, Mapping[str, float | str]], None]
"""Paints a drawing with its parameters over the whole of a bare canvas, whatever its size."""

PAINTERS: dict[str, Painter] = {
    "bead": bead.paint,
    "path": wirepath.paint,
    "tungsten": tungsten.paint,
    "rod": rod.paint,
    "arc": arc.paint,
    "circuit": circuit.paint,
    "gas": gasline.paint,
}
"""What paints each drawing of `drawforms.PICTURE`."""


def hookup(rules: RuleBase, process: str, width: int, height: int) -> Canvas | None:
    """The usual hook-up of a process; None if the rules hold none, or without room."""
    setup = rules.setups.get(process)
    if setup is None or width < LEAST[0] or height < LEAST[1]:
        return None
    canvas = Canvas(width, height)
    leads.paint(canvas, setup)
    return canvas


def picture(
    rules: RuleBase, symptom: str, width: int, height: int, process: str = ""
) -> Canvas | None:
    """The symptom's picture in so many cells; None if the rules hold none, or without room.

    With a process that the symptom is met in, an arc burns from what is in the hand there.
    """
    found = rules.pictures.get(symptom)
    if found is None or width < LEAST[0] or height < LEAST[1]:
        return None
    parts = found.parts
    if found.draws == "arc" and process in rules.symptoms[symptom].processes:
        parts = {**parts, "tool": _tool(rules, process) or parts.get("tool", "gun")}
    canvas = Canvas(width, height)
    PAINTERS[found.draws](canvas, parts)
    return canvas


def _tool(rules: RuleBase, process: str) -> str:
    """What is in the hand, in the words of `sceneforms.ARC`; "" if the rules have no set-up."""
    setup = rules.setups.get(process)
    if setup is None:
        return ""
    return setup.holder if setup.holder in ("gun", "torch") else "rod"


def sound(of: str, width: int, height: int) -> Canvas:
    """A sound bead of a process or in a joint ("fillet"), to be compared with a faulty one."""
    return bead.sound(of, width, height)
