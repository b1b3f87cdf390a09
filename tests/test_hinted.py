"""A symptom that the words only may mean is asked back before anything is built on it."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest

from weldwhy.case import (
    DONT_KNOW,
    NONE_MEANT,
    NONE_OF_THESE,
    SKIP,
    Case,
    Hinted,
    Passed,
    Reported,
    Resembled,
    Said,
    Situated,
    entry_for,
    from_data,
    to_data,
)
from weldwhy.casefacts import answers, own_words
from weldwhy.casereport import case_text
from weldwhy.commands_diagnosis import with_words
from weldwhy.diagnosis import diagnosis
from weldwhy.entries import answered, still_known
from weldwhy.interview import Interview
from weldwhy.plain import run
from weldwhy.rulebase import load
from weldwhy.store import Store

RULES = load()
HINTS = Case((Situated("process", "gmaw"), Hinted("porosity"), Hinted("spatter")))


def test_the_symptoms_hinted_at_are_asked_with_a_way_out() -> None:
    step = Interview(RULES, HINTS).step
    assert (step.kind, step.id) == ("ask", "symptom")
    assert [each.id for each in step.answers] == ["porosity", "spatter", NONE_OF_THESE]


def test_process_is_asked_first_and_any_process_may_be_meant() -> None:
    case = Case((Hinted("rod-sticks"),))
    step = Interview(RULES, case).step
    assert step.id == "process"
    assert len(step.answers) == len(RULES.processes)


def test_what_the_process_cannot_show_is_not_asked() -> None:
    case = Case((Situated("process", "gmaw"), Hinted("rod-sticks"), Hinted("porosity")))
    answers = [each.id for each in Interview(RULES, case).step.answers]
    assert answers == ["porosity", NONE_OF_THESE]
    assert Interview(RULES, case).step.text == "Is this what is wrong?"
    alone = Case((Situated("process", "gmaw"), Hinted("rod-sticks")))
    assert Interview(RULES, alone).step.id == "group"


def test_the_answer_is_a_report_and_the_other_hints_are_dropped() -> None:
    after = Interview(RULES, HINTS.with_(entry_for("symptom", "spatter")))
    plain = Interview(RULES, Case((Situated("process", "gmaw"), Reported("spatter"))))
    assert after.case.symptoms == ("spatter",)
    assert after.case.hinted == ()
    assert [r.cause.id for r in after.ranked] == [r.cause.id for r in plain.ranked]
    assert [r.probability for r in after.ranked] == [r.probability for r in plain.ranked]


@pytest.mark.parametrize("reason", [SKIP, DONT_KNOW])
def test_none_of_these_leads_to_the_usual_lists(reason: str) -> None:
    case = HINTS.with_(Passed("symptom", reason))
    interview = Interview(RULES, case)
    assert interview.case.hinted == ()
    assert interview.step.id == "group"
    assert interview.ranked == ()
    assert interview.supposed == ""
    # what is hinted at later is asked again
    assert case.with_(Hinted("undercut")).hinted == ("undercut",)


def test_none_of_these_can_be_said_twice_and_from_the_command_line() -> None:
    none = answered(RULES, "symptom", "skip")
    assert none in NONE_MEANT
    assert HINTS.with_(none, Hinted("undercut"), none).hinted == ()


def test_who_refuses_what_a_sentence_may_mean_is_not_asked_it() -> None:
    said = ["mig, holes"]
    assert with_words(RULES, Case(), said)[0].hinted
    assert with_words(RULES, Case(NONE_MEANT[:1]), said)[0].hinted == ()


def test_what_is_only_hinted_at_is_no_certain_fact_in_the_report() -> None:
    case = Case((Said("bubbles"), Hinted("porosity", words="bubbles"), Hinted("spatter")))
    assert any('"bubbles", not certain' in line for line in own_words(RULES, case))
    assert answers(RULES, case) == []


def test_only_the_likeliest_is_supposed_and_only_if_the_process_can_show_it() -> None:
    assert Interview(RULES, HINTS).symptoms == ("porosity",)
    case = Case((Hinted("rod-sticks"), Hinted("porosity"), Situated("process", "gmaw")))
    assert Interview(RULES, case).supposed == "porosity"
    alone = Interview(RULES, Case((Hinted("rod-sticks"), Situated("process", "gmaw"))))
    assert (alone.supposed, alone.ranked) == ("", ())


def test_a_picture_picked_settles_it_too() -> None:
    assert HINTS.with_(Resembled("undercut")).hinted == ()


def test_the_first_view_says_what_it_supposes() -> None:
    interview = Interview(RULES, HINTS)
    assert interview.case.symptoms == ()
    assert interview.supposed == "porosity"
    assert interview.ranked
    text = "\n".join(case_text(interview))
    assert f"Most likely, if it is {RULES.symptoms['porosity'].name}" in text
    assert "Weld case: not certain yet" in text
    assert "Answers: porosity (bubbles in the weld); spatter; none of these." in text
    assert diagnosis(interview)["supposed"] == "porosity"
    told = Interview(RULES, HINTS.with_(Reported("porosity")))
    assert "Most likely, if" not in "\n".join(case_text(told))
    assert diagnosis(told)["supposed"] == ""


def test_hints_are_kept_and_undone_one_by_one(tmp_path: Path) -> None:
    assert from_data(json.loads(json.dumps(to_data(HINTS)))) == HINTS
    refused = HINTS.with_(NONE_MEANT[0])
    assert still_known(RULES, refused) == (refused, 0)
    assert still_known(RULES, Case((Hinted("no-such"),)))[1] == 1
    assert refused.undo() == HINTS
    assert HINTS.undo().hinted == ("porosity",)
    store = Store(tmp_path)
    store.save(refused)
    assert Store(tmp_path).resume() == refused


def _talk(store: Store, typed: str) -> str:
    sink = io.StringIO()
    run(RULES, store, io.StringIO(typed), sink)
    return sink.getvalue()


@pytest.mark.parametrize("none", ["3", "0", "s"])
def test_plain_lines_ask_it_too(tmp_path: Path, none: str) -> None:
    store = Store(tmp_path)
    store.save(HINTS)
    told = _talk(store, f"1\n{none}\n")
    assert "Which of these is it?" in told
    assert "Most likely, if it is" in told
    resumed = store.resume()
    assert resumed is not None
    assert resumed.entries[-1] in NONE_MEANT
    assert "Where" in told.rpartition("Which of these")[2]


@pytest.mark.parametrize("none", ["0", "s"])
def test_a_hint_that_cannot_be_asked_is_not_refused_either(tmp_path: Path, none: str) -> None:
    case = Case((Situated("process", "gmaw"), Hinted("rod-sticks"), Situated("group", "")))
    store = Store(tmp_path)
    store.save(case)
    assert "Pick the one that comes nearest" in _talk(store, f"1\n{none}\n")
    assert store.resume() == case
