"""What the belief promises, on random rule bases; and equality with enumeration written apart."""

from __future__ import annotations

import random
from itertools import combinations, permutations
from math import prod

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.engine.small import base, cause, check, random_base

from weldwhy.engine import rows, tuning
from weldwhy.engine.belief import Belief, Finding, Fix, Log, replay
from weldwhy.engine.explain import odds_decibans, weights_of_evidence
from weldwhy.engine.network import EMPTY, Network, network_for
from weldwhy.model import Check, RuleBase

SEEDS = st.integers(0, 10_000)


def net(rules: RuleBase, *triples: str) -> Network:
    return network_for(rules, "p", ("bad",), triples=frozenset(triples))


def some_answers(rules: RuleBase, rng: random.Random, count: int = 4) -> list[Finding]:
    checks = rng.sample(sorted(net(rules).checks), k=min(count, len(net(rules).checks)))
    return [Finding(c, rng.choice(rules.checks[c].answers).id) for c in checks]


def by_enumeration(rules: RuleBase, answers: list[Finding]) -> dict[str, float]:
    """P(cause) by plain enumeration over single faults, pairs and the unlisted, written afresh."""
    alone = {c.id: c.base * c.symptoms["bad"] for c in rules.causes.values()}
    group = {c.id: c.exclusive or c.id for c in rules.causes.values()}
    ones = {(c,): alone[c] for c in alone}
    twos = {(a, b): alone[a] * alone[b] for a, b in combinations(alone, 2) if group[a] != group[b]}
    weight: dict[tuple[str, ...], float] = {}
    for sets, mass in ((ones, 0.62 / 0.92), (twos, 0.30 / 0.92)):
        total = sum(sets.values())
        weight |= {key: 0.97 * mass * w / total for key, w in sets.items()}
    weight[("?",)] = 0.03
    for finding in answers:
        asked = rules.checks[finding.check]
        place = [a.id for a in asked.answers].index(finding.answer)
        for members in weight:
            row = _row(rules, asked, members)
            floor = asked.noise / len(asked.answers)
            weight[members] *= (1 - asked.noise) * row[place] + floor
    total = sum(weight.values())
    return {c: sum(w for m, w in weight.items() if c in m) / total for c in alone}


def _row(rules: RuleBase, asked: Check, members: tuple[str, ...]) -> list[float]:
    b, k = asked.baseline, len(asked.answers)
    if members == ("?",):
        return [0.5 * p + 0.5 / k for p in b]
    linked = [rules.causes[c].shows for c in members if asked.id in rules.causes[c].shows]
    singles = []
    for shows in linked:
        ((named, grade),) = shows[asked.id].items()
        at = [a.id for a in asked.answers].index(named)
        singles.append([grade if i == at else (1 - grade) * b[i] / (1 - b[at]) for i in range(k)])
    if not singles:
        return list(b)
    if len(singles) == 1:
        return singles[0]
    normal = min(max(b[0] * prod(s[0] / b[0] for s in singles), 0.005), 0.985)
    shares = [sum(s[i] for s in singles) for i in range(1, k)]
    return [normal, *((1 - normal) * s / sum(shares) for s in shares)]


@given(SEEDS)
def test_equals_an_enumeration_written_apart(seed: int) -> None:
    rules = random_base(seed)
    answers = some_answers(rules, random.Random(seed))
    found = replay(net(rules), tuple(answers)).marginals()
    for name, p in by_enumeration(rules, answers).items():
        assert found[name] == pytest.approx(p, abs=1e-12)


@given(SEEDS)
def test_weights_are_a_distribution_after_any_log(seed: int) -> None:
    rules, rng = random_base(seed), random.Random(seed)
    log: list[Finding | Fix] = list(some_answers(rules, rng))
    for name in rng.sample(sorted(rules.causes), k=3):
        log.insert(rng.randint(0, len(log)), Fix(name, rng.choice(tuning.REPORTS)))
    replay(net(rules, "c0"), tuple(log)).check_invariants()


@given(SEEDS)
def test_the_order_of_answers_between_fixes_is_bit_for_bit_irrelevant(seed: int) -> None:
    rules = random_base(seed)
    answers = some_answers(rules, random.Random(seed), 3)
    beliefs = {replay(net(rules), p).weights for p in permutations(answers)}
    assert len(beliefs) == 1


@given(SEEDS)
def test_undo_restores_bit_for_bit(seed: int) -> None:
    rules = random_base(seed)
    log: Log = tuple(some_answers(rules, random.Random(seed)))
    before = replay(net(rules), log[:-1]).weights
    replay(net(rules), log)
    assert replay(net(rules), log[:-1]).weights == before


@given(SEEDS)
def test_a_cause_without_link_to_the_symptom_changes_nothing(seed: int) -> None:
    rules = random_base(seed)
    stranger = cause("z-stranger", 20.0, {"q0": {"low": 0.9}}, symptoms={"other": 0.9})
    wider = base([*rules.causes.values(), stranger], list(rules.checks.values()), "bad other")
    log = tuple(some_answers(rules, random.Random(seed)))
    assert replay(net(wider), log).weights == replay(net(rules), log).weights


@given(SEEDS)
def test_relabelling_and_reordering_the_rules_changes_no_value(seed: int) -> None:
    rules = random_base(seed)
    other = base(list(rules.causes.values())[::-1], list(rules.checks.values())[::-1])
    log = tuple(some_answers(rules, random.Random(seed)))
    found, again = replay(net(rules), log).marginals(), replay(net(other), log).marginals()
    assert all(found[c] == pytest.approx(again[c], abs=1e-9) for c in found)


@given(SEEDS)
def test_expected_posterior_equals_prior(seed: int) -> None:
    rules = random_base(seed)
    log = tuple(some_answers(rules, random.Random(seed), 2))
    network, belief = net(rules), replay(net(rules), log)
    check_id = next(c for c in sorted(network.checks) if c not in {f.check for f in log})
    before = belief.marginals()
    mean = dict.fromkeys(before, 0.0)
    for answer, row in zip(rules.checks[check_id].answers, network.rows(check_id)):
        chance = sum(w * p for w, p in zip(belief.weights, row))
        after = replay(network, (*log, Finding(check_id, answer.id))).marginals()
        for c in mean:
            mean[c] += chance * after[c]
    assert all(mean[c] == pytest.approx(before[c], abs=1e-12) for c in before)


@given(SEEDS)
def test_decibans_add_up_to_the_change_in_log_odds(seed: int) -> None:
    rules = random_base(seed)
    log = tuple(some_answers(rules, random.Random(seed)))
    network = net(rules)
    start, end = replay(network, ()), replay(network, log)
    for name in rules.causes:
        total = sum(w.decibans for w in weights_of_evidence(network, log, name))
        change = odds_decibans(end.probability(name)) - odds_decibans(start.probability(name))
        assert total == pytest.approx(change, abs=1e-9)


@given(SEEDS)
def test_answers_alone_never_make_a_certainty(seed: int) -> None:
    rules = random_base(seed)
    belief = replay(net(rules), tuple(some_answers(rules, random.Random(seed), 8)))
    assert all(0.0 < p < 1.0 for p in belief.marginals().values())


def test_an_answer_above_the_baseline_raises_its_cause() -> None:
    rules = base([cause("a", shows={"q": {"yes": 0.9}}), cause("b"), cause("c")], [check("q")])
    before, after = replay(net(rules), ()), replay(net(rules), (Finding("q", "yes"),))
    assert after.probability("a") > before.probability("a")
    assert after.probability("b") < before.probability("b")


def test_a_link_equal_to_the_baseline_is_no_link() -> None:
    rules = base([cause("a", shows={"q": {"yes": 0.1}}), cause("b")], [check("q", off=0.1)])
    assert not net(rules).checks


def test_two_causes_on_a_yes_no_check_are_exactly_leaky_noisy_or() -> None:
    """P(no) = (1 - leak) x product of (1 - net strength); Pearl 1988, from memory.

    The figures (leak .1, net strengths .8 and .6) are the published table of
    tests/published/engine.yaml, id noisy-or-leak-table.
    """
    q = check("q", off=0.1)
    one, two = 1 - 0.9 * 0.2, 1 - 0.9 * 0.4
    made = rows.together(q, [(1 - one, one), (1 - two, two)])
    assert made[1] == pytest.approx(0.928, abs=1e-12)


def test_exclusive_causes_are_never_believed_together() -> None:
    rules = base([cause("a", exclusive="x"), cause("b", exclusive="x"), cause("c")], [])
    network = net(rules)
    assert network.start[network.set_number[(0, 1)]] == 0.0
    assert network.start[network.set_number[(0, 2)]] > 0.0


def test_a_sound_bead_leaves_only_the_empty_set() -> None:
    rules = random_base(3)
    belief = replay(net(rules), (Fix("c1", "sound"),))
    assert belief.weights[EMPTY] == belief.sound == 1.0


def test_a_failed_fix_lowers_its_cause_and_better_leaves_a_second_fault() -> None:
    rules = base([cause(n, works=0.9) for n in "abc"], [])
    start = replay(net(rules), ())
    same = replay(net(rules), (Fix("a", "no change"),))
    assert same.probability("a") < start.probability("a")
    better = replay(net(rules), (Fix("a", "better"),))
    pair_before, pair_after = start.weights[-3:], better.weights
    assert better.unlisted < same.unlisted  # "better" says the fix was right, so another is left
    assert sum(pair_after[-3:]) < sum(pair_before)


def test_a_second_answer_replaces_the_first() -> None:
    rules = random_base(5)
    name = sorted(net(rules).checks)[0]
    first, last = rules.checks[name].answers[0].id, rules.checks[name].answers[-1].id
    again = replay(net(rules), (Finding(name, first), Finding(name, last)))
    assert again.weights == replay(net(rules), (Finding(name, last),)).weights


def test_an_answer_after_a_fix_that_could_change_it_stands_beside_the_old_one() -> None:
    rules = base(
        [cause("a", shows={"q": {"yes": 0.9}}), cause("b", shows={"r": {"yes": 0.9}})],
        [check("q"), check("r")],
    )
    fixed = Fix("a", "better")
    both = replay(net(rules), (Finding("q", "yes"), fixed, Finding("q", "no")))
    assert both.weights != replay(net(rules), (fixed, Finding("q", "no"))).weights
    same = replay(net(rules), (Finding("r", "yes"), fixed, Finding("r", "yes")))
    assert same.weights == replay(net(rules), (fixed, Finding("r", "yes"))).weights


def test_checks_of_one_look_count_for_less_than_their_product() -> None:
    def belief(look: str) -> Belief:
        shows = {"q": {"yes": 0.9}, "r": {"yes": 0.9}}
        checks = [check("q", same_look=look), check("r", same_look=look)]
        rules = base([cause("a", shows=shows), cause("b")], checks)
        return replay(net(rules), (Finding("q", "yes"), Finding("r", "yes")))

    assert belief("one").probability("a") < belief("").probability("a")


def test_a_third_fault_comes_in_once_a_fix_has_failed() -> None:
    rules = base([cause(n) for n in "abcd"], [])
    assert max(map(len, net(rules).sets)) == 2
    held = net(rules, "a")
    triples = [s for s in held.sets if len(s) == 3]
    assert triples == [(0, 1, 2), (0, 1, 3), (0, 2, 3)]
    assert sum(held.start) == pytest.approx(1.0, abs=1e-12)


def test_two_symptoms_are_shared_out_over_the_causes() -> None:
    """P(both symptoms, each cause causes one) for one cause is the product of its grades."""
    causes = [
        cause("both", symptoms={"bad": 0.6, "worse": 0.5}),
        cause("one", symptoms={"bad": 0.9}),
        cause("two", symptoms={"worse": 0.9}),
    ]
    rules = base(causes, [], "bad worse")
    network = network_for(rules, "p", ("bad", "worse"))
    start = dict(zip(network.sets, network.start))
    assert start[(1,)] == start[(2,)] == 0.0
    # by hand: {both, one}: "one" must cause "bad"; "both" must then cause "worse"
    by_hand = {(0, 1): 0.9 * 0.5, (0, 2): 0.9 * 0.6, (1, 2): 0.81}
    total = sum(by_hand.values())
    pairs = sum(start[p] for p in by_hand)
    for pair, weight in by_hand.items():
        assert start[pair] / pairs == pytest.approx(weight / total, abs=1e-12)


def test_answers_that_disagree_give_a_surprise() -> None:
    rules = base(
        [cause("a", shows={"q": {"yes": 0.95}}), cause("b", shows={"r": {"yes": 0.95}})],
        [check("q", off=0.02), check("r", off=0.02)],
    )
    agree = replay(net(rules), (Finding("q", "yes"), Finding("r", "no")))
    differ = replay(net(rules), (Finding("q", "yes"), Finding("r", "yes")))
    alone = replay(net(rules), (Finding("q", "yes"),))
    assert alone.surprise == pytest.approx(0.0, abs=1e-12)
    assert differ.surprise > agree.surprise
