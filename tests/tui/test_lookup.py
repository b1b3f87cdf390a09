"""Look up on the screen: found while one types, pages that lead on and back, a case begun there."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from tests.replay import shipped_rules
from textual.pilot import Pilot

from weldwhy.case import Entry, Reported, Situated
from weldwhy.lookup.page import leaf
from weldwhy.lookup.things import Ref, things
from weldwhy.store import Store
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.cards.lookupsheet import Sheet, leaf_blocks, sheets
from weldwhy.tui.commands import DIGITS
from weldwhy.tui.rows import Row, row
from weldwhy.tui.screens.arithmetic import SumScreen
from weldwhy.tui.screens.case import CaseScreen
from weldwhy.tui.screens.leaf import LeafScreen
from weldwhy.tui.screens.lookup import LookupScreen
from weldwhy.tui.terminal import Terminal

from .conftest import NOW, Begin
from .grid import text

SIZES = [(60, 20), (80, 24), (120, 40)]
KEY = row(("  b  ", "key"), ("Begin a case with it", "text"))


@pytest.fixture
def shipped(store: Store) -> Callable[..., WeldwhyApp]:
    """Makes the program with the rules that come with it and their real guide."""

    def made(*told: Entry) -> WeldwhyApp:
        app = WeldwhyApp(shipped_rules(), store, lambda: NOW)
        app.bench.record(*told)
        return app

    return made


def _leaf(app: WeldwhyApp) -> LeafScreen:
    assert isinstance(app.screen, LeafScreen)
    return app.screen


async def _type(pilot: Pilot[int], words: str) -> None:
    await pilot.press(*("space" if sign == " " else sign for sign in words))


def _sheets(ref: Ref, width: int, height: int, letters: bool = False) -> list[Sheet]:
    rules = shipped_rules()
    blocks = leaf_blocks(rules, leaf(rules, ref), width, height, letters, KEY)
    return sheets(blocks, width, height)


# what is found


@pytest.mark.parametrize("size", SIZES)
async def test_what_is_typed_finds_as_one_types_and_a_digit_opens_it(
    begin: Begin, size: tuple[int, int]
) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test(size=size) as pilot:
        await pilot.press("l")
        assert isinstance(app.screen, LookupScreen)
        await _type(pilot, "under")
        assert "Undercut [symptom]" in text(app)
        await pilot.press("1")
        assert _leaf(app).ref == Ref("symptom", "undercut")
        assert "Undercut  [symptom]" in text(app)


async def test_the_key_f9_leads_here_from_everywhere(begin: Begin) -> None:
    app = begin(Reported("holes"), Situated("process", "mig"), rules=None)
    async with app.run_test() as pilot:
        for key in ("f6", "f8", "f5"):
            await pilot.press(key, "f9")
            assert isinstance(app.screen, LookupScreen)


async def test_enter_opens_what_is_found_first_and_arrows_choose(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter")
        assert _leaf(app).ref == Ref("symptom", "porosity")
        await pilot.press("escape", "down", "down", "enter")
        assert _leaf(app).ref.id.startswith("porosity-")


async def test_a_page_opened_in_a_window_too_small_for_it_takes_every_key(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("l", *"undercut")
        await pilot.resize_terminal(100, 1)
        await pilot.press("enter", "1", "down", "up", "pagedown", "pageup", "enter", "9")
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert "Look up: symptom" in text(app)
        await pilot.press("1")
        await pilot.press("escape")
        assert "Look up: symptom" in text(app)


async def test_letters_that_are_commands_elsewhere_are_written_here(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "dpmrqlb")
        assert "Type to find: dpmrqlb" in text(app)
        assert "Nothing found." in text(app)


async def test_a_digit_is_written_only_where_a_name_goes_on_with_it(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "e7018")
        assert "E7018 [filler]" in text(app)
        await pilot.press("escape")
        await _type(pilot, " 6061")
        await pilot.press("enter")
        assert _leaf(app).ref == Ref("grade", "6061")


async def test_the_question_mark_and_the_colon_stay_commands(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l", "a", "question_mark")
        assert "Type what you look for" in text(app)
        await pilot.press("escape", "colon")
        assert "Commands" in text(app)


async def test_backspace_takes_letters_back_and_then_leaves(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l", "a", "b", "backspace")
        assert "Type to find: a" in text(app)
        await pilot.press("backspace", "2", "1")
        assert "causes, consumable" in text(app)
        await pilot.press("backspace", "backspace", "backspace")
        assert isinstance(app.screen, CaseScreen)


# what is browsed


@pytest.mark.parametrize("size", SIZES)
async def test_everything_can_be_browsed_to_by_digits_alone(
    begin: Begin, size: tuple[int, int]
) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test(size=size) as pilot:
        await pilot.press("l", "1", "1", "1")
        assert _leaf(app).ref.kind == "symptom"
        await pilot.press("escape", "escape", "escape", "pagedown", "1")
        assert "metals" in text(app)


async def test_the_shelves_of_every_kind_hold_all_its_things(begin: Begin) -> None:
    from weldwhy.tui.cards.lookup import kinds_card, shelves_of

    rules = shipped_rules()
    held: list[Ref] = []
    for choice in kinds_card(rules).choices:
        for refs in shelves_of(rules, str(choice.act).partition(":")[2]).values():
            held += refs
    assert sorted(held) == sorted(things(rules).all)


async def test_an_invented_rule_base_without_words_can_be_looked_up_too(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "holes")
        await pilot.press("enter")
        assert "Round holes." in text(app)
        assert "Gas flow too low" in text(app)


# pages


@pytest.mark.parametrize("kind", ["symptom", "cause", "check", "remedy", "term", "process"])
def test_every_page_fits_its_sheets_and_their_digits_reach_every_link(kind: str) -> None:
    for width, height in ((60, 18), (80, 22), (120, 38)):
        for ref in things(shipped_rules()).of_kind(kind):
            made = _sheets(ref, width, height)
            links = [to for sheet in made for to in sheet.links]
            assert set(links) == set(leaf(shipped_rules(), ref).links), ref
            for sheet in made:
                assert len(sheet.rows) <= height, ref
                assert len(sheet.links) <= len(DIGITS)
                assert all(line.width <= width and line.text.isprintable() for line in sheet.rows)
                picks = [line.pick for line in sheet.rows if line.pick]
                assert sorted(set(picks)) == list(range(1, len(sheet.links) + 1)), ref


def test_a_link_stands_behind_the_digit_that_leads_to_it() -> None:
    known = things(shipped_rules())
    for sheet in _sheets(Ref("symptom", "porosity"), 80, 22):
        for number, to in enumerate(sheet.links, 1):
            if to.kind == "source":
                continue  # told with the place in it
            first = next(line for line in sheet.rows if line.pick == number)
            assert first.text.startswith(f"  {number}  ")
            shown = first.text[5:].split("  ")[0].lower().removesuffix(" ..")
            assert known.name(to).lower().startswith(shown)


def test_a_part_that_goes_on_overleaf_says_its_heading_again() -> None:
    made = _sheets(Ref("process", "gmaw"), 80, 22)
    tops = [next(line.text for line in sheet.rows if line.text) for sheet in made[1:]]
    assert all(top.startswith("\u2500 ") for top in tops)
    assert any(top.endswith("goes on \u2500") for top in tops)


@pytest.mark.parametrize("letters", [False, True])
def test_the_top_of_a_page_with_its_picture_is_seen_at_once_at_80x24(letters: bool) -> None:
    for name in shipped_rules().pictures:
        first = _sheets(Ref("symptom", name), 80, 22, letters)[0]
        said = " ".join(" ".join(line.text for line in first.rows).split())
        assert shipped_rules().symptoms[name].looks.split(".")[0].split(",")[0] in said, name
        assert KEY in first.rows
        painted = [line for line in first.rows[2:10] if _drawn(line, letters)]
        assert len(painted) >= 4, name


def _drawn(line: Row, letters: bool) -> bool:
    if letters:
        return line.text.isascii() and bool(set(line.text) & set("#=:.o%*~"))
    return any(role.partition("/")[0] not in ("text", "dim", "head") for _, role in line.spans)


def test_on_a_wide_page_the_picture_stands_beside_the_words() -> None:
    first = _sheets(Ref("symptom", "undercut"), 120, 38)[0]
    assert "Also called" in first.rows[2].text
    assert first.rows[2].spans[1][1] != "text"


async def test_links_lead_on_and_the_trail_leads_back_to_the_same_sheet(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "undercut")
        await pilot.press("enter", "pagedown", "pagedown")
        page, before = _leaf(app), text(app)
        cause = page.sheet.links[0]
        await pilot.press("1")
        assert page.ref == cause
        onward = next(n for n, to in enumerate(page.sheet.links, 1) if to.id != "undercut")
        there = page.sheet.links[onward - 1]
        await pilot.press(str(onward))
        assert page.ref == there
        await pilot.press("backspace")
        assert page.ref == cause
        await pilot.press("escape")
        assert text(app) == before
        await pilot.press("escape")
        assert "Type to find: undercut" in text(app)


async def test_the_mark_moves_over_the_links_and_on_to_the_next_sheet(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter", "pagedown")
        page = _leaf(app)
        links = page.sheet.links
        await pilot.press("up", *["down"] * len(links))
        for _ in range(3):
            await pilot.press("down")
        assert page.sheet.links != links
        wanted = page.sheet.links[(page.main.mark or 1) - 1]
        await pilot.press("enter")
        assert page.ref == wanted


async def test_the_mark_moves_up_over_the_edge_to_the_last_link_before(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter", "pagedown", "pagedown")
        page = _leaf(app)
        here = page.sheet.links
        assert here
        await pilot.press("down", "up")
        assert page.sheet.links not in ((), here)
        assert page.main.mark == len(page.sheet.links) > 1


async def test_a_kind_with_one_shelf_is_left_in_one_step(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        kinds = text(app)
        await pilot.press("7")  # settings, which a list of nine holds
        assert text(app) != kinds
        await pilot.press("backspace")
        assert text(app) == kinds


async def test_the_slash_begins_a_new_search(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "undercut")
        await pilot.press("enter", "1", "slash")
        assert isinstance(app.screen, LookupScreen)
        assert "undercut" not in text(app)
        await _type(pilot, "dcen")
        await pilot.press("enter")
        assert _leaf(app).ref == Ref("term", "dcen")


async def test_without_colours_a_picture_is_made_of_letters(begin: Begin) -> None:
    app = begin(rules=shipped_rules(), terminal=Terminal(colours="none", ascii=True))
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "undercut")
        await pilot.press("enter")
        picture = "\n".join(row.text for row in _leaf(app).main.rows[2:10])
        assert picture.isascii()
        assert "##" in picture


async def test_a_page_stays_open_while_one_is_elsewhere(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "dcen")
        await pilot.press("enter", "d", "l")
        assert _leaf(app).ref == Ref("term", "dcen")


async def test_a_page_can_be_had_at_any_size(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter")
        for size in ((1, 1), (60, 20), (200, 60), (7, 40), (80, 24)):
            await pilot.resize_terminal(*size)
            await pilot.press("pagedown", "pageup")
        assert "Porosity" in text(app)


# what is begun from a page


async def test_a_case_begins_with_the_symptom_and_an_open_one_is_put_away(
    shipped: Callable[..., WeldwhyApp],
) -> None:
    told = (Reported("undercut"), Situated("process", "gmaw"))
    app = shipped(*told)
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter", "b")
        await pilot.pause()
        assert isinstance(app.screen, CaseScreen)
        assert app.bench.case.entries == (Reported("porosity"),)
        assert "put away, not lost" in text(app)
        assert [case.case.entries for case in app.bench.store.finished()] == [told]


async def test_without_an_open_case_nothing_is_said_to_be_put_away(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter", "b")
        await pilot.pause()
        assert app.bench.case.entries == (Reported("porosity"),)
        assert "put away" not in text(app)


async def test_the_work_told_so_far_is_kept_for_a_case_begun_from_a_page(
    shipped: Callable[..., WeldwhyApp],
) -> None:
    """Who told the process and then looked something up is not asked for it again."""
    app = shipped(Situated("process", "gmaw"))
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter", "b")
        await pilot.pause()
        assert app.bench.case.entries == (Situated("process", "gmaw"), Reported("porosity"))
        assert "How are you welding?" not in text(app)
        assert "put away" not in text(app)


async def test_the_shelves_of_words_are_named_by_their_letters(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l", "5")
        assert "A to C (" in text(app)


async def test_only_symptoms_and_calculators_begin_anything(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "dcen")
        await pilot.press("enter", "b")
        assert _leaf(app).ref == Ref("term", "dcen")
        assert "- begin" in text(app)
        assert app.bench.case.entries == ()


async def test_a_calculator_is_worked_from_its_page(begin: Begin) -> None:
    app = begin(rules=shipped_rules())
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "gas left in a cyl")
        await pilot.press("enter", "b")
        assert isinstance(app.screen, SumScreen)
        await pilot.press("0")
        assert _leaf(app).ref == Ref("calculator", "gas-left")


async def test_the_process_of_the_open_case_comes_first(
    shipped: Callable[..., WeldwhyApp],
) -> None:
    app = shipped(Reported("porosity"), Situated("process", "smaw"))
    async with app.run_test() as pilot:
        await pilot.press("l")
        await _type(pilot, "porosity")
        await pilot.press("enter", "pagedown", "pagedown")
        shown = text(app)
        assert "Likeliest causes with stick" in shown
        assert shown.index("with stick") == min(
            shown.index(f"with {word}")
            for word in ("stick", "MIG", "gasless")
            if f"with {word}" in shown
        )
