"""The start values of a plan: a table, what the machine does not reach, and where they are from."""

from __future__ import annotations

from collections.abc import Sequence

from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.report import ended, source_text
from weldwhy.setup import Plan
from weldwhy.tui.cards.table import APART, NARROW
from weldwhy.tui.rows import BLANK, Row, beside, inset, paragraph, row, tied
from weldwhy.units import show

WARM = "preheat"
"""The setting, and the figure that says it in words."""
GAP = 2
"""Cells between two columns."""


def starting_rows(rules: RuleBase, plan: Plan, drawing: Sequence[Row], width: int) -> list[Row]:
    """The table with the picture at its right on a wide page, else below; then what is said of it.

    Without numbers only the notes of the plan say what to start from.
    """
    room = width - max((line.width for line in drawing), default=0) - APART
    if drawing and room >= NARROW:
        rows = beside([*_table(rules, plan), *_said(rules, plan, room)], drawing, room + APART)
    else:
        rows = [*_table(rules, plan), *_said(rules, plan, width)]
        rows += [BLANK, *tied(drawing)] if drawing else []
    return rows


def _table(rules: RuleBase, plan: Plan) -> list[Row]:
    """A row for each setting: start, allowed range, and the mark of the dial where it has marks."""
    shown = plan.targets.keys() - {WARM}  # a preheat is told in words: it may be none
    lines = [("", "start", "allowed", "your dial" if plan.marks else "")]
    for setting in rules.settings:
        if setting in shown:
            target = plan.targets[setting]
            low, best, high = (show(q, plan.system) for q in (target.low, target.best, target.high))
            mark = plan.marks.get(setting, "")
            lines.append((rules.settings[setting].name, best, f"{low} to {high}", mark))
    if len(lines) == 1:
        return []
    name, start, allowed = (max(len(line[at]) for line in lines) + GAP for at in range(3))
    rows = []
    for at, (called, best, span, mark) in enumerate(lines):
        roles = ("text", "strong", "text", "strong") if at else ("dim",) * 4
        texts = (f" {called:<{name}}", f"{best:<{start}}", f"{span:<{allowed}}", mark)
        rows.append(row(*zip(texts, roles, strict=True)))
    return rows


def _said(rules: RuleBase, plan: Plan, width: int) -> list[Row]:
    """What goes with the numbers, in sentences."""
    rows: list[Row] = []
    for setting, sentence in plan.beyond.items():
        name = rules.settings[setting].name if setting in rules.settings else setting
        rows += paragraph(sentence, width - 1, "notice", (f" {capital(name)}: ", "notice"), 1)
    lens = f"Lens shade {plan.lens.shade:g} or darker." if plan.lens else ""
    warm = next((figure.text for figure in plan.figures if figure.name == WARM), "")
    how = {"Transfer": plan.transfer, "Inductance": plan.inductance, "Preheat": warm}
    for text in (*(f"{name}: {ended(said)}" for name, said in how.items() if said), lens):
        rows += _text(text, "text", width)
    rows += _text(plan.note, "dim", width)
    for source, names in _cited(rules, plan).items():
        rows += _text(f"Source of {', '.join(names)}: {ended(source)}", "dim", width)
    return rows


def _cited(rules: RuleBase, plan: Plan) -> dict[str, list[str]]:
    """Each source in words, with the names of the settings that rest on it."""
    found: dict[str, list[str]] = {}
    for setting, cited in plan.sources.items():
        if setting in plan.targets and setting in rules.settings:
            found.setdefault(source_text(rules, cited), []).append(rules.settings[setting].name)
    return found


def _text(text: str, role: str, width: int) -> list[Row]:
    return inset(text, width, role) if text else []
