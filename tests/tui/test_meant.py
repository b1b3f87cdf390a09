"""A symptom that the words may mean is asked back on the next card."""

from __future__ import annotations

from dataclasses import replace

import pytest

from weldwhy.case import NONE_MEANT, Hinted, Reported, Situated
from weldwhy.tui.screens import say
from weldwhy.understanding.heard import Heard, Understood

from . import fake
from .conftest import Begin
from .grid import text

HEARD = Heard(
    (
        Understood("mig", Situated("process", "mig"), 1.0),
        Understood("bubbles", Hinted("holes"), 0.5),
        Understood("spits", Hinted("jam"), 0.3),
    )
)


@pytest.fixture(autouse=True)
def heard(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(say, "understand", lambda *_: HEARD)


async def test_which_of_these_is_asked_and_answered(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter")
        assert 'from "bubbles": not certain, will be asked' in text(app)
        await pilot.press("0")
        shown = text(app)
        assert "Which of these is it?" in shown
        assert "0  None of these" in shown
        assert "Most likely" not in shown
        await pilot.press("2")
        assert app.bench.case.entries[-1] == Reported("jam")
        assert app.bench.case.symptoms == ("jam",)
        assert "Which of these" not in text(app)
        await pilot.press("escape")
        await pilot.press("u")
        assert "Which of these is it?" in text(app)


async def test_none_of_these_opens_the_list(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "0")
        await pilot.press("0")
        assert app.bench.case.entries[-1] in NONE_MEANT
        shown = text(app)
        assert "What is wrong?" in shown
        assert "None of these" not in shown


async def test_a_hint_struck_out_is_not_asked(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "2", "3", "0")
        assert app.bench.case.hinted == ()
        assert "What is wrong?" in text(app)


async def test_what_was_struck_out_can_be_ticked_again(begin: Begin) -> None:
    app = begin()
    async with app.run_test() as pilot:
        await pilot.press("i", *"so", "enter", "2", "2", "0")
        assert app.bench.case.hinted == ("holes", "jam")
        assert "Say it in your own words" in text(app)


async def test_an_answer_on_a_part_not_shown_yet_is_first_shown(
    begin: Begin, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the page is cut, a digit must not answer what nobody has read."""
    many = fake.many_symptoms()
    noted = {name: replace(each, also=("loops of wire",)) for name, each in many.symptoms.items()}
    rules = replace(many, symptoms=noted)
    names = [name for name in rules.symptoms if name.startswith("tangle")][:9]
    hints = (Understood("loops", Hinted(name), 0.5) for name in names)
    told = Heard((Understood("mig", Situated("process", "mig"), 1.0), *hints))
    monkeypatch.setattr(say, "understand", lambda *_: told)
    app = begin(rules=rules)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("i", *"so", "enter")
        await pilot.press("enter", "enter", "enter")
        last = str(len(names))
        last_name = rules.symptoms[names[-1]].name.capitalize()
        assert last_name not in text(app)
        await pilot.press(last)
        assert not app.bench.case.symptoms
        assert last_name in text(app)
        await pilot.press(last)
        assert list(app.bench.case.symptoms) == names[-1:]
