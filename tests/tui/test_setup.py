"""From what is wanted to a test bead: the form, what suits, the plan, its ticks, and Diagnose."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from tests.replay import shipped_rules

from weldwhy.case import Case, Measured, Reported, Situated
from weldwhy.model import Caution, Machine, RuleBase
from weldwhy.setup import Plan, Refusal, plan, plans, refusal
from weldwhy.setupcase import SetupCase, from_mapping, handed_on, to_mapping
from weldwhy.store import Store
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.cards.card import lay_out
from weldwhy.tui.cards.checklist import checklist_card, packed
from weldwhy.tui.cards.plan import PlanShown, leaves
from weldwhy.tui.cards.setup import entries_for, fields_of, suits_card, work_words
from weldwhy.tui.terminal import Terminal
from weldwhy.units import parse_range, parse_target

from . import fakesetup
from .conftest import NOW, Begin
from .grid import text

STEEL, PLATE = Situated("material", "steel"), Situated("thickness", "1/8 in")
WANTED = Case((STEEL, PLATE))
SIZES = [(80, 24), (120, 40)]
NONE = Terminal(colours="none", ascii=True)


def _begin(begin: Begin, setup: SetupCase | None = None, **more: object) -> WeldwhyApp:
    app = begin(rules=fakesetup.rules(), **more)
    if setup is not None:
        app.bench.setup = setup
    return app


def _words(app: WeldwhyApp) -> str:
    return " ".join(text(app).split())


@pytest.mark.parametrize("size", SIZES)
async def test_from_the_form_to_a_case_that_knows_it_all(
    begin: Begin, size: tuple[int, int]
) -> None:
    app = _begin(begin)
    async with app.run_test(size=size) as pilot:
        await pilot.press("p")
        assert "What do you want to weld?" in text(app)
        await pilot.press("1", "1", "2", *"1/8 in", "enter", "3", "2", "5", "1", "0")
        shown = text(app)
        assert shown.index("MIG with gas: good") < shown.index("Stick: usable")
        assert "Quick on clean sheet and plate." in shown
        await pilot.press("1")
        assert "Gun to plus (+), work clamp to minus (-)." in text(app)
        await pilot.press("pagedown")
        assert "V groove of the wire's size." in text(app)
        await pilot.press("pagedown")
        assert "18 V to 20 V" in text(app)
        while "checklist" not in text(app):
            await pilot.press("pagedown")
        await pilot.press("1")
        assert "[x] Brush the joint bright." in text(app)
        while "How is the test bead?" not in text(app):
            await pilot.press("pagedown")
        await pilot.press("2")
        await pilot.pause()
        assert "What is wrong?" in text(app)
        case = app.bench.case
        assert (case.process, case.material, case.thickness) == ("mig", "steel", "1/8 in")
        assert (case.joint, case.place) == ("fillet", "indoors")
        assert case.measured == {
            "wire": "0.030 in ER70S-6", "gas": "argon with 25 % CO2",
            "volts": "19 V", "wire_feed": "300 ipm",
        }  # fmt: skip
        await pilot.press("1")
        assert "Volts: 19 V" in text(app)


async def test_an_open_case_is_put_away_and_not_lost(begin: Begin, store: Store) -> None:
    app = begin(Reported("jam"), Situated("process", "mig"), rules=fakesetup.rules())
    app.bench.setup = SetupCase(WANTED).opened("mig")
    async with app.run_test() as pilot:
        await pilot.press("f", "p")  # with a list open over the case
        await pilot.press("4", "2")
        await pilot.pause()
        assert "is put away, not lost" in _words(app)
        assert "What is wrong?" in text(app)
        assert [done.case.symptoms for done in store.finished()] == [("jam",)]


async def test_every_key_is_on_the_disk_at_once(begin: Begin, store: Store) -> None:
    app = _begin(begin)
    async with app.run_test() as pilot:
        await pilot.press("p", "1", "1")
        assert store.setup.work == Case((STEEL,))
        await pilot.press("2", *"1/8 in", "enter", "0", "1", "3", "2")
        assert store.setup == SetupCase(
            WANTED, "mig", ("Clamp the work lead on bright metal.",), shown=True
        )


async def test_a_killed_program_comes_back_to_the_same_plan(begin: Begin) -> None:
    _begin(begin, SetupCase(WANTED).opened("mig").ticked("Brush the joint bright."))
    app = _begin(begin)
    async with app.run_test() as pilot:
        await pilot.press("p")
        assert "hook-up" in text(app)
        await pilot.press("3")
        assert "[x] Brush the joint bright." in text(app)
        await pilot.press("1")
        assert "[ ] Brush the joint bright." in text(app)


async def test_a_broken_file_is_said_and_moved_aside(begin: Begin, store: Store) -> None:
    store.folder.mkdir(parents=True)
    (store.folder / "setup.json").write_text('{"version": 1, "entries": [], "done": 3}')
    app = _begin(begin)
    async with app.run_test() as pilot:
        await pilot.press("p")
        assert "was moved to setup.json.broken" in _words(app)
        assert "Metal: don't know" in text(app)


async def test_what_the_rules_do_not_know_of_a_set_up_is_said(begin: Begin, store: Store) -> None:
    store.setup = SetupCase(WANTED.with_(Situated("grade", "of another shop")))
    app = _begin(begin)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("p")
        assert "one thing told is not in these rules and left out" in _words(app)
        assert app.bench.setup.work == WANTED


async def test_escape_goes_back_one_level_at_a_time(begin: Begin) -> None:
    app = _begin(begin, SetupCase(WANTED))
    async with app.run_test() as pilot:
        await pilot.press("p", "0", "2")
        assert "Rod holder to minus (-)" in text(app)
        for expected in ("What suits 1/8 in", "What do you want", "How are you welding?"):
            await pilot.press("escape")
            await pilot.pause()
            assert expected in text(app)


async def test_metal_and_thickness_are_asked_for(begin: Begin) -> None:
    app = _begin(begin)
    async with app.run_test() as pilot:
        await pilot.press("p", "0")
        assert "Tell the metal and the thickness first." in text(app)
        await pilot.press("1", "1", "0")
        assert "Tell the thickness first." in text(app)


async def test_a_process_that_is_told_opens_its_plan_and_no_list(begin: Begin) -> None:
    app = _begin(begin, SetupCase(WANTED))
    async with app.run_test() as pilot:
        await pilot.press("p", "6", "2", "0")
        assert "Stick: hook-up" in text(app)
        await pilot.press("escape")
        assert "What do you want to weld?" in text(app)


@pytest.mark.parametrize(
    ("keys", "reason", "call"),
    [(("1", "3"), "Not a metal for this guide.", "a foundry"),
     (("7", "2"), "not for this guide", "a certified welder")],
)  # fmt: skip
async def test_a_refused_metal_or_job_says_stop_and_whom_to_call(
    begin: Begin, keys: tuple[str, ...], reason: str, call: str
) -> None:
    app = _begin(begin, SetupCase(WANTED))
    async with app.run_test() as pilot:
        await pilot.press("p", *keys)
        assert "STOP" in text(app)
        assert reason in _words(app)
        assert f"Call {call}." in text(app)
        await pilot.press("escape", "0")  # and no way round it
        assert "STOP" in text(app)


async def test_a_sound_bead_ends_the_set_up(begin: Begin) -> None:
    app = _begin(begin, SetupCase(WANTED).opened("stick").ticked("Brush the joint bright."))
    async with app.run_test() as pilot:
        await pilot.press("p", "4", "1")
        assert "The set-up is done." in text(app)
        assert app.bench.setup == SetupCase(WANTED, "stick")


async def test_the_sheet_is_saved_and_copied(begin: Begin, store: Store) -> None:
    app = _begin(begin, SetupCase(WANTED).opened("mig"))
    async with app.run_test() as pilot:
        await pilot.press("p", "y")
        assert "Set-up: MIG with gas" in app.clipboard
        await pilot.press("w")
        saved = next((store.folder / "reports").iterdir())
        assert saved.read_text() == app.clipboard
        assert saved.name in _words(app)


async def test_a_change_of_the_work_takes_the_ticks_away(begin: Begin) -> None:
    app = _begin(begin, SetupCase(WANTED, "mig", ("Brush the joint bright.",)))
    async with app.run_test() as pilot:
        await pilot.press("p", "5", "2", "0", "2", "3")
        assert "[ ] Brush the joint bright." in text(app)


async def test_a_machine_that_ends_too_soon_is_said_with_what_to_change(begin: Begin) -> None:
    ends = {**fakesetup.MACHINE.limits, "wire_feed": parse_range("60 ipm to 290 ipm", "feed")}
    weak = replace(fakesetup.MACHINE, limits=ends)
    app = begin(rules=replace(fakesetup.rules(), machines={weak.id: weak}))
    app.bench.setup = SetupCase(WANTED).opened("mig")
    async with app.run_test(size=(80, 40)) as pilot:
        await pilot.press("p", "2")
        assert "Wire feed: This machine ends at 290 ipm; take thicker wire." in _words(app)
        assert "about 3" in text(app)  # the mark of a dial without volts


async def test_other_keys_can_be_had_on_the_first_card(begin: Begin) -> None:
    made = _begin(begin)
    app = WeldwhyApp(made.bench.rules, made.bench.store, lambda: NOW, own_keys={"setup": "x"})
    async with app.run_test() as pilot:
        assert "x  Set up" in text(app)
        await pilot.press("x")
        assert "What do you want to weld?" in text(app)


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 40)])
async def test_nothing_but_ascii_is_needed(
    begin: Begin, size: tuple[int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    app = _begin(begin, SetupCase(WANTED), terminal=NONE)
    async with app.run_test(size=size) as pilot:
        await pilot.press("p")
        for key in ("0", "1", *["pagedown"] * 9):
            assert text(app).isascii()
            await pilot.press(key)
        assert "How is the test bead?" in text(app)


@pytest.mark.parametrize("keys", [(), ("0",), ("0", "1"), ("0", "1", "2"), ("0", "1", "3")])
async def test_any_order_of_sizes_is_survived(begin: Begin, keys: tuple[str, ...]) -> None:
    app = _begin(begin, SetupCase(WANTED))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("p", *keys)
        before = text(app)
        for size in [(1, 1), (200, 60), (2, 60), (200, 2), (60, 20), (100, 20), (80, 24)]:
            await pilot.resize_terminal(*size)
            await pilot.pause()
        assert text(app) == before


@pytest.mark.parametrize("width", [60, 80, 120])
def test_the_steps_of_a_leaf_are_never_cut_and_none_is_lost(width: int) -> None:
    rules = fakesetup.rules()
    steps = plan(rules, WANTED, fakesetup.MACHINE, "mig").checklist
    for height in (18, 22, 38):
        leaves = packed(steps, width, height)
        assert [step for leaf in leaves for step in leaf] == list(steps)
        for leaf in leaves:
            assert len(leaf) <= 9
            assert len(lay_out(checklist_card(leaf, (), ()), width, height)) <= height


def _works(rules: RuleBase, *thicknesses: str) -> list[Case]:
    """Every metal of the rules that is not refused, at each thickness."""
    metals = [Situated("material", metal) for metal in rules.materials]
    every = [Case((m, Situated("thickness", t))) for m in metals for t in thicknesses]
    return [work for work in every if refusal(rules, work) is None]


def _able(rules: RuleBase) -> Machine:
    """A machine that can do every process."""
    return replace(next(iter(rules.machines.values())), processes=tuple(rules.processes))


@pytest.mark.parametrize("process", ["gmaw", "fcaw-s", "fcaw-g", "smaw", "gtaw-dc", "gtaw-ac"])
def test_with_the_shipped_rules_every_leaf_fits_80_columns_and_no_word_is_cut(process: str) -> None:
    rules = shipped_rules()
    for work in _works(rules, "20 ga", "1/8 in", "10 mm"):
        made = plan(rules, work, _able(rules), process)
        for card in leaves(PlanShown(rules, made, work_words(rules, work)), 80, 22):
            rows = lay_out(card, 80, 22)
            assert all(line.width <= 80 for line in rows)
            assert not any(line.text.rstrip().endswith("..") for line in rows)
            assert len(f" weldwhy  {card.where}") <= 78
            if "checklist" in card.where and len(card.choices) > 1:
                assert len(rows) <= 22


def test_with_the_shipped_rules_what_suits_fits_one_page() -> None:
    rules = shipped_rules()
    for work in _works(rules, "1/8 in"):
        found = plans(rules, work, _able(rules))
        assert not isinstance(found, Refusal)
        rows = lay_out(suits_card(work_words(rules, work), found), 80, 22)
        assert len(rows) <= 22, work.material


def _leaf_texts(made: Plan) -> list[str]:
    cards = leaves(PlanShown(fakesetup.rules(), made, "this work"), 80, 22)
    return [" ".join(" ".join(row.text for row in lay_out(c, 80, 60)).split()) for c in cards]


def test_cautions_stand_before_the_hook_up_and_before_the_test_bead() -> None:
    hot, live = Caution("hot", "It is hot.", "x"), Caution("live", "It is live.", "x")
    made = plan(fakesetup.rules(), WANTED, fakesetup.MACHINE, "mig")
    bead = made.test_bead
    assert bead is not None
    made = replace(made, cautions=(live,), test_bead=replace(bead, cautions=(hot,)))
    first, *_, last = _leaf_texts(made)
    assert first.index("It is live.") < first.index("Gun to plus (+)")
    assert last.index("It is hot.") < last.index(bead.run[:20])


def test_the_note_of_the_window_stands_with_the_start_values() -> None:
    made = plan(fakesetup.rules(), WANTED, fakesetup.MACHINE, "mig")
    assert made.note
    assert any(made.note in leaf for leaf in _leaf_texts(made) if "allowed" in leaf)


def test_a_caution_in_sight_is_not_said_twice_and_none_is_dropped() -> None:
    rules = fakesetup.rules()
    steps = plan(rules, WANTED, fakesetup.MACHINE, "mig").checklist
    twice = [replace(steps[2], text=f"Step {n}.") for n in range(3)]
    shown = "\n".join(row.text for row in lay_out(checklist_card(twice, (), ()), 80, 22))
    assert shown.count("CAUTION") == 1
    assert shown.index("CAUTION") < shown.index("Step 0.")
    for leaf in packed(twice, 80, 8):
        assert "CAUTION" in "\n".join(r.text for r in lay_out(checklist_card(leaf, (), ()), 80, 8))


def test_the_form_asks_only_what_suits() -> None:
    rules = fakesetup.rules()

    def asked(*told: Situated) -> set[str]:
        return {fact.id for fact in fields_of(rules, Case(told))}

    plain = {"material", "thickness", "joint", "position", "place", "process", "job"}
    assert asked() == plain
    assert asked(STEEL) == plain | {"grade"}
    assert asked(Situated("process", "mig")) == plain | {"wire", "gas"}
    assert asked(Situated("process", "stick")) == plain | {"rod"}


def test_another_process_or_metal_takes_back_what_does_not_go_with_it() -> None:
    rules = fakesetup.rules()
    work = WANTED.with_(
        Situated("process", "mig"), Situated("grade", "s235"), Measured("wire", "0.035 in"),
        Measured("gas", "argon"),
    )  # fmt: skip
    fields = {fact.id: fact for fact in fields_of(rules, work)}
    stick = work.with_(*entries_for(rules, work, fields["process"], "stick"))
    assert stick.measured == {}
    alu = work.with_(*entries_for(rules, work, fields["material"], "alu"))
    assert alu.grade == ""
    assert alu.measured == {"wire": "0.035 in"}


def test_what_was_told_goes_before_what_is_usual_when_it_is_handed_on() -> None:
    rules = fakesetup.rules()
    work = WANTED.with_(Measured("gas", "C25"), Measured("wire", "0.8 mm"))
    made = plan(rules, work, fakesetup.MACHINE, "mig")
    told = Case(handed_on(rules, work, made))
    assert told.measured["gas"] == "C25"
    assert told.measured["wire"] == "0.8 mm"
    assert "gas_flow" not in told.measured  # what was meant to flow has yet to be read


def test_a_machine_that_feeds_wire_has_no_amps_to_hand_on() -> None:
    rules = fakesetup.rules()
    made = plan(rules, WANTED, fakesetup.MACHINE, "mig")
    worked_out = replace(
        made, targets={**made.targets, "amps": parse_target("95 A (80-110)", "current")}
    )
    assert "amps" not in Case(handed_on(rules, WANTED, worked_out)).measured
    stick = plan(rules, WANTED, fakesetup.MACHINE, "stick")
    assert Case(handed_on(rules, WANTED, stick)).measured["amps"] == "95 A"


def test_a_set_up_comes_back_from_its_file_as_it_was() -> None:
    kept = SetupCase(WANTED, "mig", ("a", "b"), shown=True)
    assert from_mapping(json.loads(json.dumps(to_mapping(kept)))) == kept


def test_another_plan_has_steps_of_its_own() -> None:
    setup = SetupCase(WANTED).opened("mig").ticked("a")
    assert setup.closed().opened("mig").done == ("a",)
    assert setup.opened("stick").done == ()
    assert setup.ticked("a").done == ()
    assert setup.told(Situated("place", "outdoors")).done == ()
