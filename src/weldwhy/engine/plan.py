"""The way to a good bead if no further general question is asked, and what it costs in minutes.

Each cause that can be cured here is one item: fix it, or (where it pays) do its direct check and
fix it only if the check is positive. The items are ordered twice, by the rule that is best for
one fault and by the rule that is best for independent faults; the cheaper order is the plan.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from operator import mul

from weldwhy.engine import rows, tuning
from weldwhy.engine.belief import works
from weldwhy.engine.network import EMPTY, Grid, Network
from weldwhy.engine.tuning import Tuning

SURE_HIT, RARE_ALARM = 0.85, 0.15
"""A check is direct for a cause if it shows the cause so often and is abnormal so seldom else."""
EDGE = 1e-9
"""A grade that sits on a limit counts as within it, whatever its last bit."""
LEFT_OVER = 0.15
"""Share of the price of help that a missed positive check costs."""


@dataclass(frozen=True, slots=True)
class Direct:
    """A check that decides on one cause: hit rate, false alarm rate, minutes."""

    check: str
    hit: float
    alarm: float
    minutes: float


@dataclass(frozen=True, slots=True)
class Item:
    """One step of the plan: minutes if the cause is absent, minutes if it is present."""

    cause: int
    absent: float
    present: float
    works: float
    check: str = ""


@dataclass(frozen=True, slots=True)
class Plan:
    """Expected minutes to a good bead and the items in order; none means: call for help now."""

    minutes: float
    items: tuple[Item, ...]


@lru_cache(maxsize=64)
def direct_checks(network: Network) -> tuple[tuple[Direct, ...], ...]:
    """For each cause number the checks that decide on it, cheapest first."""
    result = []
    for cause in network.causes:
        found = []
        for check_id in cause.shows:
            check = network.checks.get(check_id)
            if check is None:
                continue
            row = rows.single(check, cause)
            if row[0] > 1.0 - SURE_HIT + EDGE or check.baseline[0] < 1.0 - RARE_ALARM - EDGE:
                continue
            hit = 1.0 - rows.with_slips(check, row)[0]
            alarm = 1.0 - rows.with_slips(check, check.baseline)[0]
            found.append(Direct(check_id, hit, alarm, check.minutes))
        result.append(tuple(sorted(found, key=lambda d: (d.minutes, d.check))))
    return tuple(result)


def surest_check(network: Network, cause: int) -> str:
    """The check that decides best on the cause, whatever it costs, or ""."""
    found = direct_checks(network)[cause]
    return max(found, key=lambda d: (d.hit - d.alarm, d.check)).check if found else ""


class Planner:
    """Prices plans for one state of a case.

    `open_checks` may still be done, `tries` counts remedies in vain by cause id, and the remedies
    of `declined` causes cannot be done now, so they are in no plan.
    """

    def __init__(
        self,
        network: Network,
        open_checks: Collection[str],
        tries: Mapping[str, int],
        tuned: Tuning,
        declined: Collection[str] = (),
    ) -> None:
        self.network = network
        self.tuned = tuned
        self._declined = frozenset(declined)
        self._curable = [
            tries.get(cause.id, 0) < tuning.TRIES and not cause.remedy(tries.get(cause.id, 0)).stop
            for cause in network.causes
        ]
        self._fix = [
            cause.remedy(tries.get(cause.id, 0)).minutes + tuned.test_bead
            for cause in network.causes
        ]
        self._works = [works(network, c.id, tries.get(c.id, 0)) for c in network.causes]
        self._direct = [
            next((d for d in found if d.check in open_checks), None)
            for found in direct_checks(network)
        ]

    def curable(self, cause: int) -> bool:
        """Whether a remedy for the cause is still worth trying here."""
        return self._curable[cause]

    def offered(self, cause: int) -> bool:
        """Whether its remedy is worth trying here and was not declined."""
        return self._curable[cause] and self.network.causes[cause].id not in self._declined

    def direct_check(self, cause: int) -> str:
        """The cheapest open check that decides on the cause, or ""."""
        direct = self._direct[cause]
        return direct.check if direct else ""

    def _item(self, cause: int, p: float) -> Item:
        fix, direct = self._fix[cause], self._direct[cause]
        if direct is not None:
            t, f, d = direct.hit, direct.alarm, direct.minutes + self.tuned.attention
            if t * fix > d + (f * (1.0 - p) + t * p) * fix:
                missed = (1.0 - t) * LEFT_OVER * self.tuned.help
                return Item(
                    cause, d + f * fix, d + fix + missed, self._works[cause] * t, direct.check
                )
        return Item(cause, fix, fix, self._works[cause])

    def plan(self, weights: Sequence[float]) -> Plan:
        """The cheaper of the two orders for these weights (they need not sum to 1)."""
        minutes, items, keep = self._best(weights)
        total = sum(weights)
        return Plan(minutes / total, tuple(items[:keep]))

    def order(self, weights: Sequence[float]) -> tuple[Item, ...]:
        """All items in the order of the plan, also those past the point where help is cheaper."""
        return tuple(self._best(weights)[1])

    def all_knowing(self, weights: Sequence[float]) -> float:
        """Expected minutes of somebody who knows what is wrong: just those fixes, or just help."""
        price = [
            fix if curable else self.tuned.help for fix, curable in zip(self._fix, self._curable)
        ]
        price += [0.0, self.tuned.help]
        network = self.network
        total = 0.0
        for w, a, b, c in zip(weights, network.first, network.second, network.third):
            total += w * min(price[a] + price[b] + price[c], self.tuned.help)
        return total / sum(weights)

    def cost(self, weights: Sequence[float]) -> float:
        """Expected minutes times the sum of the weights."""
        return self._best(weights)[0]

    def _best(self, weights: Sequence[float]) -> tuple[float, list[Item], int]:
        total = sum(weights)
        grid = self.network.grid(weights)
        items = []
        for cause, mass in enumerate(grid.marginals()):
            if mass > 0.0 and self.offered(cause):
                p = min(mass / total, 1.0)
                items.append((p, self._item(cause, p)))
        left = total - weights[EMPTY]
        first = [item for _, item in sorted(items, key=_key_for_one_fault)]
        cost, keep = self._walk(grid, first, left)
        second = [item for _, item in sorted(items, key=_key_for_independent_faults)]
        if second != first:
            other, other_keep = self._walk(grid, second, left)
            if other < cost:
                return other, second, other_keep
        return cost, first, keep

    def _walk(self, grid: Grid, items: Sequence[Item], left: float) -> tuple[float, int]:
        """Least cost of doing the first K items and then calling for help, and that K.

        An item ends the sets whose other members were all done before it.
        """
        placed: list[int] = []
        extras: list[float] = []
        late, late_spent = _ends_of_triples(grid, items)
        elapsed = done = 0.0
        best, keep = left * self.tuned.help, 0
        for k, item in enumerate(items, 1):
            row, extra = grid.pair[item.cause], item.present - item.absent
            pairs = [row[other] for other in placed]
            ended, spent = grid.single[item.cause] + sum(pairs), sum(map(mul, pairs, extras))
            elapsed += item.absent
            done += ended * (elapsed + extra) + spent
            ended += late[k]
            done += late[k] * elapsed + late_spent[k]
            left -= ended
            cost = done + left * (elapsed + self.tuned.help)
            if cost < best:
                best, keep = cost, k
            placed.append(item.cause)
            extras.append(extra)
        return best, keep


def _ends_of_triples(grid: Grid, items: Sequence[Item]) -> tuple[list[float], list[float]]:
    """By place of the item that ends them: weight of the sets of three, and weight x extra minutes.

    One plain pass: this is the innermost loop once remedies have failed.
    """
    ended, spent = [0.0] * (len(items) + 1), [0.0] * (len(items) + 1)
    if not grid.triples:
        return ended, spent
    place, extra = [0] * len(grid.single), [0.0] * len(grid.single)
    for k, item in enumerate(items, 1):
        place[item.cause], extra[item.cause] = k, item.present - item.absent
    for (a, b, c), weight in grid.triples:
        last, second, third = place[a], place[b], place[c]
        if last and second and third:
            if second > last:
                last = second
            if third > last:
                last = third
            ended[last] += weight
            spent[last] += weight * (extra[a] + extra[b] + extra[c])
    return ended, spent


def _key_for_one_fault(entry: tuple[float, Item]) -> tuple[float, float, int]:
    p, item = entry
    expected = p * item.present + (1.0 - p) * item.absent
    return -p * item.works / expected, item.absent, item.cause


def _key_for_independent_faults(entry: tuple[float, Item]) -> tuple[float, float, int]:
    p, item = entry
    if p >= 1.0:
        return float("-inf"), item.absent, item.cause
    return -p * item.works / ((1.0 - p) * item.absent), item.absent, item.cause
