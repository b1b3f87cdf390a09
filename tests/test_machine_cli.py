"""`weldwhy machine`: the machine in words or as data, told by options, with one-line errors."""

from __future__ import annotations

import json
import os
import shlex
from pathlib import Path
from typing import Any

import pytest

from weldwhy import cli
from weldwhy.surroundings import ExitCode

pytestmark = pytest.mark.usefixtures("quick_rules")

Capture = pytest.CaptureFixture[str]


@pytest.fixture
def file(fresh_surroundings: Path) -> Path:
    """Where the file of the machine lies in this test's home."""
    return fresh_surroundings / "data" / "weldwhy" / "machine.yaml"


def _run(capsys: Capture, line: str) -> tuple[int, str, str]:
    code = cli.main(shlex.split(f"machine {line}"))
    said = capsys.readouterr()
    return code, said.out, said.err


def _data(capsys: Capture, line: str = "") -> dict[str, Any]:
    code, out, _ = _run(capsys, f"{line} --json")
    assert code == ExitCode.FINE
    found = json.loads(out)
    assert isinstance(found, dict)
    return found


def test_without_a_file_the_default_is_printed_in_words_and_no_file_is_made(
    capsys: Capture, file: Path
) -> None:
    code, out, err = _run(capsys, "")
    assert (code, err) == (ExitCode.FINE, "")
    assert "small machine, 180 A class" in out
    assert "until you tell it yours" in out
    told = f"Your file: {file} (not there yet)"  # a long path is broken over lines
    assert "".join(told.split()) in "".join(out.split())
    assert "volts: 13 V to 24 V" in out
    assert "amps, stick: 20 A to 160 A" in out
    assert not file.parent.exists()


def test_a_value_that_is_set_is_kept_and_shown_as_it_was_typed(capsys: Capture, file: Path) -> None:
    code, out, err = _run(capsys, "--set name='blue box' --set gun='12 ft' --set cord='8 m'")
    assert (code, err) == (ExitCode.FINE, "")
    assert "This is your own machine." in out
    assert "extension cord: 8 m" in out
    assert "gun: 12 ft" in file.read_text(encoding="utf-8")
    assert _run(capsys, "")[1] == out


def test_nested_keys_and_lists_are_set_too(capsys: Capture) -> None:
    found = _data(
        capsys,
        "--set limits.amps='25-170 A' --set limits_in.smaw.amps='20 A to 140 A' "
        "--set dials.volts='1 = 13 V, 10 = 24 V' --set duty='20 % at 170 A' "
        "--set processes=smaw,gmaw",
    )["machine"]
    assert found["limits"]["amps"] == "25 A to 170 A"
    assert found["limits_in"]["smaw"] == {"amps": "20 A to 140 A"}
    assert found["dials"] == {"volts": {"1": "13 V", "10": "24 V"}}
    assert (found["duty"], found["processes"]) == (["20 % at 170 A"], ["smaw", "gmaw"])


def test_an_empty_value_takes_one_away(capsys: Capture) -> None:
    assert "breaker" in _data(capsys, "--set breaker=20")["machine"]
    assert "breaker" not in _data(capsys, "--set breaker=")["machine"]


def test_the_data_says_whose_the_machine_is_and_where_its_file_is(
    capsys: Capture, file: Path
) -> None:
    assert _data(capsys)["own"] is False
    found = _data(capsys, "--from generic-140")
    assert found["own"] is True
    assert found["file"] == str(file)
    assert found["machine"]["supply"] == "120 V"


def test_a_machine_of_the_rules_can_be_started_from_and_changed_at_once(
    capsys: Capture, file: Path
) -> None:
    first = _data(capsys, "--set name=old")["machine"]["name"]
    assert first == "old"
    code, out, err = _run(capsys, "--from generic-200 --set name=new")
    assert code == ExitCode.FINE
    assert out.startswith("new\n")
    assert "machine.yaml.kept: another machine was begun" in err
    assert "name: old" in file.with_name("machine.yaml.kept").read_text(encoding="utf-8")


def test_another_file_can_be_read_and_written(capsys: Capture, tmp_path: Path, file: Path) -> None:
    other = tmp_path / "shop.yaml"
    other.write_text("name: the big one\nprocesses: [smaw]\n", encoding="utf-8")
    assert _data(capsys, f"--file {other}")["machine"] == {
        "name": "the big one",
        "processes": ["smaw"],
    }
    _run(capsys, f"--file {other} --set supply='400 V'")
    assert "supply: 400 V" in other.read_text(encoding="utf-8")
    assert not file.exists()


@pytest.mark.parametrize(
    ("line", "error"),
    [
        ("--set supply", "--set supply: write it as KEY=VALUE"),
        ("--set suply='230 V'", '--set suply: unknown key "suply"; did you mean "supply"?'),
        ("--set supply='230 X'", '--set supply: cannot read "230 X"; write it like "18.5 V"'),
        ("--set limits.volts='18 V'",
         '--set limits.volts: "18 V" is no range; write it like "5 V to 60 V"'),
        ("--set name=", '--set name: machine lacks the key "name" (what you call it)'),
        ("--from generic-18", 'unknown machine "generic-18"; did you mean "generic-180"?'),
        ("--file /nowhere/at/all.yaml", 'there is no file "/nowhere/at/all.yaml"'),
        ("--units in", "unrecognized arguments: --units in; see `weldwhy --help`"),
    ],
)  # fmt: skip
def test_a_fault_is_one_plain_line_and_nothing_is_changed(
    capsys: Capture, file: Path, line: str, error: str
) -> None:
    assert _run(capsys, line) == (ExitCode.USAGE, "", f"weldwhy: error: {error}\n")
    assert not file.exists()


def test_of_several_changes_none_is_kept_if_one_is_wrong(capsys: Capture, file: Path) -> None:
    code, _, _ = _run(capsys, "--set name=x --set gun=far")
    assert code == ExitCode.USAGE
    assert not file.exists()


BROKEN = "name: x\nprocesses: [gmaw]\nsuply: 230 V\ngun: far\n"


@pytest.mark.parametrize("line", ["", "--json", "--set supply='230 V'"])
def test_a_broken_file_is_told_line_by_line_and_left_alone(
    capsys: Capture, file: Path, line: str
) -> None:
    file.parent.mkdir(parents=True)
    file.write_text(BROKEN, encoding="utf-8")
    assert _run(capsys, line) == (
        ExitCode.USAGE,
        "",
        f'weldwhy: error: {file}:3:1: error: unknown key "suply" in machine; did you mean '
        '"supply"? [unknown-key]\n'
        f'weldwhy: error: {file}:4:6: error: cannot read "far"; write it like "25 ft" or "8 m" '
        "[bad-quantity]\n",
    )
    assert file.read_text(encoding="utf-8") == BROKEN


def test_a_broken_file_can_be_started_anew_and_is_kept(capsys: Capture, file: Path) -> None:
    file.parent.mkdir(parents=True)
    file.write_text(BROKEN, encoding="utf-8")
    code, out, err = _run(capsys, "--from generic-180")
    assert code == ExitCode.FINE
    assert "This is your own machine." in out
    assert err == f"{file} was moved to machine.yaml.kept: another machine was begun\n"
    assert file.with_name("machine.yaml.kept").read_text(encoding="utf-8") == BROKEN


def test_a_folder_where_nothing_can_be_written_is_one_plain_line(
    capsys: Capture, tmp_path: Path
) -> None:
    (tmp_path / "wall").write_text("", encoding="utf-8")
    code, out, err = _run(capsys, f"--file {tmp_path / 'wall' / 'machine.yaml'} --set name=x")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.startswith("weldwhy: error: cannot ")
    assert err.count("\n") == 1


def test_what_a_file_holds_cannot_drive_the_terminal(capsys: Capture, file: Path) -> None:
    file.parent.mkdir(parents=True)
    file.write_text('name: "a\\e[31mb"\nprocesses: [gmaw]\n', encoding="utf-8")
    code, out, err = _run(capsys, "")
    assert code == ExitCode.USAGE
    assert "\x1b" not in out + err
    assert "hidden mark U+001B" in err


def test_no_line_is_wider_than_a_terminal(capsys: Capture) -> None:
    _, out, _ = _run(capsys, f"--set note='{'long words ' * 20}'")
    lines = [line for line in out.splitlines() if "/" not in line]
    assert max(map(len, lines)) <= 76


@pytest.mark.parametrize("change", ["--from generic-140", "--set name=x"])
@pytest.mark.parametrize("name", ["/", ".", "''", "{folder}", "{folder}/pipe"])
def test_only_a_file_is_ever_moved_aside(
    capsys: Capture, tmp_path: Path, name: str, change: str
) -> None:
    os.mkfifo(tmp_path / "pipe")
    code, out, err = _run(capsys, f"--file {name.format(folder=tmp_path)} {change}")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.endswith('" is no file\n')
    assert err.count("\n") == 1
    assert [each.name for each in tmp_path.iterdir()] == ["pipe"]


def test_a_file_without_a_name_is_not_your_own(capsys: Capture) -> None:
    code, out, err = _run(capsys, "--file ''")
    assert (code, out, err) == (
        ExitCode.USAGE, "", "weldwhy: error: cannot read .: Is a directory\n",
    )  # fmt: skip


def test_a_name_that_would_fill_the_screens_is_refused(capsys: Capture, file: Path) -> None:
    code, out, err = _run(capsys, f"--set name={'x' * 100_000}")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err == ("weldwhy: error: --set name: it is too long; write it in 2000 letters at most\n")
    assert not file.exists()


def test_a_byte_that_is_no_letter_is_refused_in_one_plain_line(capsys: Capture, file: Path) -> None:
    code, out, err = _run(capsys, "--set name=caf\udce9")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err == "weldwhy: error: --set name: it holds a sign that cannot be kept; " + (
        "use plain letters\n"
    )
    assert not file.exists()
