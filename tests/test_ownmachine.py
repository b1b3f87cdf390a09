"""Which machine is in use, and that nothing a person wrote is ever written over."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest
from tests.machines import RULES, WHOLE, made

from weldwhy.bench import Bench
from weldwhy.interview import Interview
from weldwhy.machine import default
from weldwhy.machinefile import changed, text
from weldwhy.model import Machine
from weldwhy.ownmachine import OWN, OwnMachine
from weldwhy.store import Store, StoreError

BROKEN = "name: x\nprocesses: [gmaw]\nsuply: 230 V\ngun: far\n"


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(tmp_path / "cases")


@pytest.fixture
def bench(store: Store) -> Bench:
    return Bench(RULES, store, Interview, lambda: "2026-03-01T08:30:00+00:00")


def _write(store: Store, text: str) -> None:
    store.folder.mkdir(parents=True, exist_ok=True)
    store.machine_file.write_text(text, encoding="utf-8")


def _kept(store: Store) -> list[str]:
    return [path.read_text(encoding="utf-8") for path in sorted(store.folder.glob("*.kept"))]


def test_until_there_is_a_file_the_first_machine_of_the_rules_is_taken(store: Store) -> None:
    found = OwnMachine(RULES, store).in_use
    assert found.machine is RULES.machines["small"]
    assert (found.own, found.fault) == (False, "")
    assert not store.folder.exists()


def test_of_rules_without_machines_nothing_is_claimed() -> None:
    found = default(replace(RULES, machines={}))
    assert (found.processes, found.limits, found.dials) == (("gmaw", "smaw"), {}, {})


def test_what_is_kept_is_in_use_at_the_next_start(bench: Bench, store: Store) -> None:
    bench.change_machine(changed(RULES, bench.machine, "supply", "120 V"))
    assert bench.in_use.own
    again = OwnMachine(RULES, store).in_use
    assert again.machine == bench.machine
    assert again.machine.id == OWN
    assert store.notices == []


def test_a_change_made_by_hand_while_the_program_runs_is_seen(bench: Bench, store: Store) -> None:
    _write(store, WHOLE)
    assert bench.machine == made(WHOLE)
    _write(store, WHOLE.replace("230 V", "400 V"))
    assert bench.machine.supply is not None
    assert bench.machine.supply.value == 400


def test_once_the_file_is_taken_away_the_machine_is_no_longer_ones_own(store: Store) -> None:
    _write(store, WHOLE)
    machine = OwnMachine(RULES, store)
    before = machine.in_use
    store.machine_file.unlink()
    after = machine.in_use
    assert (before.own, after.own) == (True, False)
    assert after.machine == default(RULES)


def test_the_guide_thinks_again_with_another_machine(bench: Bench) -> None:
    first = bench.interview
    bench.change_machine(made(WHOLE))
    assert bench.interview is not first
    assert bench.interview.machine == made(WHOLE)


# broken files


def test_a_broken_file_is_told_once_in_one_line_and_the_default_is_taken(store: Store) -> None:
    _write(store, BROKEN)
    bench = Bench(RULES, store, Interview, lambda: "")
    assert bench.machine is RULES.machines["small"]
    assert bench.take_notices() == [
        f'{store.machine_file}, line 3: unknown key "suply" in machine; did you mean "supply"? '
        '(1 more like it). Until it is mended, "small machine" is taken.'
    ]
    assert bench.machine is RULES.machines["small"]
    assert bench.take_notices() == []
    assert store.machine_file.read_text(encoding="utf-8") == BROKEN


def test_a_file_mended_by_hand_is_taken_at_once(bench: Bench, store: Store) -> None:
    _write(store, BROKEN)
    assert bench.in_use.fault
    _write(store, WHOLE)
    assert bench.machine == made(WHOLE)
    assert not bench.in_use.fault


def test_a_broken_file_is_kept_under_another_name_when_a_machine_is_told(
    bench: Bench, store: Store
) -> None:
    _write(store, BROKEN)
    bench.change_machine(changed(RULES, bench.machine, "name", "new"))
    assert _kept(store) == [BROKEN]
    assert bench.machine.name == "new"
    assert any("machine.yaml.kept: it was written by hand" in n for n in bench.take_notices())


def test_remarks_written_by_hand_are_kept_under_another_name(bench: Bench, store: Store) -> None:
    by_hand = f"{WHOLE}# the gun is the old one\n"
    _write(store, by_hand)
    bench.change_machine(changed(RULES, bench.machine, "supply", "120 V"))
    assert _kept(store) == [by_hand]
    bench.change_machine(changed(RULES, bench.machine, "supply", "230 V"))
    assert _kept(store) == [by_hand]  # what the program wrote is replaced


def test_a_machine_begun_anew_keeps_the_file_of_the_one_before(bench: Bench, store: Store) -> None:
    bench.change_machine(made(WHOLE))
    bench.change_machine(Machine(OWN, "other", ("smaw",)), anew=True)
    assert _kept(store) == [text(made(WHOLE), RULES)]
    assert bench.machine.name == "other"


def test_a_file_that_may_not_be_read_is_not_written_over(
    bench: Bench, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    _write(store, WHOLE)

    def denied(_: Path) -> bytes:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("weldwhy.store._bytes_of", denied)
    assert bench.in_use.fault.startswith(f"cannot read {store.machine_file}: Permission denied.")
    bench.change_machine(Machine(OWN, "other", ("smaw",)))
    assert bench.machine.name == "other"
    assert _kept(store) == [WHOLE]


def test_a_folder_in_the_place_of_the_file_is_one_plain_line_and_is_left_alone(
    bench: Bench, store: Store
) -> None:
    (store.machine_file / "inside").mkdir(parents=True)
    assert bench.in_use.fault.startswith(f"cannot read {store.machine_file}: ")
    bench.change_machine(made(WHOLE))
    assert bench.machine == made(WHOLE)
    assert (store.folder / "machine.yaml.kept" / "inside").is_dir()


def test_a_machine_that_cannot_be_kept_is_in_use_until_one_leaves(
    bench: Bench, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    bench.change_machine(made(WHOLE))
    assert bench.machine == made(WHOLE)
    (notice,) = bench.take_notices()
    assert "No space left" in notice
    assert "not kept" in notice
    monkeypatch.undo()
    assert OwnMachine(RULES, store).in_use.machine is RULES.machines["small"]


def test_a_file_that_cannot_be_moved_aside_is_not_written_over(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    _write(store, BROKEN)

    def locked(*_: object) -> None:
        raise OSError(13, "Permission denied")

    monkeypatch.setattr(Path, "rename", locked)
    own = OwnMachine(RULES, store)
    with pytest.raises(StoreError, match="cannot be moved aside"):
        own.keep(made(WHOLE))
    assert [path.name for path in store.folder.iterdir()] == ["machine.yaml"]
    assert store.machine_file.read_text(encoding="utf-8") == BROKEN


def test_a_full_disk_leaves_a_file_written_by_hand_where_it_was(
    bench: Bench, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    _write(store, BROKEN)

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    bench.change_machine(made(WHOLE))
    assert store.machine_file.read_text(encoding="utf-8") == BROKEN
    assert _kept(store) == []
