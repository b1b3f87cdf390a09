"""What people write about a shielding gas: "C25", "75/25", "82 Ar 18 CO2", "argon", "M21".

Names come first, then the parts with their percentages; a mix that nobody named is worked out. The
group of ISO 14175 says which mixes weld alike.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

from weldwhy.model import Gas, RuleBase

_PARTS = {
    "argon": "argon", "ar": "argon", "helium": "helium", "he": "helium", "co2": "co2",
    "oxygen": "oxygen", "o2": "oxygen", "hydrogen": "hydrogen", "h2": "hydrogen",
    "nitrogen": "nitrogen", "n2": "nitrogen",
}  # fmt: skip
_FILLING = {
    "pure", "straight", "gas", "percent", "with", "and", "of", "in", "plus",
    "shielding", "welding", "balance", "rest", "a", "the", "bottle", "cylinder",
}  # fmt: skip
_MIX = ("mix", "mixture")
# A part's name may stand against a number ("Ar5CO2"); any other word is taken whole.
_WORD = re.compile(rf"[0-9]+(?:\.[0-9]+)?|(?:{'|'.join(_PARTS)})(?![a-z])|[a-z]+[0-9]*")
_C_MIX = re.compile(r"c([0-9]{1,2})")
_ACTIVE = ("helium", "co2", "oxygen", "hydrogen", "nitrogen")
"""What the groups tell by; the rest is argon."""
_SLACK = 0.5
"""Percent that the parts of a mix may miss a hundred by."""
OUTSIDE = "Z"
"""The group of ISO 14175 for all that fits no other."""


def read(rules: RuleBase, text: str) -> Gas | None:
    """The gas meant, by a name of it or by its parts; None if the text names no one gas."""
    words = _words(text)
    if (named := _named(rules, words)) is not None:
        return named
    lean = tuple(word for word in words if word not in _MIX)
    named = _named(rules, lean)
    parts = named.parts if named is not None else _parts(lean)
    if not parts or (len(parts) == 1 and lean != words):
        return None  # "helium mix" is not helium
    same = (gas for gas in rules.gases.values() if gas.parts == parts)
    return named or next(same, None) or _worked_out(rules, parts)


def _named(rules: RuleBase, words: Sequence[str]) -> Gas | None:
    for gas in rules.gases.values():
        if any(words == _words(name) for name in (gas.id, gas.name, *gas.also)):
            return gas
    return None


def fits(rules: RuleBase, asked: str, listed: Sequence[str]) -> bool:
    """Whether a gas as typed does what one of the listed gases (by id) does.

    Mixes of one group weld alike, but helium makes another arc and must be the same. An empty text
    means "not said" and fits every list, and an empty list fits every gas.
    """
    if not listed or not asked.strip():
        return True
    gas = read(rules, asked)
    return gas is not None and any(_alike(gas, rules.gases[each]) for each in listed)


def suits(rules: RuleBase, process: str, material: str, text: str) -> bool | None:
    """Whether a gas as typed holds only what it may for this process and metal.

    None if the gas is not known, or the rules hold nothing of that process and metal.
    """
    gas, limits = read(rules, text), rules.tables.get("gas-suits")
    row = f"{process} {material}"
    if gas is None or limits is None or row not in limits.rows:
        return None
    active = gas.parts.get("co2", 0.0) + gas.parts.get("oxygen", 0.0)
    others = ("hydrogen", "nitrogen")
    return limits.value(row, "active from") <= active <= limits.value(row, "active to") and all(
        gas.parts.get(each, 0.0) <= limits.value(row, f"{each} to") for each in others
    )


def _alike(one: Gas, other: Gas) -> bool:
    same_helium = one.parts.get("helium", 0.0) == other.parts.get("helium", 0.0)
    return one.id == other.id or (one.group == other.group != OUTSIDE and same_helium)


def group(rules: RuleBase, parts: Mapping[str, float]) -> str:
    """The group of ISO 14175 of a gas with these parts in volume percent; "Z" outside them all."""
    limits = rules.tables["gas-groups"]
    for name in limits.rows:
        spans = (
            (limits.value(name, f"{part} from"), limits.value(name, f"{part} to"))
            for part in _ACTIVE
        )
        shares = (parts.get(part, 0.0) for part in _ACTIVE)
        if all(low <= x <= high for (low, high), x in zip(spans, shares, strict=True)):
            return name
    return OUTSIDE


@lru_cache(maxsize=512)  # the names of the rules come again with every look at a window
def _words(text: str) -> tuple[str, ...]:
    plain = re.sub(r"(?<=[0-9]),(?=[0-9])", ".", text[:60].lower())
    words = _WORD.findall(plain.replace("carbon dioxide", "co2"))
    return tuple(word for word in words if word not in _FILLING)


def _parts(words: Sequence[str]) -> dict[str, float]:
    """Volume percent by part; empty if the words do not say it, or hold one that is no part."""
    if len(words) == 1 and (mix := _C_MIX.fullmatch(words[0])):
        share = float(mix[1])
        return {"argon": 100 - share, "co2": share} if 0 < share <= 50 else {}
    numbers = [float(word) for word in words if word[0].isdigit()]
    named = [_PARTS.get(word, "") for word in words if not word[0].isdigit()]
    if "" in named or len(set(named)) < len(named):
        return {}
    found: dict[str, float] = {}
    if len(numbers) == 2 > len(named) and set(named) <= {"argon", "co2"}:
        # "80/20" by itself is a MIG mix, and argon the greater part
        found = {"argon": max(numbers), "co2": min(numbers)}
    elif len(numbers) == len(named):
        # in pairs, or all of one kind before the other: each in its own order
        found = dict(zip(named, numbers, strict=True))
    elif len(numbers) == len(named) - 1 and (numbers or len(named) == 1):
        found = _with_rest(words, named)
    whole = abs(sum(found.values()) - 100) <= _SLACK
    return found if whole and all(share > 0 for share in found.values()) else {}


def _with_rest(words: Sequence[str], named: Sequence[str]) -> dict[str, float]:
    """Each number with the part after it ("Ar + 2 O2"), else before it; the other is the rest."""
    at = [place for place, word in enumerate(words) if word[0].isdigit()]
    for step in (1, -1):
        beside = [words[n + step] if 0 <= n + step < len(words) else "" for n in at]
        found = {
            _PARTS[part]: float(words[n])
            for n, part in zip(at, beside, strict=True)
            if part in _PARTS
        }
        if len(found) == len(at):
            rest = next(part for part in named if part not in found)
            return {rest: 100 - sum(found.values()), **found}
    return {}


def _worked_out(rules: RuleBase, parts: Mapping[str, float]) -> Gas:
    """A gas that the rules do not list, named by its parts, the greatest first."""
    most, *others = sorted(parts, key=lambda part: -parts[part])
    said = " and ".join(f"{parts[part]:g} % {_called(part)}" for part in others)
    return Gas(
        id="-".join(f"{part}-{parts[part]:g}" for part in (most, *others)).replace(".", "-"),
        name=f"{_called(most)} with {said}",
        parts=dict(parts),
        source="iso-14175, gas groups",
        group=group(rules, parts),
    )


def _called(part: str) -> str:
    return "CO2" if part == "co2" else part
