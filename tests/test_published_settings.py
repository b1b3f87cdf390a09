"""The operating windows against publications; those written from memory are scored apart."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from weldwhy import rulebase, units
from weldwhy.model import RuleBase, WindowRow
from weldwhy.units import Target, parse
from weldwhy.windows import find

Fact = dict[str, Any]

PUBLISHED: dict[str, list[Fact]] = yaml.safe_load(
    (Path(__file__).parent / "published" / "settings.yaml").read_text()
)
UNITS = {"amps": "A", "volts": "V", "wire_feed": "ipm", "gas_flow": "cfh", "travel": "in/min"}
SCORED = ("amps", "volts", "wire_feed")


@pytest.fixture(scope="module")
def rules() -> RuleBase:
    base = rulebase.survey([rulebase.default_folder()]).base
    assert base.windows, "no windows were read"
    return base


def bounds(target: Target, name: str) -> tuple[float, float, float]:
    low, best, high = (
        units.convert(q, UNITS[name]) for q in (target.low, target.best, target.high)
    )
    return round(low, 3), round(best, 3), round(high, 3)


def span(text: str | float) -> tuple[float, float]:
    low, _, high = str(text).partition("-")
    return float(low), float(high or low)


def middle(text: str | float) -> float:
    return sum(span(text)) / 2


def rows_of(rules: RuleBase, fact: Fact) -> list[WindowRow]:
    """The rows of the fact's size, or all of the window."""
    rows = rules.windows[fact["window"]].rows
    if "size" not in fact:
        return list(rows)
    size = parse(fact["size"], "length").value
    nearest = min((row.size.value for row in rows if row.size), key=lambda s: abs(s / size - 1))
    assert abs(nearest / size - 1) < 0.1, "no rows of that size"
    return [row for row in rows if row.size and row.size.value == nearest]


def targets_for(rules: RuleBase, fact: Fact) -> list[dict[str, Target]]:
    """What our window says for a fact: one situation, or every row of a size."""
    window = rules.windows[fact["window"]]
    if "thickness" in fact:
        kept = {window.size_of: fact.get("size", ""), "gas": (window.gas or ("",))[0]}
        if window.size_of == "rod":
            kept["rod"] += f" {window.consumable.split('/')[0]}"
        found = find(
            rules, window.processes[0], window.materials[0],
            parse(fact["thickness"], "length"), kept, "indoors",
            joint=fact.get("joint", ""), position="flat",
        )  # fmt: skip
        assert found is not None
        assert found.window == window
        return [dict(found.targets)]
    same = rows_of(rules, fact)
    whole = [row for row in same if row.thickness is None] or same
    return [{**window.targets, **row.targets} for row in whole]


def agrees(target: Target, name: str, published: str | float) -> bool:
    """A published number lies in our range; with a published range, our best place lies in it or
    our range holds all of it. Feed, flow and travel, which hang on much else, need only overlap."""
    low, best, high = bounds(target, name)
    least, most = span(published)
    if name not in ("amps", "volts"):
        return low <= most and least <= high
    return (low <= least and most <= high) or (least < most and least <= best <= most)


def follows(rules: RuleBase, fact: Fact) -> bool:
    told = targets_for(rules, fact)
    lone = "thickness" not in fact and not any("-" in str(fact.get(name, "")) for name in UNITS)
    # one weld of unknown thickness is met by any of the rows, the range of a wire by all of them
    some = any if lone else all
    return all(
        some(name in targets and agrees(targets[name], name, fact[name]) for targets in told)
        for name in UNITS
        if name in fact
    )


def ids(facts: list[Fact]) -> list[str]:
    return [f"{fact['entry']}-{fact.get('window', '')}" for fact in facts]


@pytest.mark.parametrize("fact", PUBLISHED["settings"], ids=ids(PUBLISHED["settings"]))
def test_settings_agree_with_publications_or_say_why_not(rules: RuleBase, fact: Fact) -> None:
    assert follows(rules, fact) != ("why" in fact), targets_for(rules, fact)


@pytest.mark.parametrize("fact", PUBLISHED["limits"], ids=ids(PUBLISHED["limits"]))
def test_whole_windows_keep_published_limits_or_say_why_not(rules: RuleBase, fact: Fact) -> None:
    name = next(name for name in UNITS if name in fact)
    least, most = span(fact[name])
    best = [bounds(row.targets[name], name)[1] for row in rows_of(rules, fact)]
    assert (least <= min(best) and max(best) <= most) != ("why" in fact)


@pytest.mark.parametrize("fact", PUBLISHED["gas_flows"], ids=ids(PUBLISHED["gas_flows"]))
def test_gas_flows_agree_with_publications_or_say_why_not(rules: RuleBase, fact: Fact) -> None:
    target = rules.windows[fact["window"]].targets["gas_flow"]
    assert agrees(target, "gas_flow", fact["gas_flow"]) != ("why" in fact)


@pytest.mark.parametrize("fact", PUBLISHED["spray_from"], ids=ids(PUBLISHED["spray_from"]))
def test_spray_starts_at_the_published_amps_or_the_fact_says_why_not(
    rules: RuleBase, fact: Fact
) -> None:
    best = [bounds(row.targets["amps"], "amps")[1] for row in rows_of(rules, fact)]
    assert (min(best) >= fact["amps"]) != ("why" in fact)


@pytest.mark.parametrize("fact", PUBLISHED["tungstens"], ids=ids(PUBLISHED["tungstens"]))
def test_no_tungsten_is_given_more_than_it_bears(rules: RuleBase, fact: Fact) -> None:
    """Also in a joint and a position that take more than the window's own numbers."""
    size = parse(fact["size"], "length")
    asked = [
        found.targets["amps"].high.value
        for window in rules.windows.values()
        if window.size_of == "tungsten"
        for row in window.rows
        if row.size == size and row.thickness
        for joint in ("", "butt", "fillet", "lap")
        if (
            found := find(
                rules, window.processes[0], window.materials[0], row.thickness,
                {"tungsten": fact["size"]}, "indoors", joint=joint,
            )
        )
    ]  # fmt: skip
    assert asked
    assert max(asked) <= fact["most"]


def test_every_publication_named_in_the_facts_is_a_known_source(rules: RuleBase) -> None:
    facts = [fact for group in PUBLISHED.values() for fact in group]
    assert {fact["source"].partition(",")[0] for fact in facts} <= set(rules.sources)


def test_what_is_left_out_says_why_and_is_not_compared_elsewhere() -> None:
    compared = {
        f["entry"] for name, group in PUBLISHED.items() if name != "left_out" for f in group
    }
    for fact in PUBLISHED["left_out"]:
        assert fact["why"]
        assert fact["entry"] not in compared


# The score


def held(rules: RuleBase, fact: Fact) -> bool:
    """Whether our printed range holds the middle of every published number of amps, volts, feed."""
    told = targets_for(rules, fact)
    for name in SCORED:
        if name not in fact:
            continue
        ranges = [bounds(targets[name], name) for targets in told if name in targets]
        if not ranges:
            return False
        low, high = min(each[0] for each in ranges), max(each[2] for each in ranges)
        if not low <= middle(fact[name]) <= high:
            return False
    return True


def scored(rules: RuleBase, basis: str) -> Iterator[Fact]:
    """The facts of this basis that give amps, volts or wire feed for one of our windows."""
    for fact in [*PUBLISHED["settings"], *PUBLISHED["limits"]]:
        source = rules.sources[fact["source"].partition(",")[0]]
        if source.basis == basis and any(name in fact for name in SCORED):
            yield fact


@pytest.mark.parametrize(("basis", "least"), [("found", 0.95), ("memory", 0.8)])
def test_the_printed_ranges_hold_what_is_published(
    rules: RuleBase, basis: str, least: float
) -> None:
    """Agreement with what was written from memory proves nothing from outside: it stands apart."""
    facts = list(scored(rules, basis))
    assert len(facts) > 25
    assert sum(held(rules, fact) for fact in facts) / len(facts) >= least


def residuals(rules: RuleBase, basis: str) -> dict[tuple[str, str], list[float]]:
    """Our best place less the published middle, as a share of it, by process and setting."""
    found: dict[tuple[str, str], list[float]] = {}
    for fact in scored(rules, basis):
        for name in SCORED:
            if name not in fact:
                continue
            best = [bounds(t[name], name)[1] for t in targets_for(rules, fact) if name in t]
            if best:
                key = (rules.windows[fact["window"]].processes[0], name)
                off = sum(best) / len(best) - middle(fact[name])
                found.setdefault(key, []).append(off / middle(fact[name]))
    return found


@pytest.mark.parametrize(
    ("process", "setting", "most"),
    [("gmaw", "amps", 0.15), ("gmaw", "volts", 0.12), ("fcaw-g", "amps", 0.08),
     ("fcaw-g", "volts", 0.05), ("gtaw-ac", "amps", 0.08)],
)  # fmt: skip
def test_our_best_place_lies_near_the_middle_of_what_is_published(
    rules: RuleBase, process: str, setting: str, most: float
) -> None:
    """Root mean square, as a share of the published figure; sources whose text was seen."""
    off = residuals(rules, "found")[process, setting]
    assert len(off) > 2
    assert (sum(x * x for x in off) / len(off)) ** 0.5 <= most
