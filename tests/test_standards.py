"""Symptoms carry the numbers of ISO 6520-1 and the limits of ISO 5817:2014, as print has them.

Facts, with their basis: tests/published/imperfections.yaml.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from tests.replay import shipped_rules

FILE = Path(__file__).parent / "published" / "imperfections.yaml"
FACTS: list[dict[str, Any]] = yaml.safe_load(FILE.read_text())["imperfections"]
RULES = shipped_rules()


@pytest.mark.parametrize("fact", FACTS, ids=lambda fact: fact["symptom"])
def test_a_symptom_has_its_number(fact: dict[str, Any]) -> None:
    told = re.findall(r"\d+", RULES.symptoms[fact["symptom"]].iso_6520_1)
    assert set(fact["number"]) <= set(told)


@pytest.mark.parametrize("fact", FACTS, ids=lambda fact: fact["symptom"])
def test_a_symptom_tells_its_limits_and_whether_they_are_from_memory(fact: dict[str, Any]) -> None:
    symptom = RULES.symptoms[fact["symptom"]]
    for figure in fact["figures"]:
        assert re.search(rf"(?<![\d.]){re.escape(figure)}(?!\d|\.\d)", symptom.limits), figure
    if fact["figures"] and fact["figures_basis"] == "memory":
        assert "memory" in symptom.limits.lower()
    if fact["figures_basis"] == "found":
        assert "ISO 5817" in symptom.limits


def test_no_symptom_has_a_number_that_is_not_checked_here() -> None:
    checked = {fact["symptom"] for fact in FACTS}
    numbered = {symptom.id for symptom in RULES.symptoms.values() if symptom.iso_6520_1}
    # a crack in aluminium and pores at the ends are kinds of what is checked above
    assert numbered - checked <= {"aluminium-crack", "porosity-at-ends"}


def test_a_number_from_memory_is_cited_as_such() -> None:
    """The source of a symptom with a number from memory is one of basis memory, or says so."""
    for fact in FACTS:
        symptom = RULES.symptoms[fact["symptom"]]
        if fact["basis"] == "memory":
            source = RULES.sources[symptom.source.partition(",")[0].strip()]
            cited = source.basis == "memory" or "iso-6520-1" in symptom.source
            assert cited or "memory" in symptom.iso_6520_1 + symptom.limits, symptom.id
