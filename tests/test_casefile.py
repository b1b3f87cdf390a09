"""Case files: YAML and JSON are read alike, and every fault names its line and the nearest word."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy.case import Answered, Measured, Passed, Reported, Situated
from weldwhy.casefile import CaseFile, read, shape
from weldwhy.model import (
    Answer,
    Check,
    Material,
    Process,
    RuleBase,
    Setting,
    Symptom,
)
from weldwhy.problems import RulesError
from weldwhy.units import parse


def _check(name: str, *answers: str) -> Check:
    count = len(answers)
    return Check(
        name, f"{name}?", "ask", 0.5, tuple(Answer(a, a) for a in answers),
        (1.0 / count,) * count, 0.06, 0.15, "it", "common practice",
    )  # fmt: skip


POSSIBLE = (parse("5 V", "voltage"), parse("60 V", "voltage"))
RULES = RuleBase(
    processes={
        name: Process(name, name, name, "gun positive", "common practice")
        for name in ("gmaw", "smaw")
    },
    symptoms={
        name: Symptom(name, name, "holes", ("gmaw", "smaw"), "holes", "common practice")
        for name in ("porosity", "spatter")
    },
    causes={},
    checks={
        "gas-flow-reading": _check("gas-flow-reading", "right", "low"),
        "nozzle-look": _check("nozzle-look", "clean", "clogged"),
    },
    materials={
        "mild-steel": Material("mild-steel", "mild steel", ("black iron", "carbon steel")),
        "stainless": Material("stainless", "stainless steel"),
    },
    settings={
        "volts": Setting("volts", "volts", "voltage", POSSIBLE),
        "wire_feed": Setting("wire_feed", "wire feed", "feed"),
        "wire": Setting("wire", "wire", "length"),
        "gas": Setting("gas", "gas", "text"),
    },
)  # fmt: skip

WHOLE = """
process: gmaw
material: Black Iron
thickness: 1/8 in
symptoms: [porosity]
settings: {volts: 18 V, wire_feed: 250 in/min, wire: 0.035, gas: C25}
said: ["there's holes: everywhere", bubbles]
answers:
  gas-flow-reading: low
  nozzle-look: dont-know
"""


def _read(text: str) -> CaseFile:
    return read(text.encode(), "case.yaml", RULES)


def _faults(text: str) -> list[str]:
    with pytest.raises(RulesError) as caught:
        _read(text)
    return [str(problem) for problem in caught.value.problems]


def test_every_key_of_the_manual_is_read() -> None:
    found = _read(WHOLE)
    assert found.said == ("there's holes: everywhere", "bubbles")
    assert found.case.entries == (
        Situated("process", "gmaw"),
        Situated("material", "mild-steel"),
        Situated("thickness", "1/8 in"),
        Reported("porosity"),
        Measured("volts", "18 V"),
        Measured("wire_feed", "250 in/min"),
        Measured("wire", "0.035 in"),
        Measured("gas", "C25"),
        Answered("gas-flow-reading", "low"),
        Passed("nozzle-look", "don't know"),
    )


@pytest.mark.parametrize("indent", [None, 2, "\t"])
def test_json_is_read_like_yaml(indent: int | str | None) -> None:
    data = {
        "process": "gmaw",
        "material": "black iron",
        "thickness": "1/8 in",
        "symptoms": ["porosity"],
        "settings": {"volts": 18, "wire_feed": "250 in/min", "wire": "0.035 in", "gas": "C25"},
        "said": ["there's holes: everywhere", "bubbles"],
        "answers": {"gas-flow-reading": "low", "nozzle-look": "dont-know"},
    }
    assert _read(json.dumps(data, indent=indent)) == _read(WHOLE)


def test_the_order_of_the_keys_does_not_matter() -> None:
    assert _read("answers: {nozzle-look: clean}\nprocess: gmaw") == _read(
        "process: gmaw\nanswers: {nozzle-look: clean}"
    )


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{}",
        "# nothing",
        "process:",
        '{"process": null, "said": null, "answers": {}}',
        "said: []",
    ],
)
def test_all_keys_may_be_left_out_or_left_empty(text: str) -> None:
    found = _read(text)
    assert found.case.entries == ()
    assert found.said == ()


def test_words_that_other_readers_turn_into_something_else_stay_words() -> None:
    found = _read("said: [yes, 030, 12:30, 2020-01-01]\nsettings: {gas: no}")
    assert found.said == ("yes", "030", "12:30", "2020-01-01")
    assert found.case.measured == {"gas": "no"}


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("proces: gmaw", "1:1", 'unknown key "proces" in case file; did you mean "process"?'),
        ("said: [x]\nprocess: gmwa", "2:10", 'unknown process "gmwa"; did you mean "gmaw"?'),
        ("material: milde steel", "1:11", '"milde steel"; did you mean "mild steel"?'),
        ("symptoms: [porosty]", "1:12", 'unknown symptom "porosty"; did you mean "porosity"?'),
        ("settings: {vlots: 3 V}", "1:12", '"vlots" in settings; did you mean "volts"?'),
        ("answers:\n  nozzle-lok: clean", "2:3", 'did you mean "nozzle-look"?'),
        ("answers:\n  nozzle-look: claen", "2:16", 'did you mean "clean"?'),
        ("settings: {volts: 999 V}", "1:19", "volts 999 V is not possible; it can be 5 V to 60 V"),
        ("settings: {volts: -3 V}", "1:19", "below zero"),
        ("settings: {volts: lots}", "1:19", 'cannot read "lots"'),
        ("thickness: 12 m", "1:12", "thickness: cannot read"),
        ("thickness: 4000 mm", "1:12", "thickness 4000 mm is not possible"),
        ("thickness: 0 mm", "1:12", "thickness 0 mm is not possible"),
        ("thickness: 99 ga", "1:12", "no sheet gauge"),
        ("- process", "1:1", "must be a mapping"),
        ("just words", "1:1", "must be a mapping"),
        ("process: gmaw\nprocess: smaw", "2:1", "twice"),
        ("process: [gmaw]", "1:10", "not a list"),
        ("said: bubbles", "1:7", "must be a list"),
        ("answers: {nozzle-look: [clean]}", "1:24", "not a list"),
        ("process: !!python/object:os.system x", "1:10", "tag"),
        ("said: [&a x, *a]", "1:8", "anchor"),
        ("process: 'gmaw", "1:", "quote"),
        ("said: ['a\x1b[31mb']", "1:", "hidden mark"),
        ("process: gmaw\n---\nprocess: smaw", "2:1", "second document"),
    ],
)  # fmt: skip
def test_a_fault_is_one_line_with_its_place_and_the_nearest_word(
    text: str, place: str, words: str
) -> None:
    first = _faults(text)[0]
    assert first.startswith(f"case.yaml:{place}")
    assert words in first
    assert "\n" not in first
    assert first.isprintable()


def test_every_fault_is_told_at_once() -> None:
    faults = _faults("proces: gmaw\nmaterial: unobtainium\nsettings: {volts: 999 V}")
    assert [fault.split(":")[1] for fault in faults] == ["1", "2", "3"]


@pytest.mark.parametrize(
    "text",
    [
        "[" * 50_000,
        "{" * 50_000,
        "said: [" + "x," * 60_000 + "]",
        "said: ['" + "x" * 2_000_000 + "']",
    ],
)
def test_a_file_made_to_exhaust_the_reader_is_refused_quickly(text: str) -> None:
    assert _faults(text)


def test_json_with_marks_beyond_the_sixteenth_bit_is_read() -> None:
    """Programs write such a mark as two escapes, which YAML does not know."""
    for said in ("\U0001f600 bubbles", "\U0001f9f0", "back\\slash \\ud83d"):
        assert _read(json.dumps({"said": [said]}).replace(" ", "  ", 1)).said == (said,)


def test_bytes_that_are_no_text_are_refused() -> None:
    with pytest.raises(RulesError):
        read(b"\xff\xfe\x00\x01", "case.yaml", RULES)


def test_an_unknown_language_in_a_sentence_is_kept_as_it_is() -> None:
    assert _read("said: ['porös']").said == ("porös",)


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=200) | st.binary(max_size=200).map(lambda b: b.decode("latin-1")))
def test_no_text_makes_the_reader_fail_in_any_other_way(text: str) -> None:
    try:
        found = _read(text)
    except RulesError as fault:
        for problem in fault.problems:
            assert "\n" not in str(problem)
    else:
        assert isinstance(found, CaseFile)


def test_the_schema_of_a_case_file_takes_what_the_reader_takes() -> None:
    import jsonschema

    validator = jsonschema.Draft202012Validator(shape(RULES).schema)
    validator.validate({"process": "gmaw", "settings": {"volts": 18}, "said": ["x"]})
    assert not validator.is_valid({"proces": "gmaw"})
    assert not validator.is_valid({"answers": {"nozzle-look": "claen"}})


def test_a_case_file_is_read_without_running_anything(tmp_path: Path) -> None:
    """A file that would make a careless reader run a command leaves no trace of it."""
    trace = tmp_path / "ran"
    text = f"said: [!!python/object/apply:os.system ['touch {trace}']]"
    _faults(text)
    assert not trace.exists()


def test_the_guides_first_questions_are_answered_like_any_check() -> None:
    """What `next` asks in the JSON can be put into the file under the same id."""
    text = (
        b"answers: {process: gmaw, group: holes, symptom: porosity, material: mild-steel, "
        b"job: practice}"
    )
    found = read(text, "case.yaml", shipped_rules()).case
    assert (found.symptoms, found.process) == (("porosity",), "gmaw")
    assert found.told("group") == "holes"
    assert (found.material, found.job) == ("mild-steel", "practice")


def test_a_rod_may_be_told_with_its_class() -> None:
    text = b'{process: smaw, settings: {rod: "1/8 in 6013", amps: 170 A}}'
    found = read(text, "case.yaml", shipped_rules()).case
    assert found.measured["rod"] == "1/8 in 6013"
    with pytest.raises(RulesError, match="not possible"):
        read(b'{settings: {rod: "30 in 6013"}}', "case.yaml", shipped_rules())
