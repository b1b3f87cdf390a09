"""The page of anything: what its kind tells, and links to all that goes with it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from weldwhy.lookup import faultpages, taskpages, workpages
from weldwhy.lookup.leaf import Leaf, Line, Part, part
from weldwhy.lookup.links import links
from weldwhy.lookup.things import KINDS, Ref, in_short, things
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital

Maker = Callable[[RuleBase, str], Leaf]

PLAIN: Mapping[str, Maker] = {
    "cause": faultpages.cause_leaf,
    "check": faultpages.check_leaf,
    "remedy": faultpages.remedy_leaf,
    "caution": faultpages.caution_leaf,
    "term": workpages.term_leaf,
    "process": workpages.process_leaf,
    "metal": workpages.metal_leaf,
    "grade": workpages.grade_leaf,
    "gas": workpages.gas_leaf,
    "filler": workpages.filler_leaf,
    "job": workpages.job_leaf,
    "source": workpages.source_leaf,
}
"""Pages that look the same to everybody."""

MEASURED: Mapping[str, Callable[[RuleBase, str, str | None], Leaf]] = {
    "setting": workpages.setting_leaf,
    "window": taskpages.window_leaf,
    "setup": taskpages.setup_leaf,
    "calculator": taskpages.calculator_leaf,
}
"""Pages with quantities, which come in the units of the person."""


def leaf(rules: RuleBase, ref: Ref, process: str = "", system: str | None = None) -> Leaf:
    """The page of one thing, which must exist. Its links are all that goes with the thing.

    `process` is the one the person welds with, if that is known; `system` their units.
    """
    if ref.kind == "symptom":
        return _with_all_links(rules, faultpages.symptom_leaf(rules, ref.id, process))
    if ref.kind in MEASURED:
        return _with_all_links(rules, MEASURED[ref.kind](rules, ref.id, system))
    return _with_all_links(rules, PLAIN[ref.kind](rules, ref.id))


def _with_all_links(rules: RuleBase, made: Leaf) -> Leaf:
    """The page with the links that it does not yet have, by kind, before its source."""
    known, shown = things(rules), set(made.links)
    left = [ref for ref in links(rules).of(made.ref) if ref not in shown]
    more: tuple[Part, ...] = ()
    for kind in KINDS.values():
        if kind.id != "source":
            found = [Line(in_short(known.name(r)), to=r) for r in left if r.kind == kind.id]
            more += part(capital(kind.many), found)
    sources = part("Source", [Line(known.name(r), "dim", r) for r in left if r.kind == "source"])
    last = made.parts[-1:] if made.parts and made.parts[-1].title == "Source" else ()
    body = made.parts[: len(made.parts) - len(last)]
    return replace(made, parts=(*body, *more, *(last or sources)))
