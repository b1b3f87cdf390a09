"""What goes onto the machine: polarity, filler, sizes and gas."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest
from tests.test_setup import GRID, METALS, RULES, made

from weldwhy.hookup import fillers, sides
from weldwhy.model import POSITIONS
from weldwhy.suiting import Situation


def test_the_words_of_the_polarity_agree_with_the_terminals() -> None:
    """Electrode positive is DCEP, electrode negative DCEN."""
    names = {"plus": "(DCEP)", "minus": "(DCEN)", "ac": "(AC)"}
    for each in GRID:
        assert each.polarity.endswith(names[each.gun])
        assert each.clamp == {"plus": "minus", "minus": "plus", "ac": "ac"}[each.gun]


def test_a_class_that_the_guide_does_not_know_is_left_to_its_label() -> None:
    found = made("smaw", "mild-steel", "1/8 in", rod="1/8 in E9018")
    assert found.filler is None
    assert "E9018 is not among the classes of this guide: its label decides." in found.notes


def test_no_class_is_offered_for_another_grade_or_position() -> None:
    for process, metal, position in product(RULES.setups, METALS, ("", *POSITIONS)):
        for grade in ("", *(g.id for g in RULES.grades.values() if g.material == metal)):
            for each in fillers(RULES, process, Situation(metal, position=position), grade):
                assert not each.grades or grade in each.grades
                assert not each.positions or position in ("", *each.positions)


def test_in_wind_more_gas_flows() -> None:
    still, windy = (
        made("gmaw", "mild-steel", "1/8 in", place=place).gas for place in ("indoors", "outdoors")
    )
    assert still is not None
    assert windy is not None
    assert windy[1].best.value > still[1].best.value


def test_the_filler_rod_told_is_the_one_that_is_taken() -> None:
    for size, millimetres in (("1/16 in", 1.5875), ("1/8 in", 3.175)):
        found = made("gtaw-dc", "stainless", "1/8 in", rod=size).filler_size
        assert found is not None
        assert found.value == pytest.approx(millimetres)


def test_a_filler_that_wants_the_other_polarity_turns_both_leads_round() -> None:
    setup, wire = RULES.setups["gmaw"], RULES.fillers["er70s-6"]
    assert sides(setup, wire) == sides(setup, None) == ("plus", "minus")
    assert sides(setup, replace(wire, electrode=("minus", "plus"))) == ("minus", "plus")
    assert sides(setup, replace(wire, electrode=("ac",))) == ("ac", "ac")
