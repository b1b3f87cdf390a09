"""The rules on trial: what the simulation counts is what the simulated cases did."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.engine.small import base, cause, check, random_base

from weldwhy import simulation
from weldwhy.engine.network import network_for
from weldwhy.engine.tuning import PATIENCE
from weldwhy.engine.world import Manners, World, draw, live
from weldwhy.model import Material, RuleBase
from weldwhy.simulation import Findings, Trial

HONEST = Manners(wrong=0.0, dont_know=0.0, fails=0.0, not_listed=0.0)


def _clear() -> list[str]:
    return [f"c{n}" for n in range(6)]


def clear_base() -> RuleBase:
    """Six causes, each with a check of its own that always tells, and dear remedies."""
    checks = [check(f"q{n}", off=0.02, minutes=0.1) for n in range(6)]
    causes = [
        cause(name, shows={f"q{n}": {"yes": 0.985}}, minutes=10.0)
        for n, name in enumerate(_clear())
    ]
    return base(causes, checks)


def test_where_every_cause_has_a_sure_check_the_guide_is_nearly_always_right() -> None:
    done = simulation.trials(clear_base(), "bad", 80, manners=HONEST)
    score = simulation.score("bad", done)
    assert score.trials == len(done) == 80
    assert score.first is not None
    assert score.first >= 0.9
    assert score.mended is not None
    assert score.mended >= 0.9
    found = Findings()
    found.add(done)
    assert found.never_found() == []
    assert set(found.seen) == set(_clear())


def test_wrong_answers_and_none_make_it_worse() -> None:
    careless = simulation.trials(clear_base(), "bad", 80, manners=Manners(0.3, 0.4))
    honest = simulation.trials(clear_base(), "bad", 80, manners=HONEST)
    rates = [simulation.score("bad", done).first for done in (careless, honest)]
    assert rates[0] is not None
    assert rates[1] is not None
    assert rates[0] < rates[1] - 0.05


def test_the_same_seed_gives_the_same_cases_and_another_seed_others() -> None:
    rules = random_base(3)
    first = simulation.trials(rules, "bad", 10)
    assert simulation.trials(rules, "bad", 10) == first
    assert simulation.trials(rules, "bad", 10, seed=1) != first


def test_steps_are_the_answers_before_the_first_remedy_and_the_remedy() -> None:
    lone = base([cause("only", shows={"q": {"yes": 0.95}}, minutes=1.0)], [check("q")])
    done = simulation.trials(lone, "bad", 5, manners=HONEST)
    assert {trial.steps for trial in done} == {1}
    assert {trial.ranked for trial in done} == {("only",)}
    assert {trial.mended for trial in done} == {frozenset({"only"})}


def test_what_is_mended_or_named_after_five_steps_counts_as_found_soon() -> None:
    """Six causes with a sure check each: two faults take more than the first remedy."""
    done = simulation.trials(clear_base(), "bad", 80, manners=HONEST)
    score = simulation.score("bad", done)
    assert score.soon_one is not None
    assert score.soon_one >= 0.9
    for trial in done:
        assert trial.soon <= trial.faults
        assert len(trial.asked) > simulation.SOON or trial.mended <= trial.soon


def test_a_metal_is_drawn_for_each_case_and_only_its_causes_are_at_work() -> None:
    two = [replace(cause("steel-only"), materials=("steel",)), cause("any")]
    rules = replace(
        base(two, []),
        materials={"steel": Material("steel", "steel"), "alu": Material("alu", "aluminium")},
    )
    done = simulation.trials(rules, "bad", 60, manners=HONEST)
    shown = [{c for c, _ in zip(("steel-only", "any"), t.stated)} for t in done]
    assert {len(t.stated) for t in done} == {1, 2}
    assert len(shown) == 60
    assert all("steel-only" not in t.faults for t in done if len(t.stated) == 1)


def test_stated_chances_come_true_as_often_as_they_say() -> None:
    """A known answer for known numbers: 400 honest cases of random bases, in wide bins."""
    done: list[Trial] = []
    for seed in range(40):
        done += simulation.trials(random_base(seed), "bad", 10, manners=Manners(0.06, 0.1))
    for said, was, count in simulation.curve(done):
        if count >= 100:
            # not exact: one case in twelve has three faults, and the belief begins with pairs
            assert abs(said - was) < 0.15, (said, was, count)


def test_the_curve_counts_every_stated_chance_once() -> None:
    trial = Trial(
        "p", frozenset({"a"}), True, ("a", "b"), 2, (), ((0.9, True), (0.1, False)),
        frozenset({"a"}), frozenset({"a"}), False,
    )  # fmt: skip
    assert list(simulation.curve([trial, trial])) == [(0.1, 0.0, 2), (0.9, 1.0, 2)]


def test_two_causes_that_no_check_parts_are_told_and_others_are_not() -> None:
    twins = [
        cause("one", shows={"q": {"yes": 0.95}}),
        cause("other", shows={"q": {"yes": 0.95}}),
        cause("third", shows={"r": {"yes": 0.95}}),
    ]
    rules = base(twins, [check("q", off=0.06), check("r", off=0.06)])
    apart = {(p.one, p.other): p for p in simulation.pairs(rules, "bad", "p")}
    assert apart["one", "other"].apart == 0.0
    assert apart["one", "third"].apart > 0.8
    assert apart["one", "third"].check in ("q", "r")


def test_causes_of_different_metals_need_no_parting() -> None:
    two = [replace(cause("a"), materials=("x",)), replace(cause("b"), materials=("y",))]
    assert list(simulation.pairs(base(two, []), "bad", "p")) == []


def test_a_check_that_is_never_asked_and_parts_nothing_is_idle() -> None:
    rules = base([cause("a", shows={"q": {"yes": 0.95}})], [check("q"), check("idle")])
    found = Findings(best={"q"})
    assert found.idle(rules) == ["idle"]


def test_a_cause_that_was_neither_named_nor_mended_is_never_found() -> None:
    missed = Trial("p", frozenset({"a"}), True, ("b",), 1, (), (), frozenset(), frozenset(), True)
    mended = replace(missed, faults=frozenset({"c"}), mended=frozenset({"c"}))
    found = Findings()
    found.add([missed, mended])
    assert found.never_found() == ["a"]


def test_no_trials_have_no_score() -> None:
    with pytest.raises(ValueError, match="no trial"):
        simulation.score("bad", [])


def test_exclusive_faults_are_never_drawn_together() -> None:
    network = network_for(random_base(5), "p", ("bad",))
    for number in range(200):
        faults = draw(network, str(number), sizes=((3, 1.0),), not_listed=0.0)
        groups = [network.causes[f].exclusive for f in faults if network.causes[f].exclusive]
        assert len(groups) == len(set(groups))


def test_the_same_question_gets_the_same_answer_whatever_was_asked_before() -> None:
    network = network_for(random_base(5), "p", ("bad",))
    names = sorted(network.checks)

    def world() -> World:
        return World(network, PATIENCE["normal"], "seed", {0}, network.causes)

    one, other = world(), world()
    other.answer(network.checks[names[0]])
    told = [w.answer(network.checks[names[1]]) for w in (one, other)]
    assert told[0] == told[1]


def test_what_people_tell_unasked_is_odd_free_of_charge_and_not_asked_again() -> None:
    network = network_for(random_base(5), "p", ("bad",))
    world = World(network, PATIENCE["normal"], "seed", {0, 1}, network.causes, Manners(told=2))
    told = world.volunteered()
    assert 1 <= len(told) <= 2
    assert (world.minutes, world.asked) == (0.0, [])
    for finding in told:
        assert finding.answer != network.checks[finding.check].answers[0].id
    fresh = World(network, PATIENCE["normal"], "seed", {0, 1}, network.causes, Manners(told=2))
    live(fresh)
    assert not {finding.check for finding in told} & set(fresh.asked[: len(network.checks)])


def test_what_is_told_unasked_finds_the_fault_more_often() -> None:
    bases = [random_base(seed, 12, 20) for seed in range(8)]
    shares = []
    for told in (0, 2):
        manners = Manners(told=told)
        done = [t for b in bases for t in simulation.trials(b, "bad", 12, manners=manners)]
        shares.append(simulation.score("bad", done))
    assert shares[1].steps < shares[0].steps
