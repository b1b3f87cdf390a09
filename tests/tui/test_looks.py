"""The main screens as they look, kept as grids; a change of look is read before it is kept."""

from __future__ import annotations

import pytest

from weldwhy.case import Answered, Case, Entry, Measured, Reported, Situated, Tried
from weldwhy.setupcase import SetupCase
from weldwhy.tui.terminal import Terminal

from . import fakesetup
from .conftest import Begin
from .grid import same, text

SMALL, LARGE = (80, 24), (120, 40)
OPEN: tuple[Entry, ...] = (
    Reported("holes"), Situated("process", "mig"), Situated("material", "steel"),
    Situated("thickness", "1/8 in"), Answered("air", "still"),
)  # fmt: skip
REMEDY = (*OPEN, Measured("gas_flow", "12 cfh"), Answered("flow", "low"),
          Answered("nozzle", "clean"))  # fmt: skip
SOUND = (*REMEDY, Tried("flow-low", "set-flow", "sound"))
DARK, LIGHT = Terminal(), Terminal(dark=False)
NONE = Terminal(colours="none", ascii=True)

LOOKS = [
    ("start-80x24", (), (), SMALL, DARK),
    ("facts-80x24", OPEN[:2], ("f", "6"), SMALL, DARK),
    ("step-80x24", OPEN, (), SMALL, DARK),
    ("step-60x20", OPEN, (), (60, 20), DARK),
    ("step-120x40", OPEN, (), LARGE, DARK),
    ("step-light-80x24", OPEN, (), SMALL, LIGHT),
    ("step-no-colour-80x24", OPEN, (), SMALL, NONE),
    ("step-no-colour-120x40", OPEN, (), LARGE, NONE),
    ("remedy-80x24", REMEDY, (), SMALL, DARK),
    ("causes-80x24", OPEN, ("c",), SMALL, DARK),
    ("cause-80x24", REMEDY, ("c", "1"), SMALL, DARK),
    ("cause-light-120x40", REMEDY, ("c", "1"), LARGE, LIGHT),
    ("stop-80x24", (*OPEN, Situated("job", "stairs")), (), SMALL, DARK),
    ("end-80x24", SOUND, (), SMALL, DARK),
    ("help-80x24", OPEN, ("f1",), SMALL, DARK),
    ("palette-80x24", OPEN, ("f2", "s"), SMALL, DARK),
    ("gallery-80x24", OPEN[1:2], ("g",), SMALL, DARK),
    ("picture-no-colour-80x24", OPEN[1:2], ("g", "2"), SMALL, NONE),
]


@pytest.mark.parametrize(
    ("name", "told", "keys", "size", "terminal"), LOOKS, ids=[look[0] for look in LOOKS]
)
async def test_a_screen_looks_as_it_was_kept(
    begin: Begin,
    name: str,
    told: tuple[Entry, ...],
    keys: tuple[str, ...],
    size: tuple[int, int],
    terminal: Terminal,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    if terminal.colours == "none":
        monkeypatch.setenv("NO_COLOR", "1")
    app = begin(*told, terminal=terminal)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*keys)
        await pilot.pause()
        same(app, name)


PLATE = SetupCase(Case((Situated("material", "steel"), Situated("thickness", "1/8 in"))))
MIG = PLATE.opened("mig").ticked("Brush the joint bright.")
SETUP_LOOKS = [
    ("setup-80x24", PLATE, ("2",), SMALL, DARK),
    ("setup-suits-80x24", PLATE, ("0",), SMALL, DARK),
    ("setup-stop-80x24", PLATE, ("7", "2"), SMALL, DARK),
    ("plan-hook-up-80x24", MIG, (), SMALL, DARK),
    ("plan-hook-up-no-colour-80x24", MIG, (), SMALL, NONE),
    ("plan-values-80x24", MIG, ("2",), SMALL, DARK),
    ("plan-values-120x40", MIG, ("2",), LARGE, DARK),
    ("plan-values-light-120x40", MIG, ("2",), LARGE, LIGHT),
    ("plan-values-no-colour-120x40", MIG, ("2",), LARGE, NONE),
    ("plan-checklist-80x24", MIG, ("3",), SMALL, DARK),
    ("plan-bead-80x24", MIG, ("4",), SMALL, DARK),
]


@pytest.mark.parametrize(
    ("name", "setup", "keys", "size", "terminal"),
    SETUP_LOOKS,
    ids=[look[0] for look in SETUP_LOOKS],
)
async def test_a_screen_of_the_set_up_looks_as_it_was_kept(
    begin: Begin,
    name: str,
    setup: SetupCase,
    keys: tuple[str, ...],
    size: tuple[int, int],
    terminal: Terminal,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    if terminal.colours == "none":
        monkeypatch.setenv("NO_COLOR", "1")
    app = begin(rules=fakesetup.rules(), terminal=terminal)
    app.bench.setup = setup
    async with app.run_test(size=size) as pilot:
        await pilot.press("p", *keys)
        await pilot.pause()
        same(app, name)


@pytest.mark.parametrize("terminal", [DARK, LIGHT, NONE])
async def test_what_matters_is_told_without_colour(begin: Begin, terminal: Terminal) -> None:
    """Caution, share, likelihood and the way to answer are words or signs on every look."""
    app = begin(*OPEN, terminal=terminal)
    async with app.run_test():
        shown = text(app)
        for word in ("CAUTION", "me 56 %", "likely", "1  ", "0  ", "s  "):
            assert word in shown
