"""The optional facts: metal, thickness, place, job and settings, each a numbered line."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy import entries
from weldwhy.case import Case, Entry, Measured, Situated
from weldwhy.model import RuleBase
from weldwhy.tui.cards.card import Card, Choice, text_body
from weldwhy.tui.rows import capital
from weldwhy.unitwords import EXAMPLES

TYPE_IT = "type"
"""The choice to type what is not listed."""

PLACES = ("indoors", "outdoors")

SIZES = {
    "wire": '"0.035 in" or "0.9 mm"',
    "rod": '"1/8 in" or "3.2 mm"',
    "tungsten": '"3/32 in" or "2.4 mm"',
}
"""Examples for sizes that are nothing like a plate's thickness."""


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact: where it goes in the case, what it is called, and what may be picked."""

    id: str
    name: str
    value: str
    shown: str
    options: tuple[tuple[str, str], ...] = ()
    example: str = ""
    setting: bool = False

    def entry(self, value: str) -> Entry:
        """The entry that tells this fact; "" withdraws it."""
        return Measured(self.id, value) if self.setting else Situated(self.id, value)


def facts_of(rules: RuleBase, case: Case) -> tuple[Fact, ...]:
    """The facts worth telling for the case's process, nine at most."""
    metals = tuple((m.id, m.name) for m in rules.materials.values())
    jobs = tuple((j.id, j.name) for j in rules.jobs.values())
    place = tuple((p, p) for p in PLACES)
    facts = [
        Fact("material", "metal", case.material, _named(metals, case.material), metals),
        Fact("thickness", "thickness", case.thickness, case.thickness, (), EXAMPLES["length"]),
        Fact("place", "place", case.place, case.place, place),
        Fact("job", "job", case.job, _named(jobs, case.job), jobs),
    ]
    facts = [f for f in facts if f.options or f.example]
    return (*facts, *_settings(rules, case)[: 9 - len(facts)])


def _named(options: tuple[tuple[str, str], ...], value: str) -> str:
    return dict(options).get(value, value)


def _settings(rules: RuleBase, case: Case) -> list[Fact]:
    told = case.measured
    wanted = setting_ids(rules, case.process)
    return [
        Fact(
            setting.id, setting.name, told.get(setting.id, ""), told.get(setting.id, ""),
            example=SIZES.get(setting.id, EXAMPLES.get(setting.quantity, "")), setting=True,
            options=tuple((g, g) for g in _gases(rules, case)) if setting.id == "gas" else (),
        )
        for setting in rules.settings.values()
        if setting.id in wanted
    ]  # fmt: skip


def setting_ids(rules: RuleBase, process: str) -> frozenset[str]:
    """The settings that the windows of a process speak of; all when the process is not known."""
    windows = [w for w in rules.windows.values() if process in w.processes]
    if not windows:
        return frozenset(rules.settings)
    found: set[str] = set()
    for window in windows:
        found |= {window.size_of} | set(window.targets)
        found |= {"gas"} if window.gas else set()
        for line in window.rows:
            found |= set(line.targets)
    # Stick-out is looked at while welding; a machine that feeds wire has no dial for amps.
    return frozenset(found - {"stick_out"} - ({"amps"} if "wire_feed" in found else set()))


def _gases(rules: RuleBase, case: Case) -> list[str]:
    """The gases of the process and metal; each window names its own first, then its other names."""
    names = [
        window.gas[0]
        for window in rules.windows.values()
        if window.gas
        and case.process in window.processes
        and (not case.material or not window.materials or case.material in window.materials)
    ]
    return list(dict.fromkeys(names))


def checked(rules: RuleBase, fact: Fact, text: str, system: str | None) -> str:
    """The value to keep for what was typed; EntryError, one plain line, when it cannot be."""
    if not text.strip():
        return ""
    if fact.setting:
        return entries.measured(rules, fact.id, text, system)
    return entries.thickness(text, system)


def options_card(fact: Fact) -> Card:
    """What may be picked for a fact; not knowing it is told too, so that it is not asked again."""
    choices = [Choice(capital(name), (fact.entry(value),)) for value, name in fact.options]
    if fact.setting:
        choices.append(Choice("Another one: type it", TYPE_IT))
    tells = bool(fact.value) or not fact.setting
    unknown = Choice("Don't know", (fact.entry(""),) if tells else "none", key="0")
    body = text_body([(f"{capital(fact.name)}?", "strong")])
    return Card(body, tuple(choices), (unknown,), where="What is known")
