"""How wide printed letters are, and where a line breaks: by the widest of the common sans faces.

A page is printed with whatever sans face the machine has; in a narrower one its lines end sooner.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby

FAMILY = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans Condensed', sans-serif"
POINT = 25.4 / 72
"""Millimetres."""
MARK = re.compile(r"![\d,]*")
"""Numbers of cautions; they stand on the line of the word that follows them."""

# Thousandths of the size: the advance widths of DejaVu Sans 2.37 (those of its oblique are the
# same) and of its bold, measured from the font files and rounded up; where the public metrics of
# Helvetica, which Arial and Liberation Sans share, are wider, those.
_PLAIN = {
    "'": 275, "ijl": 278, "I": 295, " ,.": 318, "/:;\\|": 337, "f": 353, "-": 361, "()[]": 391,
    "t": 393, "!": 401, "r": 412, "\"": 460, "*J`": 500, "s": 521, "z": 525, "c": 550, "?_": 556,
    "L": 558, "k": 580, "vxy": 592, "FT": 611, "o": 612, "a": 613, "e": 616, "hnu": 634,
    "bdgpq": 635, "$0123456789{}": 637, "EKPSY": 667, "AV": 685, "XZ": 686, "B": 687, "CR": 722,
    "U": 732, "N": 749, "H": 752, "D": 771, "G": 778, "&": 780, "OQ": 788, "w": 818,
    "#+<=>^~": 838, "M": 863, "%": 951, "m": 975, "W": 989, "@": 1015,
}  # fmt: skip
_BOLD = {
    "'": 307, "ijl": 343, " ": 349, "/\\|": 366, "I": 373, ",.": 380, ":;": 400, "-": 416,
    "f": 436, "!": 457, "()[]": 458, "t": 479, "r": 494, "`": 500, "\"": 521, "*": 523, "J_": 556,
    "z": 583, "c": 593, "s": 596, "?": 611, "L": 638, "x": 646, "vy": 652, "k": 666, "a": 675,
    "e": 679, "T": 683, "EF": 684, "o": 688, "$0123456789": 696, "hnu{}": 712, "bdgpq": 716,
    "S": 721, "Y": 725, "Z": 726, "P": 733, "C": 734, "B": 763, "RX": 771, "AV": 774, "K": 775,
    "U": 813, "G": 821, "D": 831, "HN": 837, "#+<=>^~": 838, "OQ": 851, "&": 873, "w": 924,
    "M": 996, "@": 1000, "%": 1002, "m": 1042, "W": 1104,
}  # fmt: skip
_WIDTH = {
    bold: {mark: width for marks, width in table.items() for mark in marks}
    for bold, table in ((False, _PLAIN), (True, _BOLD))
}
_OTHER = 1104


@dataclass(frozen=True, slots=True)
class Span:
    """Words of one style that stand together on a line."""

    style: str
    text: str


def width(text: str, size: float, bold: bool = False) -> float:
    """How wide the text is at most, in the unit of `size`."""
    return _thousandths(text, bold) / 1000 * size


@lru_cache(maxsize=16384)
def _thousandths(text: str, bold: bool) -> int:
    known = _WIDTH[bold]
    return sum(known.get(mark, _OTHER) for mark in text)


def broken(runs: Iterable[tuple[str, str]], size: float, room: float) -> list[tuple[Span, ...]]:
    """Runs of (style, text) broken into lines no wider than `room`; a long word is cut."""
    lines: list[list[tuple[str, str]]] = [[]]
    used = 0.0
    for style, word in _words(runs, size, room):
        wide = width(word, size, style == "bold")
        gap = width(" ", size, style == "bold") if lines[-1] else 0.0
        if lines[-1] and used + gap + wide > room:
            tail = _marks_at_end(lines[-1])
            kept = lines[-1][tail:]
            used = sum(width(f"{each} ", size, bold=True) for _, each in kept)
            if used + wide > room:
                tail, kept, used = len(lines[-1]), [], 0.0
            del lines[-1][tail:]
            lines.append(kept)
            gap = 0.0
        used += gap + wide
        lines[-1].append((style, word))
    return [tuple(_spans(line)) for line in lines]


def _marks_at_end(line: list[tuple[str, str]]) -> int:
    """Where the caution numbers begin that the line ends with; its end if none, or if all are."""
    place = len(line)
    while place and MARK.fullmatch(line[place - 1][1]):
        place -= 1
    return place or len(line)


def _spans(line: Iterable[tuple[str, str]]) -> Iterator[Span]:
    for style, words in groupby(line, key=lambda each: each[0]):
        yield Span(style, " ".join(word for _, word in words))


def _words(runs: Iterable[tuple[str, str]], size: float, room: float) -> Iterator[tuple[str, str]]:
    for style, text in runs:
        for word in text.split():
            rest = word
            while width(rest, size, style == "bold") > room and len(rest) > 1:
                most = max(int(len(rest) * room / width(rest, size, style == "bold")), 1)
                while most > 1 and width(rest[:most], size, style == "bold") > room:
                    most -= 1
                yield style, rest[:most]
                rest = rest[most:]
            yield style, rest
