"""The rule checker: everything that is wrong with rule folders, one line each.

`check` is what `weldwhy rules check` runs, and `python -m weldwhy.lint FOLDER...` too: soundness,
without which no rule is used, then quality and wording. Every check has an id, which ends its
line; the docstring of its function shows what passes and what fails.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

from weldwhy import quality, rulebase, wording
from weldwhy.problems import Problem, has_errors
from weldwhy.survey import Survey

CHECKS = (*quality.CHECKS, *wording.CHECKS)


def check(folders: Sequence[Path]) -> list[Problem]:
    """Every problem of these folders, later ones on top of earlier, in the order of the files."""
    return check_survey(rulebase.survey(folders))


def check_survey(survey: Survey) -> list[Problem]:
    """Every problem of what was read: those met in reading, and those of quality and wording."""
    found = [problem for each in CHECKS for problem in each(survey)]
    return sorted({*survey.problems, *found})


def counts(survey: Survey) -> str:
    """What was read, in a line: "54 causes, 81 checks"."""
    kinds = {"cause": "causes", "check": "checks", "symptom": "symptoms", "window": "windows",
             "caution": "cautions", "source": "sources"}  # fmt: skip
    return ", ".join(f"{len(survey.items.get(kind, {}))} {many}" for kind, many in kinds.items())


def main(arguments: Sequence[str]) -> int:
    """Print every problem of the folders named; 0 when there is no error, else 1."""
    survey = rulebase.survey([Path(each) for each in arguments] or [rulebase.default_folder()])
    problems = check_survey(survey)
    for problem in problems:
        sys.stdout.write(f"{problem}\n")
    errors = sum(problem.level == "error" for problem in problems)
    said = f"{counts(survey)}: {errors} errors, {len(problems) - errors} warnings"
    sys.stdout.write(f"{said}\n")
    return 1 if has_errors(problems) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
