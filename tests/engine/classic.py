"""Classic small networks given to the engine, and the same built in the reference library.

The engine holds sets of causes, a classic network hidden nodes. So each joint state of the hidden
nodes is one cause, with the state's chance as its start weight; nodes that may be seen are checks.
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
from tests.engine.small import base, cause, check

from weldwhy.engine.belief import Finding, replay
from weldwhy.engine.network import Members, Network, network_for
from weldwhy.model import RuleBase

FILE = Path(__file__).parents[1] / "published" / "engine.yaml"
EXAMPLES: dict[str, dict[str, Any]] = {
    example["id"]: example for example in yaml.safe_load(FILE.read_text())["examples"]
}
Nodes = Mapping[str, tuple[list[str], reference.Yes]]


def only(rules: RuleBase, prior: Mapping[str, float]) -> Network:
    """The network of the rules with just these chances; "a b" is the set of causes a and b."""
    network = network_for(rules, "p", ("bad",))
    start = [0.0] * len(network.sets)
    for names, chance in prior.items():
        members: Members = tuple(sorted(network.number[name] for name in names.split()))
        start[network.set_number[members]] = chance
    network.__dict__["start"] = start  # in place of the cached property's own figures
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


def sprinkler() -> Joint:
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
    return Joint(hidden, wet)


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


def car() -> Joint:
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
    return Joint(hidden, seen)
