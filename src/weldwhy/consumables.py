"""Reading what people write about wire and rod: "1/8 in 7018", "0.035 in ER70S-6", "ENi-CI"."""

from __future__ import annotations

import re

from weldwhy.units import Quantity, UnitError, parse

# 7018, E71T-1C, ER70S-6 and 308L; nickel rods for cast iron; copper wire
_CLASS = re.compile(
    r"(?:ER|E)?(?:(?:[0-9]{3,4}|[0-9]{2}[ST])[A-Z0-9-]{0,8}|NI(?:FE)?-?CI)|ERCU[A-Z0-9-]{0,6}"
)
# E308L-16: what follows the dash is the coating, and does not change the amps
_COATING = re.compile(r"-1[5-8]$")


def read(text: str) -> tuple[Quantity | None, str]:
    """The size and the class in a text such as "1/8 in 7018"; None and "" for what is not there."""
    words = text.split()[:8]
    for count in range(len(words), 0, -1):
        for start in range(len(words) - count + 1):
            size = _size(" ".join(words[start : start + count]))
            if size is not None:
                return size, _class([*words[:start], *words[start + count :]])
    return None, _class(words)


def size_of(told: Quantity | str | None) -> Quantity | None:
    """The size in what was told of a wire or rod, which may name its class too."""
    if isinstance(told, str):
        return read(told)[0]
    return told if told is not None and told.kind == "length" else None


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

    A leading E or ER is not needed; a steel rod is known by its four digits, whatever follows,
    and a stainless one without the number of its coating.
    """
    return _bare(asked) in {_bare(name) for name in listed.split("/")}


def _bare(name: str) -> str:
    bare = name.strip().upper().removeprefix("ER").removeprefix("E")
    return bare[:4] if bare[:4].isdigit() else _COATING.sub("", bare).replace("-", "")
