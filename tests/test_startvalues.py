"""What to set for a job: targets, their sources and notes."""

from __future__ import annotations

from dataclasses import replace

from tests.test_setup import ABLE, RULES, case, made

from weldwhy import preheat
from weldwhy.case import Measured, Situated
from weldwhy.figures import heat
from weldwhy.setup import plan
from weldwhy.startvalues import WORKED_OUT
from weldwhy.units import Quantity


def test_joint_and_position_change_the_start_values() -> None:
    def amps(**told: str) -> float:
        return made("smaw", "mild-steel", "1/8 in", **told).targets["amps"].best.value

    assert amps(position="overhead") < amps(position="flat")
    assert amps(joint="butt") < amps(joint="fillet")


def test_a_class_without_numbers_falls_back_on_those_for_any_class() -> None:
    general = RULES.windows["stick-steel"]
    windows = {
        "bare": replace(general, id="bare", consumable="E6013", rows=(), targets={}),
        "general": replace(general, consumable=""),
    }
    found = plan(replace(RULES, windows=windows), case("mild-steel", "1/8 in"), ABLE, "smaw")
    assert found.filler is not None
    assert found.filler.name == "E6013"
    assert "amps" in found.targets


def test_the_preheat_counts_the_hydrogen_of_the_rod_that_is_taken() -> None:
    def least(**told: str) -> float:
        found = made("smaw", "low-alloy-steel", "1 in", grade="a514", **told)
        return found.targets["preheat"].low.value

    unknown = case("low-alloy-steel", "1 in", grade="a514", process="smaw")
    careful = preheat.target(RULES, unknown, Quantity("length", 25.4, "in"), None)
    assert careful is not None
    assert least() == least(rod="E7018") < careful.low.value


def test_the_preheat_counts_the_heat_input_of_the_start_values() -> None:
    told = case("mild-steel", "1 in", grade="1018", joint="fillet")
    found = plan(RULES, told, ABLE, "fcaw-g")
    into = heat(RULES, "fcaw-g", found.targets)
    assert into is not None
    assert found.filler is not None
    known = told.with_(Situated("process", "fcaw-g"), Measured("wire", found.filler.name))
    thick = Quantity("length", 25.4, "in")
    assert found.targets["preheat"] == preheat.target(RULES, known, thick, into)
    assert found.targets["preheat"] != preheat.target(RULES, known, thick, 2 * into)


def test_a_preheat_is_never_said_to_be_from_the_window() -> None:
    wanted = made("gmaw", "mild-steel", "1/8 in").targets["preheat"]
    windows = {
        name: replace(window, targets={**window.targets, "preheat": wanted})
        for name, window in RULES.windows.items()
    }
    found = plan(replace(RULES, windows=windows), case("mild-steel", "1/8 in"), ABLE, "gmaw")
    assert found.sources["preheat"] == WORKED_OUT["preheat"]
    assert found.sources["volts"] == found.source


def test_the_notes_of_grade_and_set_up_are_in_the_plan() -> None:
    noted = next(g for g in RULES.grades.values() if g.note and g.material == "mild-steel")
    setups = {**RULES.setups, "gmaw": replace(RULES.setups["gmaw"], note="Mind the door.")}
    told = case("mild-steel", "1/8 in", grade=noted.id)
    notes = plan(replace(RULES, setups=setups), told, ABLE, "gmaw").notes
    assert noted.note in notes
    assert "Mind the door." in notes
