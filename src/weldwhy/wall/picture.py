"""The picture of a symptom on its wall chart: as elements of SVG, or as letters."""

from __future__ import annotations

from weldwhy.drawing.draw import picture
from weldwhy.drawing.letters import letters_of
from weldwhy.drawing.svg import svg_of
from weldwhy.model import RuleBase
from weldwhy.wall.print import PICTURE_CELLS, PICTURE_PLACE
from weldwhy.wall.text import PICTURE


def as_svg(rules: RuleBase, symptom: str, process: str = "") -> tuple[str, ...]:
    """The picture at its place on the sheet; none if the rules hold none."""
    canvas = picture(rules, symptom, *PICTURE_CELLS, process)
    return tuple(svg_of(canvas, *PICTURE_PLACE)) if canvas else ()


def as_letters(rules: RuleBase, symptom: str, process: str = "") -> tuple[str, ...]:
    """The picture as lines; none if the rules hold none."""
    canvas = picture(rules, symptom, *PICTURE, process)
    return tuple(letters_of(canvas)) if canvas else ()
