"""Numbers as they stand in a text, each with its unit and the words around it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

_NUMBER = (
    r"(?:[0-9]{1,3} and a half|(?:half(?: an?)?|quarter|eighth(?: of an?)?)(?= in)"
    r"|[0-9]{1,2}[ -][0-9]{1,2}/[0-9]{1,2}|[0-9]{1,3}/[0-9]{1,3}"
    r"|[0-9]{0,4}[.,][0-9]{1,4}|[0-9]{1,5})"
)
_A_MINUTE = r"(?:/| ?per ?| ?a ?)min(?:ute)?"
_LITRE, _METRE = r"l(?:it(?:er|re)s?)?", r"m(?:et(?:er|re)s?)?"
_UNITS = {
    "voltage": r"v(?:olts?|s)?",
    "current": r"a(?:mps?|mperes?)?",
    "feed": rf"ipm|in(?:ch(?:es)?)?\.?{_A_MINUTE}|{_METRE}{_A_MINUTE}|mpm",
    "flow": rf"s?cfh|cubic feet(?: per hour| an hour)?|{_LITRE}{_A_MINUTE}|lpm|{_LITRE}",
    "pressure": r"psi|bar",
    "temperature": r"(?:deg(?:rees?)?|\u00b0) ?[cf]?|[cf](?:elsius|ahrenheit)?",
    "length": (
        r"mm|mil{1,2}(?:imet(?:er|re))?s?|in(?:ch(?:es)?)?\b\.?|\"|\u2033|''|ga(?:uges?|ges?)?\.?"
    ),
    "other": (
        r"%|percent|ft|feet|foot|'|m|met(?:er|re)s?|cm|kg|lbs?|pounds?|kva|kw|hp|years?|yrs?"
        r"|months?|weeks?|wks?|days?|hours?|hrs?|minutes?|mins?|seconds?|secs?|s|times"
        r"|pm|am|st|nd|rd|th|t|x|bucks|quid|o'clock"
    ),
}
_UNIT = "|".join(f"(?P<{kind}>{words})" for kind, words in _UNITS.items())
_READ = re.compile(
    rf"(?<![\w./$\u00a3\u20ac#-])(?P<number>{_NUMBER})"
    rf"(?:[ -]?(?:{_UNIT})(?![a-z0-9]))?(?![a-z0-9/])"
)
_TUNGSTEN = re.compile(r"\btungst[aiou]n\b")
"""Misspelt, in as many letters."""
_WORD = re.compile(r"[a-z][a-z'-]*|[0-9][0-9a-z./]*")
_ENDS = re.compile(r"[.;!?\n]|, ")
_SPELT = {"half": "1/2", "quarter": "1/4", "eighth": "1/8"}
_AROUND, _BESIDE = 40, 3
"""Letters that are looked at on either side, and words taken from them."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A number in figures, the kind and name of its unit ("" if it has none), and its neighbours.

    `tungsten` tells whether the text speaks of a tungsten at all.
    """

    text: str
    kind: str
    unit: str
    start: int
    end: int
    before: tuple[str, ...]
    after: tuple[str, ...]
    tungsten: bool

    @property
    def near(self) -> set[str]:
        """The two words on either side."""
        return {*self.before[-2:], *self.after[:2]}

    @property
    def value(self) -> float:
        """What it is worth in its own unit."""
        whole, _, rest = self.text.replace("-", " ").rpartition(" ")
        top, slash, bottom = rest.replace(",", ".").partition("/")
        part = float(top) / (float(bottom) or 1.0) if slash else float(top)
        return part + (float(whole) if whole else 0.0)


def figures(text: str) -> Iterator[Figure]:
    """Every number in a text, from left to right; prices are none."""
    low = text.lower() if len(text.lower()) == len(text) else text
    low = _TUNGSTEN.sub("tungsten", low)
    tungsten = "tungsten" in low
    for found in _READ.finditer(low):
        kind = next((kind for kind in _UNITS if found[kind] is not None), "")
        before = _WORD.findall(low[max(0, found.start() - _AROUND) : found.start()])
        tail = _ENDS.split(low[found.end() : found.end() + _AROUND], maxsplit=1)[0]
        yield Figure(
            _plain(found["number"]), kind, (found[kind] if kind else "") or "",
            found.start(), found.end(),
            tuple(before[-_BESIDE:]), tuple(_WORD.findall(tail)[:_BESIDE]), tungsten,
        )  # fmt: skip


def _plain(text: str) -> str:
    """The number in figures: "half an" is 1/2, "17 and a half" is 17.5."""
    if text.endswith(" and a half"):
        return f"{text.split()[0]}.5"
    return _SPELT.get(text.split()[0], text)
