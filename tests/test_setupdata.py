"""The data of `weldwhy setup --json`: its shape is the schema's, its numbers those of the plan."""

from __future__ import annotations

import json
from dataclasses import replace
from importlib import resources
from itertools import product
from typing import Any

import jsonschema
import pytest
from tests.test_setup import ABLE, GRID, METALS, REFUSED, RULES, case

from weldwhy.case import Situated
from weldwhy.setup import Refusal, plan, plans
from weldwhy.setupdata import SETTINGS, refused, setups
from weldwhy.units import Quantity

SCHEMA = json.loads((resources.files("weldwhy") / "schemas" / "setup.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def valid(data: dict[str, Any]) -> dict[str, Any]:
    """The data after a round through JSON, once the schema has taken it."""
    found: dict[str, Any] = json.loads(json.dumps(data, allow_nan=False))
    VALIDATOR.validate(found)
    return found


def one(process: str, material: str, thickness: str, system: str | None = None) -> dict[str, Any]:
    made = plan(RULES, case(material, thickness, joint="fillet"), ABLE, process, system)
    (found,) = valid(setups(RULES, [made]))["processes"]
    assert isinstance(found, dict)
    return found


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_every_plan_of_the_grid_fits_the_schema() -> None:
    for each in GRID:
        valid(setups(RULES, [each]))


def test_numbers_are_in_order_in_either_system() -> None:
    for metal, thick, system in product(METALS, ("18 ga", "1/8 in", "6 mm"), ("in", "mm", None)):
        found = plans(RULES, case(metal, thick), ABLE, system)
        assert not isinstance(found, Refusal)
        for process in valid(setups(RULES, found))["processes"]:
            ranges = [*process["settings"], *filter(None, [process["preheat"]])]
            ranges += [process["gas"]["flow"]] if process["gas"] else []
            for each in ranges:
                assert each["low"] <= each["try"] <= each["high"], (each, process["process"])


def test_a_stop_has_no_process() -> None:
    for field, value in REFUSED:
        found = plans(RULES, case("mild-steel", "3 mm").with_(Situated(field, value)), ABLE)
        assert isinstance(found, Refusal)
        data = valid(refused(found))
        assert data["processes"] == []
        assert data["stop"]["text"].startswith("Stop here")


def test_the_numbers_are_those_of_the_plan() -> None:
    found = one("gmaw", "mild-steel", "1/8 in")
    assert found["polarity"].startswith("gun positive")
    assert found["transfer"] == "short circuit"
    assert found["gas"]["flow"] == {"low": 20, "try": 25, "high": 30, "unit": "cfh"}
    assert found["consumable"]["class"] == "ER70S-6"
    assert found["consumable"]["size"] == {"value": 0.035, "unit": "in"}
    told = {each["name"]: each for each in found["settings"]}
    assert [each["name"] for each in found["settings"]] == [n for n in SETTINGS if n in told]
    assert (told["volts"]["low"], told["volts"]["try"], told["volts"]["high"]) == (17.5, 19, 20.5)
    assert (told["wire_feed"]["try"], told["wire_feed"]["unit"]) == (220, "ipm")
    assert "from memory" in told["volts"]["source"]


@pytest.mark.parametrize(
    ("system", "units"),
    [("in", ["V", "ipm", "A", "in", "in/min"]), ("mm", ["V", "m/min", "A", "mm", "mm/s"])],
)
def test_numbers_come_in_the_units_asked_for(system: str, units: list[str]) -> None:
    found = one("gmaw", "mild-steel", "1/8 in", system)
    assert [each["unit"] for each in found["settings"]] == units


def test_the_caution_of_a_step_is_all_its_cautions() -> None:
    made = plan(RULES, case("galvanised", "1/8 in"), ABLE, "gmaw")
    (found,) = valid(setups(RULES, [made]))["processes"]
    for step, told in zip(made.checklist, found["checklist"], strict=True):
        assert told["text"] == step.text
        for caution in step.cautions:
            assert caution.text in told["caution"]


def test_the_mark_of_the_dial_is_told() -> None:
    marks = {"1": Quantity("voltage", 14, "V"), "6": Quantity("voltage", 24, "V")}
    marked = replace(ABLE, dials={"volts": marks})
    made = plan(RULES, case("mild-steel", "1/8 in"), marked, "gmaw")
    (found,) = valid(setups(RULES, [made]))["processes"]
    assert {"mark": "about 3.5"}.items() <= found["settings"][0].items()


def test_texts_cannot_drive_a_terminal() -> None:
    made = plan(RULES, case("mild-steel", "1/8 in"), ABLE, "gmaw")
    made = replace(made, why=("bad\x1b[31m",), notes=("a\x07b",))
    (found,) = valid(setups(RULES, [made]))["processes"]
    assert found["why"] == "bad"
    assert found["notes"][0] == "ab"


def test_the_note_of_the_window_is_among_the_notes() -> None:
    noted = replace(GRID[0], notes=("Of the plan.",), note="Of the window.")
    (data,) = setups(RULES, [noted])["processes"]
    assert data["notes"] == ["Of the plan.", "Of the window."]
