"""The file of a person's machine: read with every fault named, changed, and written as by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.machines import RULES, WHOLE, machine_texts, made
from tests.replay import shipped_rules

from weldwhy.machinefile import MachineError, begun_from, by_hand, changed, read, text
from weldwhy.machinetext import LABELS, label, values
from weldwhy.model import DutyPoint, Machine
from weldwhy.ownmachine import OWN
from weldwhy.problems import RulesError
from weldwhy.units import parse, show

ORDER = list(RULES.settings)


def _faults(text: str) -> list[str]:
    with pytest.raises(RulesError) as caught:
        made(text)
    return [str(problem) for problem in caught.value.problems]


def test_every_key_is_read_in_the_units_it_was_typed_in() -> None:
    machine = made(WHOLE)
    assert (machine.id, machine.name) == (OWN, "blue box, 180 A")
    assert machine.processes == ("gmaw", "smaw")
    assert [show(end) for end in machine.limits["wire_feed"]] == ["60 ipm", "12 m/min"]
    assert [show(end) for end in machine.limits_in["smaw"]["amps"]] == ["20 A", "160 A"]
    assert machine.duty == (DutyPoint(20.0, 180.0), DutyPoint(60.0, 104.5))
    assert list(machine.dials["volts"]) == ["1", "4", "10"]
    singles = ("supply", "breaker", "gun", "work_lead", "lead", "cord")
    shown = [show(getattr(machine, name)) for name in singles]
    assert shown == ["230 V", "30 A", "10 ft", "3.5 m", "2 AWG", "0.5 m"]
    assert machine.note == 'bought used; it says: "handle with care"'


def test_a_name_and_one_process_are_enough() -> None:
    machine = made("name: x\nprocesses: [gmaw]\n")
    assert machine == Machine(OWN, "x", ("gmaw",))


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("name: x\nprocesses: [gmaw]\nsuply: 230 V",
         '3:1: error: unknown key "suply" in machine; did you mean "supply"? [unknown-key]'),
        ("name: x\nprocesses: [gmwa]",
         '2:13: error: no process "gmwa"; did you mean "gmaw"? [unknown-id]'),
        ("name: x\nprocesses: [gmaw]\nlimits: {vlots: 3 V to 4 V}",
         '3:10: error: no setting "vlots"; did you mean "volts"? [unknown-id]'),
        ("name: x\nprocesses: [gmaw]\nlimits_in:\n  smwa: {amps: 3 A to 4 A}",
         '4:3: error: no process "smwa"; did you mean "smaw"? [unknown-id]'),
        ("processes: [gmaw]",
         '1:1: error: machine lacks the key "name" (what you call it) [missing-key]'),
        ("name: x\nprocesses: []",
         "2:12: error: this list is empty; it needs at least one part [empty]"),
        ("name: x\nprocesses: [gmaw]\nlimits: {volts: 18 V}",
         '3:10: error: "18 V" is no range; write it like "5 V to 60 V" [bad-quantity]'),
        ("name: x\nprocesses: [gmaw]\nlimits: {volts: 24 V to 13 V}",
         '3:10: error: "24 V to 13 V" is out of order; write the lower number first '
         "[bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\nlimits: {volts: 13 V to 240 V}",
         "3:10: error: 240 V is not possible; it can be 5 V to 60 V [bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\nlimits: {gas: 1 to 2}",
         '3:10: error: "gas" has no number, so a machine cannot limit it [bad-quantity]'),
        ("name: x\nprocesses: [gmaw]\nduty: [30 % at 130 A, 130 A]",
         '3:23: error: cannot read "130 A"; write it like "30 % at 130 A" [bad-quantity]'),
        ("name: x\nprocesses: [gmaw]\nduty: [130 % at 130 A]",
         '3:8: error: cannot read "130 % at 130 A"; write it like "30 % at 130 A" '
         "[bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\nduty: [30 % at 0 A]",
         "3:8: error: 0 A is no rating of a welding machine [bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\nsupply: 12 V",
         "3:1: error: 12 V is not possible; it can be 50 V to 700 V [bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\ngun: 10",
         '3:6: error: "10" needs its unit; write it like "25 ft" or "8 m" [bad-quantity]'),
        ("name: x\nprocesses: [gmaw]\ncord:",
         "3:6: error: nothing is written here; it must be a distance with its unit, such as "
         '"25 ft" [empty]'),
        ("name: x\nprocesses: [gmaw]\ndials:\n  volts: {high: 20 V}",
         "4:11: error: a mark is a number or one letter, such as 6, 6.5 or D [bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\ndials:\n  volts: {A: 13 V, 10: 20 V}",
         "4:3: error: the marks of one dial are all numbers or all letters [bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\ndials:\n  volts: {1: 13 V, 2: 20 V, 3: 18 V}",
         "4:3: error: from mark to mark the values must all rise, or all fall [bad-quantity]"),
        ("name: x\nprocesses: [gmaw]\ndials:\n  volts: {a: 13 V, A: 20 V}",
         "4:3: error: from mark to mark the values must all rise, or all fall [bad-quantity]"),
        ("name: x\nname: y\nprocesses: [gmaw]",
         '2:1: error: key "name" is here twice; the first is at line 1 [duplicate-key]'),
        ("- name: x",
         "1:1: error: a machine must be a mapping (key: value), not a list [wrong-kind]"),
        ("name: !!python/object:os.system x\nprocesses: [gmaw]",
         '1:7: error: tag "tag:yaml.org,2002:python/object:os.system"; leave it out, values are '
         "plain text [tag]"),
    ],
)  # fmt: skip
def test_a_fault_is_one_line_with_its_place_and_the_nearest_word(text: str, fault: str) -> None:
    assert _faults(text) == [f"machine.yaml:{fault}"]


def test_every_fault_is_told_at_once() -> None:
    faults = _faults("nam: x\nprocesses: [gmwa]\nbreaker: 30 Q\ngun: far")
    assert [fault.split(":")[1] for fault in faults] == ["1", "1", "2", "3", "4"]


@pytest.mark.parametrize(
    "data", [b"\xff\xfe\x00", b"", b"{" * 50_000, b"name: '" + b"x" * 2_000_000]
)
def test_a_file_that_is_none_of_ours_is_refused(data: bytes) -> None:
    with pytest.raises(RulesError):
        read(data, "machine.yaml", RULES)


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=200))
def test_no_text_makes_the_reader_fail_in_any_other_way(text: str) -> None:
    try:
        made(text)
    except RulesError as fault:
        for problem in fault.problems:
            assert str(problem).isprintable()


# written


def test_the_file_is_written_as_one_writes_it_by_hand() -> None:
    assert text(made(WHOLE), RULES) == WHOLE.replace("cord: 1/2 m", "cord: 0.5 m")


@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(machine_texts())
def test_reading_what_was_written_gives_the_same_machine(file: str) -> None:
    machine = made(file)
    assert made(text(machine, RULES)) == machine


@pytest.mark.parametrize("machine", shipped_rules().machines.values(), ids=lambda m: m.id)
def test_a_machine_of_the_rules_is_read_back_from_its_own_file(machine: Machine) -> None:
    rules = shipped_rules()
    found = read(text(machine, rules).encode(), "machine.yaml", rules)
    assert found == replace(machine, id=OWN)


@pytest.mark.parametrize("length", ["1/3 ft", "17 1/7 ft", "3.25 m", "0.333333 ft", "1234.5 ft"])
def test_an_odd_length_is_written_so_that_it_is_read_as_the_same(length: str) -> None:
    machine = replace(made(WHOLE), work_lead=parse(length, "distance"))
    if machine.work_lead is not None and 0.5 <= machine.work_lead.value <= 200:
        assert made(text(machine, RULES)) == machine


def test_remarks_and_faults_are_what_makes_a_file_hand_written() -> None:
    written = text(made(WHOLE), RULES).encode()
    assert not by_hand(RULES, written)
    assert by_hand(RULES, written + b"# from the scrap yard\n")
    assert by_hand(RULES, written + b"bogus: 3\n")


# changed


@pytest.mark.parametrize(
    ("key", "value", "kept"),
    [
        ("name", " red   box ", "red box"),
        ("name", 'back\\slash, "quoted"', 'back\\slash, "quoted"'),
        ("processes", "smaw", "smaw"),
        ("processes", "smaw,gmaw", "smaw, gmaw"),
        ("limits.amps", "40-200 A", "40 A to 200 A"),
        ("limits_in.gmaw.volts", "14 V to 22 V", "14 V to 22 V"),
        ("duty", "30% at 99,5 A, 60 % at 70 A", "30 % at 99.5 A, 60 % at 70 A"),
        ("dials.volts", "A = 13,5 V,J=24 V", "A = 13.5 V, J = 24 V"),
        ("dials.amps", "1 = 30 A, 10 = 180 A", "1 = 30 A, 10 = 180 A"),
        ("supply", "120 volts", "120 V"),
        ("breaker", "20", "20 A"),
        ("lead", "1/0 AWG", "1/0 AWG"),
        ("note", "a: b # c", "a: b # c"),
    ],
)
def test_a_change_is_kept_under_its_key_and_nothing_else_changes(
    key: str, value: str, kept: str
) -> None:
    before = made(WHOLE)
    after = changed(RULES, before, key, value)
    assert values(after, ORDER) == {**values(before, ORDER), key: kept}


@pytest.mark.parametrize(
    "key", ["limits.amps", "limits_in.smaw.amps", "duty", "dials.volts", "cord", "note"]
)
def test_an_empty_value_takes_a_key_away(key: str) -> None:
    before = made(WHOLE)
    after = changed(RULES, before, key, "  ")
    assert key in values(before, ORDER)
    assert values(after, ORDER).keys() == values(before, ORDER).keys() - {key}
    assert changed(RULES, after, key, "") == after


@settings(max_examples=50, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(machine_texts())
def test_typing_what_stands_there_already_changes_nothing(file: str) -> None:
    machine = made(file)
    for key, value in values(machine, ORDER).items():
        assert changed(RULES, machine, key, value) == machine, key


@pytest.mark.parametrize(
    ("key", "value", "fault"),
    [
        ("nam", "x", 'unknown key "nam"; did you mean "name"?'),
        ("limits", "3", '"limits" is no key of one value; write it like limits.amps'),
        ("limits_in.smaw", "3",
         '"limits_in.smaw" is no key of one value; write it like limits_in.smaw.amps'),
        ("dials", "3", '"dials" is no key of one value; write it like dials.volts'),
        ("name.x", "3", '"name.x" is no key of one value; write it like name'),
        ("limits.vlots", "3", 'unknown "vlots" in "limits.vlots"; did you mean "volts"?'),
        ("limits_in.smwa.amps", "3",
         'unknown "smwa" in "limits_in.smwa.amps"; did you mean "smaw"?'),
        ("limits.volts", "18 V", '"18 V" is no range; write it like "5 V to 60 V"'),
        ("name", "", 'machine lacks the key "name" (what you call it)'),
        ("name", "a\x1bb", "hidden mark U+001B here; delete it"),
        ("processes", "mig", 'no process "mig"; known: gmaw, smaw'),
        ("dials.volts", "1: 13 V", 'cannot read "1: 13 V"; write it like "1 = 13 V, 10 = 24 V"'),
        ("dials.volts", "1 = 13 V, 1 = 14 V", 'the mark "1" is here twice'),
        ("gun", "long", 'cannot read "long"; write it like "25 ft" or "8 m"'),
    ],
)  # fmt: skip
def test_a_change_that_cannot_be_is_refused_in_one_plain_line(
    key: str, value: str, fault: str
) -> None:
    with pytest.raises(MachineError) as caught:
        changed(RULES, made(WHOLE), key, value)
    assert str(caught.value) == fault


@settings(max_examples=200, deadline=None)
@given(st.sampled_from(["name", "duty", "limits.amps", "dials.volts", "gun"]), st.text(max_size=60))
def test_no_typing_makes_a_change_fail_in_any_other_way(key: str, value: str) -> None:
    try:
        after = changed(RULES, made(WHOLE), key, value)
    except MachineError as fault:
        said = str(fault)
    else:
        said = text(after, RULES)
        assert made(said) == after
    assert said.isascii() or not value.isascii()


def test_a_machine_of_the_rules_becomes_ones_own_without_what_is_noted_of_it() -> None:
    assert begun_from(RULES.machines["small"]) == Machine(OWN, "small machine", ("gmaw", "smaw"))
    after = changed(RULES, RULES.machines["small"], "supply", "120 V")
    assert (after.id, after.note) == (OWN, "")


def test_every_key_of_one_value_has_a_name() -> None:
    told = values(made(WHOLE), ORDER)
    assert {key for key in told if "." not in key} == set(LABELS)
    assert label(RULES, "limits_in.smaw.amps") == "amps, plain smaw"
    assert label(RULES, "dials.wire_feed") == "marks for wire feed"
