"""The command line: data on stdout, one plain line on stderr, four exit codes."""

from __future__ import annotations

import gc
import json
import os
import re
import shlex
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from tests.replay import shipped_rules

from weldwhy import __main__, __version__, cli, commands_rules, options, rulebase, surroundings
from weldwhy.case import Answered, Case, Reported, Said, Situated, Tried
from weldwhy.pages import KINDS
from weldwhy.store import Store
from weldwhy.surroundings import ExitCode, UsageError

pytestmark = pytest.mark.usefixtures("quick_rules")

ROOT = Path(__file__).resolve().parent.parent
Capture = pytest.CaptureFixture[str]


def _run(capsys: Capture, line: str) -> tuple[int, str, str]:
    code = cli.main(shlex.split(line))
    said = capsys.readouterr()
    return code, said.out, said.err


def _answer(capsys: Capture, line: str) -> dict[str, Any]:
    code, out, err = _run(capsys, f"diagnose {line} --json")
    assert (code, err) == (ExitCode.FINE, "")
    found = json.loads(out)
    assert isinstance(found, dict)
    return found


def _program(
    *arguments: str, typed: str | None = None, environment: dict[str, str] | None = None
) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "weldwhy", *arguments],
        input=typed, env=environment, capture_output=True, text=True, check=False,
    )  # fmt: skip


def test_exit_codes_are_the_documented_ones() -> None:
    assert [int(code) for code in ExitCode] == [0, 1, 2, 130]
    assert "0 fine, 1 findings, 2 wrong usage" in options.parser().format_help()


# diagnose


def test_with_nothing_told_it_asks_for_process_group_and_symptom(capsys: Capture) -> None:
    told = ""
    for wanted in ("process=gmaw", "group=holes", "symptom=porosity"):
        found = _answer(capsys, told)
        assert found["causes"] == []
        name, _, answer = wanted.partition("=")
        assert found["next"]["id"] == name
        assert answer in {each["id"] for each in found["next"]["answers"]}
        told += f" --answer {wanted}"
    assert _answer(capsys, told)["causes"]


def test_following_the_next_step_leads_from_nothing_to_a_remedy(capsys: Capture) -> None:
    """A script can hold the whole interview: each answer offered is an answer taken."""
    told = ""
    wanted = {"process": "gmaw", "group": "holes", "gas-flow-reading": "low"}
    for _ in range(40):
        step = _answer(capsys, told)["next"]
        assert isinstance(step, dict)
        if step["kind"] in ("remedy", "stop"):
            break
        normal = step["answers"][0]["id"]
        told += f" --answer {step['id']}={wanted.get(step['id'], normal)}"
    assert step["kind"] == "remedy"
    assert "gas-flow-reading=low" in told


def test_the_output_has_the_promised_shape_for_all_kinds_of_symptoms(capsys: Capture) -> None:
    rules = rulebase.load()
    code, out, _ = _run(capsys, "rules schema diagnosis")
    assert code == ExitCode.FINE
    schema = json.loads(out)
    for symptom in list(rules.symptoms.values())[::3]:
        process = symptom.processes[-1]
        found = _answer(capsys, f"--symptom {symptom.id} --process {process}")
        jsonschema.validate(found, schema)
        assert found["causes"]
        assert found["expected_minutes"] > 0


def test_free_sentences_are_understood_or_come_back(capsys: Capture, tmp_path: Path) -> None:
    case = tmp_path / "case.yaml"
    case.write_text("said: [mig welding, my cat is asleep]", encoding="utf-8")
    found = _answer(capsys, f"--case {case} --said porosity --said 'seven green umbrellas'")
    told = {(each["check"], each["answer"]) for each in found["understood"]}
    assert {("process", "gmaw"), ("symptom", "porosity")} <= told
    assert found["not_understood"] == ["my cat is asleep", "seven green umbrellas"]
    assert found["causes"]
    texts = ["mig welding", "my cat is asleep", "porosity", "seven green umbrellas"]
    assert [each["text"] for each in found["said"]] == texts
    assert [each["not_understood"] for each in found["said"]] == [[], texts[1:2], [], texts[3:]]
    taken = [{k: v for k, v in u.items() if k != "confidence"} for u in found["understood"]]
    assert [each for said in found["said"] for each in said["understood"]] == taken


def test_what_is_told_outright_counts_for_more_than_words(capsys: Capture) -> None:
    words = "--said 'stick welding, porosity'"
    outright = _answer(capsys, f"{words} --process gmaw")
    by_words = _answer(capsys, words)
    assert {"gas-off"} <= {cause["id"] for cause in outright["causes"]}
    assert "gas-off" not in {cause["id"] for cause in by_words["causes"]}


def test_the_text_says_what_was_understood(capsys: Capture) -> None:
    code, out, err = _run(capsys, "diagnose --said 'mig, porosity, seven green umbrellas'")
    assert code == ExitCode.FINE
    assert out.startswith("Understood from your words (+ sure, ? doubtful):\n  + process: MIG")
    assert 'porosity (bubbles in the weld) ("porosity")' in out
    assert err == 'Not understood, so not counted: "seven green umbrellas"\n'


def test_a_case_file_and_the_options_say_the_same(capsys: Capture, tmp_path: Path) -> None:
    case = tmp_path / "case.json"
    told = {"process": "gmaw", "symptoms": ["porosity"], "answers": {"gas-flow-reading": "low"}}
    case.write_text(json.dumps(told), encoding="utf-8")
    by_file = _answer(capsys, f"--case {case}")
    by_option = _answer(capsys, "--process gmaw --symptom porosity --answer gas-flow-reading=low")
    assert by_file == by_option


def test_an_option_goes_before_the_case_file(capsys: Capture, tmp_path: Path) -> None:
    case = tmp_path / "case.yaml"
    case.write_text("process: gmaw\nsymptoms: [porosity]", encoding="utf-8")
    assert _answer(capsys, f"--case {case} --process smaw") == _answer(
        capsys, "--process smaw --symptom porosity"
    )


def test_a_case_can_come_from_standard_input() -> None:
    done = _program("diagnose", "--case", "-", "--json", typed="process: gmaw\nsymptoms: [spatter]")
    assert done.returncode == 0
    assert json.loads(done.stdout)["causes"]


def test_measured_settings_weigh_and_are_shown_in_the_units_asked_for(
    capsys: Capture, tmp_path: Path
) -> None:
    case = tmp_path / "case.yaml"
    case.write_text(
        "process: gmaw\nmaterial: mild steel\nthickness: 1/8 in\nsymptoms: [spatter]\n"
        "settings: {volts: 30 V, wire_feed: 250 in/min, wire: 0.035 in, gas: C25}",
        encoding="utf-8",
    )
    found = _answer(capsys, f"--case {case} --units mm")
    (high,) = [each for each in found["causes"] if each["id"] == "volts-high"]
    assert [reason["check"] for reason in high["why"]] == ["volts"]
    assert high["why"][0]["decibans"] > 0
    shown = json.dumps(found)
    assert "m/min" in shown
    assert " ipm" not in shown


def test_the_same_case_gives_the_same_bytes() -> None:
    line = ("diagnose", "--process", "gmaw", "--symptom", "porosity", "--json")
    seeds = [{**os.environ, "PYTHONHASHSEED": seed} for seed in ("1", "2")]
    first, second = (_program(*line, environment=environment).stdout for environment in seeds)
    assert first == second


def test_the_text_form_offers_answers_that_can_be_typed_back(capsys: Capture) -> None:
    code, out, _ = _run(capsys, "diagnose --symptom porosity")
    assert code == ExitCode.FINE
    (offered,) = re.findall(r"--answer (process=gmaw)", out)
    assert _answer(capsys, f"--symptom porosity --answer {offered}")["causes"]


@pytest.mark.parametrize(
    ("form", "begins"),
    [("text", "Weld case: "), ("markdown", "# Weld case: "), ("html", "<!DOCTYPE html>")],
)
def test_a_case_is_printed_in_the_form_asked_for(capsys: Capture, form: str, begins: str) -> None:
    line = "diagnose --process gmaw --symptom porosity --said 'tiny <b>holes'"
    code, out, _ = _run(capsys, f"{line} --format {form}")
    assert code == ExitCode.FINE
    assert out.startswith(begins)
    assert "Next step" in out
    assert ("--answer" in out) == (form == "text")
    assert ("<b>" in out) == (form == "text")
    assert form != "text" or out == _run(capsys, line)[1]


@pytest.mark.parametrize("form", options.CHART_FORMATS)
def test_a_finished_case_that_was_kept_can_be_printed(
    capsys: Capture, tmp_path: Path, form: str
) -> None:
    told = (Situated("process", "gmaw"), Reported("porosity"), Answered("gas-flow-reading", "low"))
    Store(tmp_path).finish(
        Case((*told, Tried("gas-flow-low", "raise-gas-flow", "sound"))), "2026-11-25T10:00:00"
    )
    (path,) = (tmp_path / "finished").iterdir()
    code, out, err = _run(capsys, f"diagnose --case {path} --format {form}")
    assert (code, err) == (ExitCode.FINE, "")
    for wanted in ("Done: the last test bead was sound.", "What put it right", "How sure"):
        assert wanted in out


@pytest.mark.parametrize("form", options.CHART_FORMATS)
def test_own_words_of_a_kept_case_are_printed_with_what_was_made_of_them(
    capsys: Capture, tmp_path: Path, form: str
) -> None:
    said = Said("bubbles <b>all over", ("all over",), ("rust",))
    told = (said, Situated("process", "gmaw"), Reported("porosity", words="bubbles"))
    Store(tmp_path).save(Case(told))
    _, out, err = _run(capsys, f"diagnose --case {tmp_path / 'case.json'} --format {form}")
    assert err == ""
    assert ("<b>" in out) == (form == "text")
    for wanted in ("own words", "all over", "not understood", "bubbles", "struck out", "rust"):
        assert wanted in out
    (kept,) = _answer(capsys, f"--case {tmp_path / 'case.json'}")["said"]
    assert kept == {
        "text": said.text,
        "understood": [{"text": "bubbles", "check": "symptom", "answer": "porosity"}],
        "not_understood": ["all over"],
        "struck_out": ["rust"],
    }


def test_a_kept_case_that_is_broken_is_said_in_one_line(capsys: Capture, tmp_path: Path) -> None:
    path = tmp_path / "case.json"
    path.write_text('{"version": 1, "entries": [{"entry": "tried"}]}', encoding="utf-8")
    code, out, err = _run(capsys, f"diagnose --case {path}")
    assert (code, out) == (ExitCode.USAGE, "")
    assert str(path) in err
    assert len(err.splitlines()) == 1


# wrong usage


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("diagnos", "invalid choice"),
        ("diagnose --jsn", "--jsn"),
        ("diagnose --process gmwa", 'did you mean "gmaw"?'),
        ("diagnose --symptom porosty", 'did you mean "porosity"?'),
        ("diagnose --answer gas-flow-reading", "CHECK=ANSWER"),
        ("diagnose --answer gas-flow-readin=low", 'did you mean "gas-flow-reading"?'),
        ("diagnose --answer gas-flow-reading=lwo", 'did you mean "low"?'),
        ("diagnose --answer thickness=9000mm", "not possible"),
        ("diagnose --patience endless", "--patience"),
        ("diagnose --units furlong", "--units"),
        ("diagnose --format pdf", "--format"),
        ("diagnose --json --format html", "--json and --format do not go together"),
        ("diagnose --case no/such/file", "No such file"),
        ("diagnose --case .", "Is a directory"),
        ("diagnose --case 'a\x00b'", "no file name"),
        ("diagnose --rules no/such/folder", "no rules folder"),
        ("--rules no/such/folder info", "no rules folder"),
        ("chart porosty", 'did you mean "porosity"?'),
        ("chart porosity --process gmwa", 'did you mean "gmaw"?'),
        ("chart porosity --depth 0", "whole number"),
        ("chart porosity --depth 999999999999", "whole number"),
        ("chart birds-nest --process smaw", "not met with"),
        ("rules", "needs a task"),
        ("rules explain porosty", 'did you mean "porosity"?'),
        ("rules simulate porosty", 'did you mean "porosity"?'),
        ("rules simulate porosity --cases 0", "a whole number from 1 to"),
        ("rules schema caus", 'did you mean "cause"?'),
        ("rules try no/such/file", "No such file"),
    ],
)
def test_wrong_usage_is_one_plain_line_and_exit_code_2(
    capsys: Capture, line: str, words: str
) -> None:
    code, out, err = _run(capsys, line)
    assert code == ExitCode.USAGE
    assert out == ""
    assert err.startswith("weldwhy: error: ")
    assert words in err
    assert err.count("\n") == 1
    assert err.strip().isprintable()


def test_a_fault_in_a_case_file_names_file_line_and_column(capsys: Capture, tmp_path: Path) -> None:
    case = tmp_path / "case.yaml"
    case.write_text("process: gmaw\nsettings:\n  vlots: 18 V\n", encoding="utf-8")
    code, out, err = _run(capsys, f"diagnose --case {case} --json")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err == (
        f'weldwhy: error: {case}:3:3: error: unknown key "vlots" in settings; '
        'did you mean "volts"? [unknown-key]\n'
    )


@pytest.mark.parametrize(
    "line", ["--help", "diagnose --help", "chart --help", "rules check --help"]
)
def test_every_command_has_help(capsys: Capture, line: str) -> None:
    with pytest.raises(SystemExit) as left:
        cli.main(shlex.split(line))
    assert left.value.code == 0
    assert "usage: weldwhy" in capsys.readouterr().out


def test_the_readme_names_every_command(capsys: Capture) -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for line in ("--help", "rules --help"):
        with pytest.raises(SystemExit):
            cli.main(shlex.split(line))
        named = re.findall(r"^    ([a-z]+) ", capsys.readouterr().out, re.MULTILINE)
        assert named
        for command in named:
            assert f"weldwhy {command}" in readme or f"weldwhy rules {command}" in readme, command


def test_a_file_of_quite_another_kind_does_not_flood_the_terminal(
    capsys: Capture, tmp_path: Path
) -> None:
    case = tmp_path / "case.yaml"
    case.write_text("".join(f"key{n}: {n}\n" for n in range(500)), encoding="utf-8")
    _, _, err = _run(capsys, f"diagnose --case {case}")
    assert err.count("\n") == cli.MOST_PROBLEMS + 1
    assert "and 480 more" in err


# rules


def test_the_packaged_rules_have_no_error(capsys: Capture) -> None:
    code, out, _ = _run(capsys, "rules check")
    assert code == ExitCode.FINE, out


def test_a_broken_rule_is_a_finding_with_its_place(capsys: Capture, tmp_path: Path) -> None:
    broken = tmp_path / "causes" / "shielding" / "gas-flow-low.yaml"
    broken.parent.mkdir(parents=True)
    broken.write_text("cause: gas-flow-low\nnam: x\n", encoding="utf-8")
    code, out, _ = _run(capsys, f"rules check --rules {tmp_path}")
    assert code == ExitCode.FINDINGS
    assert f"{broken}:2:1: error: unknown key" in out
    code, _, err = _run(capsys, f"diagnose --rules {tmp_path}")
    assert code == ExitCode.USAGE
    assert all(line.startswith("weldwhy: error: ") for line in err.splitlines())


def test_an_own_rule_changes_what_is_known(capsys: Capture, tmp_path: Path) -> None:
    original = rulebase.default_folder() / "materials.yaml"
    own = original.read_text(encoding="utf-8").replace("mild steel", "shop steel")
    (tmp_path / "materials.yaml").write_text(own, encoding="utf-8")
    code, out, _ = _run(capsys, f"rules explain mild-steel --rules {tmp_path}")
    assert code == ExitCode.FINE
    assert "shop steel" in out


def test_everything_the_rules_name_can_be_explained(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    rules = shipped_rules()
    monkeypatch.setattr(commands_rules, "read", lambda _: (rules, []))  # not once for each page
    for kind in KINDS:
        for name in list(getattr(rules, kind))[:1]:
            code, out, err = _run(capsys, f"rules explain {name}")
            assert (code, err) == (ExitCode.FINE, "")
            assert out.strip()
            assert all(line.isprintable() for line in out.splitlines())


def test_coverage_counts_every_process_and_symptom(capsys: Capture) -> None:
    code, out, _ = _run(capsys, "rules coverage")
    assert code == ExitCode.FINE
    for name in (*rulebase.load().processes, *rulebase.load().symptoms):
        assert name in out


def test_trying_a_case_shows_the_reasons(capsys: Capture, tmp_path: Path) -> None:
    case = tmp_path / "case.yaml"
    case.write_text(
        "process: gmaw\nsymptoms: [porosity]\nanswers: {gas-flow-reading: low}", encoding="utf-8"
    )
    code, out, _ = _run(capsys, f"rules try {case}")
    assert code == ExitCode.FINE
    assert "Why:" in out
    assert "Most likely:" in out


def test_every_schema_is_a_schema(capsys: Capture) -> None:
    from weldwhy.commands_rules import OUTPUTS
    from weldwhy.schema import FILES

    for kind in (*FILES, "case-file", *OUTPUTS):
        code, out, _ = _run(capsys, f"rules schema {kind}")
        assert code == ExitCode.FINE
        jsonschema.Draft202012Validator.check_schema(json.loads(out))


def test_a_simulation_tells_rates_calibration_and_what_is_hard_to_tell_apart(
    capsys: Capture,
) -> None:
    code, out, err = _run(capsys, "rules simulate slag-inclusion --cases 2 --told 1")
    assert (code, err) == (ExitCode.FINE, "")
    assert re.search(r"slag-inclusion: \d+ cases, \d+\.\d steps to the first remedy", out)
    assert re.search(r"at the first remedy: one fault first \S+ ?%?, among three", out)
    assert "after 5 steps put right or among three" in out
    assert "said and was:" in out
    assert _run(capsys, "rules simulate slag-inclusion --cases 2 --told 1")[1] == out


def test_a_simulation_of_all_symptoms_ends_with_what_was_never_found(
    capsys: Capture, tmp_path: Path
) -> None:
    """On the small base, whose whole simulation takes no time."""
    from weldwhy.commands_simulate import run

    rules, _ = rulebase.read([ROOT / "tests" / "rules" / "sound"])
    assert rules is not None
    run(rules, [*rules.symptoms, *rules.symptoms], 3)
    out = capsys.readouterr().out
    assert "all symptoms:" in out
    assert "causes never found: none" in out
    assert "checks that never help: none" in out


# chart


@pytest.mark.parametrize("form", options.CHART_FORMATS)
def test_a_symptom_of_every_group_can_be_printed_as_a_chart(capsys: Capture, form: str) -> None:
    for symptom in list(rulebase.load().symptoms.values())[::4]:
        line = f"chart {symptom.id} --process {symptom.processes[0]} --depth 1 --format {form}"
        code, out, err = _run(capsys, line)
        assert (code, err) == (ExitCode.FINE, "")
        assert "Step 1" in out
        told = " ".join(out.split())
        assert "call for help" in told or "STOP: " in told


# info and the surroundings


def test_info_says_where_everything_is(capsys: Capture, fresh_surroundings: Path) -> None:
    code, out, _ = _run(capsys, "info")
    assert code == ExitCode.FINE
    told = dict(line.split(": ", 1) for line in out.splitlines())
    assert told["weldwhy"] == __version__
    assert told["your cases"] == str(fresh_surroundings / "data" / "weldwhy")
    assert told["rules"] == str(rulebase.default_folder())
    assert int(told["causes"]) == len(rulebase.load().causes)


@pytest.mark.parametrize(
    ("environment", "folder"),
    [
        ({"WELDWHY_HOME": "/a", "XDG_DATA_HOME": "/b"}, "/a"),
        ({"XDG_DATA_HOME": "/b"}, "/b/weldwhy"),
        ({"XDG_DATA_HOME": "relative"}, "HOME/.local/share/weldwhy"),
        ({}, "HOME/.local/share/weldwhy"),
    ],
)
def test_the_data_folder(
    environment: dict[str, str], folder: str, fresh_surroundings: Path
) -> None:
    found = surroundings.data_folder(environment)
    assert str(found) == folder.replace("HOME", str(fresh_surroundings))


def test_own_rules_beside_the_cases_are_used_when_they_are_there(tmp_path: Path) -> None:
    environment = {"WELDWHY_HOME": str(tmp_path)}
    assert surroundings.own_rules(None, environment) is None
    (tmp_path / "rules").mkdir()
    assert surroundings.own_rules(None, environment) == tmp_path / "rules"
    with pytest.raises(UsageError):
        surroundings.own_rules(None, {"WELDWHY_RULES": str(tmp_path / "no")})


class _Stream:
    def __init__(self, terminal: bool) -> None:
        self.terminal = terminal

    def isatty(self) -> bool:
        return self.terminal


@pytest.mark.parametrize(
    ("stdin", "stdout", "stderr", "term", "shown"),
    [
        (True, True, True, "xterm", True),
        (False, True, True, "xterm", False),
        (True, False, True, "xterm", False),
        (True, True, False, "xterm", False),
        (True, True, None, "xterm", False),
        (True, True, True, "dumb", False),
        (True, True, True, "", False),
    ],
)
def test_screens_open_only_where_they_can_be_seen_and_answered(
    monkeypatch: pytest.MonkeyPatch,
    stdin: bool,
    stdout: bool,
    stderr: bool | None,
    term: str,
    shown: bool,
) -> None:
    for name, terminal in (("stdin", stdin), ("stdout", stdout), ("stderr", stderr)):
        stream = None if terminal is None else _Stream(terminal)
        monkeypatch.setattr(sys, name, stream)
    assert surroundings.can_show_screens({"TERM": term}) is shown


def test_without_a_terminal_the_bare_command_talks_in_lines(tmp_path: Path) -> None:
    done = _program(typed="q\n", environment={**os.environ, "WELDWHY_HOME": str(tmp_path)})
    assert done.returncode == 0
    assert "Which process are you welding with?" in done.stdout


@pytest.mark.parametrize("option", ["--material", "--process", "--gas", "--units"])
def test_two_dashes_are_no_value_of_an_option(capsys: Capture, option: str) -> None:
    code, out, err = _run(capsys, f"setup --material steel --thickness '3 mm' {option}=--")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err == f"weldwhy: error: argument {option}: a value is needed\n"


def test_an_error_says_how_to_mend_it_however_much_was_typed(capsys: Capture) -> None:
    code, _, err = _run(capsys, f"diagnose --answer {'x' * 100_000}")
    assert code == ExitCode.USAGE
    assert len(err) < 2100
    assert err.endswith("write it as CHECK=ANSWER\n")


def test_a_reader_that_has_seen_enough_is_no_error() -> None:
    command = f"{sys.executable} -m weldwhy rules explain porosity | true"
    done = subprocess.run(
        ["bash", "-o", "pipefail", "-c", command], capture_output=True, text=True, check=False
    )
    assert done.stderr == ""
    assert done.returncode == 0


def test_control_c_is_130_without_a_traceback() -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "weldwhy", "diagnose", "--case", "-"],
        stdin=subprocess.PIPE, stderr=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
        env={**os.environ, "PYTHONFAULTHANDLER": "1"},
    ) as program:  # fmt: skip
        assert program.stdin is not None
        assert program.stderr is not None
        _wait_until_reading(program.pid)
        program.send_signal(signal.SIGINT)
        assert program.wait(10) == ExitCode.INTERRUPTED
        assert program.stderr.read() == ""


def _wait_until_reading(process: int) -> None:
    """Wait until the program sleeps in a read of its standard input."""
    import time

    for _ in range(1000):
        state = Path(f"/proc/{process}/wchan").read_text(encoding="utf-8")
        if "pipe" in state:
            return
        time.sleep(0.01)


def test_closed_streams_are_no_crash() -> None:
    command = f"{sys.executable} -m weldwhy info >&- 2>&- <&-"
    done = subprocess.run(["bash", "-c", command], check=False)
    assert done.returncode == 0


@pytest.mark.parametrize(
    "place", ["exec('strike()')", "callback()", "type('Made', (), {'part': Part()})"]
)
def test_control_c_is_130_wherever_it_falls(tmp_path: Path, place: str) -> None:
    """Even where Python would lose it or make another exception of it."""
    (tmp_path / "sitecustomize.py").write_text(
        "import os, signal, weakref\n"
        "from weldwhy import cli\n"
        "def strike(*_): os.kill(os.getpid(), signal.SIGINT)\n"
        "class Part:\n"
        "    __set_name__ = strike\n"
        "def callback():\n"
        "    part = Part()\n"
        "    seen = weakref.ref(part, strike)\n"
        "    del part\n"
        "def broken(_):\n"
        "    print('said before', end='')\n"
        f"    {place}\n"
        "    return 0\n"
        "cli.COMMANDS = {'info': broken}\n"
    )
    path = os.pathsep.join([str(tmp_path), str(Path(cli.__file__).parents[1])])
    done = subprocess.run(
        [sys.executable, "-m", "weldwhy", "info"],
        capture_output=True,
        env={**os.environ, "PYTHONPATH": path, "PYTHONUNBUFFERED": ""},  # what was said is flushed
        check=False,
    )
    assert (done.returncode, done.stdout, done.stderr) == (130, b"said before", b"")


def test_an_interrupt_that_the_caller_ignores_stays_ignored() -> None:
    command = f"trap '' INT; {sys.executable} -c 'import signal; from weldwhy import __main__; "
    command += "__main__.os.kill(__main__.os.getpid(), signal.SIGINT); __main__.run()' "
    done = subprocess.run(["bash", "-c", command], capture_output=True, check=False)
    assert done.returncode != surroundings.ExitCode.INTERRUPTED
    assert done.returncode >= 0


def test_the_code_of_an_interrupt_is_one() -> None:
    assert surroundings.ExitCode.INTERRUPTED == __main__.INTERRUPTED


def test_garbage_is_looked_for_seldom_and_never_not_at_all(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A session of hours must not grow for ever, and a start need not look a hundred times."""
    found: list[tuple[bool, int]] = []
    before = gc.get_threshold()

    def main(_: list[str]) -> int:
        found.append((gc.isenabled(), gc.get_threshold()[0]))
        return 0

    monkeypatch.setattr(cli, "main", main)
    try:
        with pytest.raises(SystemExit):
            __main__.run()
    finally:
        gc.enable()
        gc.set_threshold(*before)
    ((enabled, threshold),) = found
    assert enabled
    assert 5_000 < threshold < 500_000


@pytest.mark.parametrize(
    "command",
    [
        ("diagnose", "--symptom", "porosity", "--json"),
        ("setup", "--material", "mild steel", "--thickness", "3 mm", "--json"),
        ("machine", "--json"),
        ("reckon", "load-volts", "line=smaw", "amps=150 A", "--json"),
        ("rules", "schema", "cause"),
        ("lookup", "porosity"),
    ],
)
def test_no_stdout_or_a_full_one_is_no_crash(command: tuple[str, ...]) -> None:
    line = shlex.join([sys.executable, "-m", "weldwhy", *command])
    closed = subprocess.run(f"{line} >&-", shell=True, capture_output=True, text=True, check=False)
    assert "Traceback" not in closed.stderr
    if not Path("/dev/full").exists():
        return
    full = subprocess.run(
        f"{line} >/dev/full", shell=True, capture_output=True, text=True, check=False
    )
    assert full.returncode == ExitCode.USAGE
    assert full.stderr.startswith("weldwhy: error: cannot write the output: ")
    assert full.stderr.count("\n") == 1
