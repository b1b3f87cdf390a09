"""The person's own files: the open case, the finished ones, machine, preferences, reports.

The only module that writes files. Every file is written whole or not at all: a new file beside
the old one, flushed to the disk, then renamed over it. Killing the program at any instant leaves
either the last entry saved or the one before it. The folder is given; where it lies is decided
by whoever starts the program, and so is the time.
"""

from __future__ import annotations

import json
import os
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from weldwhy.case import CaseError, from_data, to_data
from weldwhy.setupcase import SetupCase, from_mapping, to_mapping

if TYPE_CHECKING:
    from weldwhy.case import Case

VERSION = 1
"""Number of the file layout; a file with another number is set aside, never guessed at."""

LARGEST = 4_000_000
"""Bytes of the largest file that is read: a longer one is not ours."""


class StoreError(OSError):
    """A file could not be written or read; the text is one plain line."""


@dataclass(frozen=True, slots=True)
class Preferences:
    """What a person likes. `units` and `patience` empty: not chosen yet.

    `habit` is the unit system they were last seen to write in, `look` is dark, light or own (the
    terminal's colours), `keys` gives commands, by id, other keys.
    """

    units: str = ""
    patience: str = ""
    ascii: bool = False
    mouse: bool = True
    habit: str = ""
    look: str = ""
    keys: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Finished:
    """A closed case and when it was closed, as text in ISO 8601."""

    when: str
    case: Case


class Store:
    """One folder of a person's files; made when first written to.

    The file of their machine may lie elsewhere: `machine_file`.
    `notices` collects one plain line for each thing the person should know, such as a broken
    file moved aside; whoever shows them empties the list.
    """

    def __init__(self, folder: Path, machine_file: Path | None = None) -> None:
        self.folder = folder
        self.machine_file = machine_file or folder / "machine.yaml"
        self.notices: list[str] = []

    def save(self, case: Case) -> None:
        """Keep `case` as the open one. When this returns, it is on the disk."""
        self._write("case.json", {"version": VERSION, "entries": to_data(case)})

    def resume(self) -> Case | None:
        """The case left open, or None. A broken file is moved aside and noticed."""
        self._sweep()
        path = self.folder / "case.json"
        data = self._read(path)
        if data is not None and data.get("when"):
            self._file_away(str(data["when"]))  # killed half-way through `finish`
            return None
        case = self._case_in(path, data)
        return case if case is not None and case.entries else None

    def finish(self, case: Case, when: str) -> None:
        """Move `case` to the finished ones; `when` is the time in ISO 8601."""
        self._write("case.json", {"version": VERSION, "when": when, "entries": to_data(case)})
        self._file_away(when)

    def finished(self) -> list[Finished]:
        """Finished cases, oldest first. Broken ones are moved aside and noticed."""
        found = []
        for path in sorted((self.folder / "finished").glob("*.json"), key=_by_time):
            data = self._read(path)
            case = self._case_in(path, data)
            if case is not None and data is not None:
                found.append(Finished(str(data.get("when", "")), case))
        return found

    @property
    def setup(self) -> SetupCase:
        """What was being set up, or an empty set-up. A broken file is moved aside and noticed."""
        path = self.folder / "setup.json"
        data = self._read(path)
        try:
            return SetupCase() if data is None else from_mapping(data)
        except CaseError as fault:
            self._set_aside(path, f"it means nothing here ({fault})")
            return SetupCase()

    @setup.setter
    def setup(self, setup: SetupCase) -> None:
        self._write("setup.json", {"version": VERSION, **to_mapping(setup)})

    @property
    def preferences(self) -> Preferences:
        """What the person likes; values that mean nothing here are left at their defaults."""
        data = self._read(self.folder / "preferences.json") or {}
        wanted = Preferences()
        for system in ("units", "habit"):
            if data.get(system) in ("in", "mm"):
                wanted = replace(wanted, **{system: data[system]})
        if data.get("patience") in ("thorough", "normal", "brisk"):
            wanted = replace(wanted, patience=data["patience"])
        if data.get("look") in ("dark", "light", "own"):
            wanted = replace(wanted, look=data["look"])
        if isinstance(data.get("keys"), dict):
            keys = {name: key for name, key in data["keys"].items() if isinstance(key, str)}
            wanted = replace(wanted, keys=keys)
        for switch in ("ascii", "mouse"):
            if isinstance(data.get(switch), bool):
                wanted = replace(wanted, **{switch: data[switch]})
        return wanted

    @preferences.setter
    def preferences(self, wanted: Preferences) -> None:
        self._write("preferences.json", {"version": VERSION, **asdict(wanted)})

    def save_report(self, lines: Sequence[str], when: str, ending: str = ".txt") -> Path:
        """Write a report and return where it is; an older one is never replaced.

        `ending` is that of the file's name.
        """
        path = _free(self.folder / "reports", when, ending)
        self._write_text(path, "\n".join(lines) + "\n")
        return path

    @property
    def has_machine(self) -> bool:
        """Whether there is a file of the person's machine, readable or not."""
        return self.machine_file.exists()

    def machine_text(self) -> bytes | None:
        """What stands in the file of the person's machine; None if there is none.

        StoreError if there is one that cannot be read: nobody knows what it holds.
        """
        try:
            return _bytes_of(self.machine_file)
        except FileNotFoundError:
            return None
        except OSError as fault:
            raise StoreError(
                f"cannot read {self.machine_file}: {fault.strerror or fault}"
            ) from None

    def save_machine(self, text: str, aside: str = "") -> None:
        """Write the file of the person's machine.

        With `aside`, the reason, the file that is there is kept under another name, and noticed.
        """
        self._write_text(self.machine_file, text, aside)

    def _file_away(self, when: str) -> None:
        """Rename the open case, already stamped with `when`, into the folder of finished ones."""
        folder = self.folder / "finished"
        try:
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            (self.folder / "case.json").rename(_free(folder, when, ".json"))
            _sync_folder(folder)
            _sync_folder(self.folder)
        except OSError as fault:
            raise StoreError(f"cannot write {folder}: {fault.strerror or fault}") from None

    def _case_in(self, path: Path, data: Mapping[str, Any] | None) -> Case | None:
        if data is None:
            return None
        try:
            return from_data(data["entries"])
        except (CaseError, KeyError) as fault:
            self._set_aside(path, f"its entries mean nothing here ({fault})")
            return None

    def _read(self, path: Path) -> dict[str, Any] | None:
        """The mapping in a file of ours, or None when there is none or it was set aside."""
        try:
            raw = _bytes_of(path)
        except FileNotFoundError:
            return None
        except OSError as fault:
            # the next save would be renamed over it, and nobody knows what it holds
            self._set_aside(path, f"it cannot be read ({fault.strerror or fault})")
            return None
        try:
            data = json.loads(raw)
        except (ValueError, RecursionError):
            data = None
        if isinstance(data, dict) and data.get("version") == VERSION:
            return data
        newer = isinstance(data, dict) and isinstance(data.get("version"), int)
        why = "it is from another version" if newer else "it is broken"
        self._set_aside(path, why)
        return None

    def _set_aside(self, path: Path, why: str, ending: str = ".broken") -> bool:
        """Rename a file that is to be used no more, so that nothing in it is lost.

        Whether it could be renamed; either way the person is told.
        """
        aside, turn = path.with_name(path.name + ending), 1
        while aside.exists():
            turn += 1
            aside = path.with_name(f"{path.name}.{turn}{ending}")
        try:
            path.rename(aside)
        except OSError:
            self.notices.append(f"{path} was left alone: {why}")
            return False
        self.notices.append(f"{path} was moved to {aside.name}: {why}")
        return True

    def _write(self, name: str, data: Mapping[str, Any]) -> None:
        self._write_text(self.folder / name, json.dumps(data, indent=1) + "\n")

    def _write_text(self, path: Path, text: str, aside: str = "") -> None:
        # The process number keeps two programs from writing into one new file.
        new = path.with_name(f"{path.name}.{os.getpid()}.new")
        try:
            path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            with new.open("w", encoding="utf-8") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            if aside and not self._set_aside(path, aside, ".kept"):
                new.unlink()
                raise OSError("the file there cannot be moved aside")
            new.replace(path)
            _sync_folder(path.parent)
        except OSError as fault:
            raise StoreError(f"cannot write {path}: {fault.strerror or fault}") from None

    def _sweep(self) -> None:
        """Remove new files that a killed program left behind.

        Only those older than the case file go: a later write has succeeded since, so nobody is
        still writing them, and they hold nothing that the case file does not.
        """
        try:
            kept = (self.folder / "case.json").stat().st_mtime_ns
            for left in self.folder.glob("*.new"):
                if left.stat().st_mtime_ns < kept:
                    left.unlink()
        except OSError:
            return


def _bytes_of(path: Path) -> bytes:
    with path.open("rb") as file:
        return file.read(LARGEST)


def _free(folder: Path, when: str, ending: str) -> Path:
    """A name in `folder` made from the time that no file has yet."""
    stem = "".join(letter for letter in when if letter.isascii() and letter.isalnum()) or "undated"
    path, turn = folder / f"{stem}{ending}", 1
    while path.exists():
        turn += 1
        path = folder / f"{stem}-{turn}{ending}"
    return path


def _by_time(path: Path) -> tuple[str, int]:
    stem, _, turn = path.stem.partition("-")
    return stem, int(turn) if turn.isdigit() else 1


def _sync_folder(folder: Path) -> None:
    """Make the rename itself last. Where folders cannot be opened, the rename is all there is."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        os.fsync(handle)
    except OSError:
        pass
    finally:
        os.close(handle)
