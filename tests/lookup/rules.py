"""The rules that come with the program, read once for all tests of looking up."""

from __future__ import annotations

from functools import cache

from weldwhy.lookup.things import Ref, things
from weldwhy.model import RuleBase
from weldwhy.rulebase import load


@cache
def shipped() -> RuleBase:
    """The shipped rules."""
    return load()


def every() -> list[Ref]:
    """Everything that can be looked up in them."""
    return list(things(shipped()).all)


KINDS = (
    "symptom", "cause", "check", "remedy", "term", "calculator", "setting", "window", "process",
    "metal", "grade", "gas", "filler", "setup", "caution", "job", "source",
)  # fmt: skip
"""The kinds of things, told apart from the program's own list."""
