"""Facts of the trade that every instructor holds; common practice, no source.

Settings that are common practice are held in tests/test_windows.py.
"""

from __future__ import annotations

import pytest
from tests.replay import live, shipped_rules

from weldwhy.case import Answered, Case, Reported, Situated
from weldwhy.interview import Interview

RULES = shipped_rules()


@pytest.mark.parametrize(
    ("process", "words"),
    [
        ("gmaw", "Gun positive"),
        ("fcaw-s", "Gun negative"),
        ("smaw", "Rod holder positive"),
        ("gtaw-dc", "Torch negative"),
    ],
)
def test_polarity_by_process(process: str, words: str) -> None:
    """MIG gun positive, gasless wire gun negative, stick mostly holder positive, TIG negative."""
    assert words in RULES.processes[process].polarity


def leader(symptom: str, process: str, **answers: str) -> str:
    case = Case().with_(Reported(symptom), Situated("process", process), Situated("material", ""))
    for check, answer in answers.items():
        case = case.with_(Answered(check.replace("_", "-"), answer))
    return Interview(RULES, case).ranked[0].cause.id


@pytest.mark.parametrize("symptom", ["porosity", "spatter"])
def test_gasless_wire_on_the_wrong_polarity(symptom: str) -> None:
    assert leader(symptom, "fcaw-s", polarity_look="wrong") == "polarity-wrong"


@pytest.mark.parametrize("symptom", ["porosity", "spatter"])
def test_gasless_wire_is_soon_asked_for_its_polarity(symptom: str) -> None:
    """A machine that ran gas wire before: the first suspect of every instructor."""
    cause = RULES.causes["polarity-wrong"]
    case = next(c for c in cause.cases if (c.process, c.symptom) == ("fcaw-s", symptom))
    _, path = live(cause, case)
    assert path.index("ask polarity-look") < 7


def test_spool_brake_too_tight_makes_the_motor_struggle_and_the_wire_slip() -> None:
    shows = RULES.causes["spool-brake-tight"].shows
    assert set(shows["motor-sound"]) == {"labours", "runs-but-wire-stands"}
    assert shows["roll-pressure-test"]["slips-early"] >= 0.5
    found = leader("birds-nest", "gmaw", motor_sound="labours", spool_stop="hard-to-turn")
    assert found == "spool-brake-tight"


def test_spool_brake_too_loose_lets_the_spool_overrun_and_tangle() -> None:
    found = leader("birds-nest", "gmaw", spool_stop="runs-on", nest_place="at-spool")
    assert found == "spool-brake-loose"


def test_roll_tension_too_high_flattens_the_wire() -> None:
    assert RULES.causes["roll-tension-high"].shows["wire-marks"]["flattened"] >= 0.7
    found = leader("birds-nest", "gmaw", wire_marks="flattened", roll_pressure_test="crushes")
    assert found == "roll-tension-high"
