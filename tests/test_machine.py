"""What a machine reaches, the marks on its dials, and the machines that the rules start from."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.machines import WHOLE, made
from tests.replay import shipped_rules

from weldwhy.machine import at_mark, limit, mark
from weldwhy.model import Machine
from weldwhy.units import Quantity, parse, show

MACHINE = made(WHOLE)


def _marks(**marks: str) -> Machine:
    values = {name.strip("_"): parse(value, "voltage") for name, value in marks.items()}
    return Machine("x", "x", ("gmaw",), dials={"volts": values})


def _volts(text: str) -> Quantity:
    return parse(text, "voltage")


def test_a_process_with_limits_of_its_own_has_those_and_every_other_the_general_ones() -> None:
    for process, low, high in (("gmaw", 30, 180), ("smaw", 20, 160), ("", 30, 180)):
        found = limit(MACHINE, process, "amps")
        assert found is not None
        assert [end.value for end in found] == [low, high]


def test_a_machine_of_which_nothing_was_told_has_no_limit_and_no_mark() -> None:
    nothing = Machine("x", "x", ("gmaw",))
    assert limit(nothing, "gmaw", "volts") is None
    assert mark(nothing, "volts", _volts("18 V")) == ""
    assert at_mark(nothing, "volts", "5") is None


@pytest.mark.parametrize(
    ("volts", "words"),
    [
        ("13 V", "1"),
        ("24 V", "10"),
        ("16.25 V", "4"),
        ("14 V", "about 2"),  # 1 + 3 * 1 / 3.25 = 1.92
        ("18 V", "about 5.5"),  # 4 + 6 * 1.75 / 7.75 = 5.35
        ("20 V", "about 7"),  # 4 + 6 * 3.75 / 7.75 = 6.90
        ("12 V", "below 1"),
        ("25 V", "above 10"),
    ],
)
def test_between_known_marks_a_dial_is_a_straight_line_to_half_a_mark(
    volts: str, words: str
) -> None:
    assert mark(MACHINE, "volts", _volts(volts)) == words


@pytest.mark.parametrize(
    ("feed", "words"),
    [
        ("60 ipm", "A"),
        ("500 ipm", "J"),
        ("250 ipm", "about E"),  # place 1 + 9 * 190 / 440 = 4.9
        ("230 ipm", "between D and E"),  # place 4.5
        ("6.35 m/min", "about E"),
        ("50 ipm", "below A"),
    ],
)
def test_letters_on_a_dial_are_places_in_their_order(feed: str, words: str) -> None:
    assert mark(MACHINE, "wire_feed", parse(feed, "feed")) == words


def test_a_dial_that_falls_is_read_the_other_way_round() -> None:
    falling = _marks(_1="24 V", _10="14 V")
    assert mark(falling, "volts", _volts("20 V")) == "about 4.5"
    assert mark(falling, "volts", _volts("25 V")) == "below 1"
    assert mark(falling, "volts", _volts("13 V")) == "above 10"


def test_a_dial_with_a_hundred_marks_is_set_to_whole_ones() -> None:
    assert mark(_marks(_0="10 V", _100="30 V"), "volts", _volts("17.1 V")) == "about 36"


def test_one_known_mark_says_nothing_of_other_values() -> None:
    one = _marks(_5="18 V")
    assert mark(one, "volts", _volts("18 V")) == "5"
    assert mark(one, "volts", _volts("19 V")) == ""
    assert at_mark(one, "volts", "5") == _volts("18 V")
    assert at_mark(one, "volts", "6") is None


@pytest.mark.parametrize(
    ("setting", "words", "shown"),
    [
        ("volts", "1", "13 V"),
        ("volts", "7", "20.1 V"),  # 16.25 + 7.75 / 2
        ("volts", "about 7", "20.1 V"),
        ("wire_feed", "between D and E", "231.1 ipm"),  # 60 + 440 * 3.5 / 9
        ("wire_feed", "d", "206.7 ipm"),
    ],
)
def test_a_mark_stands_for_a_value(setting: str, words: str, shown: str) -> None:
    found = at_mark(MACHINE, setting, words)
    assert found is not None
    assert show(found) == shown


@pytest.mark.parametrize(
    "words", ["0", "11", "above 10", "high", "", "between D and E and F", "-3"]
)
def test_words_that_name_no_known_place_stand_for_nothing(words: str) -> None:
    assert at_mark(MACHINE, "volts", words) is None


@given(st.floats(13.0, 24.0))
def test_the_mark_named_for_a_value_stands_for_that_value_to_a_quarter_of_a_mark(
    volts: float,
) -> None:
    words = mark(MACHINE, "volts", Quantity("voltage", volts, "V"))
    found = at_mark(MACHINE, "volts", words)
    assert found is not None
    steepest = 7.75 / 6  # volts in one mark
    assert abs(found.value - volts) <= steepest / 4 + 1e-4


@given(st.floats(0.1, 30.0), st.floats(0.1, 30.0))
def test_a_higher_value_never_has_a_lower_mark(a: float, b: float) -> None:
    def place(volts: float) -> float:
        words = mark(MACHINE, "volts", Quantity("voltage", volts, "V"))
        shift = -1.0 if words.startswith("below") else float(words.startswith("above"))
        return float(words.split()[-1]) + shift

    low, high = sorted((a, b))
    assert place(low) <= place(high)


# the machines of the rules


@pytest.mark.parametrize("name", list(shipped_rules().machines))
def test_the_ratings_of_a_shipped_machine_follow_the_square_law(name: str) -> None:
    """Percent times amps squared stays the same, to 3 in 100: amps on a plate are whole."""
    duty = shipped_rules().machines[name].duty
    heat = [point.percent * point.amps**2 for point in duty]
    assert len(heat) >= 2
    assert max(heat) <= 1.03 * min(heat)


@pytest.mark.parametrize("name", list(shipped_rules().machines))
def test_a_shipped_machine_gives_the_volts_that_its_most_amps_need(name: str) -> None:
    rules = shipped_rules()
    machine, load = rules.machines[name], rules.tables["load-voltage"]
    volts, amps = limit(machine, "gmaw", "volts"), limit(machine, "gmaw", "amps")
    if volts is None or amps is None:
        assert "gmaw" not in machine.processes
        return
    needed = load.value("gmaw", "base") + load.value("gmaw", "slope") * amps[1].value
    assert volts[1].value >= needed


@pytest.mark.parametrize("name", list(shipped_rules().machines))
def test_a_shipped_machine_says_that_it_is_invented_and_its_rating_ends_where_it_ends(
    name: str,
) -> None:
    machine = shipped_rules().machines[name]
    assert "invented" in machine.note
    assert machine.duty[0].amps == machine.limits["amps"][1].value


def test_the_default_machine_reaches_what_was_promised() -> None:
    rules = shipped_rules()
    default = next(iter(rules.machines.values()))
    ends = {
        ("gmaw", "volts"): "13 V to 24 V",
        ("gmaw", "wire_feed"): "60 ipm to 500 ipm",
        ("gmaw", "amps"): "30 A to 180 A",
        ("smaw", "amps"): "20 A to 160 A",
        ("gtaw-dc", "amps"): "10 A to 180 A",
    }
    for (process, setting), wanted in ends.items():
        found = limit(default, process, setting)
        assert found is not None
        assert " to ".join(map(show, found)) == wanted


def test_a_dial_with_twenty_marks_is_still_set_to_halves() -> None:
    assert mark(_marks(_0="10 V", _20="30 V"), "volts", _volts("17.4 V")) == "about 7.5"
    assert mark(_marks(_0="10 V", _21="31 V"), "volts", _volts("17.4 V")) == "about 7"
