"""Keeps the developer's own machine out of every test: home, locale, colours, seed."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

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
