"""Reading what people write about wire, rod and gas: "1/8 in 7018", "0.035 in ER70S-6", "75/25"."""

from __future__ import annotations

import re

from weldwhy.units import Quantity, UnitError, parse

_CLASS = re.compile(r"(?:ER|E)?(?:[0-9]{3,4}|[0-9]{2}[ST])[A-Z0-9-]{0,8}")
_FILLING = {"pure", "gas", "mix", "mixture", "percent", "with", "and", "of", "100"}
_SAME = {"argon": "ar", "helium": "he", "oxygen": "o2"}


def read(text: str) -> tuple[Quantity | None, str]:
    """The size and the class in a text such as "1/8 in 7018"; None and "" for what is not there."""
    words = text.split()[:8]
    for count in range(len(words), 0, -1):
        for start in range(len(words) - count + 1):
            size = _size(" ".join(words[start : start + count]))
            if size is not None:
                return size, _class([*words[:start], *words[start + count :]])
    return None, _class(words)


def _size(text: str) -> Quantity | None:
    """A length with its unit, or one that can only be inches; a bare "6013" is no size."""
    try:
        return parse(text, "length")
    except UnitError:
        return None


def _class(words: list[str]) -> str:
    """The first word that has the form of a filler metal class, in capitals."""
    capitals = (word.strip(",;").upper() for word in words)
    return next((word for word in capitals if _CLASS.fullmatch(word)), "")


def same_class(asked: str, listed: str) -> bool:
    """Whether a class is among those of a window ("E6010/E6011").

    A leading E or ER is not needed; a stick rod is known by its four digits, whatever follows.
    """
    return _bare(asked) in {_bare(name) for name in listed.split("/")}


def _bare(name: str) -> str:
    bare = name.strip().upper().removeprefix("ER").removeprefix("E")
    return bare[:4] if bare[:4].isdigit() else bare


def same_gas(asked: str, listed: tuple[str, ...]) -> bool:
    """Whether a gas text means one of the listed gases; word order and filling words do not count.

    An empty text means "not said" and fits every list, and an empty list fits every gas.
    """
    return not listed or not asked.strip() or _gas(asked) in {_gas(name) for name in listed}


def _gas(text: str) -> frozenset[str]:
    plain = text[:60].lower().replace("carbon dioxide", "co2")
    words = re.findall(r"[a-z]+[0-9]{0,2}|[0-9]+(?:\.[0-9]+)?", plain)
    return frozenset(_SAME.get(word, word) for word in words if word not in _FILLING)
