"""Every wall chart in both forms: that it fits, and what it covers.

Run by hand, `python -m tests.wall.every`: it takes a minute. The suite tests a third of the pages.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from statistics import mean

from tests.replay import shipped_rules

from weldwhy.wall.page import F, filled
from weldwhy.wall.picture import as_letters, as_svg
from weldwhy.wall.print import POINTS, Print
from weldwhy.wall.text import forms_of
from weldwhy.wallchart import WallChart


def every_pair() -> list[tuple[str, str]]:
    """All symptoms with their processes."""
    rules = shipped_rules()
    return [(s.id, process) for s in rules.symptoms.values() for process in s.processes]


def chart_of(symptom: str, process: str, forms: list[F]) -> WallChart:
    """What stands on the page; AssertionError if it does not fit."""
    chart, made, form = filled(shipped_rules(), symptom, process, forms)
    assert form.whole((*made.body, *made.foot)) <= form.room(made.looks), (symptom, process)
    return chart


def printed(symptom: str, process: str) -> WallChart:
    """The page on paper."""
    drawn = as_svg(shipped_rules(), symptom, process)
    return chart_of(symptom, process, [Print(size, drawn) for size in POINTS])


def written(symptom: str, process: str) -> WallChart:
    """The page in letters."""
    return chart_of(symptom, process, forms_of(as_letters(shipped_rules(), symptom, process)))


def figures() -> Iterator[str]:
    """What the pages of each form cover, and the least of them."""
    for name, make in (("print", printed), ("letters", written)):
        made = {pair: make(*pair) for pair in every_pair()}
        stands, leads = (mean(getattr(c, k) for c in made.values()) for k in ("stands", "leads"))
        least = min(made, key=lambda pair: made[pair].stands)
        yield (
            f"{name}: {len(made)} pages; the remedy is on the page {stands:.1%}, the rungs lead to "
            f"it {leads:.1%}; least {made[least].stands:.1%} ({', '.join(least)})"
        )


if __name__ == "__main__":
    sys.stdout.writelines(f"{line}\n" for line in figures())
