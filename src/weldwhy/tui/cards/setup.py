"""The form of a set-up: what is to be welded, and with what; only what suits is asked."""

from __future__ import annotations

from collections.abc import Iterator

from weldwhy.case import Case, Entry, Measured, Situated
from weldwhy.model import JOINTS, PLACES, POSITIONS, Caution, Gas, RuleBase
from weldwhy.plaintext import capital
from weldwhy.setup import Plan
from weldwhy.setupcase import size_setting
from weldwhy.tui.cards.card import SQUEEZED, Card, Choice
from weldwhy.tui.cards.facts import SIZES, Fact, entry_of
from weldwhy.tui.cards.step import caution_rows
from weldwhy.tui.rows import Row, inset
from weldwhy.unitwords import EXAMPLES

WHERE = "Set up"
SIZED = ("wire", "rod", "tungsten")
"""The settings that are a size of what is used up."""
WANTED = ("material", "thickness")
"""Without these nothing can be set up."""


def fields_of(rules: RuleBase, work: Case) -> tuple[Fact, ...]:
    """The lines of the form. Sizes, gas and grade stand there once it is known which suit."""
    process = work.process
    named = {p.id: p.plain for p in rules.processes.values() if p.id in rules.setups}
    return (
        _picked("material", "metal", work.material, _names(rules.materials)),
        Fact(
            "thickness", "thickness", work.thickness, work.thickness,
            example=EXAMPLES["length"], typed=True,
        ),
        _picked("joint", "joint", work.joint, _words(JOINTS)),
        _picked("position", "position", work.position, _words(POSITIONS)),
        _picked("place", "place", work.place, _words(PLACES)),
        _picked("process", "process", process, named, "don't know: show what suits"),
        _picked("job", "job", work.job, _names(rules.jobs)),
        *_grade(rules, work),
        *_size(rules, work),
        *_gas(rules, work),
    )  # fmt: skip


def _picked(
    name: str, called: str, value: str, options: dict[str, str], none: str = "don't know"
) -> Fact:
    shown = options.get(value, value)
    return Fact(name, called, value, shown, tuple(options.items()), none=none)


def _words(words: tuple[str, ...]) -> dict[str, str]:
    return {word: word for word in words}


def _names(things: object) -> dict[str, str]:
    assert isinstance(things, dict)
    return {each.id: each.name for each in things.values()}


def _grade(rules: RuleBase, work: Case) -> Iterator[Fact]:
    grades = {g.id: g.name for g in rules.grades.values() if g.material == work.material}
    if grades:
        yield _picked("grade", "grade of the metal", work.grade, grades)


def _size(rules: RuleBase, work: Case) -> Iterator[Fact]:
    setting = rules.settings.get(size_setting(rules, work.process))
    if work.process and setting is not None:
        value = work.measured.get(setting.id, "")
        example = SIZES.get(setting.id, EXAMPLES["length"])
        yield Fact(
            setting.id, setting.name, value, value, example=example, typed=True, setting=True,
            none="the usual one",
        )  # fmt: skip


def _gas(rules: RuleBase, work: Case) -> Iterator[Fact]:
    gases = {gas.name: gas.name for gas in gases_of(rules, work.process, work.material)}
    if gases and "gas" in rules.settings:
        value = work.measured.get("gas", "")
        yield Fact(
            "gas", rules.settings["gas"].name, value, value, tuple(gases.items()),
            typed=True, setting=True, none="the usual one",
        )  # fmt: skip


def gases_of(rules: RuleBase, process: str, material: str) -> list[Gas]:
    """The gases that the set-up and the windows of a process name for a metal, usual ones first."""
    setup = rules.setups.get(process)
    if setup is None:
        return []
    ids = [
        line.gas
        for line in setup.gases
        if not line.when.materials or not material or material in line.when.materials
    ]
    for window in rules.windows.values():
        if process in window.processes and material in ("", *window.materials):
            ids += window.gas
    return [rules.gases[gas] for gas in dict.fromkeys(ids) if gas in rules.gases]


def entries_for(rules: RuleBase, work: Case, fact: Fact, value: str) -> tuple[Entry, ...]:
    """The entries that tell a line of the form, and withdraw what no longer goes with it."""
    entries: list[Entry] = [entry_of(fact, value)]
    if fact.id == "process" and value != work.process:
        entries += [Measured(name, "") for name in (*SIZED, "gas") if name in work.measured]
    if fact.id == "material" and value != work.material:
        entries += [Situated("grade", "")] * bool(work.grade)
        entries += [Measured("gas", "")] * ("gas" in work.measured)
    return tuple(entries)


def work_words(rules: RuleBase, work: Case) -> str:
    """The work in a few words: "1/8 in mild steel, fillet, vertical up, outdoors"."""
    metal = rules.materials.get(work.material)
    parts = [f"{work.thickness} {metal.name if metal else ''}".strip()]
    parts += [work.joint, work.position, work.place]
    return ", ".join(part for part in parts if part)


def stop_card(caution: Caution) -> Card:
    """The work is refused: why, and whom to call."""

    def body(width: int, room: int) -> list[Row]:
        return caution_rows([caution], width, squeezed=room == SQUEEZED)

    return Card(body, (), (Choice("Back: change what is wanted", "back", key="esc"),), "Stop")


def suits_card(work: str, plans: tuple[Plan, ...]) -> Card:
    """The processes, best first, each with how well it suits this work and the first reason."""
    choices = tuple(
        Choice(f"{capital(plan.name)}: {plan.suits}", plan.process, note=" ".join(plan.why[:1]))
        for plan in plans
    )

    def body(width: int, room: int) -> list[Row]:
        title = f"What suits {work}?"
        rows = inset(title, width, "strong")
        text = "Best first. Its digit opens how it is hooked up, set and checked."
        return rows + inset(text, width, "dim")

    return Card(body, choices, where=f"{WHERE}: what suits")
