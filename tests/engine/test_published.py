"""Worked examples of the literature through the engine's own functions.

Figures, sources and basis (found or memory): tests/published/engine.yaml. A network whose hidden
part is joint (an alarm between a burglary and two callers) is given to the engine with one cause
for each joint state; the same network is built node by node in the reference library.

Left out, since they ask what the engine does not have: order-dependent-actions (one action that
cures several faults), test-sequencing-6x5 (naming a state at least cost, with nothing to fix),
circuit-candidates (weights of the smallest sets only; ours keeps larger sets in play), beta-update
(history shrinks a rate, not a share), huffman-questions (free choice of any question), tree-size (a
count of trees; we build none). pc-exchange and independent-faults-order are in test_plan.py.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product
from math import prod
from pathlib import Path
from typing import Any

import pytest
import yaml
from tests.engine import reference
from tests.engine.optimum import Optimum, Policy
from tests.engine.small import base, cause, check

from weldwhy.engine.belief import Finding, replay
from weldwhy.engine.choice import Chooser
from weldwhy.engine.explain import odds_decibans
from weldwhy.engine.network import Network, network_for
from weldwhy.engine.rows import together
from weldwhy.engine.tuning import Tuning
from weldwhy.model import RuleBase

FILE = Path(__file__).parents[1] / "published" / "engine.yaml"
EXAMPLES: dict[str, dict[str, Any]] = {
    example["id"]: example for example in yaml.safe_load(FILE.read_text())["examples"]
}
FREE = Tuning(attention=0.0, test_bead=0.0, help=1e6)
State = dict[str, bool]
Nodes = Mapping[str, tuple[list[str], reference.Yes]]


def only(rules: RuleBase, prior: Mapping[str, float]) -> Network:
    """The network of the rules with just these chances of each cause alone, and no other set."""
    network = network_for(rules, "p", ("bad",))
    start = [0.0] * len(network.sets)
    for name, chance in prior.items():
        start[network.set_number[(network.number[name],)]] = chance
    network.__dict__["start"] = start
    return network


def _plainly(node: str) -> reference.Yes:
    """The answer about a hidden node itself: what it is."""
    return lambda state: float(state[node])


class Joint:
    """A classic network: hidden nodes as joint states of the engine, seen nodes as its checks."""

    def __init__(self, hidden: Nodes, seen: Nodes) -> None:
        self.library = reference.binary({**hidden, **seen})
        self.states = {}
        prior = {}
        for values in product((False, True), repeat=len(hidden)):
            state = dict(zip(hidden, values))
            name = "".join("ny"[v] for v in values)
            self.states[name] = state
            prior[name] = prod(
                f(state) if state[node] else 1.0 - f(state) for node, (_, f) in hidden.items()
            )
        # an answer about a hidden node is a check that never errs
        tables = {node: _plainly(node) for node in hidden} | {n: f for n, (_, f) in seen.items()}
        causes = [
            cause(n, shows={t: {"no": 1.0 - f(s), "yes": f(s)} for t, f in tables.items()})
            for n, s in self.states.items()
        ]
        self.network = only(base(causes, [check(t, off=0.5) for t in tables]), prior)

    def yes(self, asked: str, given: Mapping[str, bool]) -> float:
        """P(asked is yes | given) by the engine."""
        log = tuple(Finding(name, "yes" if value else "no") for name, value in given.items())
        belief = replay(self.network, log)
        row = self.network.rows(asked)[1]
        return sum(w * p for w, p in zip(belief.weights, row))

    def holds(self, example: str, asked: str, given: Mapping[str, bool], expected: float) -> None:
        """Engine equals library to 1e-9, and both equal the published figure to its tolerance."""
        ours = self.yes(asked, given)
        assert ours == pytest.approx(reference.yes(self.library, asked, given), abs=1e-9)
        assert ours == pytest.approx(expected, abs=EXAMPLES[example]["tolerance"])


def burglary() -> Joint:
    i = EXAMPLES["burglary-posteriors"]["inputs"]
    alarm = {(True, True): "both", (True, False): "burglary", (False, True): "earthquake"}

    def rings(s: Mapping[str, bool]) -> float:
        return float(i["alarm"][alarm.get((s["burglary"], s["earthquake"]), "neither")])

    def calls(who: str) -> reference.Yes:
        return lambda s: float(i[who]["alarm" if s["alarm"] else "no_alarm"])

    hidden: Nodes = {
        "burglary": ([], lambda s: i["burglary"]),
        "earthquake": ([], lambda s: i["earthquake"]),
        "alarm": (["burglary", "earthquake"], rings),
    }
    return Joint(hidden, {who: (["alarm"], calls(who)) for who in ("john", "mary")})


@pytest.mark.parametrize("example", ["burglary-posteriors", "burglary-explaining-away"])
def test_burglary(example: str) -> None:
    joint = burglary()
    for row in EXAMPLES[example]["expect"]["p_burglary"]:
        joint.holds(example, "burglary", row["given"], row["p"])


def test_sprinkler() -> None:
    i = EXAMPLES["sprinkler-explaining-away"]["inputs"]
    grass = {(True, True): "both", (True, False): "sprinkler", (False, True): "rain"}

    def sky(node: str) -> reference.Yes:
        return lambda s: float(i[node]["cloudy" if s["cloudy"] else "clear"])

    hidden: Nodes = {
        "cloudy": ([], lambda s: i["cloudy"]),
        "sprinkler": (["cloudy"], sky("sprinkler")),
        "rain": (["cloudy"], sky("rain")),
    }
    wet: Nodes = {
        "wet": (
            ["sprinkler", "rain"],
            lambda s: float(i["wet"][grass.get((s["sprinkler"], s["rain"]), "neither")]),
        )
    }
    joint = Joint(hidden, wet)
    for row in EXAMPLES["sprinkler-explaining-away"]["expect"]["p"]:
        joint.holds("sprinkler-explaining-away", row["ask"], row["given"], row["p"])


def clinic() -> Joint:
    i = EXAMPLES["chest-clinic-priors"]["inputs"]
    short = {(True, True): "both", (True, False): "E", (False, True): "B"}

    def on(node: str, parent: str) -> reference.Yes:
        return lambda s: float(i[node][parent if s[parent] else f"not {parent}"])

    hidden: Nodes = {
        "A": ([], lambda s: i["A"]),
        "S": ([], lambda s: i["S"]),
        "T": (["A"], on("T", "A")),
        "L": (["S"], on("L", "S")),
        "B": (["S"], on("B", "S")),
        "E": (["T", "L"], lambda s: float(s["T"] or s["L"])),
    }
    seen: Nodes = {
        "X": (["E"], on("X", "E")),
        "D": (["E", "B"], lambda s: float(i["D"][short.get((s["E"], s["B"]), "neither")])),
    }
    return Joint(hidden, seen)


@pytest.mark.parametrize(
    "example", ["chest-clinic-priors", "chest-clinic-asia-dyspnoea", "chest-clinic-homework"]
)
def test_chest_clinic(example: str) -> None:
    joint = clinic()
    for row in EXAMPLES[example]["expect"]["p"]:
        joint.holds(example, row["ask"], row["given"], row["p"])


def test_car_that_will_not_start() -> None:
    i = EXAMPLES["car-oil-posterior"]["inputs"]
    dead = i["battery_old"] * i["battery_dead"]["old"]
    dead += (1.0 - i["battery_old"]) * i["battery_dead"]["not_old"]

    def root(name: str) -> reference.Yes:
        return lambda s: float(i["p"][name])

    def flat(s: Mapping[str, bool]) -> float:
        if s["battery_dead"] or s["fan_belt"] or s["alternator"]:
            return 1.0
        return float(i["charging_error_leak"])

    stops = ("battery_flat", "no_oil", "tank_empty", "fuel_line", "starter")
    hidden: Nodes = {
        **{name: ([], root(name)) for name in i["p"]},
        "battery_dead": ([], lambda s: dead),
        "battery_flat": (["battery_dead", "fan_belt", "alternator"], flat),
    }
    seen: Nodes = {
        "wont_start": (
            list(stops),
            lambda s: 1.0 if any(s[n] for n in stops) else float(i["wont_start_leak"]),
        )
    }
    joint = Joint(hidden, seen)
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
        assert odds_decibans(p) == pytest.approx(decibans, abs=0.001)


def test_observe_then_repair() -> None:
    """Asking first costs 19.2, not asking 20.0: the engine's gain for the question is 0.8."""
    example = EXAMPLES["two-component-tree"]
    i, cost = example["inputs"], example["inputs"]["cost"]
    first = {n: i["p_cured"][b]["c1"] for n, b in (("yes", "o_true"), ("no", "o_false"))}
    p_yes = i["p_o_true"]
    p_c1 = p_yes * first["yes"] + (1 - p_yes) * first["no"]
    # P(c1 is at fault | o) from the printed table; the second repair cures the rest
    shows = {
        "c1": {"o": {"yes": p_yes * first["yes"] / p_c1, "no": (1 - p_yes) * first["no"] / p_c1}},
        "c2": {
            "o": {
                "yes": p_yes * (1 - first["yes"]) / (1 - p_c1),
                "no": (1 - p_yes) * (1 - first["no"]) / (1 - p_c1),
            }
        },
    }
    causes = [cause(n, shows=shows[n], minutes=cost[n]) for n in ("c1", "c2")]
    asked = check("o", "no yes", off=0.3, minutes=cost["observe"])
    network = only(base(causes, [asked]), {"c1": p_c1, "c2": 1 - p_c1})
    chooser = Chooser(replay(network, ()), (), tuned=FREE)
    branches = {b.answer: b.minutes + cost["observe"] for b in chooser.value("o").branches}
    expected = example["expect"]["o_true"]
    assert branches["yes"] == pytest.approx(expected["minutes"], abs=example["tolerance"])


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
