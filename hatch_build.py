"""Packs the rules into the wheel: the folder itself, and its compiled form for a quick start.

The build stops when the rules have an error. An editable build gets neither: there the rules are
read from the checkout, and a copy would go stale.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class RulesHook(BuildHookInterface[Any]):
    """The hook that `pyproject.toml` names for the wheel."""

    PLUGIN_NAME = "custom"

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Add `rules/` as `weldwhy/_rules/`, with `compiled.jsonl` in it."""
        if version == "editable":
            return
        sys.path.insert(0, str(Path(self.root) / "src"))
        try:
            from weldwhy import compiled, rulebase
        finally:
            sys.path.pop(0)
        folder = Path(self.root) / "rules"
        base, problems = rulebase.read([folder])
        if base is None:
            raise SystemExit("\n".join(str(problem) for problem in problems))
        self.scratch = tempfile.TemporaryDirectory()
        made = Path(self.scratch.name) / compiled.NAME
        made.write_text(compiled.dump(base, str(folder)), encoding="ascii")
        for path in sorted(folder.rglob("*")):
            if path.is_file() and path.suffix in (".yaml", ".md"):
                inside = path.relative_to(folder).as_posix()
                build_data["force_include"][str(path)] = f"weldwhy/_rules/{inside}"
        build_data["force_include"][str(made)] = f"weldwhy/_rules/{compiled.NAME}"

    def finalize(self, version: str, build_data: dict[str, Any], artifact_path: str) -> None:
        """Take the scratch folder away once the wheel is written."""
        if version != "editable":
            self.scratch.cleanup()
