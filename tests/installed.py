"""A copy of the package as a wheel installs it: code, rules and compiled rules side by side."""

from __future__ import annotations

import shutil
from pathlib import Path

import weldwhy
from weldwhy import compiled, rulebase


def installed(folder: Path) -> Path:
    """Put the copy into a folder that is not there yet, and return it."""
    code = Path(weldwhy.__file__).parent
    shutil.copytree(code, folder / "weldwhy", ignore=shutil.ignore_patterns("__pycache__"))
    rules = folder / "weldwhy" / "_rules"
    if not rules.exists():
        shutil.copytree(rulebase.default_folder(), rules)
    base, problems = rulebase.read([rules])
    assert base is not None, problems
    (rules / compiled.NAME).write_text(compiled.dump(base, str(rules)), encoding="ascii")
    return folder
