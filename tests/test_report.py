"""What a case is told as: words for people, and data whose shape the package promises."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.engine.small import base, cause, check, random_base

import weldwhy
from weldwhy import report
from weldwhy.advice import SettingAdvice
from weldwhy.case import Answered, Case, Reported, Situated, Tried
from weldwhy.diagnosis import diagnosis
from weldwhy.interview import Interview
from weldwhy.model import Caution, Remedy, RuleBase, Source
from weldwhy.steps import Step
from weldwhy.understanding.heard import Understood

SCHEMA = json.loads(
    (Path(weldwhy.__file__).parent / "schemas" / "diagnosis.json").read_text(encoding="utf-8")
)
START = Case((Reported("bad"), Situated("process", "p"), Situated("material", "")))
CAUTION = Caution("hot", "Hot metal looks like cold.", "invented")


def _rules() -> RuleBase:
    """Two causes; the likelier one has a remedy with a caution, and a second that stops."""
    made = base(
        [
            cause("draught", 8.0, {"door": {"yes": 0.9}}),
            cause("rust", 3.0, {"metal": {"yes": 0.9}}),
        ],
        [check("door", off=0.05), check("metal", off=0.05)],
    )
    shut = Remedy("shut-door", "Shut the door.", 1.0, 0.95, "book, page 3", cautions=("hot",))
    stop = Remedy(
        "stop", "Leave it.", 0.0, 0.5, "invented", stop=True, call="a service shop",
        cautions=("hot",),
    )  # fmt: skip
    draught = replace(made.causes["draught"], remedies=(shut, stop), prevent="Weld indoors.")
    return replace(
        made,
        causes={**made.causes, "draught": draught},
        cautions={"hot": CAUTION},
        sources={"book": Source("book", "A welding book", "memory")},
    )


def _interview(*entries: Answered | Tried) -> Interview:
    return Interview(_rules(), START.with_(*entries))


def test_nothing_in_the_data_can_drive_the_terminal() -> None:
    made = _rules()
    causes = {k: replace(v, name="dra\x1b[31mught\x07") for k, v in made.causes.items()}
    checks = {k: replace(v, ask="Is the \x1b[2Jdoor\x9b open?") for k, v in made.checks.items()}
    rules = replace(made, causes=causes, checks=checks)
    found = diagnosis(Interview(rules, START), not_understood=["\x1b]0;x\x07bubbles"])
    shown = json.dumps(found)
    assert "u001b" not in shown
    assert "u009b" not in shown
    assert found["causes"][0]["name"] == "draught"
    assert '["bubbles"]' in shown


def test_a_caution_of_several_remedies_is_said_once_and_first() -> None:
    lines = report.remedy_lines(_interview(Answered("door", "yes")), "draught")
    assert lines[0] == "CAUTION: Hot metal looks like cold."
    assert sum("Hot metal" in line for line in lines) == 1


def test_a_step_without_a_cause_has_no_settings() -> None:
    assert report.remedy_settings(_interview(), Step("stop", "call", "Stop.")) == []


@given(st.floats(0, 1))
def test_a_percentage_is_never_nothing_or_everything(probability: float) -> None:
    shown = report.percent(probability)
    assert shown not in ("0 %", "100 %")


@pytest.mark.parametrize(
    ("amount", "said"),
    [
        (0.1, "a few seconds"),
        (0.5, "half a minute"),
        (1.0, "about 1 minute"),
        (1.6, "about 2 minutes"),
        (38.7, "about 39 minutes"),
    ],
)
def test_minutes_are_said_as_people_say_them(amount: float, said: str) -> None:
    assert report.minutes(amount) == said


def test_a_setting_is_told_as_yours_try_and_allowed() -> None:
    setting = SettingAdvice("volts", "volts", "22 V", "18.5 V", "17.5 V", "19.5 V")
    assert report.setting_line(setting) == "volts: yours 22 V, try 18.5 V, allowed 17.5 V to 19.5 V"


@pytest.mark.parametrize("seed", range(12))
def test_every_diagnosis_has_the_shape_that_the_package_promises(seed: int) -> None:
    """Random rule bases, from an empty case to one with answers and a remedy tried."""
    rules = random_base(seed)
    case = Case()
    for entry in (
        None,
        Reported("bad"),
        Situated("process", "p"),
        *(Answered(c.id, c.answers[seed % len(c.answers)].id) for c in rules.checks.values()),
        Tried("c3", "fix-c3", "no change"),
    ):
        case = case if entry is None else case.with_(entry)
        found = diagnosis(
            Interview(rules, case), [Understood("holes", Answered("q0", "low"), 0.9)], ["the rest"]
        )
        jsonschema.validate(json.loads(json.dumps(found)), SCHEMA)


def test_the_cautions_of_the_next_step_come_with_it_and_before_it() -> None:
    rules = _rules()
    checks = {k: replace(v, cautions=("hot",)) for k, v in rules.checks.items()}
    wary = {"hot": replace(CAUTION, text="Hot\x1b[2J metal.")}
    asked = Interview(replace(rules, checks=checks, cautions=wary), START)
    done = _interview(Answered("door", "yes"), Answered("metal", "no"))
    for interview, caution in ((asked, "Hot metal."), (done, CAUTION.text)):
        step = diagnosis(interview)["next"]
        assert step["kind"] == interview.step.kind
        assert step["cautions"] == [caution]
        assert list(step).index("cautions") < list(step).index("text")
    assert {asked.step.kind, done.step.kind} == {"ask", "remedy"}
    assert diagnosis(_interview())["next"]["cautions"] == []


def test_a_sound_bead_leaves_nothing_to_do() -> None:
    found = diagnosis(_interview(Tried("draught", "shut-door", "sound")))
    jsonschema.validate(found, SCHEMA)
    assert found["next"] is None
    assert found["expected_minutes"] == 0


def test_the_data_say_the_same_as_the_interview() -> None:
    interview = _interview(Answered("door", "yes"))
    found = diagnosis(interview)
    assert [each["id"] for each in found["causes"]] == [r.cause.id for r in interview.ranked]
    first = found["causes"][0]
    assert first["probability"] == pytest.approx(interview.ranked[0].probability, abs=1e-6)
    assert first["why"] == [
        {"check": "door", "answer": "yes", "decibans": pytest.approx(12, abs=6)}
    ]
    assert first["remedies"][0]["cautions"] == ["Hot metal looks like cold."]
    assert found["next"]["id"] == interview.step.id


def test_the_schema_refuses_keys_it_does_not_know() -> None:
    found = diagnosis(_interview())
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**found, "extra": 1}, SCHEMA)
