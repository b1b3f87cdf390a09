"""Figures printed elsewhere: tests/published/formulas-power.yaml, and cylinders.yaml beside it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

FOLDER = Path(__file__).parents[1] / "published"
ALL: dict[str, Any] = yaml.safe_load((FOLDER / "formulas-power.yaml").read_text(encoding="utf-8"))
CYLINDERS: dict[str, Any] = yaml.safe_load((FOLDER / "cylinders.yaml").read_text(encoding="utf-8"))


def example(name: str) -> tuple[dict[str, float], float]:
    """The inputs of a worked example and the one number of its answer."""
    (found,) = (each for each in ALL["examples"] if each["id"] == name)
    (answer,) = found["answer"].values()
    return found["inputs"], answer
