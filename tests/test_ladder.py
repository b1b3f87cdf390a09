"""Rungs of a wall chart: what an answer names, dangers, and the chance that the ladder leads."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.engine.small import base, cause, check, random_base
from tests.replay import shipped_rules

from weldwhy.ladder import LATER, Rung, Sign, Suspects, Way
from weldwhy.model import Cause, Check, RuleBase


def chance(asked: Check, wrong: Cause, answer: str) -> float:
    """P(answer | only this is wrong) from the words of the rules, slips and "don't know" in it."""
    usual = {a.id: p for a, p in zip(asked.answers, asked.baseline)}
    named = wrong.shows.get(asked.id, {})
    rest = sum(p for a, p in usual.items() if a not in named)
    left = 1.0 - sum(named.values())
    if not named:
        p = usual[answer]
    elif rest <= 0.0:
        p = named[answer] / sum(named.values())
    else:
        p = named[answer] if answer in named else left * usual[answer] / rest
    slip = asked.noise / len(asked.answers)
    return (1.0 - asked.dont_know) * ((1.0 - asked.noise) * p + slip)


def walked(rules: RuleBase, rungs: Sequence[Rung], wrong: Cause) -> float:
    """The chance to be led to the cause, by going through all that can be answered on the way."""
    unknown = "don't know"
    every = [[*(a.id for a in rules.checks[r.check].answers), unknown] for r in rungs]
    total = 0.0
    for answers in product(*every):
        weight = 1.0
        for rung, answer in zip(rungs, answers):
            asked = rules.checks[rung.check]
            weight *= asked.dont_know if answer == unknown else chance(asked, wrong, answer)
        for rung, answer in zip(rungs, answers):
            named = [c for way in rung.ways if answer in way.answers for c in way.causes]
            if wrong.id in named:
                total += weight
                break
            if any(rules.causes[each].remedies[0].stop for each in named):
                break
    return total


def metals(rules: RuleBase, symptom: str, process: str) -> set[str]:
    """Those of the process's windows that the symptom is met on."""
    usual = {m for w in rules.windows.values() if process in w.processes for m in w.materials}
    shown = {*rules.symptoms[symptom].materials}
    return usual & shown or shown or usual


def share(rules: RuleBase, symptom: str, process: str) -> dict[str, float]:
    """How likely each cause is: how often it is met times how often it shows, as shares of 1."""
    held = metals(rules, symptom, process)
    weight = {
        c.id: c.rate(process) * c.symptoms[symptom]
        for c in rules.causes.values()
        if symptom in c.symptoms and (not c.processes or process in c.processes)
        if c.hazard or not held or not c.materials or held & {*c.materials}
    }
    return {name: each / sum(weight.values()) for name, each in weight.items()}


def ladder(suspects: Suspects, count: int) -> list[Rung]:
    """The first checks that tell anything, one below the other."""
    rungs: list[Rung] = []
    for asked in suspects.checks:
        found = suspects.rungs(asked, tuple(r.check for r in rungs))
        if found and len(rungs) < count:
            rungs.append(found[0][0])
    return rungs


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10_000), st.booleans())
def test_the_chance_that_the_ladder_leads_is_that_of_all_ways_down(seed: int, stops: bool) -> None:
    rules = random_base(seed, 5, 5)
    if stops:
        first = next(iter(rules.causes.values()))
        stop = replace(first, remedies=(replace(first.remedies[0], stop=True),))
        rules = replace(rules, causes={**rules.causes, first.id: stop})
    suspects = Suspects(rules, "bad", "p")
    rungs = ladder(suspects, 4)
    known = share(rules, "bad", "p")
    told = sum(p * walked(rules, rungs, rules.causes[name]) for name, p in known.items())
    assert suspects.leads(rungs) == pytest.approx(told, abs=1e-12)


def test_shares_are_how_often_met_times_how_often_shown() -> None:
    rules = shipped_rules()
    pairs = (("porosity", "gmaw"), ("undercut", "smaw"), ("porosity", "gtaw-dc"))
    for symptom, process in pairs:
        known = share(rules, symptom, process)
        assert Suspects(rules, symptom, process).share == pytest.approx(known)


def test_a_page_is_for_the_metals_that_the_process_usually_welds_but_for_dangers() -> None:
    rules = shipped_rules()
    suspects = Suspects(rules, "porosity", "gtaw-dc")
    assert suspects.metals == ("mild-steel", "stainless")
    assert "aluminium-oxide" not in suspects.causes
    assert "aluminium-oxide" in Suspects(rules, "porosity", "gmaw").causes
    others = [c for c in suspects.causes.values() if c.materials == ("copper-alloy",)]
    assert [c.hazard for c in others] == [True]


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10_000))
def test_the_first_variant_of_a_rung_has_all_ways_and_each_next_one_less(seed: int) -> None:
    suspects = Suspects(random_base(seed), "bad", "p")
    for asked in suspects.checks:
        made = suspects.rungs(asked, ())
        counts = [len(rung.ways) for rung, _ in made]
        assert counts == list(range(len(counts), 0, -1))
        led = [chance for _, chance in made]
        assert led == sorted(led, reverse=True)


def test_a_way_tells_its_likeliest_cause_and_points_at_the_others() -> None:
    rung = Rung("look", (Way(("yes",), ("a", "b")), Way(("no",), ("b", "c"))))
    assert rung.tells(()) == ("a", "b")
    assert rung.points_at(()) == ("c",)
    assert rung.tells({"a"}) == ("b",)
    assert rung.points_at({"a", "b"}) == ("c",)


def test_of_two_answers_that_find_as_much_the_surer_one_counts_more() -> None:
    rules = base(
        [cause("a", shows={"sure": SURE, "vague": SURE}), cause("b"), cause("c")],
        [check("sure", off=0.01), check("vague", off=0.25)],
    )
    suspects = Suspects(rules, "bad", "p")
    assert suspects.rungs("sure", ())[0][1] > 1.3 * suspects.rungs("vague", ())[0][1]


def test_a_sign_is_the_answer_that_shows_a_danger_best() -> None:
    rules = base(
        [cause("danger", shows={"look": SURE}, hazard=True), cause("dull")],
        [check("look", off=0.05)],
    )
    suspects = Suspects(rules, "bad", "p")
    assert suspects.sign("danger") == Sign("danger", "look", "yes")
    assert suspects.sign("dull") == Sign("dull")


SURE = {"yes": 0.95}


def test_an_answer_names_the_cause_that_it_speaks_for() -> None:
    rules = base(
        [cause("a", shows={"look": SURE}), cause("b"), cause("c")], [check("look", off=0.05)]
    )
    ((rung, led),) = Suspects(rules, "bad", "p").rungs("look", ())
    assert rung == Rung("look", (Way(("yes",), ("a",)),))
    found = 0.95 / 3
    sure = found / (found + 2 * 0.05 / 3)
    assert led == pytest.approx(found * sure)


def test_a_cause_named_later_counts_less() -> None:
    rules = base(
        [cause("a", base=2.0, shows={"look": SURE}), cause("b", shows={"look": SURE})],
        [check("look", off=0.05)],
    )
    ((rung, led),) = Suspects(rules, "bad", "p").rungs("look", ())
    assert rung.causes == ("a", "b")
    assert led == pytest.approx(0.95 * (2 + LATER) / 3)


def test_an_answer_that_is_as_usual_for_a_cause_never_names_it() -> None:
    rules = base(
        [cause("rare", base=0.01, shows={"look": SURE}), cause("common", base=50.0)],
        [check("look", off=0.3)],
    )
    made = Suspects(rules, "bad", "p").rungs("look", ())
    assert all("common" not in rung.causes for rung, _ in made)


def test_a_danger_is_named_by_its_surest_check_though_others_are_likelier() -> None:
    rules = base(
        [
            cause("danger", base=0.2, shows={"look": SURE}, hazard=True),
            cause("dull", base=5.0, shows={"look": {"yes": 0.9}}),
        ],
        [check("look", off=0.05)],
    )
    suspects = Suspects(rules, "bad", "p")
    assert suspects.dangers == {"look": ("danger",)}
    ((rung, _),) = suspects.rungs("look", ())
    assert rung.causes[0] == "danger"


def test_what_was_found_normal_above_makes_its_cause_less_likely() -> None:
    rules = base([cause("a", shows={"look": SURE}), cause("b")], [check("look", off=0.05)])
    left = Suspects(rules, "bad", "p").after(["look"])
    assert left["a"] == pytest.approx(0.5 * 0.05)
    assert left["b"] == pytest.approx(0.5 * 0.95)
