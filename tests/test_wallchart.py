"""A page of the wall: it is filled to its measure, dangers first, and says truly what it covers."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.engine.small import base, cause, check, random_base
from tests.test_ladder import SURE, share, walked

from weldwhy.ladder import Rung, Sign
from weldwhy.model import Caution, RuleBase
from weldwhy.wallchart import WallChart, build


@dataclass(frozen=True)
class Counted:
    """A measure of its own: a check takes 1, a remedy 2, a caution 3."""

    room: float

    def rung(self, rung: Rung, told: Collection[str]) -> float:
        here = rung.tells(told)
        return 1.0 + sum(2.0 if cause in here else 0.5 for cause in rung.causes)

    def item(self, cause: str) -> float:
        return 2.0

    def caution(self, caution: str) -> float:
        return 3.0

    def sign(self, sign: Sign) -> float:
        return 1.0


def careful(seed: int) -> RuleBase:
    """A random base whose remedies carry cautions, one of which stops."""
    made = random_base(seed, 10, 10)
    names = ("hot", "sharp", "stop")
    causes = {
        name: replace(c, remedies=(replace(c.remedies[0], cautions=(names[place % 3],)),))
        for place, (name, c) in enumerate(made.causes.items())
    }
    cautions = {n: Caution(n, f"{n}.", "invented", stop=n == "stop") for n in names}
    return replace(made, causes=causes, cautions=cautions)


def size(rules: RuleBase, chart: WallChart, measure: Counted) -> float:
    """How much of the page is taken, added up anew from what stands on it."""
    total = 0.0
    for rung, here in chart.told:
        total += 1.0 + 2.0 * len(here) + 0.5 * (len(rung.causes) - len(here))
    return total + 2.0 * len(chart.items) + 3.0 * len(chart.cautions) + 1.0 * len(chart.signs)


ROOMS = st.sampled_from([0.0, 6.0, 12.0, 20.0, 40.0, 200.0])


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), ROOMS)
def test_a_page_never_takes_more_than_its_room(seed: int, room: float) -> None:
    rules, measure = careful(seed), Counted(room)
    chart = build(rules, "bad", "p", measure)
    assert size(rules, chart, measure) <= room + 1e-9


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10_000), ROOMS)
def test_what_a_page_says_that_it_covers_can_be_counted(seed: int, room: float) -> None:
    rules = careful(seed)
    chart = build(rules, "bad", "p", Counted(room))
    known = share(rules, "bad", "p")
    here = {*chart.items, *(c for rung in chart.rungs for c in rung.causes)}
    assert chart.stands == pytest.approx(sum(known[c] for c in here))
    assert chart.left_out == len(known) - len(here)
    few = chart.rungs[:5]  # all ways down more rungs are too many to go
    if len(chart.rungs) <= 5:
        told = sum(p * walked(rules, few, rules.causes[c]) for c, p in known.items())
        assert chart.leads == pytest.approx(told, abs=1e-12)
    assert chart.leads <= chart.stands + 1e-9


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 10_000), ROOMS)
def test_every_caution_that_a_page_needs_is_on_it_once_and_stops_come_first(
    seed: int, room: float
) -> None:
    rules = careful(seed)
    chart = build(rules, "bad", "p", Counted(room))
    here = [*chart.items, *(c for rung in chart.rungs for c in rung.causes)]
    needed = {each for c in here for each in rules.causes[c].remedies[0].cautions}
    assert set(chart.cautions) >= needed
    assert len(set(chart.cautions)) == len(chart.cautions)
    stops = [rules.cautions[each].stop for each in chart.cautions]
    assert stops == sorted(stops, reverse=True)


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 10_000), ROOMS)
def test_every_cause_on_the_page_has_its_remedy_there_once(seed: int, room: float) -> None:
    rules = careful(seed)
    chart = build(rules, "bad", "p", Counted(room))
    told = [*chart.items, *(cause for _, here in chart.told for cause in here)]
    assert len(told) == len(set(told))
    assert {cause for rung in chart.rungs for cause in rung.causes} <= set(told)
    if room == 200.0:
        assert chart.left_out == 0
        assert chart.stands == pytest.approx(1.0)


def test_the_check_of_a_likely_danger_is_the_first_rung() -> None:
    rules = base(
        [
            cause("danger", base=0.3, shows={"smoke": SURE}, hazard=True),
            cause("a", base=5.0, shows={"look": SURE}),
            cause("b", base=3.0),
        ],
        [check("look", off=0.05), check("smoke", off=0.05, minutes=9.0)],
    )
    chart = build(rules, "bad", "p", Counted(20.0))
    assert [rung.check for rung in chart.rungs][:1] == ["look"]  # it is seldom met
    likelier = base(
        [
            cause("danger", base=0.6, shows={"smoke": SURE}, hazard=True),
            cause("a", base=5.0, shows={"look": SURE}),
            cause("b", base=3.0),
        ],
        [check("look", off=0.05), check("smoke", off=0.05, minutes=9.0)],
    )
    chart = build(likelier, "bad", "p", Counted(20.0))
    assert [rung.check for rung in chart.rungs] == ["smoke", "look"]
    assert chart.signs == ()


def test_a_danger_that_no_rung_names_is_named_with_what_shows_it() -> None:
    rules = base([cause("danger", base=0.3, hazard=True), cause("a", base=50.0)], [])
    assert build(rules, "bad", "p", Counted(3.0)).signs == ()  # too unlikely to be named
    likelier = base(
        [cause("danger", base=2.0, shows={"look": SURE}, hazard=True), cause("a", base=50.0)],
        [check("look", off=0.05)],
    )
    chart = build(likelier, "bad", "p", Counted(3.0))
    assert chart.items == ("a",)
    assert chart.signs == (Sign("danger", "look", "yes"),)


def test_of_checks_that_look_at_one_thing_only_one_is_a_rung() -> None:
    rules = base(
        [cause("a", shows={"one": SURE, "two": SURE}), cause("b", shows={"three": SURE})],
        [
            check("one", off=0.05, same_look="bead"),
            check("two", off=0.05, same_look="bead"),
            check("three", off=0.05),
        ],
    )
    chart = build(rules, "bad", "p", Counted(100.0))
    assert sorted(rung.check for rung in chart.rungs) in (["one", "three"], ["three", "two"])


def test_what_is_cheap_and_likely_comes_first_in_the_list() -> None:
    rules = base(
        [
            cause("slow", base=1.0, minutes=60.0),
            cause("quick", base=1.0, minutes=1.0),
            cause("likely", base=9.0, minutes=5.0),
        ],
        [],
    )
    assert build(rules, "bad", "p", Counted(100.0)).items == ("likely", "quick", "slow")
