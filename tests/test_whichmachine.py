"""Which machine a command reckons with: the named file, the person's own, the usual one."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest

from weldwhy import cli
from weldwhy.surroundings import ExitCode

pytestmark = pytest.mark.usefixtures("quick_rules")
Capture = pytest.CaptureFixture[str]

SMALL = """
name: shed machine
processes: [gmaw]
limits: {volts: 14 V to 18 V}
dials: {volts: {1: 14 V, 5: 18 V}}
"""
CASE = """
process: gmaw
material: mild steel
thickness: 3 mm
symptoms: [spatter]
settings: {volts: 22 V, wire_feed: 250 ipm, wire: 0.035 in, gas: C25}
"""


@pytest.fixture
def case(tmp_path: Path) -> Path:
    path = tmp_path / "case.yaml"
    path.write_text(CASE, encoding="utf-8")
    return path


def diagnosed(capsys: Capture, case: Path, more: str = "") -> tuple[str, str]:
    code = cli.main(shlex.split(f"diagnose --case {case} {more}"))
    said = capsys.readouterr()
    assert code == ExitCode.FINE, said.err
    return " ".join(said.out.split()), said.err


def test_without_a_machine_of_ones_own_the_usual_one_is_taken(capsys: Capture, case: Path) -> None:
    told, remarks = diagnosed(capsys, case)
    assert "volts: yours 22 V, try 19.5 V, allowed 18 V to 21 V" in told
    assert remarks == ""


def test_a_named_machine_holds_the_target_and_speaks_of_its_dial(
    capsys: Capture, case: Path, tmp_path: Path
) -> None:
    machine = tmp_path / "shed.yaml"
    machine.write_text(SMALL, encoding="utf-8")
    told, _ = diagnosed(capsys, case, f"--machine {machine}")
    assert "volts: yours 22 V, try 18 V" in told
    assert "This machine ends at 18 V" in told
    assert "On your volts dial that is 5." in told


def test_ones_own_machine_is_taken_without_being_named(
    capsys: Capture, case: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "machine.yaml").write_text(SMALL, encoding="utf-8")
    monkeypatch.setenv("WELDWHY_HOME", str(tmp_path))
    told, remarks = diagnosed(capsys, case)
    assert "This machine ends at 18 V" in told
    assert remarks == ""


def test_a_fault_in_ones_own_machine_is_told_and_the_answer_still_comes(
    capsys: Capture, case: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "machine.yaml").write_text(SMALL.replace("18 V}", "18 X}"), encoding="utf-8")
    monkeypatch.setenv("WELDWHY_HOME", str(tmp_path))
    told, remarks = diagnosed(capsys, case)
    assert "try 19.5 V" in told
    assert remarks.count("\n") == 1
    assert "machine.yaml, line 4" in remarks


def test_a_fault_in_a_named_machine_is_an_error_with_its_place(
    capsys: Capture, case: Path, tmp_path: Path
) -> None:
    machine = tmp_path / "shed.yaml"
    machine.write_text(SMALL.replace("gmaw", "gmow"), encoding="utf-8")
    code = cli.main(shlex.split(f"diagnose --case {case} --machine {machine}"))
    said = capsys.readouterr()
    assert code == ExitCode.USAGE
    assert "shed.yaml:3" in said.err
    assert 'did you mean "gmaw"?' in said.err
