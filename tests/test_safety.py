"""Every published caution is among the warnings, stands where it belongs, and comes before a step.

Facts: tests/published/safety.yaml. The linter asks for warnings by the words that each warning
names (`needed_for`); here the dangers are named once more, independently of the rules.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from tests.replay import shipped_rules

from weldwhy.case import Case, Reported, Situated
from weldwhy.interview import Interview

RULES = shipped_rules()
FILE = Path(__file__).parent / "published" / "safety.yaml"
FACTS: list[dict[str, Any]] = yaml.safe_load(FILE.read_text())["cautions"]


@pytest.mark.parametrize("fact", FACTS, ids=lambda fact: fact["topic"])
def test_a_published_caution_is_among_the_warnings(fact: dict[str, Any]) -> None:
    text = " ".join(RULES.cautions[each].text for each in fact["caution"])
    for words in fact["says"]:
        assert re.search(words, text), words


def _steps() -> Iterator[tuple[str, str, set[str]]]:
    """Id, text and warnings of every check, remedy, set-up step and test bead."""
    for check in RULES.checks.values():
        yield check.id, check.ask, set(check.cautions)
    for cause in RULES.causes.values():
        for remedy in cause.remedies:
            yield f"{cause.id}/{remedy.id}", remedy.do, set(remedy.cautions)
    for setup in RULES.setups.values():
        for number, step in enumerate(setup.checklist, 1):
            yield f"{setup.id}/step {number}", step.do, set(step.cautions)
        for number, bead in enumerate(setup.test_beads, 1):
            yield f"{setup.id}/bead {number}", bead.run, set(bead.cautions)


STEPS = list(_steps())

DANGERS = {
    # what a step does: words that say so, the warnings of which one must come first, an example
    "opens the feeder or the machine": (
        r"open the (feeder|drive|cover|machine)|take (off )?the (cover|side) off|drive cover|"
        r"(new|change|fit|swap) (a |the )?(drive )?rolls?\b|"
        r"(new|change|pull out|fit) (a |the )?liner",
        {"power-off", "inside-machine"},
        "Open the feeder and fit a new liner.",
    ),
    "handles a cylinder": (
        r"\bcylinder\b(?! gauge)", {"cylinder", "argon-space"}, "Change the cylinder."
    ),
    "grinds": (
        r"\b(grind|regrind|flap disc|angle grinder|cutting disc)\b", {"grinding"},
        "Grind the root face down.",
    ),
    "heats": (
        r"\b(preheat|warm the|heat the (part|metal|joint|casting)|torch flame|bake)\b",
        {"hot-metal", "fire"}, "Warm the casting all round.",
    ),
    "uses solvent": (
        r"\b(acetone|alcohol|solvent|degrease|paint thinner|brake cleaner)\b",
        {"flammable-solvent", "chlorinated-solvent", "ventilation"}, "Wipe it with acetone.",
    ),
    "meets zinc": (
        r"\b(zinc|galvanis\w+)\b", {"zinc", "coated-metal", "plating-unknown"},
        "Strip the zinc.",
    ),
    "meets cadmium or plating": (
        r"\b(cadmium|plated|chromed)\b", {"plating-unknown", "coated-metal", "zinc"},
        "Take a bolt that is not plated.",
    ),
    "meets chromium": (
        r"\b(30[89]L?|31[26]L?|stainless (rod|wire|filler|weld|bead)|chromate|hard-fac\w+)\b",
        {"chromium"}, "Weld it again with 309L wire.",
    ),
    "meets a closed vessel": (
        r"\b(tanks?|drums?|closed vessel|hollow part)\b", {"closed-vessel"}, "Weld the tank shut.",
    ),
    "takes hold of a lead or a holder": (
        r"\b(move|swap|change over) the (work )?(clamp|leads?)\b", {"electric-shock", "power-off"},
        "Move the work clamp nearer.",
    ),
}  # fmt: skip

HARMLESS = {
    "damp-metal/bring-it-indoors": "the warm is the room, nothing is heated",
    "closed-joint/vent-it": "a new, clean part only; its own first sentence warns of tanks",
}
"""Steps in which the words of a danger mean none, or are the warning, and why."""

Bare = list[tuple[str, str]]


def without_warning(danger: str, told: list[tuple[str, str, set[str]]]) -> Bare:
    """Id and text of the steps that meet the danger and do not carry its warning."""
    pattern, wanted, _ = DANGERS[danger]
    return [
        (name, text)
        for name, text, cautions in told
        if re.search(pattern, text, re.IGNORECASE) and not cautions & wanted
        if name not in HARMLESS
    ]


@pytest.mark.parametrize("danger", DANGERS)
def test_a_step_that_can_hurt_carries_its_warning(danger: str) -> None:
    assert without_warning(danger, STEPS) == []


@pytest.mark.parametrize("danger", DANGERS)
def test_a_step_without_its_warning_would_be_found(danger: str) -> None:
    """In a sentence that says it, and in the rules' own steps if they lost their warnings."""
    example = DANGERS[danger][2]
    assert without_warning(danger, [("example", example, set())])
    assert not without_warning(danger, [("example", example, DANGERS[danger][1])])
    assert without_warning(danger, [(name, text, set()) for name, text, _ in STEPS])


def test_every_warning_stands_somewhere() -> None:
    used = {caution for _, _, has in STEPS for caution in has}
    used |= {caution for symptom in RULES.symptoms.values() for caution in symptom.cautions}
    used |= {job.caution for job in RULES.jobs.values()}
    used |= {metal.caution for metal in RULES.materials.values()}
    used |= {line.caution for setup in RULES.setups.values() for line in setup.cautions}
    assert set(RULES.cautions) - used == set()


def test_a_cover_a_circuit_and_a_socket_are_left_to_those_who_may() -> None:
    """Inside the machine and behind the socket there is nothing to do but stop and call."""
    for cause in RULES.causes.values():
        for remedy in cause.remedies:
            if {"inside-machine", "mains", "tingle", "closed-vessel"} & set(remedy.cautions):
                assert remedy.stop, remedy.id
                assert remedy.call, remedy.id


@pytest.mark.parametrize("process", RULES.symptoms["shock"].processes)
def test_a_shock_is_met_with_the_plug_out_and_ends_in_a_stop(process: str) -> None:
    case = Case().with_(Situated("process", process), Reported("shock"), Situated("material", ""))
    step = Interview(RULES, case).step
    assert step.cautions[0].id == "plug-out-first"
    for ranked in Interview(RULES, case).ranked[:3]:
        assert ranked.cause.hazard
        assert ranked.cause.remedies[0].stop, ranked.cause.id
