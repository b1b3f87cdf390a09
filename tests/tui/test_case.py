"""From the first screen to the end of a case, by keys alone."""

from __future__ import annotations

from dataclasses import replace

import pytest

from weldwhy.case import Answered, Case, Entry, Measured, Passed, Reported, Situated, Tried
from weldwhy.store import Store, StoreError

from . import fake
from .conftest import NOW, Begin
from .grid import text

HOLES, MIG = Reported("holes"), Situated("process", "mig")
FLOW, AIR, NOZZLE = Answered("flow", "right"), Answered("air", "still"), Answered("nozzle", "clean")
UNTIL_REMEDY: tuple[Entry, ...] = (HOLES, MIG, FLOW, AIR, NOZZLE)


async def test_process_symptom_and_facts_lead_to_the_first_step(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        assert "How are you welding?" in text(app)
        assert "Not for welds that carry a building" in text(app)
        await pilot.press("1")
        assert "bubbles, pinholes" in text(app)
        await pilot.press("1")
        assert "What do you know?" in text(app)
        await pilot.press("0")
        assert "What does the flow gauge read" in text(app)
        assert app.bench.case == Case((MIG, HOLES))


async def test_of_many_symptoms_the_group_is_asked_first(begin: Begin) -> None:
    app = begin(rules=fake.many_symptoms())
    async with app.run_test() as pilot:
        await pilot.press("1")
        assert "Where do you notice it?" in text(app)
        await pilot.press("2")
        assert "What is wrong?" in text(app)
        assert "Tangle 3" in text(app)
        assert "Holes in the bead" not in text(app)
        await pilot.press("3", "0", "a")
        assert "What else is wrong?" in text(app)
        await pilot.press("1")
        assert "Holes in the bead" in text(app)
        await pilot.press("1")
        assert app.bench.case.symptoms == ("tangle-3", "holes")


async def test_who_cannot_name_the_group_is_shown_every_symptom(begin: Begin) -> None:
    app = begin(rules=fake.many_symptoms())
    async with app.run_test() as pilot:
        await pilot.press("1", "0")
        assert "Holes in the bead" in text(app)
        assert "1 to 9 of 11: PgDn" in text(app)
        await pilot.press("pagedown", "1")
        assert app.bench.case.symptoms == ("tangle-9",)


async def test_every_entry_is_on_the_disk_at_once(begin: Begin, store: Store) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("3")
        assert store.resume() == Case((HOLES, MIG, Answered("flow", "low")))


async def test_zero_and_skip_pass_the_question(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("0", "s")
        assert app.bench.case.entries[2:] == (Passed("flow", "don't know"), Passed("air", "skip"))


async def test_a_digit_without_an_answer_does_nothing(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("9", "enter")
        assert app.bench.case == Case((HOLES, MIG))


async def test_the_arrow_keys_and_enter_answer_too(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("down", "down")
        assert ">" in text(app)
        await pilot.press("enter")
        assert app.bench.case.entries[-1] == Answered("flow", "none")


async def test_a_click_on_an_answer_answers(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        lines = text(app).splitlines()
        row = next(y for y, line in enumerate(lines) if "Low, below" in line)
        await pilot.click(offset=(8, row))
        assert app.bench.case.entries[-1] == Answered("flow", "low")


async def test_undo_goes_back_to_the_very_first_question(begin: Begin) -> None:
    app = begin(HOLES, MIG, FLOW)
    async with app.run_test() as pilot:
        await pilot.press("u")
        assert "What does the flow gauge read" in text(app)
        await pilot.press("u", "u", "u")
        assert "How are you welding?" in text(app)
        assert "- undo" in text(app)


async def test_other_questions_are_answered_out_of_order(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("o", "3")
        assert "Look into the nozzle" in text(app)
        await pilot.press("escape")
        assert "What does the flow gauge read" in text(app)
        await pilot.press("o", "3", "2")
        assert app.bench.case.entries[-1] == Answered("nozzle", "spatter")


async def test_an_opened_cause_shows_why_and_what_to_do_cautions_first(begin: Begin) -> None:
    app = begin(HOLES, MIG, FLOW, AIR)
    async with app.run_test(size=(80, 60)) as pilot:
        await pilot.press("c", "1")
        shown = text(app)
        order = ["CAUTION  Open the valve slowly", "Set the flow while", "20 cfh to 30 cfh", "Why",
                 "for, clearly (+7)", "against, a little (-2)", "How to confirm it",
                 "What would change", "keep it from coming back"]  # fmt: skip
        places = [shown.find(part) for part in order]
        assert -1 not in places
        assert places == sorted(places)


async def test_a_remedy_is_tried_from_its_cause(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("c", "2", "1")
        assert "Put a screen" in text(app)
        await pilot.press("3")
        assert app.bench.case.entries[-1] == Tried("draught", "screen", "no change")


async def test_a_check_is_done_from_the_cause_it_confirms(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("c", "2", "2")
        assert "Look into the nozzle" in text(app)


async def test_a_remedy_to_leave_to_others_says_whom_to_call(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("c", "3")
        assert "STOP" in text(app)
        assert "Call a welding-machine service shop." in text(app)


@pytest.mark.parametrize(("key", "result"), [("2", "better"), ("3", "no change"), ("4", "worse")])
async def test_the_test_bead_is_reported(begin: Begin, key: str, result: str) -> None:
    app = begin(*UNTIL_REMEDY)
    async with app.run_test() as pilot:
        assert "Then run a test bead" in text(app)
        await pilot.press(key)
        assert app.bench.case.entries[-1] == Tried("flow-low", "set-flow", result)
        assert ("put it back first" in text(app)) == (result == "worse")


async def test_a_sound_bead_ends_the_case(begin: Begin, store: Store) -> None:
    app = begin(*UNTIL_REMEDY)
    async with app.run_test() as pilot:
        await pilot.press("1")
        assert "Most likely it was: gas flow too low" in text(app)
        assert "Set the flow each morning" in text(app)
        await pilot.press("1")
        assert "gas flow too low" in app.clipboard
        await pilot.press("2", "1")
        (saved,) = (store.folder / "reports").iterdir()
        assert "Gas flow too low. " in saved.read_text()
        assert saved.name in "".join(text(app).split())
        await pilot.press("3")
        assert "How are you welding?" in text(app)
        assert [done.when for done in store.finished()] == [NOW]
        assert store.resume() is None


@pytest.mark.parametrize(
    ("key", "ending", "begins"),
    [
        ("1", ".txt", "Weld case: "),
        ("2", ".md", "# Weld case: "),
        ("3", ".html", "<!DOCTYPE html>"),
    ],
)
async def test_a_case_is_saved_in_the_form_picked(
    begin: Begin, store: Store, key: str, ending: str, begins: str
) -> None:
    app = begin(*UNTIL_REMEDY)
    async with app.run_test() as pilot:
        await pilot.press("w")
        assert "Save the case as" in text(app)
        await pilot.press(key)
        (saved,) = (store.folder / "reports").iterdir()
        assert saved.suffix == ending
        assert saved.read_text().startswith(begins)
        assert "Next step" in saved.read_text()
        assert saved.name in "".join(text(app).split())


async def test_leaving_the_choice_of_a_form_saves_nothing(begin: Begin, store: Store) -> None:
    app = begin(*UNTIL_REMEDY)
    async with app.run_test() as pilot:
        await pilot.press("w", "escape")
        assert not (store.folder / "reports").exists()
        assert "Then run a test bead" in text(app)


async def test_the_old_fault_gone_and_a_new_one_begins_a_new_case(
    begin: Begin, store: Store
) -> None:
    app = begin(*UNTIL_REMEDY[:2], Situated("material", "steel"), *UNTIL_REMEDY[2:])
    async with app.run_test() as pilot:
        await pilot.press("5", "1")
        assert "And the holes in the bead that you had before?" in text(app)
        await pilot.press("1")
        assert app.bench.case == Case((Reported("jam"), MIG, Situated("material", "steel")))
        assert store.finished()[0].case.sound


async def test_the_old_fault_still_there_and_a_new_one_go_on_together(begin: Begin) -> None:
    app = begin(*UNTIL_REMEDY)
    async with app.run_test() as pilot:
        await pilot.press("5", "1", "2")
        assert app.bench.case.entries[5:] == (
            Tried("flow-low", "set-flow", "better"),
            Reported("jam"),
        )


async def test_a_job_that_people_hang_on_stops_the_guide(begin: Begin) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("f", "4", "2")
        assert "STOP" in text(app)
        assert "Call a certified welder." in text(app)
        await pilot.press("c", "1", "1")
        assert not app.bench.case.tried
        await pilot.press("escape", "escape", "2", "1")
        assert "What does the flow gauge read" in text(app)


async def test_an_open_case_is_offered_and_gone_on_with(begin: Begin, store: Store) -> None:
    store.save(Case((HOLES, MIG, FLOW)))
    app = begin()
    async with app.run_test() as pilot:
        assert "A case is open." in text(app)
        assert "3 things told so far" in text(app)
        await pilot.press("1")
        assert "Is the air moving" in text(app)


async def test_an_open_case_is_put_away_and_not_lost(begin: Begin, store: Store) -> None:
    store.save(Case((HOLES, MIG, FLOW)))
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("2")
        assert "How are you welding?" in text(app)
        assert store.finished()[0].case == Case((HOLES, MIG, FLOW))


async def test_a_broken_case_file_is_said_in_one_line(begin: Begin, store: Store) -> None:
    store.folder.mkdir(parents=True)
    (store.folder / "case.json").write_text("{")
    app = begin()
    async with app.run_test():
        assert "NOTE" in text(app)
        assert "was moved to case.json.broken" in " ".join(text(app).split())


async def test_a_full_disk_is_said_and_the_case_goes_on(
    begin: Begin, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_case: Case) -> None:
        raise StoreError("cannot write case.json: No space left on device")

    app = begin(HOLES, MIG)
    monkeypatch.setattr(store, "save", full)
    async with app.run_test() as pilot:
        await pilot.press("1")
        assert "No space left on device; the case goes on" in " ".join(text(app).split())
        assert "Is the air moving" in text(app)


async def test_what_the_rules_say_is_text_and_never_markup(begin: Begin) -> None:
    rules = fake.rules()
    check = replace(rules.checks["flow"], ask="Is it [red]hot[/red]? \x1b[2J\x07[link=x]")
    app = begin(HOLES, MIG, rules=replace(rules, checks={**rules.checks, "flow": check}))
    async with app.run_test():
        assert "Is it [red]hot[/red]? [link=x]" in text(app)
        assert "\x1b" not in text(app)


async def test_a_new_case_is_begun_only_when_meant(begin: Begin, store: Store) -> None:
    app = begin(HOLES, MIG)
    async with app.run_test() as pilot:
        await pilot.press("n", "2")
        assert app.bench.case == Case((HOLES, MIG))
        await pilot.press("n", "1")
        assert app.bench.case == Case()
        assert len(store.finished()) == 1


async def test_the_process_need_not_be_known(begin: Begin) -> None:
    app = begin(HOLES)
    async with app.run_test() as pilot:
        await pilot.press("0")
        assert app.bench.case.told("process") == ""


async def test_a_setting_told_later_shows_in_the_remedy(begin: Begin) -> None:
    app = begin(*UNTIL_REMEDY, Measured("gas_flow", "12 cfh"))
    async with app.run_test():
        line = next(line for line in text(app).splitlines() if "gas flow  " in line)
        assert line.split() == [
            "gas",
            "flow",
            "12",
            "cfh",
            "->",
            "25",
            "cfh",
            "20",
            "cfh",
            "to",
            "30",
            "cfh",
        ]
