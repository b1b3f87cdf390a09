"""Every size of window: no crash, no hang, and a plea where it is too small."""

from __future__ import annotations

import random

import pytest

from weldwhy.case import Reported, Situated
from weldwhy.tui.screens.case import CaseScreen

from .conftest import Begin
from .grid import text

OPEN = (Reported("holes"), Situated("process", "mig"))


@pytest.mark.parametrize("keys", [(), ("c",), ("c", "1"), ("f", "2"), ("question_mark",), ("f2",)])
async def test_any_order_of_sizes_is_survived(begin: Begin, keys: tuple[str, ...]) -> None:
    sizes = [
        (1, 1),
        (3, 3),
        (12, 2),
        (200, 60),
        (2, 60),
        (200, 2),
        (60, 20),
        (59, 20),
        (60, 19),
        (100, 20),
    ]
    random.shuffle(sizes)
    app = begin(*OPEN)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*keys)
        before = text(app)
        for width, height in [*sizes, (80, 24)]:
            await pilot.resize_terminal(width, height)
            await pilot.press("down", "pagedown", "pageup", "up")
            assert len(text(app).splitlines()) <= max(height, 1)
        await pilot.press("pageup", "pageup", "pageup")  # marking the lines turns a long list
        app.screen.query_one("#main").set_mark(None)  # type: ignore[attr-defined]
        await pilot.pause()
        assert text(app) == before


@pytest.mark.parametrize(("width", "height"), [(59, 24), (80, 19), (30, 5)])
async def test_a_window_too_small_gets_a_plea(begin: Begin, width: int, height: int) -> None:
    app = begin(*OPEN)
    async with app.run_test(size=(width, height)):
        assert text(app).split() == ["Please", "enlarge:", "60", "by", "20", "at", "least."]


async def test_panels_stand_side_by_side_from_100_columns(begin: Begin) -> None:
    app = begin(*OPEN)
    async with app.run_test(size=(99, 30)) as pilot:
        assert "Is it me?" not in text(app)
        await pilot.resize_terminal(100, 30)
        await pilot.pause()
        assert "Is it me?" in text(app)


@pytest.mark.parametrize("size", [(40, 10), (60, 20), (79, 31), (80, 24), (100, 32), (200, 60)])
async def test_a_screen_begins_with_the_classes_that_it_then_keeps(
    begin: Begin, size: tuple[int, int]
) -> None:
    """Else everything on it would be styled twice, and be seen to jump."""
    app = begin(*OPEN)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, CaseScreen)
        assert screen.first_classes() == screen.classes


async def test_before_there_are_causes_a_screen_begins_without_its_side(begin: Begin) -> None:
    app = begin()
    async with app.run_test():
        screen = app.screen
        assert isinstance(screen, CaseScreen)
        assert "-start" in screen.first_classes() == screen.classes
