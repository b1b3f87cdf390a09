"""Worked examples of the literature through the engine's own functions.

Figures, sources and basis (found or memory): tests/published/engine.yaml. Examples of orders and of
histories are in test_published_plans.py, independent-faults-order in test_plan.py. Left out:
tree-size, a count of trees; we build none.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import combinations

import pytest
from tests.engine import classic
from tests.engine.classic import EXAMPLES, only
from tests.engine.optimum import Optimum, Policy
from tests.engine.small import Row, base, cause, check

from weldwhy.engine.belief import Finding, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.explain import odds_decibans
from weldwhy.engine.network import Network
from weldwhy.engine.rows import together
from weldwhy.engine.tuning import Tuning

FREE = Tuning(attention=0.0, test_bead=0.0, help=1e6)


@pytest.mark.parametrize("example", ["burglary-posteriors", "burglary-explaining-away"])
def test_burglary(example: str) -> None:
    joint = classic.burglary()
    for row in EXAMPLES[example]["expect"]["p_burglary"]:
        joint.holds(example, "burglary", row["given"], row["p"])


@pytest.mark.parametrize(
    ("example", "made"),
    [
        ("sprinkler-explaining-away", classic.sprinkler),
        ("chest-clinic-priors", classic.clinic),
        ("chest-clinic-asia-dyspnoea", classic.clinic),
        ("chest-clinic-homework", classic.clinic),
    ],
)
def test_sprinkler_and_chest_clinic(example: str, made: Callable[[], classic.Joint]) -> None:
    joint = made()
    for row in EXAMPLES[example]["expect"]["p"]:
        joint.holds(example, row["ask"], row["given"], row["p"])


def test_car_that_will_not_start() -> None:
    joint = classic.car()
    for name, p in EXAMPLES["car-oil-posterior"]["expect"]["p"].items():
        joint.holds("car-oil-posterior", name, {"wont_start": True}, p)


def test_noisy_or_with_leak() -> None:
    example = EXAMPLES["noisy-or-leak-table"]
    leak, net = example["inputs"]["leak"], example["inputs"]["net_strengths"]
    for row in example["expect"]["rows"]:
        singles = [1.0 - (1.0 - leak) * (1.0 - net[name]) for name in row["present"]]
        made = together(check("q", off=leak), [(1.0 - s, s) for s in singles])
        assert made[1] == pytest.approx(row["p"], abs=example["tolerance"])


def test_screening() -> None:
    example = EXAMPLES["medical-test"]
    i = example["inputs"]
    ill = cause("ill", shows={"test": {"yes": i["hit"]}})
    well = cause("well", shows={"test": {"yes": i["false_alarm"]}})
    network = only(base([ill, well], [check("test")]), {"ill": i["prior"], "well": 1 - i["prior"]})
    start = replay(network, ()).probability("ill")
    end = replay(network, (Finding("test", "yes"),)).probability("ill")
    assert end == pytest.approx(example["expect"]["posterior"], abs=example["tolerance"])
    weight = odds_decibans(end) - odds_decibans(start)
    assert weight == pytest.approx(example["expect"]["decibans"], abs=example["tolerance"])


def test_three_hypotheses_and_a_run_of_bad_ones() -> None:
    """The near-impossible third takes over at the eleventh: why "not in this list" stays alive."""
    example = EXAMPLES["three-hypotheses-decibels"]
    i = example["inputs"]
    runs = [f"item-{n:02}" for n in range(20)]
    causes = [cause(n, shows={r: {"yes": p} for r in runs}) for n, p in i["p_bad"].items()]
    total = sum(i["prior"].values())
    network = only(
        base(causes, [check(r) for r in runs]), {n: p / total for n, p in i["prior"].items()}
    )
    for count, decibans in example["expect"]["decibans_after"].items():
        belief = replay(network, tuple(Finding(r, "yes") for r in runs[:count]))
        found = [odds_decibans(belief.probability(name)) for name in i["prior"]]
        assert found == pytest.approx(decibans, abs=example["tolerance"])


def test_decibans_as_factors_of_the_odds() -> None:
    example = EXAMPLES["deciban-units"]
    for decibans, factor in example["expect"]["factor"].items():
        p = factor / (1.0 + factor)
        assert odds_decibans(p) == pytest.approx(decibans, abs=10.0 * example["tolerance"])


def alone_or_both(cured: Mapping[str, float]) -> dict[str, float]:
    """Chances of each fault alone and of both, if `cured` is P(that repair alone cures)."""
    return {**cured, "c1 c2": 1.0 - sum(cured.values())}


def two_components(prior: Mapping[str, float], o_true: Mapping[str, float]) -> Network:
    """The two components of the published tree; `o_true` is P(o is true | set at fault)."""
    cost = EXAMPLES["two-component-tree"]["inputs"]["cost"]
    # a pair's row is r1 r2 / baseline, so the baseline that gives the wanted row of the pair
    normal = o_true["c1"] * o_true["c2"] / o_true["c1 c2"]
    causes = [cause(n, shows={"o": {"true": o_true[n]}}, minutes=cost[n]) for n in ("c1", "c2")]
    asked = check("o", "true false", off=1.0 - normal, minutes=cost["observe"])
    return only(base(causes, [asked]), prior)


def test_repair_without_looking() -> None:
    example = EXAMPLES["two-component-tree"]
    prior = alone_or_both(example["inputs"]["p_cured"]["no_observation"])
    network = two_components(prior, dict.fromkeys(prior, 0.5))
    plan = Chooser(replay(network, ()), (), refused=["o"], tuned=FREE).plan
    expected = example["expect"]["no_observation"]
    assert plan.minutes == pytest.approx(expected["minutes"], abs=example["tolerance"])
    assert ("c1", "c2")[plan.items[0].cause] == expected["first"]


def test_observe_then_repair() -> None:
    """The start weights come from the branches: the prior printed beside them (.5) is not theirs.

    The branches say .77 for "c1 alone"; so what asking gains cannot be told, what it costs can.
    """
    example = EXAMPLES["two-component-tree"]
    i, expected, close = example["inputs"], example["expect"], example["tolerance"]
    true, false = (alone_or_both(i["p_cured"][branch]) for branch in ("o_true", "o_false"))
    p = i["p_o_true"]
    prior = {names: p * true[names] + (1.0 - p) * false[names] for names in true}
    network = two_components(prior, {names: p * true[names] / prior[names] for names in prior})
    value = Chooser(replay(network, ()), (), tuned=FREE).value("o")
    assert value.asked == pytest.approx(expected["observe"], abs=close)
    for branch in value.branches:
        told = (Finding("o", branch.answer),)
        plan = Chooser(replay(network, told), told, tuned=FREE).plan
        published = expected[f"o_{branch.answer}"]
        spent = i["cost"]["observe"]
        assert branch.minutes + spent == pytest.approx(published["minutes"], abs=close)
        assert plan.minutes == pytest.approx(branch.minutes, abs=close)
        assert ("c1", "c2")[plan.items[0].cause] == published["first"]


@pytest.mark.parametrize("groups", [2, 3])
def test_no_policy_beats_the_cover_bound_and_the_best_one_meets_it(groups: int) -> None:
    example = EXAMPLES["exact-cover-bound"]
    count = 3 * groups + 3
    names = [f"f{i:02}" for i in range(count)]
    causes = [
        cause(n, shows={f"g{g}": {"yes": 1.0 if i // 3 == g else 0.0} for g in range(groups)},
              minutes=1.0)
        for i, n in enumerate(names)
    ]  # fmt: skip
    rules = base(causes, [check(f"g{g}", off=0.5, minutes=1.0) for g in range(groups)])
    network = only(rules, dict.fromkeys(names, 1.0 / count))
    bound = example["expect"]["minutes"][groups]
    assert Policy(network, FREE).minutes() >= bound - 1e-9
    assert Policy(network, FREE).minutes() <= bound * 1.1
    if groups == 2:
        assert Optimum(network, FREE).minutes() == pytest.approx(bound, abs=1e-9)


def test_half_split_of_eight() -> None:
    """Three splitting checks of one bit each name one of eight; the engine values them so."""
    example = EXAMPLES["half-split"]
    causes = [
        cause(f"f{i}", shows={f"s{b}": {"yes": 1.0 if i >> b & 1 else 0.0} for b in range(3)})
        for i in range(example["inputs"]["faults"])
    ]
    rules = base(causes, [check(f"s{b}", off=0.5) for b in range(3)])
    network = only(rules, {c.id: 1 / len(causes) for c in causes})
    log: tuple[Finding, ...] = ()
    bits = 0.0
    for b in range(example["expect"]["checks"]):
        bits += Chooser(replay(network, log), log).bits(f"s{b}")
        log = (*log, Finding(f"s{b}", "yes"))
    assert bits == pytest.approx(example["expect"]["bits"], abs=example["tolerance"])
    assert replay(network, log).probability("f7") == pytest.approx(1.0)


def test_questions_with_the_most_bits_name_one_of_five_in_as_few_as_huffmans() -> None:
    """Every way to split the five is on offer; the most telling one is asked each time."""
    example = EXAMPLES["huffman-questions"]
    prior = {f"f{i}": p for i, p in enumerate(example["inputs"]["p"])}
    splits = {" ".join(s): set(s) for size in (1, 2) for s in combinations(prior, size)}
    causes = [
        cause(n, shows={**{s: {"yes": float(n in held)} for s, held in splits.items()},
                        "which": {n: 1.0}})
        for n in prior
    ]  # fmt: skip
    checks = [check(s, off=0.5) for s in splits] + [check("which", " ".join(prior), off=0.8)]
    network = only(base(causes, checks), prior)
    close = example["tolerance"]
    start = Chooser(replay(network, ()), ())
    assert start.bits("which") == pytest.approx(example["expect"]["bits"], abs=close)
    asked = questions(network, (), sorted(splits))
    assert asked == pytest.approx(example["expect"]["questions"], abs=close)


def questions(network: Network, log: tuple[Finding, ...], open_: list[str]) -> float:
    """Expected number of answers until one cause is certain, the most bits first."""
    belief = replay(network, log)
    if max(belief.weights) > 1.0 - 1e-9:
        return 0.0
    chooser = Chooser(belief, log)
    best = max(open_, key=lambda c: (round(chooser.bits(c), 9), c))
    total = 1.0
    for answer, row in zip(("no", "yes"), network.rows(best)):
        chance = sum(w * p for w, p in zip(belief.weights, row))
        if chance > 0.0:
            total += chance * questions(network, (*log, Finding(best, answer)), open_)
    return total


def test_circuit_with_two_conflicts() -> None:
    """Smallest sets of faults that explain both, and which wire to probe next.

    Larger sets stay in play here, so the smallest ones are compared with each other.
    """
    example = EXAMPLES["circuit-candidates"]
    i = example["inputs"]
    parts, p = i["components"], i["p_fault"]
    shows: dict[str, dict[str, Row]] = {part: {f"probe {part}": {"yes": 1.0}} for part in parts}
    for number, conflict in enumerate(i["conflicts"]):
        for part in conflict:
            shows[part][f"conflict {number}"] = {"yes": 1.0}
    names = sorted({name for linked in shows.values() for name in linked})
    rules = base([cause(n, shows=shows[n]) for n in parts], [check(n, off=0.0) for n in names])
    sets = [s for size in (1, 2) for s in combinations(parts, size)]
    weights = {" ".join(s): p ** len(s) * (1.0 - p) ** (len(parts) - len(s)) for s in sets}
    network = only(rules, {n: w / sum(weights.values()) for n, w in weights.items()})
    log = tuple(Finding(name, "yes") for name in names if name.startswith("conflict"))
    belief = replay(network, log)
    smallest = [row["set"] for row in example["expect"]["p"]]
    numbers = [
        network.set_number[tuple(sorted(network.number[n] for n in members))]
        for members in smallest
    ]
    total = sum(belief.weights[h] for h in numbers)
    found = [belief.weights[h] / total for h in numbers]
    published = [row["p"] for row in example["expect"]["p"]]
    assert found == pytest.approx(published, abs=example["tolerance"])
    chooser = Chooser(belief, log)
    # what the adders give is seen already; only the wires behind the multipliers can be probed
    bits = {part: chooser.bits(f"probe {part}") for part in ("M1", "M2", "M3")}
    assert max(bits, key=lambda part: bits[part]) == example["expect"]["next_probe"]
