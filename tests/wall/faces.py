"""How wide letters are in the faces that a wall chart may be printed in, in thousandths of a size.

Helvetica is by its public metrics, which Arial and Liberation Sans share; from memory.
"""

from __future__ import annotations

from weldwhy.wall.typeface import width

PRINTABLE = [chr(code) for code in range(32, 127)]
_PLAIN = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722,
    722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722,
    667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556,
    556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500,
    500, 334, 260, 334, 584,
]  # fmt: skip
_BOLD = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722,
    722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722,
    667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611,
    611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556,
    500, 389, 280, 389, 584,
]  # fmt: skip
HELVETICA = {False: dict(zip(PRINTABLE, _PLAIN)), True: dict(zip(PRINTABLE, _BOLD))}


def widest(text: str, size: float, bold: bool) -> float:
    """The width in the widest of the faces, letter by letter as each face has them."""
    known = HELVETICA[bold]
    helvetica = sum(known.get(mark, 1015) for mark in text) / 1000 * size
    return max(helvetica, width(text, size, bold))
