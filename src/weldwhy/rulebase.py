"""Finds the rule folders and gives the rule base they make.

`load` is for those who want rules or a reason; `read` and `survey` are for those who check them.
The compiled form of the packaged rules is tried first, so that the YAML reader is not even
imported for them. An operator's own folder adds items, or replaces whole items by id.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from typing import TYPE_CHECKING

from weldwhy import compiled
from weldwhy.model import RuleBase
from weldwhy.problems import Problem, RulesError, has_errors

if TYPE_CHECKING:
    from pathlib import Path

    from weldwhy.survey import Survey


def default_folder() -> Path:
    """The rules that come with this copy: beside the installed package, else in the checkout."""
    from pathlib import Path  # a tenth of the time of a one-shot answer, which does without

    return Path(_own_folder())


def load(extra: Path | None = None) -> RuleBase:
    """The rules that come with this copy, with the operator's own folder on top if there is one.

    Worked cases may be absent. Raises RulesError when the rules cannot be used.
    """
    if extra is None:
        ready = compiled.load(_own_folder())
        if ready is not None:
            return ready
    folders = [default_folder()] if extra is None else [default_folder(), extra]
    base, problems = read(folders)
    if base is None:
        raise RulesError(problems)
    return base


def read(folders: Sequence[Path]) -> tuple[RuleBase | None, list[Problem]]:
    """The rule base of these folders, later ones on top; None if there is any error."""
    found = survey(folders)
    return (None if has_errors(found.problems) else found.base), found.problems


def survey(folders: Sequence[Path]) -> Survey:
    """Everything the folders hold, with every problem; unsound items are left out of its base."""
    from weldwhy.joining import join  # brings in the YAML reader

    return join(folders)


def _own_folder() -> str:
    package = os.path.dirname(os.path.realpath(__file__))  # noqa: PTH120 - see default_folder
    packaged = f"{package}/_rules"
    if os.path.isdir(packaged):  # noqa: PTH112
        return packaged
    return os.path.normpath(f"{package}/../../rules")
