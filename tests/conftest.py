"""Keeps the developer's own machine out of every test: home, locale, colours, seed."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

import pytest

from weldwhy import compiled, rulebase

UNWANTED = (
    "NO_COLOR", "FORCE_COLOR", "CLICOLOR", "COLORTERM", "COLUMNS", "LINES", "LC_ALL", "LC_CTYPE",
    "LANGUAGE", "WELDWHY_HOME", "WELDWHY_RULES", "XDG_CONFIG_HOME", "XDG_CACHE_HOME",
    "PYTHONIOENCODING", "PYTHONUTF8",
)  # fmt: skip


@pytest.fixture(autouse=True)
def fresh_surroundings(
    tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> Path:
    """An empty home, a plain locale and terminal, and one seed, for every test."""
    home = tmp_path_factory.mktemp("home")
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
def compiled_rules(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the shipped rules with their compiled form beside them, as a wheel has it."""
    folder = tmp_path_factory.mktemp("rules") / "rules"
    shutil.copytree(rulebase.default_folder(), folder)
    base, problems = rulebase.read([folder])
    assert base is not None, problems
    (folder / compiled.NAME).write_text(compiled.dump(base, str(folder)), encoding="ascii")
    return folder


@pytest.fixture
def quick_rules(compiled_rules: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Commands read the compiled rules, so that a test of many of them takes no minutes."""
    monkeypatch.setattr(rulebase, "_own_folder", lambda: str(compiled_rules))
