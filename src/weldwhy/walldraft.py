"""A wall chart as it fills: what stands on the page, the room left, and what comes next."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from typing import Protocol

from weldwhy.engine import tuning
from weldwhy.ladder import Rung, Sign, Suspects, Way
from weldwhy.model import RuleBase

LEAST = 0.01
"""A rung that leads to what is wrong more seldom than this is not worth its place."""
MINUTES, PLACE = 0.5, 0.7
"""How much a rung's minutes, and its place, count against it; on a page room is scarce as well."""
BREADTH = 4.0
"""What it counts that a rung is the first to look into a family of causes, for their share."""
FOREMOST = 0.05
"""A danger that is at least so likely has the first right to a rung; others are named by what
shows them, where one must read it first."""


class Sizes(Protocol):
    """How much of the page each part takes, in one unit whatever it is."""

    @property
    def room(self) -> float:
        """What the ladder, the list and the cautions may take together."""
        ...

    def rung(self, rung: Rung, told: Collection[str]) -> float:
        """A rung without what it points at in the list; `told` stand on the page already."""
        ...

    def item(self, cause: str) -> float:
        """An entry of the list: a cause and its remedy."""
        ...

    def caution(self, caution: str) -> float:
        """A caution, which stands on the page once."""
        ...

    def sign(self, sign: Sign) -> float:
        """A danger that is named with what shows it."""
        ...


class Draft:
    """A page as it fills: what stands on it, what the ladder takes, and the room that is left.

    Every cause of `told` has its remedy on the page once: told by a rung, or in the list `items`.
    """

    def __init__(
        self, rules: RuleBase, suspects: Suspects, sizes: Sizes, cautions: Iterable[str]
    ) -> None:
        self._rules = rules
        self._suspects = suspects
        self._sizes = sizes
        self.rungs: list[Rung] = []
        self.items: list[str] = []
        self.told: set[str] = set()
        self.ladder = 0.0
        self.signs = [suspects.sign(cause) for cause in suspects.hazards]
        self.cautions = [each for each in cautions if each in rules.cautions]
        self._weight = dict.fromkeys(rules.cautions, 0.0)
        for cause in suspects.causes.values():
            for each in cause.remedies[0].cautions:
                if each in self._weight:
                    self._weight[each] += suspects.share[cause.id]
        self.left = sizes.room - sum(sizes.caution(each) for each in self.cautions)
        self.left -= sum(sizes.sign(each) for each in self.signs)

    def climb(self, checks: Iterable[str], most: float) -> bool:
        """Add the rung that leads to what is wrong most often for its minutes and its place.

        The rungs take `most` at most. What one tells would else stand in the list, so that its
        place is only what it takes more.
        """
        above = tuple(rung.check for rung in self.rungs)
        best: tuple[float, Rung, float] | None = None
        for check in filter(self._free, checks):
            price = self._suspects.price(check) ** MINUTES
            for rung, led in self._suspects.rungs(check, above):
                if led < LEAST and check not in self._suspects.dangers:
                    break  # with fewer ways it leads there more seldom still
                size = self._size_of(rung)
                worth = led * self._breadth(rung) / price / self._more(rung) ** PLACE
                own = self.ladder + self._sizes.rung(rung, self.told)
                fits = size <= self.left and own <= most
                if fits and (best is None or worth > best[0]):
                    best = worth, rung, size
        if best is None:
            return False
        _, rung, size = best
        self._take(size, self._needed_by(rung))
        self.ladder += self._sizes.rung(rung, self.told)
        self.items += rung.points_at(self.told)
        self.told |= set(rung.causes)
        self.rungs.append(rung)
        shown = [sign for sign in self.signs if sign.cause in rung.causes]
        self.left += sum(self._sizes.sign(sign) for sign in shown)
        self.signs = [sign for sign in self.signs if sign not in shown]
        return True

    def _breadth(self, rung: Rung) -> float:
        """More for a look or a reading that is the first to go into a family of causes."""
        if self._suspects.checks[rung.check].how not in ("look", "measure"):
            return 1.0
        known = {self._family(way) for each in self.rungs for way in each.ways}
        new = {self._family(way) for way in rung.ways} - known
        causes = self._suspects.causes.values()
        return 1.0 + BREADTH * sum(self._suspects.share[c.id] for c in causes if c.family in new)

    def _family(self, way: Way) -> str:
        return self._suspects.causes[way.causes[0]].family

    def _more(self, rung: Rung) -> float:
        """The size of a rung beyond what its new causes would take in the list, at least a part."""
        size = self._sizes.rung(rung, self.told)
        saved = sum(self._sizes.item(cause) for cause in rung.tells(self.told))
        own = self._suspects.checks[rung.check].cautions
        return max(size - saved, size / 3) + self._new(own)

    def _free(self, check: str) -> bool:
        """Whether it is on no rung; of checks that look at one thing the first is enough."""
        look = self._suspects.checks[check].same_look
        taken = [self._suspects.checks[rung.check] for rung in self.rungs]
        return all(each.id != check and (not look or each.same_look != look) for each in taken)

    def add_item(self) -> bool:
        """Add the cause to the list that is likeliest for the place it takes."""
        best: tuple[float, str, float] | None = None
        for cause in self._suspects.causes.values():
            if cause.id in self.told:
                continue
            size = self._sizes.item(cause.id) + self._new(cause.remedies[0].cautions)
            fair = self._fair((cause.id,), size, cause.remedies[0].cautions)
            worth = self._suspects.share[cause.id] / fair
            if size <= self.left and (best is None or worth > best[0]):
                best = worth, cause.id, size
        if best is None:
            return False
        _, name, size = best
        self._take(size, self._suspects.causes[name].remedies[0].cautions)
        self.items.append(name)
        self.told.add(name)
        return True

    def ordered_items(self) -> tuple[str, ...]:
        """The list in the order that costs least: dangers, then the chance left for the minutes."""
        left = self._suspects.after([rung.check for rung in self.rungs])
        bead = tuning.PATIENCE["normal"].test_bead

        def key(name: str) -> tuple[bool, float]:
            cause = self._suspects.causes[name]
            remedy = cause.remedies[0]
            return not cause.hazard, -left[name] * remedy.works / (remedy.minutes + bead)

        return tuple(sorted(self.items, key=key))

    def _size_of(self, rung: Rung) -> float:
        listed = sum(self._sizes.item(cause) for cause in rung.points_at(self.told))
        own = self._sizes.rung(rung, self.told)
        return own + listed + self._new(self._needed_by(rung))

    def _needed_by(self, rung: Rung) -> Sequence[str]:
        """The cautions of its check, and of the remedies that come onto the page with it."""
        needed = list(self._suspects.checks[rung.check].cautions)
        for cause in rung.causes:
            if cause not in self.told:
                needed += self._suspects.causes[cause].remedies[0].cautions
        return needed

    def _fair(self, causes: Iterable[str], size: float, cautions: Iterable[str]) -> float:
        """The size with the fair part only of what new cautions take, for others need them too."""
        for caution in self._fresh(cautions):
            needed = self._weight[caution]
            own = sum(
                self._suspects.share[name]
                for name in causes
                if caution in self._suspects.causes[name].remedies[0].cautions
            )
            if needed:
                size -= self._sizes.caution(caution) * (1.0 - own / needed)
        return size

    def _new(self, cautions: Iterable[str]) -> float:
        """The size of those cautions that are not on the page yet."""
        return sum(self._sizes.caution(each) for each in self._fresh(cautions))

    def _fresh(self, cautions: Iterable[str]) -> list[str]:
        known = self._rules.cautions
        return [c for c in dict.fromkeys(cautions) if c in known and c not in self.cautions]

    def _take(self, size: float, cautions: Iterable[str]) -> None:
        self.left -= size
        self.cautions += self._fresh(cautions)
