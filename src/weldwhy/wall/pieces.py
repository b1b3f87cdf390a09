"""Pieces of text on a wall chart, each with its role, and texts told in short.

A piece is text in runs of one style; how large it is set and where it is broken is left to the
form.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, chain, groupby
from typing import Literal

from weldwhy.model import Remedy
from weldwhy.plaintext import clean

Role = Literal["looks", "heading", "caution", "check", "way", "item", "call", "foot"]
Style = Literal["", "bold", "slanted"]
Run = tuple[Style, str]

LOOKS, LITTLE = 110, 30
"""Most letters of how it looks that are told in short; so few letters of a text tell nothing."""
_FORBIDS = re.compile(r"\b(never|not|no|stop|only|until)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Piece:
    """Text in one role. `mark` stands in the margin: a rung's number, a letter, a caution's."""

    role: Role
    runs: tuple[Run, ...]
    mark: str = ""

    @property
    def text(self) -> str:
        """The words alone."""
        return " ".join(text for _, text in self.runs if text)


def piece(role: Role, *runs: str | Run, mark: str = "") -> Piece:
    """A piece of safe text; a run without a style is plain."""
    styled: list[Run] = [run if isinstance(run, tuple) else ("", run) for run in runs]
    cleaned: list[Run] = [(style, clean(text)) for style, text in styled]
    return Piece(role, tuple(run for run in cleaned if run[1]), mark)


def blocks(pieces: Iterable[Piece]) -> Iterator[tuple[Piece, ...]]:
    """The pieces as they are set: cautions run on as one piece, the list stands together."""
    for role, group in groupby(pieces, key=lambda each: each.role):
        if role == "caution":
            marked = ((("bold", each.mark), *each.runs) for each in group)
            yield (Piece("caution", tuple(chain.from_iterable(marked))),)
        elif role == "item":
            yield tuple(group)
        else:
            yield from ((each,) for each in group)


def split(heights: Sequence[float]) -> int:
    """How many of them stand in the first of two columns, so that the higher one is lowest.

    >>> split([3.0, 1.0, 1.0, 1.0])
    1
    """
    whole = sum(heights)
    above = list(accumulate(heights, initial=0.0))
    return min(range(len(above)), key=lambda count: max(above[count], whole - above[count]))


def in_short(text: str, most: int) -> str:
    """The first sentences, as long as they fit; as many as tell anything stay in any case.

    >>> in_short("Clean it. Dry it well in the sun for an hour, or in an oven. Then weld.", 40)
    'Clean it. Dry it well in the sun for an hour, or in an oven.'
    """
    kept = ""
    for sentence in _sentences(text):
        if len(kept) >= LITTLE and len(kept) + 1 + len(sentence) > most:
            break
        kept = f"{kept} {sentence}".lstrip()
    return kept


def does(remedy: Remedy) -> str:
    """What to do, in short: as the rules say it, else its first sentence and all that forbids."""
    if remedy.short:
        return remedy.short
    first = in_short(remedy.do, LITTLE)
    left = _sentences(remedy.do.removeprefix(first).strip())
    return " ".join([first, *(each for each in left if _FORBIDS.search(each))])


def without_asides(text: str) -> str:
    """The text without what stands in brackets.

    >>> without_asides("A lump of slag (it chips out), or a crack.")
    'A lump of slag, or a crack.'
    """
    return re.sub(r" *\([^()]*\)", "", text)


def _sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.!?]) +(?=[A-Z])", text) if text else []
