"""The program on a folder of its own, with an invented rule base and a stopped clock."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from textual import app as framework
from textual import pilot

from weldwhy.case import Entry
from weldwhy.model import RuleBase
from weldwhy.store import Store
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.terminal import Terminal

from . import fake
from .settled import settled

NOW = "2026-03-01T08:30:00+00:00"

Begin = Callable[..., WeldwhyApp]


@pytest.fixture(autouse=True)
def no_waiting(monkeypatch: pytest.MonkeyPatch) -> None:
    """After a key the pilot goes on as soon as there is nothing left to do."""
    monkeypatch.setattr(framework, "wait_for_idle", settled)
    monkeypatch.setattr(pilot, "wait_for_idle", settled)


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(tmp_path / "cases")


@pytest.fixture
def begin(store: Store) -> Begin:
    """Makes the program, with entries already told in the case that is open."""

    def made(
        *told: Entry, terminal: Terminal | None = None, rules: RuleBase | None = None
    ) -> WeldwhyApp:
        app = WeldwhyApp(rules or fake.rules(), store, lambda: NOW, terminal, fake.FakeInterview)
        if told:
            app.bench.record(*told)
        return app

    return made
