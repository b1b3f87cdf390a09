"""Causes and remedies named in print are known to the rules, and a matching case leads to them.

Facts and sources: tests/published/causes.yaml; only texts that were seen are in it.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from tests.replay import shipped_rules

from weldwhy.case import Answered, Case, Reported, Situated
from weldwhy.interview import Interview

FILE = Path(__file__).parent / "published" / "causes.yaml"
ENTRIES: list[dict[str, Any]] = yaml.safe_load(FILE.read_text())["entries"]
SEEN = {
    "pc090", "pc093", "pc095", "pc099", "pc107", "pc118", "pc119", "pc149", "px013", "px017",
    "px022", "px031", "px035", "px038", "px040", "px043", "px050",
}  # fmt: skip


def flat(kind: str) -> list[Any]:
    return [
        pytest.param(entry, item, id=f"{entry['entry']}-{entry['process']}-{number}")
        for entry in ENTRIES
        for number, item in enumerate(entry.get(kind, []), 1)
    ]


def test_every_text_seen_for_these_symptoms_is_here() -> None:
    assert {entry["entry"] for entry in ENTRIES} == SEEN


@pytest.mark.parametrize(("entry", "item"), flat("causes"))
def test_a_published_cause_is_known_and_a_matching_case_leads_to_it(
    entry: dict[str, Any], item: dict[str, Any]
) -> None:
    rules = shipped_rules()
    if "contradicted" in item:
        assert len(item["contradicted"]) > 20, "a contradiction needs its reason"
        return
    cause = rules.causes[item["cause"]]
    assert entry["process"] in cause.processes
    assert entry["symptom"] in cause.symptoms
    case = Case().with_(Reported(entry["symptom"]), Situated("process", entry["process"]))
    case = case.with_(Situated("material", entry.get("material", "")))
    answers = item["case"]["answers"]
    for check, answer in answers.items():
        assert answer in {a.id for a in rules.checks[check].answers}, (check, answer)
        case = case.with_(Answered(check, answer))
    assert Interview(rules, case).ranked[0].cause.id == item["cause"]


@pytest.mark.parametrize(("entry", "item"), flat("remedies"))
def test_a_published_remedy_is_known(entry: dict[str, Any], item: dict[str, Any]) -> None:
    if "contradicted" in item:
        assert len(item["contradicted"]) > 20, "a contradiction needs its reason"
        return
    cause = shipped_rules().causes[item["cause"]]
    if "remedy" in item:
        assert item["remedy"] in {remedy.id for remedy in cause.remedies}
    else:
        assert cause.prevent
    assert entry["process"] in cause.processes
