"""Soft evidence: an answer that is not certain, and a symptom that was picked by its picture."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from math import isclose, prod

import pytest
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.engine import tuning
from weldwhy.engine.belief import Finding, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.network import UNLISTED, Network, network_for
from weldwhy.model import Picture, RuleBase

from .small import base, cause, check

LOOK = check("look", "no yes maybe", off=0.2)
ONE = cause("one", shows={"look": {"yes": 0.7}})
TWO = cause("two", shows={"look": {"maybe": 0.5}})


def network(*causes: object) -> Network:
    return Network(causes, [LOOK], ("bad",))  # type: ignore[arg-type]


@given(st.floats(0.0, 1.0), st.sampled_from(["no", "yes", "maybe"]))
def test_a_doubtful_answer_moves_belief_part_of_the_way(trust: float, answer: str) -> None:
    found = network(ONE, TWO)
    before = replay(found, ()).probability("one")
    after = replay(found, (Finding("look", answer),)).probability("one")
    between = replay(found, (Finding("look", answer, trust),)).probability("one")
    assert min(before, after) - 1e-12 <= between <= max(before, after) + 1e-12


def test_words_that_mean_nothing_change_nothing_and_sure_ones_are_an_answer() -> None:
    found = network(ONE, TWO)
    assert replay(found, (Finding("look", "yes", 0.0),)).weights == pytest.approx(
        replay(found, ()).weights
    )
    sure = replay(found, (Finding("look", "yes", 1.0),))
    assert sure.weights == replay(found, (Finding("look", "yes"),)).weights


@given(st.floats(0.0, 1.0))
def test_on_the_average_over_its_answers_a_doubtful_check_changes_nothing(trust: float) -> None:
    """What is believed beforehand is the mean of what will be, by how likely each answer is."""
    found = network(ONE, TWO)
    start = replay(found, ()).weights
    mean = [0.0] * len(start)
    for number, answer in enumerate(found.checks["look"].answers):
        row = found.rows("look")[number]
        likely = sum(w * (trust * p + (1.0 - trust) / 3) for w, p in zip(start, row, strict=True))
        after = replay(found, (Finding("look", answer.id, trust),)).weights
        mean = [m + likely * w for m, w in zip(mean, after, strict=True)]
    assert mean == pytest.approx(start, abs=1e-9)


def test_a_check_that_was_only_supposed_may_still_be_asked() -> None:
    found = network(ONE, TWO)
    doubtful, sure = (Finding("look", "yes", 0.5),), (Finding("look", "yes"),)
    assert Chooser(replay(found, doubtful), doubtful).open_checks == ("look",)
    assert Chooser(replay(found, sure), sure).open_checks == ()


def test_the_answer_itself_takes_the_place_of_the_supposed_one() -> None:
    found = network(ONE, TWO)
    log = (Finding("look", "maybe", 0.5), Finding("look", "yes"))
    assert replay(found, log).weights == replay(found, log[1:]).weights


# pictures

HOLES = cause("holes", symptoms={"porosity": 0.8})
WORMS = cause("worms", symptoms={"wormholes": 0.6}, base=3.0)
BOTH = cause("both", symptoms={"porosity": 0.3, "wormholes": 0.4})
FAR = cause("far", symptoms={"undercut": 0.9})


def rules(like: float) -> RuleBase:
    made = base([HOLES, WORMS, BOTH, FAR], [])
    return replace(
        made, pictures={"porosity": Picture("porosity", "bead", {}, {"wormholes": like})}
    )


def picked(like: float, *, sure: bool = False) -> Network:
    return network_for(rules(like), "", ("porosity",), resembled=() if sure else ("porosity",))


def test_a_look_alike_stays_in_play_when_a_picture_was_picked() -> None:
    assert set(picked(0.5).number) == {"holes", "worms", "both"}
    assert set(picked(0.5, sure=True).number) == {"holes", "both"}


def test_a_check_for_the_look_alike_alone_can_be_asked_when_a_picture_was_picked() -> None:
    tracks = replace(check("tracks", off=0.1), symptoms=("wormholes",))
    worms = replace(WORMS, shows={"tracks": {"yes": 0.9}})
    made = replace(base([HOLES, worms], [tracks]), pictures=rules(0.5).pictures)
    assert set(network_for(made, "", ("porosity",), resembled=("porosity",)).checks) == {"tracks"}
    assert not network_for(made, "", ("porosity",)).checks


def test_who_is_hardly_ever_mistaken_is_not_held() -> None:
    assert tuning.LOOKED_AT > 0.06 / 1.06 * 0.6
    assert "worms" not in picked(0.06).number


@pytest.mark.parametrize("like", [0.3, 0.5, 0.7])
def test_a_picked_picture_weighs_as_the_sum_over_what_it_may_be(like: float) -> None:
    """Against a plain enumeration of sets, members and which of them is the one seen."""
    found = picked(like)
    chance = {}
    for each in found.causes:
        own = each.symptoms.get("porosity", 0.0)
        # who has worm holes picks their own picture (1) or this one (like)
        other = like / (1.0 + like) * each.symptoms.get("wormholes", 0.0)
        chance[each.id] = own + other - own * other
    single = {(n,): each.base * chance[each.id] for n, each in enumerate(found.causes)}
    double = {
        (i, j): prod(found.causes[m].base * chance[found.causes[m].id] for m in (i, j))
        for i, j in combinations(range(len(found.causes)), 2)
    }
    held = tuning.ONE_FAULT + tuning.TWO_FAULTS
    for group, mass in ((single, tuning.ONE_FAULT), (double, tuning.TWO_FAULTS)):
        for members, weight in group.items():
            expected = weight / sum(group.values()) * mass / held * (1.0 - tuning.UNLISTED)
            told = found.start[found.set_number[members]]
            assert isclose(told, expected, rel_tol=1e-9)
    assert isclose(found.start[UNLISTED], tuning.UNLISTED, rel_tol=1e-9)


def test_a_picture_without_look_alikes_ranks_as_a_report_does() -> None:
    made = replace(rules(0.5), pictures={})
    seen = network_for(made, "", ("porosity",), resembled=("porosity",))
    told = network_for(made, "", ("porosity",))
    assert seen.start == pytest.approx(told.start)
