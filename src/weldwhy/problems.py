"""A problem in a file: where it is, what is wrong in plain words, and which check found it.

Every reader collects these instead of stopping at the first. One problem is one line:
`rules/causes/x.yaml:41:7: error: unknown key "liklihood"; did you mean "likelihood"? [unknown-key]`
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from weldwhy.plaintext import clean

Level = Literal["error", "warning"]


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One fault. `line` and `column` count from 1; 0 means that nobody knows, and is not shown."""

    file: str
    line: int
    column: int
    level: Level
    words: str
    check_id: str

    def __str__(self) -> str:
        """The line to print, safe on a terminal whatever the file holds."""
        place = [clean(self.file)]
        if self.line:
            place.append(str(self.line))
            if self.column:
                place.append(str(self.column))
        return f"{':'.join(place)}: {self.level}: {clean(self.words)} [{self.check_id}]"


class RulesError(Exception):
    """The rules cannot be used; `problems` says why, one line each."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        """Keep the problems, most useful first: errors before warnings, in file order."""
        self.problems = tuple(sorted(problems, key=lambda p: (p.level != "error", p)))
        super().__init__("\n".join(str(problem) for problem in self.problems))


def has_errors(problems: Iterable[Problem]) -> bool:
    """Whether any of them is more than a warning."""
    return any(problem.level == "error" for problem in problems)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word most like `word`, or None when none is near enough to be meant.

    >>> nearest("liklihood", ["likelihood", "limits"])
    'likelihood'
    """
    import difflib  # only needed when something is wrong, and slow to import

    found = difflib.get_close_matches(word.lower(), sorted(known), n=1, cutoff=0.6)
    return found[0] if found else None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A hint to hang on a complaint: the nearest known word, else the short list of them.

    >>> did_you_mean("hihg", ["high", "low"])
    '; did you mean "high"?'
    >>> did_you_mean("x", ["high", "low"])
    '; known: high, low'
    """
    words = list(known)
    near = nearest(word[:80], words)
    if near is not None:
        return f'; did you mean "{near}"?'
    return f"; known: {', '.join(words)}" if 0 < len(words) <= 12 else ""
