"""The store keeps every entry, whole or not at all, whatever happens to the program or the disk."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from weldwhy.case import Answered, Case, Measured, Reported, Situated, Tried
from weldwhy.setupcase import SetupCase
from weldwhy.store import Preferences, Store, StoreError

CASE = Case(
    (Reported("porosity"), Situated("process", "gmaw"), Answered("gas-flow-reading", "low"))
)
WHEN = "2026-03-04T10:20:30+00:00"


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(tmp_path / "new" / "cases")


def test_what_was_saved_is_resumed(store: Store) -> None:
    store.save(CASE)
    assert Store(store.folder).resume() == CASE


def test_a_later_save_replaces_an_earlier_one_and_leaves_no_other_file(store: Store) -> None:
    store.save(CASE)
    store.save(CASE.with_(Measured("volts", "18 V")))
    resumed = store.resume()
    assert resumed is not None
    assert resumed.measured == {"volts": "18 V"}
    assert [path.name for path in store.folder.iterdir()] == ["case.json"]


def test_nothing_is_there_to_resume_at_first_and_no_folder_is_made_by_looking(store: Store) -> None:
    assert store.resume() is None
    assert store.finished() == []
    assert store.preferences == Preferences()
    assert not store.folder.exists()


def test_an_empty_case_is_not_worth_resuming(store: Store) -> None:
    store.save(Case())
    assert store.resume() is None
    assert store.notices == []


def test_a_finished_case_moves_to_the_finished_ones(store: Store) -> None:
    done = CASE.with_(Tried("gas-flow-low", "raise-gas-flow", "sound"))
    store.save(done)
    store.finish(done, WHEN)
    assert store.resume() is None
    assert [(each.when, each.case) for each in store.finished()] == [(WHEN, done)]


def test_two_cases_finished_in_the_same_second_are_both_kept_in_order(store: Store) -> None:
    cases = [CASE.with_(Measured("volts", f"{volts} V")) for volts in range(14, 26)]
    for case in cases:
        store.finish(case, WHEN)
    assert [each.case for each in store.finished()] == cases


def test_a_program_killed_half_way_through_finishing_finishes_at_the_next_start(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Store, "_file_away", lambda *_: None)
    store.finish(CASE, WHEN)
    monkeypatch.undo()
    assert store.resume() is None
    assert [each.case for each in store.finished()] == [CASE]
    assert not (store.folder / "case.json").exists()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[]",
        "null",
        '{"version": 1}',
        '{"version": 1, "entries": 3}',
        '{"version": 1, "entries": [{"entry": "reported"}]}',
        '{"version": 1, "entries": [{"entry": ["resembled"], "symptom": "porosity"}]}',
        '{"version": 1, "entries": [{"entry": "resembled", "symptom": {}}]}',
        '{"version": 1, "entries": [{"entry": "suspected", "cause": "x", "why": "y"}]}',
        '{"version": 1, "entries": [{"entry": "answered", "check": 1, "answer": "x"}]}',
        '{"version": 99, "entries": []}',
        "\x00\xff garbage",
        "[" * 100_000,
    ],
)
def test_a_broken_case_file_is_moved_aside_whole_and_said_in_one_line(
    store: Store, text: str
) -> None:
    store.folder.mkdir(parents=True)
    (store.folder / "case.json").write_text(text, encoding="utf-8")
    assert store.resume() is None
    (notice,) = store.notices
    assert "case.json" in notice
    assert "case.json.broken" in notice
    assert "\n" not in notice
    assert (store.folder / "case.json.broken").read_text(encoding="utf-8") == text
    store.save(CASE)
    assert store.resume() == CASE


@pytest.mark.parametrize("name", ["case.json", "setup.json", "preferences.json"])
def test_what_cannot_be_read_is_moved_aside_and_not_written_over(store: Store, name: str) -> None:
    (store.folder / name).mkdir(parents=True)  # as good as a file that may not be read
    (store.folder / name / "held").write_text("much", encoding="utf-8")
    assert store.resume() is None
    assert store.setup == SetupCase()
    assert store.preferences == Preferences()
    (notice,) = store.notices
    assert notice.startswith(f"{store.folder / name} was moved to {name}.broken: it cannot be read")
    store.save(CASE)
    store.setup = SetupCase(CASE)
    store.preferences = Preferences(units="mm")
    assert (store.resume(), store.setup.work) == (CASE, CASE)
    assert (store.folder / f"{name}.broken" / "held").read_text(encoding="utf-8") == "much"


def test_a_second_broken_file_does_not_overwrite_the_first(store: Store) -> None:
    store.folder.mkdir(parents=True)
    for text in ("first", "second"):
        (store.folder / "case.json").write_text(text, encoding="utf-8")
        store.resume()
    kept = {path.read_text(encoding="utf-8") for path in store.folder.glob("*.broken")}
    assert kept == {"first", "second"}


def test_a_broken_finished_case_does_not_hide_the_others(store: Store) -> None:
    store.finish(CASE, WHEN)
    (store.folder / "finished" / "20200101T000000.json").write_text("{", encoding="utf-8")
    assert [each.case for each in store.finished()] == [CASE]
    assert len(store.notices) == 1


def test_preferences_come_back_and_foreign_values_in_them_are_ignored(store: Store) -> None:
    wanted = Preferences(units="mm", patience="brisk", ascii=True, mouse=False)
    store.preferences = wanted
    assert Store(store.folder).preferences == wanted
    foreign = {"version": 1, "units": "furlong", "patience": 7, "ascii": "yes", "mouse": None}
    (store.folder / "preferences.json").write_text(json.dumps(foreign), encoding="utf-8")
    assert store.preferences == Preferences()


@pytest.mark.parametrize("look", ["dark", "light", "own", ""])
def test_the_look_and_the_keys_of_ones_own_come_back(store: Store, look: str) -> None:
    store.preferences = Preferences(look=look, keys={"undo": "x", "skip": "z"})
    again = Store(store.folder).preferences
    assert (again.look, again.keys) == (look, {"undo": "x", "skip": "z"})


@pytest.mark.parametrize(
    "foreign", [{"look": "pink", "keys": ["u"]}, {"look": 7, "keys": {"u": 1}}]
)
def test_a_look_or_keys_that_mean_nothing_are_left_at_first(
    store: Store, foreign: dict[str, object]
) -> None:
    store.preferences = Preferences()
    path = store.folder / "preferences.json"
    path.write_text(json.dumps({"version": 1, **foreign}), encoding="utf-8")
    assert store.preferences == Preferences()


def test_a_machine_file_that_lies_elsewhere_is_seen_there_only(tmp_path: Path) -> None:
    elsewhere = tmp_path / "shared" / "machine.yaml"
    store = Store(tmp_path / "cases", elsewhere)
    store.folder.mkdir()
    (store.folder / "machine.yaml").write_text("not this one")
    assert not store.has_machine
    elsewhere.parent.mkdir()
    elsewhere.write_text("")
    assert store.has_machine


def test_a_report_is_kept_beside_earlier_ones_of_the_same_second(store: Store) -> None:
    first = store.save_report(["one", "two"], WHEN)
    second = store.save_report(["three"], WHEN)
    assert first != second
    assert first.read_text(encoding="utf-8") == "one\ntwo\n"
    assert second.read_text(encoding="utf-8") == "three\n"
    assert store.save_report(["<p>"], WHEN, ".html").name == first.with_suffix(".html").name


def test_the_file_of_a_machine_comes_back_and_lies_where_it_was_wanted(tmp_path: Path) -> None:
    elsewhere = Store(tmp_path / "cases", tmp_path / "shop" / "mig.yaml")
    assert elsewhere.machine_text() is None
    elsewhere.save_machine("name: x\n")
    assert elsewhere.machine_text() == b"name: x\n"
    assert (tmp_path / "shop" / "mig.yaml").read_bytes() == b"name: x\n"
    assert Store(tmp_path / "cases").machine_file == tmp_path / "cases" / "machine.yaml"


def test_the_file_of_a_machine_is_replaced_whole_and_with_a_reason_the_old_one_is_kept(
    store: Store,
) -> None:
    for text, aside in (("one", ""), ("two", ""), ("three", "so"), ("four", "so")):
        store.save_machine(text, aside)
    kept = {path.name: path.read_text(encoding="utf-8") for path in store.folder.iterdir()}
    assert kept == {
        "machine.yaml": "four",
        "machine.yaml.kept": "two",
        "machine.yaml.2.kept": "three",
    }
    assert len(store.notices) == 2


def test_a_full_disk_leaves_the_file_of_a_machine_as_it_was(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    store.save_machine("one")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(StoreError, match="No space left"):
        store.save_machine("two")
    assert store.machine_text() == b"one"


def test_a_folder_that_cannot_be_made_is_one_plain_line(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    store = Store(tmp_path / "file" / "cases")
    with pytest.raises(StoreError) as caught:
        store.save(CASE)
    assert str(caught.value).startswith("cannot write ")
    assert "\n" not in str(caught.value)


def test_a_full_disk_leaves_the_last_saved_case(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    store.save(CASE)

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(StoreError, match="No space left"):
        store.save(CASE.with_(Measured("volts", "18 V")))
    monkeypatch.undo()
    assert store.resume() == CASE


def test_files_left_by_a_killed_program_are_swept_once_a_later_save_stands(store: Store) -> None:
    store.folder.mkdir(parents=True)
    left = store.folder / "case.json.1.new"
    left.write_text("half", encoding="utf-8")
    os.utime(left, (1, 1))
    store.save(CASE)
    store.resume()
    assert not left.exists()


WRITER = """
import sys
from pathlib import Path
from weldwhy.case import Case, Measured
from weldwhy.store import Store
store = Store(Path(sys.argv[1]))
case = store.resume() or Case()
for number in range(10**6):
    case = Case((*case.entries[-40:], Measured("volts", f"{len(case.entries)}.{number} V")))
    store.save(case)
    print(number, flush=True)
"""


def test_kill_at_any_instant_loses_no_acknowledged_entry(tmp_path: Path) -> None:
    """Twenty programs are killed with SIGKILL while they save; what each had said is kept."""
    for turn in range(20):
        folder = tmp_path / str(turn)
        said = _killed_while_saving(folder, seconds=0.003 * turn)
        store = Store(folder)
        case = store.resume()
        assert case is not None
        assert store.notices == []
        kept = int(case.measured["volts"].removesuffix(" V").split(".")[1])
        assert kept >= said


def _killed_while_saving(folder: Path, seconds: float) -> int:
    """Run the writer, kill it after a while, and return the last save that it acknowledged."""
    command = [sys.executable, "-c", WRITER, str(folder)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as writer:
        assert writer.stdout is not None
        writer.stdout.readline()
        time.sleep(seconds)
        writer.send_signal(signal.SIGKILL)
        said = [line for line in writer.stdout.read().splitlines(keepends=True) if "\n" in line]
    return int(said[-1]) if said else 0
