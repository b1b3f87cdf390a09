"""What can be looked up in the rules that come with the program."""

from __future__ import annotations

from tests.replay import shipped_rules as shipped

from weldwhy.lookup.things import Ref, things

__all__ = ["KINDS", "every", "shipped"]


def every() -> list[Ref]:
    """Everything that can be looked up in them."""
    return list(things(shipped()).all)


KINDS = (
    "symptom", "cause", "check", "remedy", "term", "calculator", "setting", "window", "process",
    "metal", "grade", "gas", "filler", "setup", "caution", "job", "source",
)  # fmt: skip
"""The kinds of things, told apart from the program's own list."""
