"""Which step the engine takes: danger first, never the same twice, cheap and likely first."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.engine.small import base, cause, check, random_base, scaled

from weldwhy.engine import slips
from weldwhy.engine.belief import Finding, Fix, Log, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.network import network_for
from weldwhy.engine.tuning import HOPELESS, PATIENCE, Tuning
from weldwhy.model import RuleBase

SEEDS = st.integers(0, 10_000)


def chooser(rules: RuleBase, log: Log = (), **more: object) -> Chooser:
    belief = replay(network_for(rules, "p", ("bad",)), log)
    return Chooser(belief, log, **more)  # type: ignore[arg-type]


def test_the_check_of_a_danger_comes_first_though_it_is_dear() -> None:
    danger = cause("danger", 1.0, {"dear": {"yes": 0.95}}, hazard=True)
    rules = base(
        [danger, cause("plain", 20.0, {"cheap": {"yes": 0.95}})],
        [check("dear", off=0.02, minutes=50), check("cheap", off=0.02, minutes=0.1)],
    )
    step = chooser(rules).step
    assert (step.kind, step.check) == ("hazard", "dear")


def test_a_danger_ruled_out_is_not_asked_again() -> None:
    danger = cause("danger", 1.0, {"dear": {"yes": 0.95}}, hazard=True)
    rules = base([danger, cause("plain", 20.0)], [check("dear", off=0.02, minutes=5)])
    assert chooser(rules, (Finding("dear", "no"),)).step.kind != "hazard"


@given(SEEDS)
def test_no_step_asks_what_was_answered_or_refused(seed: int) -> None:
    rules, rng = random_base(seed), random.Random(seed)
    names = sorted(network_for(rules, "p", ("bad",)).checks)
    log = (Finding(names[0], rng.choice(rules.checks[names[0]].answers).id),)
    step = chooser(rules, log, refused=names[1:3]).step
    assert step.kind == "again" or step.check not in names[:3]


@given(SEEDS)
def test_every_interview_ends(seed: int) -> None:
    """If answers come at random and no remedy works, help is advised in the end."""
    rules, rng = random_base(seed), random.Random(seed)
    log: tuple[Finding | Fix, ...] = ()
    again: set[str] = set()
    for _ in range(60):
        step = chooser(rules, log, looked_again=again).step
        if step.kind == "help":
            return
        if step.kind == "fix":
            log = (*log, Fix(step.cause, "no change"))
            continue
        if step.kind == "again":
            again.add(step.check)
        log = (*log, Finding(step.check, rng.choice(rules.checks[step.check].answers).id))
    pytest.fail("the interview did not end")


def test_a_likely_cheap_fix_is_tried_before_a_dear_question() -> None:
    rules = base(
        [cause("a", 20.0, {"q": {"yes": 0.7}}, minutes=1), cause("b", 1.0, minutes=1)],
        [check("q", off=0.3, minutes=10)],
    )
    step = chooser(rules).step
    assert (step.kind, step.cause) == ("fix", "a")


def test_a_cheap_telling_question_comes_before_a_dear_fix() -> None:
    rules = base(
        [cause("a", 8.0, {"q": {"yes": 0.9}}, minutes=20), cause("b", 8.0, minutes=20)],
        [check("q", off=0.2, minutes=0.2)],
    )
    assert chooser(rules).step.check == "q"


def test_help_is_advised_when_the_unlisted_fault_leads() -> None:
    rules = base([cause("a", works=0.98), cause("b", works=0.98)], [])
    log: tuple[Fix, ...] = ()
    for name in ("a", "b", "a", "b"):
        log = (*log, Fix(name, "no change"))
    assert chooser(rules, log).step.kind == "help"


def test_help_is_advised_when_a_fault_to_stop_for_leads() -> None:
    rules = base(
        [cause("machine", 20.0, {"q": {"yes": 0.95}}, stop=True), cause("b", 1.0)],
        [check("q", off=0.02)],
    )
    found = chooser(rules, (Finding("q", "yes"),))
    assert found.hopeless > HOPELESS
    assert found.step.kind == "help"


def _slipped() -> RuleBase:
    """One check whose normal answer fits nothing else that is told."""
    two = {"q1": {"yes": 0.7}, "q2": {"yes": 0.7}}
    return base(
        [
            cause("a", 8.0, {**two, "slip": {"yes": 0.985}}, minutes=40),
            cause("b", 8.0, minutes=40),
        ],
        [
            *(check(q, off=0.1, minutes=0.1, noise=0.02) for q in two),
            check("slip", off=0.02, minutes=0.1, noise=0.1),
        ],
    )


def test_an_answer_that_fits_nothing_else_is_asked_again_once() -> None:
    log = (Finding("q1", "yes"), Finding("q2", "yes"), Finding("slip", "no"))
    found = chooser(_slipped(), log, tuned=Tuning(attention=0.0))
    assert slips.chance(found.belief, log[-1]) > slips.LOOK_AGAIN
    assert (found.step.kind, found.step.check) == ("again", "slip")
    once = chooser(_slipped(), log, tuned=Tuning(attention=0.0), looked_again=["slip"])
    assert once.step.kind != "again"


def test_what_was_only_supposed_is_no_slip_to_be_looked_at_again() -> None:
    """It is an open check still, and is asked as one."""
    log = (Finding("q1", "yes"), Finding("q2", "yes"), Finding("slip", "no", 0.9))
    found = chooser(_slipped(), log, tuned=Tuning(attention=0.0))
    assert slips.chance(found.belief, log[-1]) > slips.LOOK_AGAIN
    assert "slip" in found.open_checks
    assert found.step.kind != "again"


def test_patience_bounds_the_questions_in_a_row() -> None:
    causes = [cause(f"c{i}", 8.0, {f"q{i}": {"yes": 0.8}}, minutes=10) for i in range(6)]
    rules = base(causes, [check(f"q{i}", off=0.3, minutes=0.01) for i in range(6)])
    log = tuple(Finding(f"q{i}", "no") for i in range(4))
    assert chooser(rules, log, tuned=PATIENCE["brisk"]).step.kind == "fix"
    assert chooser(rules, log, tuned=PATIENCE["thorough"]).step.kind == "ask"


@given(SEEDS)
def test_all_minutes_times_k_choose_the_same_step(seed: int) -> None:
    rules = random_base(seed)
    k = 4.0  # a power of two scales without rounding, so that ties stay ties
    tuned = Tuning(attention=0.3)
    one, two = (
        chooser(rules, tuned=tuned).step,
        chooser(scaled(rules, k), tuned=tuned.scaled(k)).step,
    )
    assert (one.kind, one.check, one.cause) == (two.kind, two.check, two.cause)


def test_a_danger_is_asked_about_by_its_surest_check_not_the_cheapest() -> None:
    shows = {"sure": {"yes": 0.985}, "cheap": {"yes": 0.85}}
    rules = base(
        [cause("danger", 1.0, shows, hazard=True), cause("plain", 20.0)],
        [check("sure", off=0.02, minutes=5), check("cheap", off=0.15, minutes=0.1)],
    )
    assert chooser(rules).step.check == "sure"
    assert chooser(rules, (Finding("sure", "no"),)).step.kind != "hazard"


def test_a_likely_danger_that_only_others_may_mend_is_a_stop_before_any_other_check() -> None:
    rules = base(
        [
            cause("danger", 3.0, {"sure": {"yes": 0.985}}, hazard=True, stop=True),
            cause("other", 3.0, {"second": {"yes": 0.985}}, hazard=True, stop=True),
        ],
        [check("sure", off=0.02), check("second", off=0.02)],
    )
    step = chooser(rules, (Finding("sure", "yes"),)).step
    assert (step.kind, step.cause) == ("help", "danger")
    assert chooser(rules, (Finding("sure", "no"),)).step.kind != "fix"


def test_a_likely_danger_is_put_right_before_anything_else() -> None:
    rules = base(
        [
            cause("danger", 3.0, {"sure": {"yes": 0.985}}, minutes=90, hazard=True),
            cause("plain", 3.0, {"cheap": {"yes": 0.85}}, minutes=1),
        ],
        [check("sure", off=0.02), check("cheap", off=0.15, minutes=0.1)],
    )
    step = chooser(rules, (Finding("sure", "yes"),)).step
    assert (step.kind, step.cause) == ("fix", "danger")
