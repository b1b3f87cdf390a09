"""Own words and pictures: two more ways into a case, mixed with the list and undone one by one."""

from __future__ import annotations

from html import unescape

import pytest

from weldwhy.case import (
    Answered,
    Case,
    Measured,
    Reported,
    Resembled,
    Said,
    Situated,
    Supposed,
)
from weldwhy.model import RuleBase
from weldwhy.store import Store
from weldwhy.tui.screens import say
from weldwhy.tui.screens.case import CaseScreen
from weldwhy.tui.screens.gallery import GalleryScreen, PictureScreen
from weldwhy.understanding.heard import Heard, Understood

from .conftest import Begin
from .grid import text

OPEN = (Reported("holes"), Situated("process", "mig"))
HEARD = Heard(
    (
        Understood("mig", Situated("process", "mig"), 1.0),
        Understood("bubbles", Reported("holes"), 0.9),
        Understood("some wind", Supposed("air", "wind"), 0.5),
    ),
    ("and my uncle says hello",),
)


@pytest.fixture
def heard(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What the guide was told in words; it understands the same of everything."""
    told: list[str] = []

    def understand(
        _rules: RuleBase, words: str, _case: Case | None = None, _system: str | None = None
    ) -> Heard:
        told.extend([words] if words else [])
        return HEARD

    monkeypatch.setattr(say, "understand", understand)
    return told


async def test_words_come_back_as_ticks_and_enter_the_case(begin: Begin, heard: list[str]) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"mig 2 q?", "enter")
        assert heard == ["mig 2 q?"]
        shown = text(app)
        assert "[x] Process: MIG with gas" in shown
        assert 'from "some wind": not certain' in shown
        assert 'NOT UNDERSTOOD  "and my uncle says hello"' in shown
        await pilot.press("0")
        said = Said("mig 2 q?", HEARD.not_understood)
        assert app.bench.case.entries == (said, *HEARD.entries)
        assert "What do you know?" in text(app)


async def test_enter_once_more_goes_on_with_what_is_ticked(begin: Begin, heard: list[str]) -> None:
    """Nobody looks for a digit after typing."""
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "2", "enter")
        assert app.bench.case.entries[1:] == (HEARD.entries[0], HEARD.entries[2])


async def test_enter_strikes_out_the_line_that_has_the_mark(begin: Begin, heard: list[str]) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "down", "enter")
        assert "[ ] Process: MIG with gas" in text(app)
        assert app.bench.case.entries == ()


async def test_enter_shows_all_that_was_understood_before_it_goes_on(
    begin: Begin, heard: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    many = tuple(Understood("wire", Reported("holes"), 0.9) for _ in range(12))
    monkeypatch.setattr(say, "understand", lambda *_: Heard(many))
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter")
        assert "1 to 9 of 12" in text(app)
        assert "or Enter" not in text(app)
        await pilot.press("enter")
        assert "10 to 12 of 12" in text(app)
        await pilot.press("enter")
        assert app.bench.case.symptoms


async def test_nine_ticks_are_in_sight_at_once(
    begin: Begin, heard: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """What it was taken from stands beside it, the first words of many."""
    said = "well I was out in the yard with the old machine and so on for long"
    nine = Heard(tuple(Understood("wire", Reported("holes"), 0.9) for _ in range(8)))
    last = Understood(said, Supposed("air", "wind"), 0.5)
    lost = tuple(f"and my uncle says hello to number {at}" for at in range(12))
    monkeypatch.setattr(say, "understand", lambda *_: Heard((*nine.understood, last), lost))
    app = begin()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("i", *"so", "enter")
        shown = text(app)
        assert "part 1" not in shown
        assert '  8  [x] Holes in the bead  from "wire"' in shown
        assert 'from "well I was out in the yard with the old .."' in shown
        assert '"and my uncle says hello to number 4", and 7 more' in " ".join(shown.split())
        assert "Go on with what is ticked" in shown


async def test_a_job_that_stops_is_stopped_before_anything_else_is_asked(
    begin: Begin, heard: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    from tests.replay import shipped_rules

    said = (Reported("cold-crack"), Situated("process", "smaw"), Situated("job", "lifting"))
    rules = shipped_rules()
    assert "lifting" in rules.jobs
    found = Heard(tuple(Understood("so", entry, 0.9) for entry in said))
    monkeypatch.setattr(say, "understand", lambda *_: found)
    app = begin(rules=rules)
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "0")
        assert "STOP" in text(app)


async def test_a_tick_can_be_struck_out_and_put_back(begin: Begin, heard: list[str]) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "2", "3", "3")
        assert "[ ] Holes in the bead" in text(app)
        assert "[x] Is the air moving" in text(app)
        await pilot.press("0")
        assert app.bench.case.symptoms == ()
        assert app.bench.case.entries[-1] == Supposed("air", "wind")


async def test_what_the_case_knows_is_known_to_who_listens(
    begin: Begin, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[tuple[object, ...]] = []

    def understand(*heard: object) -> Heard:
        told.append(heard)
        return Heard(())

    monkeypatch.setattr(say, "understand", understand)
    app = begin(Situated("process", "mig"))
    app.bench.prefer(units="mm")
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter")
        assert told[-1][1:] == ("so", app.bench.case, "mm")


async def test_all_struck_out_tells_nothing(begin: Begin, heard: list[str]) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "1", "2", "3")
        assert "Go on with nothing of this" in text(app)
        await pilot.press("0")
        assert app.bench.case.entries == ()
        assert isinstance(app.screen, CaseScreen)


@pytest.mark.parametrize("keys", ["y", "w1", "w2", "w3"])
async def test_a_report_holds_the_words_and_what_was_made_of_them_but_not_what_was_struck_out(
    begin: Begin, heard: list[str], keys: str, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    nasty = Understood("<b>rust</b>", Supposed("air", "wind"), 0.5)
    found = Heard((*HEARD.understood[:2], nasty), HEARD.not_understood)
    monkeypatch.setattr(say, "understand", lambda *_: found)
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"mig, <b> bubbles", "enter", "3", "0", "escape", *keys)
        if keys == "y":
            report = app.clipboard
        else:
            (saved,) = (store.folder / "reports").iterdir()
            report = saved.read_text(encoding="utf-8")
            assert keys == "w1" or "<b>" not in report.replace("\\<", "")
        plain = unescape(report).replace("\\", "")
        for wanted in (
            '"mig, <b> bubbles"', 'from "bubbles": ', 'from "mig": ',
            'not understood, so not counted: "and my uncle says hello"',
            'struck out, so not counted: "<b>rust</b>"',
        ):  # fmt: skip
            assert wanted in plain
        assert not any(isinstance(entry, Supposed) for entry in app.bench.case.entries)


async def test_words_of_which_nothing_was_understood_are_kept_for_the_report(
    begin: Begin, heard: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(say, "understand", lambda *_: Heard((), ("brown fuzz",)))
    app = begin(*OPEN)
    app.bench.left_open = None
    async with app.run_test() as pilot:
        await pilot.press("i", *"brown fuzz", "enter")
        assert "Go on; your words are kept for the report" in text(app)
        await pilot.press("enter", "y")
        assert app.bench.case.entries == (*OPEN, Said("brown fuzz", ("brown fuzz",)))
        assert '"brown fuzz"' in app.clipboard
        await pilot.press("u", "y")
        assert "brown fuzz" not in app.clipboard


async def test_the_text_can_be_mended_and_left(begin: Begin, heard: list[str]) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"buble", "enter", "escape", "backspace", *"es", "enter")
        assert heard == ["buble", "bubles"]
        await pilot.press("escape", "escape")
        assert app.bench.case.entries == ()
        await pilot.press("i", "enter")
        assert isinstance(app.screen, CaseScreen)


async def test_pasted_lines_are_joined_and_cleaned(begin: Begin, heard: list[str]) -> None:
    from textual.events import Paste

    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i")
        app.screen.post_message(Paste("bubbles\nall over\x1b[2J"))
        await pilot.pause()
        await pilot.press("enter")
        assert heard == ["bubbles all over[2J"]


async def test_a_long_text_stays_inside_its_bounds(begin: Begin, heard: list[str]) -> None:
    from textual.events import Paste

    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i")
        app.screen.post_message(Paste("so " * 5000))
        await pilot.pause()
        await pilot.press("enter")
        assert len(heard[0]) <= say.LONGEST


# pictures


async def test_a_picked_picture_leaves_its_look_alikes_open(begin: Begin) -> None:
    app = begin(Situated("process", "mig"))
    async with app.run_test() as pilot:
        await pilot.press("g")
        assert "Which looks most like yours?" in text(app)
        assert text(app).splitlines()[0].split() == [
            "weldwhy", "Pictures:", "MIG", "1", "to", "2", "of", "2",
        ]  # fmt: skip
        await pilot.press("1")
        assert "Round holes." in text(app)
        await pilot.press("1")
        assert app.bench.case.entries[-1] == Resembled("holes")
        assert app.bench.case.resembled == ("holes",)


async def test_who_is_sure_reports_the_symptom_itself(begin: Begin) -> None:
    app = begin(Situated("process", "mig"))
    async with app.run_test() as pilot:
        await pilot.press("g", "1", "2")
        assert app.bench.case.entries[-1] == Reported("holes")
        assert app.bench.case.resembled == ()


async def test_a_look_alike_is_compared_in_its_place(begin: Begin) -> None:
    app = begin(Situated("process", "mig"))
    async with app.run_test() as pilot:
        await pilot.press("g", "1", "3")
        assert isinstance(app.screen, PictureScreen)
        assert "A tangle." in text(app)
        await pilot.press("escape")
        assert isinstance(app.screen, GalleryScreen)
        await pilot.press("0")
        assert isinstance(app.screen, CaseScreen)
        assert len(app.bench.case.entries) == 1


async def test_pictures_are_those_of_the_process(begin: Begin) -> None:
    app = begin(Situated("process", "stick"))
    async with app.run_test() as pilot:
        await pilot.press("g")
        assert "1 to 1 of 1" in text(app)
        assert "Wire jam" not in text(app)


async def test_pictures_can_be_had_of_one_kind(begin: Begin) -> None:
    app = begin(Situated("process", "mig"))
    async with app.run_test() as pilot:
        await pilot.press("g", "right")
        assert "\n What you see" in text(app)
        assert "1 to 1 of 1" in text(app)
        await pilot.press("right")
        assert "What the wire does" in text(app)
        await pilot.press("left", "left", "9", "pagedown", "pageup")
        assert "All kinds" in text(app)
        assert "1 to 2 of 2" in text(app)


async def test_another_kind_and_a_leaf_before_the_first_begin_at_the_first_picture(
    begin: Begin,
) -> None:
    from tests.replay import shipped_rules

    app = begin(Situated("process", "gmaw"), rules=shipped_rules())
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "pagedown")
        assert " 1 to " not in text(app)
        await pilot.resize_terminal(120, 40)  # more pictures on a leaf than came before this one
        await pilot.press("pageup")
        assert " 1 to 9 of " in text(app)
        await pilot.press("pagedown")
        assert " 1 to " not in text(app)
        await pilot.press("right")
        assert " 1 to " in text(app)


def test_a_picture_of_an_arc_shows_what_is_in_the_hand_in_the_process() -> None:
    from tests.replay import shipped_rules

    from weldwhy.tui.cards.gallery import picture_rows

    rules = shipped_rules()
    gun, rod, torch = (
        [row.text for row in picture_rows(rules, "arc-wanders", 40, 12, True, process)]
        for process in ("gmaw", "smaw", "gtaw-dc")
    )
    assert gun != rod != torch != gun


def test_what_is_compared_is_what_is_most_often_taken_for_it_in_the_process() -> None:
    from tests.replay import shipped_rules

    from weldwhy.tui.cards.gallery import COMPARED, looks_alike

    rules = shipped_rules()
    for symptom, picture in rules.pictures.items():
        for process in rules.symptoms[symptom].processes:
            found = [other.id for other in looks_alike(rules, symptom, process)]
            here = {
                other: p
                for other, p in picture.like.items()
                if other in rules.pictures and process in rules.symptoms[other].processes
            }
            chances = sorted(here.values(), reverse=True)[:COMPARED]
            assert [here[other] for other in found] == chances


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 40), (200, 60)])
async def test_every_picture_of_a_process_is_reached(begin: Begin, size: tuple[int, int]) -> None:
    """Leaf after leaf, each with its digits, until the last."""
    from tests.replay import shipped_rules

    from weldwhy.tui.cards.gallery import drawn

    rules = shipped_rules()
    wanted = [symptom.id for symptom in drawn(rules, "gmaw")]
    app = begin(Situated("process", "gmaw"), rules=rules)
    async with app.run_test(size=size) as pilot:
        await pilot.press("g")
        seen: list[str] = []
        while len(seen) < len(wanted):
            gallery = app.screen
            assert isinstance(gallery, GalleryScreen)
            leaf = gallery._shown(9 if size[1] > 30 else 6 if size[0] >= 80 else 2)
            assert leaf, "a leaf without a picture"
            seen += [symptom.id for symptom in leaf]
            assert f"of {len(wanted)}" in text(app)
            gallery.action_page_down()
            await pilot.pause()
        assert seen == wanted


@pytest.mark.parametrize("process", ["gmaw", "fcaw-s", "fcaw-g", "smaw", "gtaw-dc", "gtaw-ac"])
async def test_no_word_over_or_under_a_picture_is_cut(begin: Begin, process: str) -> None:
    from tests.replay import shipped_rules

    from weldwhy.tui.cards.gallery import groups_drawn

    rules = shipped_rules()
    app = begin(Situated("process", process), rules=rules)
    words = {
        word.lower()
        for symptom in rules.symptoms.values()
        for word in symptom.name.partition(" (")[0].split()
    }
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g")
        for group in groups_drawn(rules, process):
            title, _, head, captions = text(app).splitlines()[:4]
            assert head.strip().lower() == rules.groups.get(group, "all kinds").lower()
            assert " to " in title
            told = captions.replace("1 ", "").replace("2 ", "").replace("..", "").split()
            assert {word.lower() for word in told} <= words
            assert "and .." not in captions
            await pilot.press("right")


async def test_a_small_page_shows_the_picture_and_what_to_do_with_it(begin: Begin) -> None:
    from tests.replay import shipped_rules

    app = begin(Situated("process", "smaw"), rules=shipped_rules())
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "1")
        shown = text(app)
        for choice in ("1  Mine looks most like", "2  I am sure", "3  Compare", "5  Compare"):
            assert f"  {choice}" in shown
        await pilot.press("pagedown")
        assert "Often taken for it" in text(app)
        assert "Mine looks most like" not in text(app), "the choices stand there once"
        await pilot.press("3")
        assert isinstance(app.screen, PictureScreen)
        assert "Porosity (" not in text(app), "the look-alike stands in its place"


# mixed


async def test_three_ways_are_mixed_in_one_case_and_undone_one_by_one(
    begin: Begin, heard: list[str]
) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "0", "escape")  # words
        await pilot.press("g", "1", "1")  # a picture
        await pilot.press("f", "5", *"18 V", "enter", "escape")  # a value typed
        await pilot.press("1")  # an answer
        told = app.bench.case.entries
        assert [type(entry) for entry in told] == [
            Said, Situated, Reported, Supposed, Resembled, Measured, Answered,
        ]  # fmt: skip
        for left in range(len(told) - 1, -1, -1):
            await pilot.press("u")
            assert app.bench.case.entries == told[:left]
        assert "How are you welding?" in text(app)


async def test_neither_way_is_open_before_the_old_case_is_settled(begin: Begin) -> None:
    app = begin(*OPEN)
    again = begin()
    assert again.bench.left_open is not None
    async with again.run_test() as pilot:
        await pilot.press("g", "i")
        assert isinstance(again.screen, CaseScreen)
    assert app.bench.case.entries == OPEN
