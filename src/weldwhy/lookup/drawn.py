"""What is drawn on a page: the picture of a symptom, the hook-up of a process."""

from __future__ import annotations

from weldwhy.drawing.canvas import Canvas
from weldwhy.drawing.draw import hookup, picture
from weldwhy.lookup.leaf import Leaf
from weldwhy.model import RuleBase


def drawn(rules: RuleBase, leaf: Leaf, width: int, height: int) -> Canvas | None:
    """The drawing of a page in so many cells; None where there is none, or no room."""
    if not leaf.draws:
        return None
    if leaf.ref.kind == "symptom":
        return picture(rules, leaf.ref.id, width, height)
    return hookup(rules, leaf.ref.id, width, height)  # a set-up has the id of its process
