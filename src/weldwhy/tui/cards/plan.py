"""The plan of a process as leaves: hook-up, what goes in, start values, checklist, test bead."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from functools import partial

from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.report import source_text
from weldwhy.setup import Plan
from weldwhy.setupcase import size_setting
from weldwhy.tui.cards.card import SQUEEZED, Card, Choice
from weldwhy.tui.cards.checklist import AROUND, checklist_card, packed
from weldwhy.tui.cards.hookup import HookUp, hookup_rows, hookup_words
from weldwhy.tui.cards.start import short_name
from weldwhy.tui.cards.starting import WARM, starting_rows
from weldwhy.tui.cards.step import caution_rows
from weldwhy.tui.rows import BLANK, Row, inset, paragraph, tied
from weldwhy.units import Quantity, show, show_target

SOUND, BAD = "sound", "bad"
"""What the test bead was."""
LEAF = "leaf:"
"""What the act of a choice begins with that opens a leaf; its number follows."""
SHEET = (
    Choice("Save the set-up sheet as a file", "save_sheet", key="w"),
    Choice("Copy it", "copy_sheet", key="y"),
)
NAMED = 14
"""Cells for the name of a part or a figure."""


@dataclass(frozen=True, slots=True)
class PlanShown:
    """What the leaves are made of: the plan, the work in words, its picture, the steps done."""

    rules: RuleBase
    plan: Plan
    work: str
    drawing: Sequence[Row] = ()
    done: Collection[str] = ()
    ascii_only: bool = False


def leaves(shown: PlanShown, width: int, height: int) -> list[Card]:
    """The plan as cards for a page of this size, in the order they are needed.

    Checklist and picture are divided so that nothing that belongs together is cut.
    """
    drawn = starting_rows(shown.rules, shown.plan, shown.drawing, width)
    apart = bool(shown.drawing) and len(drawn) > height - AROUND
    chunks = packed(shown.plan.checklist, width, height)
    made: list[tuple[str, Callable[[tuple[Choice, ...]], Card]]] = [
        ("What goes in", partial(_page, partial(_goes_in, shown))),
        ("Start values", partial(_page, partial(_values, shown, () if apart else shown.drawing))),
    ]
    if apart:
        made.append(("Start values, drawn", partial(_page, lambda _width: [*shown.drawing])))
    for number, steps in enumerate(chunks, 1):
        part = f", part {number}" if len(chunks) > 1 else ""
        made.append((f"Checklist{part}", partial(checklist_card, steps, shown.done)))
    made.append(("Test bead", lambda _next: _bead_card(shown)))
    names = [name for name, _ in made]
    cards = [_hookup_card(shown, names)]
    for at, (_, card) in enumerate(made, 1):
        cards.append(card(tuple(Choice(name, "next", key="PgDn") for name in names[at : at + 1])))
    return [_placed(shown, card, at, ["Hook-up", *names]) for at, card in enumerate(cards)]


def _placed(shown: PlanShown, card: Card, at: int, names: Sequence[str]) -> Card:
    called = short_name(capital(shown.plan.name))
    return replace(card, where=f"{called}: {names[at].lower()} ({at + 1} of {len(names)})")


def _hookup_card(shown: PlanShown, names: Sequence[str]) -> Card:
    """How well it suits, what to keep in mind throughout, the drawing, and the way to each leaf."""
    plan = shown.plan
    hook = HookUp(plan.holder, plan.gun, plan.clamp, plan.gas is not None)

    def body(width: int, room: int) -> list[Row]:
        rows = caution_rows(plan.cautions, width, squeezed=room == SQUEEZED)
        rows += inset(f"{capital(plan.suits)} for {shown.work}.", width, "strong")
        rows += [line for why in plan.why for line in inset(why, width)]
        rows += tied(hookup_rows(hook, shown.ascii_only))
        rows += inset(f"{hookup_words(hook)} In other words: {plan.polarity}.", width, "strong")
        return rows + [line for note in plan.notes for line in inset(note, width, "dim")]

    first: dict[str, int] = {}
    for at, name in enumerate(names, 1):
        first.setdefault(name.partition(",")[0], at)  # of several parts the first
    choices = tuple(Choice(title, f"{LEAF}{at}") for title, at in first.items())
    return Card(body, choices)


def _goes_in(shown: PlanShown, width: int) -> list[Row]:
    """Wire, rod or tungsten, filler and gas; then the parts they run through."""
    plan = shown.plan
    rows = [line for name, text in _consumables(shown) for line in _named(name, text, width)]
    rows += inset(plan.filler.use, width, "dim") if plan.filler else []
    rows.append(BLANK)
    rows += [line for part in plan.parts for line in _named(part.part, part.choose, width)]
    cited = dict.fromkeys(source_text(shown.rules, part.source) for part in plan.parts)
    return rows + (inset(f"Source: {'; '.join(cited)}.", width, "dim") if cited else [])


def _consumables(shown: PlanShown) -> list[tuple[str, str]]:
    plan = shown.plan
    named = plan.filler.name if plan.filler else ""
    kind = plan.filler.kind if plan.filler else size_setting(shown.rules, plan.process)
    found = []
    if kind == "filler rod":
        found.append((size_setting(shown.rules, plan.process), _sized(plan.size, "", plan)))
        found.append((kind, _sized(plan.filler_size, named, plan)))
    else:
        found.append((kind, _sized(plan.size, named, plan)))
    if plan.gas:
        gas, flow = plan.gas
        found.append(("gas", f"{gas.name}, {show_target(flow, plan.system)}"))
    return [(name, text) for name, text in found if text]


def _sized(size: Quantity | None, name: str, plan: Plan) -> str:
    return f"{show(size, plan.system) if size else ''} {name}".strip()


def _values(shown: PlanShown, drawing: Sequence[Row], width: int) -> list[Row]:
    return starting_rows(shown.rules, shown.plan, drawing, width)


def _bead_card(shown: PlanShown) -> Card:
    """The bead to run, what a sound one is like, what it all comes to, and how it went."""
    plan, bead = shown.plan, shown.plan.test_bead

    def body(width: int, room: int) -> list[Row]:
        rows: list[Row] = []
        if bead is not None:
            rows += caution_rows(bead.cautions, width, squeezed=room == SQUEEZED)
            rows += inset(bead.run, width, "strong")
            rows += inset(f"A sound one: {bead.sound}", width)
            for name, target in (("leg", bead.leg), ("throat", bead.throat)):
                rows += _named(name, show_target(target, plan.system), width) if target else []
        for figure in plan.figures:
            rows += _named(figure.name, figure.text, width) if figure.name != WARM else []
        return rows + inset("How is the test bead?", width, "strong")

    choices = (
        Choice("The test bead is sound: done", SOUND),
        Choice("The bead is bad: find out why, with all of this known", BAD),
    )
    return Card(body, choices, SHEET)


def _page(made: Callable[[int], list[Row]], others: tuple[Choice, ...]) -> Card:
    """A leaf to read."""
    return Card(lambda width, _room: made(width), (), others)


def _named(name: str, text: str, width: int) -> list[Row]:
    return paragraph(text, width - 1, "text", (f" {capital(name):<{NAMED}}", "head"))
