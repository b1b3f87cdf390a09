"""The calculators on the screen: found by topic, worked while one types, never cut in a word."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.reckon.calculator import Calculator, examples, reckon, shown
from weldwhy.reckon.catalogue import CALCULATORS
from weldwhy.reckon.wording import topics
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.page import Page
from weldwhy.tui.screens.arithmetic import ArithmeticScreen, SumScreen
from weldwhy.tui.screens.case import CaseScreen

from .conftest import Begin
from .grid import text

SIZES = pytest.mark.parametrize("size", [(80, 24), (120, 40)])


def _way_to(name: str) -> list[str]:
    """The keys that lead from the list of topics to a calculator."""
    for number, found in enumerate(topics(CALCULATORS).values(), 1):
        ids = [each.id for each in found]
        if name in ids:
            return [str(number), *([str(ids.index(name) + 1)] if len(ids) > 1 else [])]
    raise AssertionError(name)


HEAT = ("r", *_way_to("heat-input"))
"""The keys to heat input: process, volts, amps, travel speed."""


@SIZES
async def test_the_topics_name_all_their_calculators(begin: Begin, size: tuple[int, int]) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test(size=size) as pilot:
        await pilot.press("r")
        assert isinstance(app.screen, ArithmeticScreen)
        words = _words(app.screen.main)
        for each in CALCULATORS:
            named = {word.lower().strip(",;:") for word in each.name.split()}
            assert named <= {word.strip(",;:") for word in words}


def _words(page: Page) -> set[str]:
    """The words of a page, of all its parts."""
    rows = []
    for part in range(page.parts):
        page.show_part(part)
        rows += [row.text for row in page.rows]
    page.show_part(0)
    return set(" ".join(rows).lower().split())


def _said(calculator: Calculator, results: list[str]) -> list[str]:
    """All texts of a calculator's page."""
    formulas = [t for f in calculator.manual for t in (*f.says, f.holds, f.source)]
    names = [each.name.capitalize() for each in calculator.inputs]
    return [calculator.about, *names, *results, *formulas]


@SIZES
async def test_every_calculator_opens_whole_with_its_inputs_and_results_in_sight(
    begin: Begin, size: tuple[int, int]
) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test(size=size) as pilot:
        for each in CALCULATORS:
            screen = SumScreen(app.bench, each, {})
            await app.push_screen(screen)
            await pilot.pause()
            outcome = reckon(shipped_rules(), each, examples(shipped_rules(), each))
            results = [shown(o) for o in outcome.outputs if isinstance(o.value, str)]
            first, words = text(app), _words(screen.main)
            assert each.name[1:] in first
            if len(each.inputs) <= 6:
                flat = " ".join(first.split())
                for output in outcome.outputs:
                    assert f"{output.name[1:]}:" in flat, f"{each.id}: no {output.name} in sight"
            for said in _said(each, [*results, *outcome.remarks]):
                lost = [word for word in said.lower().split() if word not in words]
                assert not lost or all(f"{word}:" in words for word in lost), f"{each.id}: {lost}"
            assert all(len(line) <= size[0] for line in first.splitlines())
            app.pop_screen()


async def test_each_calculator_has_its_digit_under_its_topic(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("r")
        for found in topics(CALCULATORS).values():
            keys = _way_to(found[-1].id)
            await pilot.press(*keys)
            assert type(app.screen) is SumScreen, found[-1].id
            assert text(app).splitlines()[0].endswith(found[-1].name[1:])
            await pilot.press(*["escape"] * len(keys))


async def test_the_formulas_follow_on_the_next_part_of_the_page(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test(size=(80, 20)) as pilot:
        await pilot.press(*HEAT)
        assert "EN 1011-1" not in text(app)
        await pilot.press("pagedown")
        assert "Source: EN 1011-1 (2009), 8.7 and table 1." in text(app)
        await pilot.press("pageup")
        assert "1  Process: " in text(app)


async def test_results_stand_there_at_once_marked_as_those_of_the_examples(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT)
        assert "(example)" in text(app)
        assert "Result, with the examples" in text(app)
        assert "Heat input: 0.304 kJ/mm" in text(app)
        await pilot.press("1", "1")
        for number, value in (("2", "20 V"), ("3", "150 A"), ("4", "5 mm/s")):
            await pilot.press(number, *value, "enter")
        assert "(example)" not in text(app)
        assert "with the examples" not in text(app)
        assert "Heat input: 0.48 kJ/mm" in text(app)


async def test_results_follow_every_key_and_a_fault_is_one_line(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "2", "2")
        assert "Heat input: 0.032 kJ/mm" in text(app)
        await pilot.press("0")
        assert "Heat input: 0.32 kJ/mm" in text(app)
        await pilot.press("x")
        assert "Heat input" not in text(app).partition("Result")[2].partition("How it is")[0]
        assert 'Volts at the arc: cannot read "20x"; write it like "18.5 V"' in _flat(app)
        await pilot.press("enter")
        assert "20x_" in text(app), "what cannot be read is not kept"
        await pilot.press("escape")
        assert "Heat input: 0.304 kJ/mm" in text(app)


def _flat(app: WeldwhyApp) -> str:
    return " ".join(text(app).split()).replace("volts at the arc:", "Volts at the arc:")


async def test_a_number_outside_the_range_of_a_formula_is_used_and_remarked_on(
    begin: Begin,
) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "4", *"0.3 mm/s", "enter")
        assert "NOTE travel 0.3 mm/s lies outside 0.5 to 50 mm/s" in _flat(app)
        await pilot.press("4", "ctrl+u", *"0 mm/s")
        assert "travel 0 mm/s is not possible; it can be" in _flat(app)


async def test_a_choice_is_picked_and_can_be_the_example_again(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT)
        before = text(app)
        names = list(dict(CALCULATORS[0].inputs[0].choices(shipped_rules())).values())  # type: ignore[misc]
        await pilot.press("1", "5")
        assert f"Process: {names[4]}\n" in text(app)
        assert text(app) != before
        await pilot.press("1", "0")
        assert text(app) == before


@pytest.mark.parametrize(
    ("units", "heat", "travel"), [("in", "7.82 kJ/in", "14 in/min"), ("mm", "0.304 kJ/mm", "6")]
)
async def test_the_units_of_the_shop_hold_for_examples_and_results(
    begin: Begin, units: str, heat: str, travel: str
) -> None:
    app = begin(rules=shipped_rules())
    app.bench.prefer(units=units)
    async with app.run_test() as pilot:
        await pilot.press(*HEAT)
        assert f"Travel speed: {travel}" in text(app)
        assert f"Heat input: {heat}" in text(app)


async def test_without_a_preference_results_follow_what_was_typed(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "4", *"12 ipm", "enter")
        assert "Heat input: 9.12 kJ/in" in text(app)


async def test_what_was_typed_is_there_again(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "2", *"24 V", "enter", "0")
        assert isinstance(app.screen, ArithmeticScreen)
        await pilot.press("d", "r", HEAT[-1])
        assert "Volts at the arc: 24 V" in text(app)
        await pilot.press("2", "ctrl+u", "enter")
        assert "Volts at the arc: 19 V (example)" in text(app)


async def test_escape_goes_back_to_the_topics_and_then_to_the_case(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("r")
        topics_shown = text(app)
        await pilot.press(*HEAT[1:], "escape", "escape")
        assert text(app) == topics_shown
        await pilot.press("escape")
        assert isinstance(app.screen, CaseScreen)
        await pilot.press("r")
        assert text(app) == topics_shown


async def test_y_copies_inputs_results_and_formulas_as_text(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "4", *"5 mm/s", "enter", "y")
        assert "Copied." in text(app)
        lines = app.clipboard.splitlines()
        assert lines[0] == "Heat input"
        assert "Volts at the arc: 19 V" in lines
        assert "Travel speed: 5 mm/s" in lines
        assert "Heat input: 0.365 kJ/mm" in lines
        assert any(line.startswith("Source: EN 1011-1") for line in lines)
        await pilot.press("4", "y")
        assert "y_" in text(app), "while one types, y is a letter"


async def test_nothing_is_copied_when_there_is_no_result(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "4", *"0 mm/s", "enter", "y")
        assert app.clipboard == ""
        assert "y: copy" not in text(app)


async def test_lines_can_be_taken_with_the_arrow_keys(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press(*HEAT, "down", "down", "enter", *"24", "enter")
        assert "Volts at the arc: 24" in text(app)
