"""What pictures are painted with: nine paints for drawn welds, two for operating windows.

Each has a letter for where there is no colour; its colours are the theme's on a screen, and those
of `INK` on paper, which differ in lightness too.
"""

from __future__ import annotations

PAINTS = {
    "allowed": "#", "elsewhere": ":",
    "plate": ".", "weld": "#", "ripple": "=", "heat": ":", "hole": "o", "slag": "%", "hot": "*",
    "tint": "~", "pale": "'",
}  # fmt: skip
"""Paint and its letter; each means the same in every picture.

plate: base metal, and steel parts and faces of dials. weld: weld metal, and wire, core and tungsten
that it is made with. ripple: its dark lines, and outlines, arrows and dashes. heat: metal the heat
has turned, and whatever is brown by itself: rust, copper, coating, cup, skin. hole: where nothing
is (holes, cracks, gaps), and what is crossed out. slag: slag, soot, scorch. hot: what gives light
or is so bright that it seems to: arc, spark, spatter, flame, glow, lit figures.
tint: oxide skin and its colours, gas, frost. pale: what is white: powder, aluminium, and bright
tungsten where it broke off.
"""

TELLING = ("hole", "hot", "slag", "tint", "pale", "ripple", "weld", "heat", "plate")
"""Of two paints in one cell the first of these gives the letter: a crack must not be lost."""

INK = {
    "allowed": "#7d9aa6", "elsewhere": "#d0d0cc",
    "plate": "#d2d2cc", "weld": "#949ca4", "ripple": "#565c63", "heat": "#b58a63",
    "hole": "#111111", "slag": "#4a3f35", "hot": "#e0a030", "tint": "#5a78b8",
    "pale": "#ebebe6",
}  # fmt: skip
"""Each paint on white paper."""
