"""One page for one symptom in one process: a ladder of checks and a list, as much as fits.

What fits is said by `Sizes`, since a sheet of paper and a page of letters hold different amounts.
The page knows what it covers: one fault taken to be at work, by the rule base's own numbers.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from weldwhy.ladder import Rung, Sign, Suspects, suspects_of
from weldwhy.model import RuleBase
from weldwhy.walldraft import FOREMOST, Draft, Sizes

SHARES = (0.25, 0.35, 0.45, 0.6)
"""Parts of the room that the ladder may take; of the pages filled so the one that covers most is
printed."""

LEAST, ENOUGH, REACH = 0.7, 0.85, 0.2
"""A page first of all covers so much. From there to the next mark covering more counts three times,
against what the ladder leads to. The last is what it counts that the ladder goes into a family of
causes, for their share."""


@dataclass(frozen=True, slots=True)
class WallChart:
    """What stands on the page.

    `items` are the causes of the list, in the order in which to go through them where the ladder
    leads nowhere; a rung tells the likeliest cause of each answer itself, and points at the list
    for others. `cautions` holds ids, those that stop first. `signs` are the dangers that no rung
    names, with what shows them. `stands` is the chance that the remedy of the one fault at work is
    on the page, `leads` that the ladder's answers lead to it, both for the metals that the process
    usually welds; `left_out` counts the causes that are not on the page.
    """

    symptom: str
    process: str
    rungs: tuple[Rung, ...]
    items: tuple[str, ...]
    cautions: tuple[str, ...]
    stands: float
    leads: float
    left_out: int
    signs: tuple[Sign, ...] = ()

    @property
    def told(self) -> Iterator[tuple[Rung, tuple[str, ...]]]:
        """Each rung with the causes whose remedy it tells itself."""
        known = set(self.items)
        for rung in self.rungs:
            here = rung.tells(known)
            known |= set(here)
            yield rung, here


def build(rules: RuleBase, symptom: str, process: str, sizes: Sizes) -> WallChart:
    """The page that covers most; dangers have the first right to a place on it."""
    suspects = suspects_of(rules, symptom, process)

    made = [_fill(rules, suspects, symptom, process, sizes, share) for share in SHARES]
    return max(made, key=lambda chart: _worth(suspects, chart))


def _worth(suspects: Suspects, chart: WallChart) -> tuple[float, float]:
    firsts = {way.causes[0] for rung in chart.rungs for way in rung.ways}
    families = {suspects.causes[cause].family for cause in firsts}
    reached = sum(suspects.share[c.id] for c in suspects.causes.values() if c.family in families)
    covered = chart.stands + 2.0 * min(chart.stands, ENOUGH)
    return min(chart.stands, LEAST), covered + chart.leads + REACH * reached


def _fill(
    rules: RuleBase, suspects: Suspects, symptom: str, process: str, sizes: Sizes, ladder: float
) -> WallChart:
    draft = Draft(rules, suspects, sizes, rules.symptoms[symptom].cautions)
    most = ladder * sizes.room
    for check, causes in suspects.dangers.items():
        if any(c not in draft.told and suspects.share[c] >= FOREMOST for c in causes):
            draft.climb([check], most)
    while draft.climb(suspects.checks, most):
        pass
    while draft.add_item():
        pass
    while draft.climb(suspects.checks, sizes.room):
        pass
    return WallChart(
        symptom,
        process,
        tuple(draft.rungs),
        draft.ordered_items(),
        tuple(sorted(draft.cautions, key=lambda c: not rules.cautions[c].stop)),
        sum(suspects.share[cause] for cause in draft.told),
        suspects.leads(draft.rungs),
        len(suspects.causes) - len(draft.told),
        tuple(draft.signs),
    )
