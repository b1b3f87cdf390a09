"""Words of the trade that tell what a number, or the name of a metal, beside them is of.

They are the rules' own: `words` of a setting, and the sayings of the field "beside".
"""

from __future__ import annotations

from functools import lru_cache

from weldwhy.model import RuleBase

SIZES = ("wire", "rod", "tungsten", "stick_out", "leg")
"""The settings that a length can be."""


@lru_cache(maxsize=128)  # rules are equal only to themselves
def beside(rules: RuleBase, what: str) -> frozenset[str]:
    """The words beside which something is a value of a setting, or what else `what` says."""
    return frozenset(rules.said.get(f"beside {what}", ()))


@lru_cache(maxsize=4)
def sizes_named(rules: RuleBase) -> dict[str, str]:
    """The setting that each word names beside a length."""
    return {word: name for name in SIZES for word in beside(rules, name)}


@lru_cache(maxsize=64)
def consumable(rules: RuleBase, process: str) -> str:
    """What a process has sizes of: "wire", "rod" or "tungsten"; "" if the rules do not tell."""
    windows = (w for w in rules.windows.values() if process in w.processes)
    return next((window.size_of for window in windows), "")
