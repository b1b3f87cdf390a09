"""`weldwhy reckon`: a list, a manual, and results as lines or data of the promised shape."""

from __future__ import annotations

import json
import shlex
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from tests.replay import shipped_rules

import weldwhy
from weldwhy import cli, commands_reckon
from weldwhy.model import RuleBase
from weldwhy.reckon.calculator import Calculator
from weldwhy.reckon.catalogue import CALCULATORS
from weldwhy.surroundings import ExitCode

pytestmark = pytest.mark.usefixtures("quick_rules")

SCHEMA = Path(weldwhy.__file__).parent / "schemas" / "reckoning.json"
Capture = pytest.CaptureFixture[str]
HEAT = 'heat-input process=gmaw volts="20 V" amps="150 A"'
"""Lacks its travel speed; 0.48 kJ/mm at 5 mm/s, for k = 0.8."""


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    return shipped_rules()


@pytest.fixture(autouse=True)
def rules_at_hand(rules: RuleBase, monkeypatch: pytest.MonkeyPatch) -> None:
    """In a checkout every command would read the rule files anew, which takes a while."""
    monkeypatch.setattr(commands_reckon, "load", lambda extra: rules)


def _run(capsys: Capture, line: str) -> tuple[int, str, str]:
    code = cli.main(shlex.split(f"reckon {line}"))
    said = capsys.readouterr()
    return code, said.out, said.err


def _data(capsys: Capture, line: str) -> dict[str, Any]:
    code, out, err = _run(capsys, f"{line} --json")
    assert (code, err) == (ExitCode.FINE, "")
    found = json.loads(out)
    assert isinstance(found, dict)
    jsonschema.validate(found, json.loads(SCHEMA.read_text(encoding="utf-8")))
    return found


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(json.loads(SCHEMA.read_text(encoding="utf-8")))


def test_every_calculator_has_one_line_under_its_topic(capsys: Capture) -> None:
    code, out, err = _run(capsys, "")
    assert (code, err) == (ExitCode.FINE, "")
    topic = ""
    found = {}
    for line in out.splitlines():
        if line.endswith(":") and not line.startswith(" "):
            topic = line[:-1].lower()
        elif line.startswith("  "):
            found[line.split()[0]] = topic
    assert found == {each.id: each.topic.lower() for each in CALCULATORS}
    assert all(len(line) <= 80 for line in out.splitlines())


@pytest.mark.parametrize("calculator", CALCULATORS, ids=[each.id for each in CALCULATORS])
def test_a_name_alone_says_what_is_needed_and_its_example_works(
    capsys: Capture, calculator: Calculator
) -> None:
    code, out, err = _run(capsys, calculator.id)
    assert (code, err) == (ExitCode.FINE, "")
    flat = " ".join(out.split())
    for each in calculator.inputs:
        assert f"{each.id}: {each.name}; " in flat
    for formula in calculator.manual:
        assert f"Holds for: {formula.holds}" in flat
        assert f"Source: {formula.source}" in flat
    assert all(len(line) <= 80 and line.isascii() for line in out.splitlines())
    told = shlex.split(out.partition("Such as:")[2].partition("\n\n")[0])
    assert told[:3] == ["weldwhy", "reckon", calculator.id]
    assert _data(capsys, shlex.join(told[2:]))["results"]


def test_results_come_on_stdout_with_formula_and_source(capsys: Capture) -> None:
    code, out, _ = _run(capsys, f'{HEAT} travel="5 mm/s"')
    assert code == ExitCode.FINE
    lines = out.splitlines()
    assert lines[0] == "Heat input: 0.48 kJ/mm"
    assert "Source: EN 1011-1 (2009), 8.7 and table 1." in lines
    assert any(line.startswith("Holds for: ") for line in lines)


def test_remarks_come_on_stderr_as_notes(capsys: Capture) -> None:
    _, out, err = _run(capsys, f'{HEAT} travel="0.3 mm/s"')
    flat = " ".join(err.split())
    assert "note: travel 0.3 mm/s lies outside 0.5 to 50 mm/s" in flat
    assert "lies outside" not in out


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ('travel="5 mm/s"', "0.48 kJ/mm"),
        ('travel="12 ipm"', "12 kJ/in"),
        ('travel="12 ipm" --units mm', "0.472 kJ/mm"),
        ("--units mm", "0.48 kJ/mm"),
    ],
)
def test_results_are_in_the_system_asked_for_or_in_that_of_the_inputs(
    capsys: Capture, line: str, first: str
) -> None:
    travel = "travel=5 " if "travel" not in line else ""
    _, out, _ = _run(capsys, f"{HEAT} {travel}{line}")
    assert out.splitlines()[0] == f"Heat input: {first}"


def test_data_hold_inputs_as_typed_and_results_unrounded(capsys: Capture) -> None:
    found = _data(capsys, f'{HEAT} travel="7 mm/s" --units mm')
    assert found["calculator"] == "heat-input"
    assert found["inputs"] == {
        "process": "gmaw", "volts": "20 V", "amps": "150 A", "travel": "7 mm/s",
    }  # fmt: skip
    first = found["results"][0]
    assert (first["id"], first["unit"]) == ("heat", "kJ/mm")
    assert first["value"] == pytest.approx(0.8 * 20 * 150 / 7000, rel=1e-12)
    assert found["formulas"][0]["source"].startswith("EN 1011-1")
    inches = _data(capsys, f'{HEAT} travel="7 mm/s" --units in')["results"][0]
    assert inches["unit"] == "kJ/in"
    assert inches["value"] == pytest.approx(25.4 * first["value"], rel=1e-12)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("heat-inptu", 'did you mean "heat-input"?'),
        ("--json", "needs the name of a calculator"),
        ("heat-input --json", "process is missing"),
        (HEAT, 'travel speed is missing; write it like travel="'),
        (f"{HEAT} travel=fast", 'cannot read "fast"'),
        (f"{HEAT} travle=5", 'did you mean "travel"?'),
        (f"{HEAT} 5mm/s", "NAME=VALUE"),
        (f"{HEAT} =5", "NAME=VALUE"),
        (f"{HEAT} volts=21", '"volts" is given twice'),
        (f'{HEAT} travel="0 mm/s"', "is not possible"),
        ('heat-input process=gmwa volts="20 V" amps="1 A" travel="5 mm/s"', 'mean "gmaw"?'),
        (f"{HEAT} travel=5 --units furlong", "--units"),
        (f"{HEAT} travel=\x1b[31m5", "cannot read"),
    ],
)
def test_wrong_usage_is_one_plain_line_and_exit_code_2(
    capsys: Capture, line: str, words: str
) -> None:
    code, out, err = _run(capsys, line)
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.startswith("weldwhy: error: ")
    assert words in err
    assert err.count("\n") == 1
    assert err.strip().isprintable()


HEAVY = ("textual", "rich", "yaml", "asyncio", "importlib.metadata", "importlib.resources")


def test_working_something_out_on_compiled_rules_loads_nothing_heavy(
    tmp_path: Path, package: Path
) -> None:
    """As installed: a copy of the code with the rules and their compiled form beside it."""
    code = f"""
import sys
sys.path.insert(0, {str(package)!r})
from weldwhy.cli import main
assert main({shlex.split(f'reckon {HEAT} travel="5 mm/s"')!r}) == 0
import weldwhy
assert weldwhy.__file__.startswith({str(package)!r})
print("loaded", *sys.modules, file=sys.stderr)
"""
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True,
        env={"WELDWHY_HOME": str(tmp_path)},
    )  # fmt: skip
    loaded = done.stderr.partition("loaded")[2].split()
    assert "weldwhy.reckon.catalogue" in loaded
    assert not set(loaded) & set(HEAVY)
