"""`weldwhy setup`: data on stdout, one plain line on stderr, 1 for what is not to be welded."""

from __future__ import annotations

import json
import shlex
from pathlib import Path
from typing import Any

import pytest

from weldwhy import cli
from weldwhy.surroundings import ExitCode

pytestmark = pytest.mark.usefixtures("quick_rules")

Capture = pytest.CaptureFixture[str]
STEEL = "setup --material 'mild steel' --thickness '1/8 in'"


def run(capsys: Capture, line: str) -> tuple[int, str, str]:
    code = cli.main(shlex.split(line))
    said = capsys.readouterr()
    return code, said.out, said.err


def answer(capsys: Capture, line: str) -> list[dict[str, Any]]:
    code, out, err = run(capsys, f"{line} --json")
    assert (code, err) == (ExitCode.FINE, "")
    found = json.loads(out)["processes"]
    assert isinstance(found, list)
    return found


def setting(process: dict[str, Any], name: str) -> dict[str, Any]:
    found = next(each for each in process["settings"] if each["name"] == name)
    assert isinstance(found, dict)
    return found


def test_metal_and_thickness_are_enough(capsys: Capture) -> None:
    found = answer(capsys, STEEL)
    assert [each["process"] for each in found[:3]] == ["gmaw", "fcaw-s", "smaw"]
    words = [each["suits"] for each in found]
    assert words == sorted(words, key=["good", "usable", "poor"].index)


@pytest.mark.parametrize("missing", ["--material steel", "--thickness '3 mm'"])
def test_both_are_needed(capsys: Capture, missing: str) -> None:
    code, out, err = run(capsys, f"setup {missing}")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.count("\n") == 1


def test_the_process_asked_for_comes_alone(capsys: Capture) -> None:
    (found,) = answer(capsys, f"{STEEL} --process smaw --rod '1/8 in' --class E7018")
    assert (found["process"], found["consumable"]["class"]) == ("smaw", "E7018")
    assert setting(found, "amps")["try"] == 115


def test_3_mm_steel_with_09_wire_indoors(capsys: Capture) -> None:
    (found,) = answer(
        capsys,
        "setup --process gmaw --material 'mild steel' --thickness '3 mm' --wire '0.9 mm' "
        "--place indoors",
    )
    volts, feed = setting(found, "volts"), setting(found, "wire_feed")
    assert (volts["low"], volts["high"]) == (17.5, 20.5)
    assert feed["try"] == pytest.approx(5.5, abs=0.2)
    assert feed["unit"] == "m/min"


def test_tungsten_gas_and_place_are_taken(capsys: Capture) -> None:
    (found,) = answer(
        capsys,
        "setup --process gtaw-dc --material stainless --thickness '16 ga' --tungsten '1/16 in' "
        "--gas argon --place outdoors --joint butt --position flat",
    )
    assert found["consumable"]["size"] == {"value": 0.0625, "unit": "in"}
    assert found["gas"]["mix"] == "argon"
    assert found["suits"] == "poor"
    assert found["test_bead"]["leg"] is None


def test_a_class_alone_is_taken_for_its_process(capsys: Capture) -> None:
    (found,) = answer(capsys, f"{STEEL} --process fcaw-s --class E71T-GS")
    assert found["consumable"]["class"] == "E71T-GS"


def test_units_asked_for_are_those_of_every_number(capsys: Capture) -> None:
    (found,) = answer(capsys, f"{STEEL} --process gmaw --units mm")
    assert found["gas"]["flow"]["unit"] == "L/min"
    (bare,) = answer(capsys, "setup --process gmaw --material steel --thickness 3 --units mm")
    assert setting(bare, "volts")["try"] == 19


def test_a_grade_says_more_than_the_metal(capsys: Capture) -> None:
    code, out, err = run(capsys, f"{STEEL} --grade 1045 --process smaw --json")
    (found,) = json.loads(out)["processes"]
    assert code == ExitCode.FINE
    assert err.endswith("taken so.\n")
    assert found["consumable"]["class"] == "E7018"
    assert found["preheat"]["low"] > 50


def test_a_grade_tells_the_metal_that_is_not_known(capsys: Capture) -> None:
    code, out, _ = run(capsys, "setup --material dont-know --thickness '3 mm' --grade 1018")
    assert code == ExitCode.FINE
    assert "For: mild steel" in out


@pytest.mark.parametrize("metal", ["magnesium", "galvanised", "unknown casting"])
def test_a_grade_takes_no_danger_of_the_metal_away(capsys: Capture, metal: str) -> None:
    code, out, err = run(capsys, f"setup --material '{metal}' --thickness '3 mm' --grade 1018")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.endswith("; tell one of the two\n")
    assert err.count("\n") == 1


@pytest.mark.parametrize(
    "asked",
    ["--material magnesium", "--material 'unknown casting'", "--material steel --job wheel",
     "--material steel --job closed-vessel", "--material steel --job hardened --process gmaw"],
)  # fmt: skip
def test_what_is_not_to_be_welded_stops_with_1(capsys: Capture, asked: str) -> None:
    code, out, err = run(capsys, f"setup {asked} --thickness '1/8 in' --json")
    data = json.loads(out)
    assert (code, err) == (ExitCode.FINDINGS, "")
    assert data["processes"] == []
    assert data["stop"]["call"]
    code, out, err = run(capsys, f"setup {asked} --thickness '1/8 in'")
    assert (code, err) == (ExitCode.FINDINGS, "")
    assert out.startswith("STOP: ")
    assert "\nCall: " in out


@pytest.mark.parametrize(
    "wrong",
    ["--process gmav", "--gas quux", "--class E9999", "--wire '3 ft'", "--joint tee",
     "--position upside", "--place moon", "--job hobby", "--grade 99x", "--thickness '9 kg'",
     "--material cheese", "--machine /no/such/file", "--format pdf", "--units ell"],
)  # fmt: skip
def test_what_cannot_be_meant_is_one_plain_line_and_2(capsys: Capture, wrong: str) -> None:
    code, out, err = run(capsys, f"{STEEL} {wrong}")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.startswith("weldwhy: error: ")
    assert err.count("\n") == 1


def test_the_machine_of_a_file_holds_the_numbers(capsys: Capture, tmp_path: Path) -> None:
    file = tmp_path / "machine.yaml"
    file.write_text(
        "name: small box\nprocesses: [gmaw, smaw]\nlimits: {volts: 14 V to 17 V}\n"
        "dials: {volts: {'1': 14 V, '4': 17 V}}\n"
    )
    (found,) = answer(capsys, f"{STEEL} --process gmaw --machine {file}")
    assert setting(found, "volts")["high"] <= 17
    assert found["beyond"]
    assert found["suits"] == "poor"
    assert {each["process"] for each in answer(capsys, f"{STEEL} --machine {file}")} == {
        "gmaw", "smaw",
    }  # fmt: skip


def test_a_faulty_machine_file_is_told_with_its_line(capsys: Capture, tmp_path: Path) -> None:
    file = tmp_path / "machine.yaml"
    file.write_text("name: small box\nprocesses: [gmav]\n")
    code, out, err = run(capsys, f"{STEEL} --machine {file}")
    assert (code, out) == (ExitCode.USAGE, "")
    assert f"{file}:2" in err


@pytest.mark.parametrize(
    ("form", "start"),
    [("text", "Set-up: MIG"), ("markdown", "# Set-up: MIG"), ("html", "<!DOCTYPE")],
)
def test_the_sheet_is_of_the_best_process(capsys: Capture, form: str, start: str) -> None:
    code, out, err = run(capsys, f"{STEEL} --format {form}")
    assert (code, err) == (ExitCode.FINE, "")
    assert out.startswith(start)
    assert "Other processes" in out


def test_the_persons_own_machine_is_taken_without_a_file(
    capsys: Capture, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("WELDWHY_HOME", str(tmp_path))
    (tmp_path / "machine.yaml").write_text("name: stick box\nprocesses: [smaw]\n")
    assert [each["process"] for each in answer(capsys, STEEL)] == ["smaw"]
