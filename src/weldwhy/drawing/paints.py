"""What pictures are painted with: eight paints for drawn welds, two for operating windows.

Each has a letter for where there is no colour; its colours are the theme's on a screen, and those
of `INK` on paper, which differ in lightness too.
"""

from __future__ import annotations

PAINTS = {
    "allowed": "#", "elsewhere": ":",
    "plate": ".", "weld": "#", "ripple": "=", "heat": ":", "hole": "o", "slag": "%", "hot": "*",
    "tint": "~",
}  # fmt: skip
"""Paint and its letter. plate: base metal, also steel parts; weld: weld metal, wire; ripple: its
dark lines and outlines; heat: the zone beside it, also copper parts; hole: holes, cracks, gaps;
slag: slag and soot; hot: arc, spatter, glow; tint: oxide colour, gas."""

TELLING = ("hole", "hot", "slag", "tint", "ripple", "weld", "heat", "plate")
"""Of two paints in one cell the first of these gives the letter: a crack must not be lost."""

INK = {
    "allowed": "#7d9aa6", "elsewhere": "#d0d0cc",
    "plate": "#d2d2cc", "weld": "#949ca4", "ripple": "#565c63", "heat": "#b58a63",
    "hole": "#111111", "slag": "#4a3f35", "hot": "#e0a030", "tint": "#5a78b8",
}  # fmt: skip
"""Each paint on white paper."""
