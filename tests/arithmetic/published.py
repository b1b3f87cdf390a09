"""Figures printed elsewhere, with source and basis: tests/published/formulas-arc.yaml."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

FILE = Path(__file__).parents[1] / "published" / "formulas-arc.yaml"
ALL: dict[str, Any] = yaml.safe_load(FILE.read_text(encoding="utf-8"))


def examples(*formulas: str) -> list[dict[str, Any]]:
    """The worked examples of these formulas."""
    found = [each for each in ALL["examples"] if each["formula"] in formulas]
    assert found, formulas
    return found


def answer(example: dict[str, Any]) -> float:
    """The one number of an answer."""
    (number,) = example["answer"].values()
    return float(number)


def schedules(*kinds: str) -> list[dict[str, Any]]:
    """Published amps, volts and wire feeds of these kinds of arc."""
    return [each for each in ALL["schedules"] if each["kind"] in kinds]


def middle(both: list[float]) -> float:
    """The middle of a published range."""
    return (both[0] + both[1]) / 2
