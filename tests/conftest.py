"""Keeps the developer's own machine out of every test: home, locale, colours, seed."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import count
from pathlib import Path

import pytest
from hypothesis import settings
from tests.installed import installed

from weldwhy import rulebase

# How long an example takes says more about what else the machine does than about the program.
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")

UNWANTED = (
    "NO_COLOR", "FORCE_COLOR", "CLICOLOR", "COLORTERM", "COLUMNS", "LINES", "LC_ALL", "LC_CTYPE",
    "LANGUAGE", "WELDWHY_HOME", "WELDWHY_RULES", "XDG_CONFIG_HOME", "XDG_CACHE_HOME",
    "PYTHONIOENCODING", "PYTHONUTF8",
)  # fmt: skip


@pytest.fixture(scope="session")
def homes(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Folders not there yet. `mktemp` would go through those of all tests before, for each."""
    folder = tmp_path_factory.mktemp("homes")
    return (folder / str(number) for number in count())


@pytest.fixture(autouse=True)
def fresh_surroundings(homes: Iterator[Path], monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty home, a plain locale and terminal, and one seed, for every test."""
    home = next(homes)
    home.mkdir()
    for name in UNWANTED:
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.setenv("XDG_DATA_HOME", str(home / "data"))
    monkeypatch.setenv("LANG", "C.UTF-8")
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv("TZ", "UTC")
    random.seed(20)
    return home


@pytest.fixture(scope="session")
def package(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder for `PYTHONPATH` with the package as a wheel installs it; nobody writes into it."""
    return installed(tmp_path_factory.mktemp("installed") / "copy")


@pytest.fixture(scope="session")
def compiled_rules(package: Path) -> Path:
    """A copy of the shipped rules with their compiled form beside them, as a wheel has it."""
    return package / "weldwhy" / "_rules"


@pytest.fixture
def quick_rules(package: Path, compiled_rules: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Commands here, and programs begun here, read the compiled rules, which takes no time."""
    monkeypatch.setattr(rulebase, "_own_folder", lambda: str(compiled_rules))
    monkeypatch.setenv("PYTHONPATH", str(package))
