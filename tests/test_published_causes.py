"""Causes and remedies named in print are known to the rules, and matching answers lead to them.

The facts stand in tests/published/causes-*.yaml, one file for each group of symptoms. `basis` of a
file: found = only texts that were seen, memory = texts written down from memory, which prove less
and are counted apart. An item of `entries` is what one text says of one symptom:

- `entry`: our number of the text; `source`: a source of rules/sources.yaml, and the place in it
- `processes`: the processes that the text speaks of; `material`: the metal, if it names one
- `causes`, `remedies`: `published` = what is named, in our words; `cause`, `remedy` = what the
  rules call it (`remedy: prevent` = the rules say it under `prevent`); `only` = not for all
  processes of the item; `case` = answers that fit the words, with which the cause must come first
- `contradicted`: why the rules do not follow the text; `missing`: what the rules do not know yet
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
import yaml
from tests.replay import shipped_rules

from weldwhy.case import Answered, Case, Reported, Situated
from weldwhy.interview import Interview

BASES = ("found", "memory")
SEEN = {
    "found": """
        pc015 pc017 pc087 pc089 pc090 pc091 pc093 pc094 pc095 pc097 pc098 pc099 pc101 pc102 pc103
        pc105 pc106 pc107 pc109 pc110 pc111 pc113 pc114 pc115 pc117 pc118 pc119 pc137 pc138 pc139
        pc141 pc147 pc149 px001 px002 px004 px005 px007 px008 px010 px011 px013 px014 px016 px017
        px019 px020 px022 px023 px025 px026 px028 px029 px031 px032 px034 px035 px037 px038 px040
        px041 px043 px044 px046 px047 px049 px050 px052
    """,
    # pc018 and pc019 are left out: undercut and pores of gas welding, by flame, tip and flux.
    "memory": """
        pc001 pc002 pc003 pc005 pc006 pc007 pc009 pc010 pc011 pc013 pc014 pc021 pc022 pc023 pc025
        pc026 pc027 pc029 pc030 pc031 pc033 pc034 pc035 pc037 pc038 pc039 pc041 pc042 pc043 pc045
        pc046 pc047 pc049 pc050 pc051 pc053 pc054 pc055 pc057 pc058 pc059 pc061 pc062 pc063 pc065
        pc066 pc067 pc069 pc070 pc071 pc073 pc074 pc075 pc077 pc078 pc079 pc081 pc082 pc083 pc085
        pc086 pc121 pc122 pc123 pc125 pc126 pc127 pc129 pc130 pc131 pc133 pc134 pc135 pc142 pc143
        pc145 pc146
    """,
}
# basis, kind: known at least, contradicted at most, missing at most (one a process of each line)
SCORE = {
    ("found", "causes"): (312, 8, 0),
    ("found", "remedies"): (316, 4, 0),
    ("memory", "causes"): (464, 1, 2),
    ("memory", "remedies"): (420, 1, 0),
}


@dataclass(frozen=True)
class Link:
    """One cause or remedy that a text names, in one process."""

    basis: str
    kind: str
    process: str
    entry: Mapping[str, Any]
    item: Mapping[str, Any]

    @property
    def state(self) -> str:
        """How the rules stand to it."""
        return next((s for s in ("contradicted", "missing") if s in self.item), "known")

    @property
    def label(self) -> str:
        """What a failure is found by."""
        said = self.item.get("remedy", self.item.get("cause", self.state))
        return f"{self.entry['entry']}-{self.process}-{self.entry['symptom']}-{said}"


def read() -> Iterator[Link]:
    for file in sorted((Path(__file__).parent / "published").glob("causes-*.yaml")):
        text = yaml.safe_load(file.read_text())
        for entry in text["entries"]:
            for kind in ("causes", "remedies"):
                for item in entry.get(kind, []):
                    for process in item.get("only", entry["processes"]):
                        yield Link(text["basis"], kind, process, entry, item)


LINKS = tuple(read())
KNOWN = [pytest.param(link, id=link.label) for link in LINKS if link.state == "known"]
WITH_CASE = [
    pytest.param(link, id=link.label)
    for link in LINKS
    if (link.basis, link.kind, link.state) == ("found", "causes", "known")
]


@pytest.mark.parametrize("basis", BASES)
def test_every_text_is_here(basis: str) -> None:
    assert {link.entry["entry"] for link in LINKS if link.basis == basis} == set(
        SEEN[basis].split()
    )


@pytest.mark.parametrize(("basis", "kind"), SCORE)
def test_so_many_are_known(basis: str, kind: str) -> None:
    count = Counter(link.state for link in LINKS if (link.basis, link.kind) == (basis, kind))
    known, contradicted, missing = SCORE[basis, kind]
    assert count["known"] >= known, count
    assert count["contradicted"] <= contradicted, count
    assert count["missing"] <= missing, count


def test_texts_carry_the_basis_of_their_source() -> None:
    sources = shipped_rules().sources
    wrong = {
        link.entry["entry"]
        for link in LINKS
        if sources[link.entry["source"].partition(",")[0]].basis != link.basis
    }
    assert not wrong


def test_what_the_rules_do_not_follow_has_its_reason() -> None:
    thin = [
        link.label
        for link in LINKS
        if link.state != "known" and (len(link.item[link.state]) <= 20 or "cause" in link.item)
    ]
    assert not thin


@pytest.mark.parametrize("link", KNOWN)
def test_the_rules_know_it_for_that_symptom_and_process(link: Link) -> None:
    cause = shipped_rules().causes[link.item["cause"]]
    metal = link.entry.get("material")
    assert link.process in cause.processes
    assert not (metal and cause.materials) or metal in cause.materials
    assert link.entry["symptom"] in cause.symptoms
    if link.kind == "remedies" and link.item["remedy"] == "prevent":
        assert cause.prevent
    elif link.kind == "remedies":
        assert link.item["remedy"] in {remedy.id for remedy in cause.remedies}


@pytest.mark.parametrize("link", WITH_CASE)
def test_answers_that_fit_the_text_lead_to_its_cause(link: Link) -> None:
    case = Case().with_(Reported(link.entry["symptom"]), Situated("process", link.process))
    case = case.with_(Situated("material", link.entry.get("material", "")))
    asked = Interview(shipped_rules(), case).network.checks
    for check, answer in link.item["case"].items():
        assert answer in {a.id for a in asked[check].answers}, (check, answer)
        case = case.with_(Answered(check, answer))
    assert Interview(shipped_rules(), case).ranked[0].cause.id == link.item["cause"]
