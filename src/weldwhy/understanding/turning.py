"""Dials that were turned, and what came of it: "went up to 75, no more trouble"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from weldwhy.model import Cause, Check, RuleBase
from weldwhy.understanding.beside import beside, consumable
from weldwhy.understanding.manner import Result
from weldwhy.understanding.work import met_in

SOON = 40
"""How many letters after a dial was turned its result may stand."""
DIALS = ("volts", "amps", "wire_feed", "gas_flow")
"""The settings that are turned."""
_NUMBER = r"[0-9]{1,3}(?:\.[0-9])?"
_TURNED = (
    r"\b(?:turn(?:ed|ing)?|went|gone|going|go|crank(?:ed)?|ran|run|bump(?:ed)?|put|set"
    r"|knock(?:ed)?|drop(?:s|ped)?|brought|wound|move[ds]?|back(?:ed)?|nudged)"
    r"(?: (?:it|the|my|em|her|him|heat|on|right|straight))*"
    r"(?: (?P<set1>DIAL))?(?: right| way| a bit)?"
    r" (?P<way1>up|down|higher|lower|to)\b(?: (?:to )?(?P<to1>NUMBER))?"
    r"(?: (?:the |my )?(?P<set4>DIAL)\b|(?! (?:the|my|on)\b))"
    r"|\b(?P<set2>DIAL) (?P<way2>up|down)\b"
    r"|\b(?P<way3>upped|raised|increased|lowered|reduced|dropped|drops|more|less|higher|lower)"
    r" (?:the |my )?(?:[0-9.]+ ?)?(?P<set3>DIAL|v)\b"
    r"|\b(?:tried|try) (?:it )?(?:at |on )?(?P<to2>[0-9]{2,3}(?:\.[0-9])?)\b(?! ?(?:mm|in|/))"
)
_UP = frozenset(("up", "higher", "upped", "raised", "increased", "more"))
_DOWN = frozenset(("down", "lower", "lowered", "reduced", "dropped", "drops", "less"))
_SIDES = {"up": "too low", "down": "too high"}


@dataclass(frozen=True, slots=True)
class Turn:
    """A dial turned: its place in the text, the cause that this puts right, and the result."""

    start: int
    end: int
    cause: Cause
    result: str


def turns(
    rules: RuleBase, process: str, text: str, results: tuple[Result, ...],
    measured: Mapping[str, float],
) -> Iterator[Turn]:  # fmt: skip
    """Every dial that was turned with a result; `measured` are the values told by setting."""
    for found in _turned(rules).finditer(text.lower()):
        name = next((found[f"set{n}"] for n in (1, 2, 3, 4) if found[f"set{n}"]), "")
        setting = _setting(rules, process, name)
        way = _way(found, measured.get(setting))
        cause = next(
            (c for c in rules.causes.values() if c.setting == (setting, _SIDES.get(way, ""))), None
        )
        result = _result(results, found)
        if cause is None or result is None or not met_in(cause, process):
            continue
        yield Turn(found.start(), result.end, cause, result.result)


def _way(found: re.Match[str], was: float | None) -> str:
    """Up or down, by the words or by the value before; "" if that cannot be told."""
    word = next((found[f"way{n}"] for n in (1, 2, 3) if found[f"way{n}"]), "")
    if word in _UP or word in _DOWN:
        return "up" if word in _UP else "down"
    to = found["to1"] or found["to2"]
    if not to or was is None or float(to) == was:
        return ""
    return "up" if float(to) > was else "down"


def _result(results: tuple[Result, ...], found: re.Match[str]) -> Result | None:
    near = (
        each
        for each in results
        if found.start() < each.end
        and each.start - found.end() <= SOON
        and (not each.weak or each.start >= found.end())
    )
    return next(near, None)


@lru_cache(maxsize=4)  # rules are equal only to themselves
def _dials(rules: RuleBase) -> dict[str, str]:
    """The setting that each name of a dial means, the longest names first."""
    named = {word: name for name in DIALS for word in beside(rules, name)}
    return {word: named[word] for word in sorted(named, key=lambda word: (-len(word), word))}


@lru_cache(maxsize=4)
def _turned(rules: RuleBase) -> re.Pattern[str]:
    names = "|".join(re.escape(word).replace(r"\ ", " ?") for word in (*_dials(rules), "heat"))
    return re.compile(_TURNED.replace("DIAL", f"(?:{names})").replace("NUMBER", _NUMBER))


def _setting(rules: RuleBase, process: str, name: str) -> str:
    """The setting that a name means; "it" and "heat" are the main dial of the process."""
    if name == "v":
        return "volts"
    dials = {word.replace(" ", ""): setting for word, setting in _dials(rules).items()}
    main = "volts" if consumable(rules, process) == "wire" else "amps" if process else ""
    return dials.get(name.replace(" ", ""), main)


def check_of(rules: RuleBase, cause: Cause) -> Check | None:
    """The check that puts the same try as the remedy of a setting, such as "volts-up-try"."""
    if cause.setting is None:
        return None
    setting, side = cause.setting
    way = next(way for way, each in _SIDES.items() if each == side)
    names = (f"{name}-{way}-try" for name in (setting, setting.rpartition("_")[2]))
    return next((rules.checks[name] for name in names if name in rules.checks), None)
