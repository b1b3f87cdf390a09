"""What a length in a text is the size of: the metal, the wire, the rod, the tungsten."""

from __future__ import annotations

import re
from collections.abc import Iterable

from weldwhy.model import RuleBase
from weldwhy.understanding.beside import beside, consumable, sizes_named
from weldwhy.understanding.figures import Figure

Meant = tuple[str, str, float]
"""A setting (or "thickness"), the value as it is to be read, and how surely it is meant."""

_ROD = re.compile(r"e?(?:60[12][0-9]|70[12][0-9]|308l?|309l?|316l?|312)(?:-1[5-8])?s?")
_TUNGSTENS = frozenset((1.0, 1.6, 2.0, 2.4, 3.2, 4.0))
"""Sizes that tungstens have, mm."""
SPAN = 50.0
"""From so many whole inches (in mm) on, a length without a name is that of a run, or a pipe's."""
_RODS = frozenset((2.5, 3.2))
"""Sizes that rods have and plate seldom has, mm."""
_THICKEST_WIRE, _THICKEST_FED = 2.4, 1.7
"""Of the wire of a reel, and of one that is fed, mm."""


def sized(
    rules: RuleBase, figure: Figure, words: str, millimetres: float, process: str
) -> Meant | None:
    """What a length is the size of; None if nothing tells, or something else is."""
    bare = not figure.kind and not words.endswith("in")
    before, after = figure.before, figure.after
    if before and _ROD.fullmatch(before[-1]):
        return "rod", words, 0.9
    if after[:1] == ("one",) and beside(rules, "spool") & set(before):
        return "wire", words, 0.85
    by_words = (
        _by_after(rules, after, words, bare),
        _by_before(rules, before, words, millimetres, bare),
    )
    for found in by_words:
        if found is not None:
            return found if found[0] else None
    return _by_process(figure, words, millimetres, consumable(rules, process), bare)


def _by_after(rules: RuleBase, after: Iterable[str], words: str, bare: bool) -> Meant | None:
    """By the words after it: the first that tells. A meant "" is something else."""
    following, named = tuple(after), sizes_named(rules)
    for word in following:
        if word == "stick" and "out" in following:
            return "stick_out", words, 0.9
        if word in named or _ROD.fullmatch(word):
            return named.get(word, "rod"), words, 0.9
        if word in beside(rules, "distance"):
            return "", words, 0.0
        if word in beside(rules, "metal"):
            return "thickness", words, 0.8 if bare else 0.95
    return None


def _by_before(
    rules: RuleBase, before: tuple[str, ...], words: str, millimetres: float, bare: bool
) -> Meant | None:
    """By the words before it: the last that tells."""
    named = sizes_named(rules)
    for word in reversed(before):
        if word == "wire" or (word == "mig" and bare):
            if millimetres <= _THICKEST_WIRE:
                return "wire", words, 0.85
        elif word in named or _ROD.fullmatch(word):
            return named.get(word, "rod"), words, 0.85
        elif word in beside(rules, "metal") or (word in ("on", "onto") and word == before[-1]):
            return "thickness", words, 0.85
        elif word in beside(rules, "distance") or word == "by":
            return "", words, 0.0
    return None


def _by_process(
    figure: Figure, words: str, millimetres: float, uses: str, bare: bool
) -> Meant | None:
    """By what the process uses and the size alone."""
    if uses == "wire" and not figure.kind and millimetres <= _THICKEST_FED:
        return "wire", words, 0.8
    if uses == "tungsten":
        if figure.tungsten and millimetres in _TUNGSTENS:
            return "tungsten", words, 0.75
        return None
    if uses == "rod" and (bare or millimetres in _RODS) and 1.5 <= millimetres <= 6:
        return "rod", words, 0.75
    if words.endswith("in") and "/" not in words and millimetres >= SPAN:
        return None  # "ran 2 inches" is no plate
    if figure.kind == "length" and 0.5 <= millimetres <= 60:
        return "thickness", words, 0.72
    return None
