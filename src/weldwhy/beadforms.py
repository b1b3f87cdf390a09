"""The parameters of a drawn bead, as a rule file writes them.

What is left out is as in a sound bead. Left is the upper edge from above and the left one in the
cut; in a fillet it is the upright's side.
"""

from __future__ import annotations

from weldwhy.shape import keys, optional
from weldwhy.values import number, word, yes_no

_SIDES = word("left", "right", "both")
_PORES = word("scattered", "line", "start", "end", "ends", "deep", "burrows", "tracks")
_CRACKS = word("centre", "crater", "toe", "under", "across", "beside", "onward", "lamellar")

BEAD = keys(
    "bead",
    optional("joint", word("butt", "fillet", "lap", "corner", "plate"), "a butt if left out"),
    optional("seen", word("above", "behind"), "from above, or the root from behind"),
    optional("more", word("above", "cut"),
             "which of the two views gets more room, in a small picture all of it"),
    optional("width", number(0.3, 2), "how wide the bead is, 1 is sound"),
    optional("height", number(0, 3), "how high it stands, 1 is sound"),
    optional("hollow", number(0, 1), "how far its face lies below flush, 1 is as far as can be"),
    optional("penetration", number(0, 2), "how deep it melted in, 1 is right through a butt"),
    optional("gap", number(0, 1), "the root gap, 1 is as wide as the plate is thick"),
    optional("toe", word("smooth", "steep"), "how its edge runs out into the plate"),
    optional("uneven", number(0, 1), "how much longer the leg on the lower plate is"),
    optional("varies", number(0, 1), "how much its width changes along the run"),
    optional("wanders", number(0, 1), "how far it leaves the line of the joint"),
    optional("runs", number(1, 4), "how many runs lie side by side"),
    optional("ripple", word("fine", "coarse", "uneven", "ropy", "chevron", "none"), "its ripples"),
    optional("heat", number(0, 3), "how wide the heated zone is, 1 is sound, 3 is the whole part"),
    optional("undercut", _SIDES, "a groove melted in beside the toe"),
    optional("overlap", _SIDES, "metal that lies loose on the plate"),
    optional("unfused", word("left", "right", "both", "runs"), "what did not melt together"),
    optional("root", word("sound", "none", "one-edge", "drops", "sucked", "sugared", "whiskers"),
             "what its root is like"),
    optional("holes", number(0, 4), "holes melted right through"),
    optional("pores", _PORES, "where gas made holes"),
    optional("pore_count", word("few", "some", "many"), "how many of them"),
    optional("pore_size", word("fine", "middle", "coarse"), "how large they are"),
    optional("crack", _CRACKS, "where it is cracked"),
    optional("crack_too", _CRACKS, "where else"),
    optional("crater", word("filled", "hollow", "pipe"), "how the bead ends"),
    optional("restart", word("lump", "dip"), "where one run stopped and the next began"),
    optional("spatter", word("few", "much"), "drops stuck beside it"),
    optional("strikes", word("few", "much"), "burnt spots beside it"),
    optional("slag", word("cover", "patches", "toes", "trapped"), "slag on it or in it"),
    optional("dust", word("soot", "powder", "rust"), "what lies on it, or grew there later"),
    optional("specks", word("tungsten", "oxide"), "solid things shut up in it"),
    optional("colour", word("straw", "blue", "grey", "black"), "the colour the heat left"),
    optional("bend", number(0, 1), "how far the part has bent"),
    optional("metal", word("rolled", "cast", "aluminium"),
             "what the plate is; a casting is coarse and grey, aluminium has its sign on it"),
    optional("broken", yes_no(), "broken in two, so that the coarse break shows"),
    optional("late", yes_no(), "it comes hours after, in the cold: a clock and frost beside it"),
    optional("tacks", word("sound", "cracked"), "only tacks, no run yet"),
)  # fmt: skip
