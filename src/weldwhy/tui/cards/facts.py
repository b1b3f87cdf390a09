"""The optional facts: metal, thickness, place, job and settings, each a numbered line."""

from __future__ import annotations

from dataclasses import dataclass, replace

from weldwhy import entries
from weldwhy.case import Case, Entry, Measured, Situated
from weldwhy.machine import at_mark
from weldwhy.model import JOINTS, PLACES, POSITIONS, Machine, RuleBase
from weldwhy.tui.cards.form import Field
from weldwhy.units import rounded, show
from weldwhy.unitwords import EXAMPLES

BEAD = frozenset({"leg", "bead_width", "bead_height"})
"""Sizes of a bead, from which its travel speed follows."""
MEASURED = BEAD | {"stick_out", "travel", "preheat"}
"""What is no dial and no consumable, but can be measured."""

GRADES = '"A36" or what it is made of: "C 0.18 Mn 1.2"'
"""Examples for a grade."""

SIZES = {
    "wire": '"0.035 in" or "0.9 mm"',
    "rod": '"1/8 in" or "3.2 mm"',
    "tungsten": '"3/32 in" or "2.4 mm"',
}
"""Examples for sizes that are nothing like a plate's thickness."""


@dataclass(frozen=True, slots=True)
class Fact(Field):
    """A line of the form of facts; `setting` tells a dial from something of the work."""

    setting: bool = False


def entry_of(fact: Fact, value: str) -> Entry:
    """The entry that tells this fact; "" withdraws it."""
    return Measured(fact.id, value) if fact.setting else Situated(fact.id, value)


def facts_of(rules: RuleBase, case: Case) -> tuple[Fact, ...]:
    """The facts worth telling for the case's process; the nine that matter most come first."""
    metals = tuple((m.id, m.name) for m in rules.materials.values())
    jobs = tuple((j.id, j.name) for j in rules.jobs.values())
    first = [
        Fact("material", "metal", case.material, _named(metals, case.material), metals),
        Fact(
            "thickness", "thickness", case.thickness, case.thickness,
            example=EXAMPLES["length"], typed=True,
        ),
        Fact("place", "place", case.place, case.place, _words(PLACES)),
        Fact("job", "job", case.job, _named(jobs, case.job), jobs),
    ]  # fmt: skip
    first = [f for f in first if f.options or f.example]
    dials = _settings(rules, case, setting_ids(rules, case.process) - MEASURED)
    return (*first, *dials, *_more(rules, case), *_settings(rules, case, _measurable(rules, case)))


def _more(rules: RuleBase, case: Case) -> list[Fact]:
    """What fewer people know of their work."""
    grades = tuple(
        (g.id, g.name)
        for g in rules.grades.values()
        if not case.material or g.material == case.material
    )
    facts = [
        Fact("joint", "joint", case.joint, case.joint, _words(JOINTS)),
        Fact("position", "position", case.position, case.position, _words(POSITIONS)),
    ]
    if grades:
        shown = _named(grades, case.grade)
        facts.append(
            Fact("grade", "grade of the metal", case.grade, shown, grades, GRADES, typed=True)
        )
    return facts


def _words(words: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    return tuple((word, word) for word in words)


def _measurable(rules: RuleBase, case: Case) -> frozenset[str]:
    """What can be measured of a run: of a bead only where wire goes in at a known rate."""
    wire = "wire_feed" in setting_ids(rules, case.process)
    found = MEASURED if wire else MEASURED - BEAD
    return found & rules.settings.keys()


def _named(options: tuple[tuple[str, str], ...], value: str) -> str:
    return dict(options).get(value, value)


def _settings(rules: RuleBase, case: Case, wanted: frozenset[str]) -> list[Fact]:
    told = case.measured
    return [
        Fact(
            setting.id, setting.name, told.get(setting.id, ""), told.get(setting.id, ""),
            example=SIZES.get(setting.id, EXAMPLES.get(setting.quantity, "")), setting=True,
            options=tuple((g, g) for g in _gases(rules, case)) if setting.id == "gas" else (),
            typed=True,
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
    # a machine that feeds wire has no dial for amps
    return frozenset(found - ({"amps"} if "wire_feed" in found else set()))


def _gases(rules: RuleBase, case: Case) -> list[str]:
    """The usual gas of each window of the process and metal, by its name."""
    names = [
        rules.gases[window.gas[0]].name
        for window in rules.windows.values()
        if window.gas
        and case.process in window.processes
        and (not case.material or not window.materials or case.material in window.materials)
    ]
    return list(dict.fromkeys(names))


def with_marks(fact: Fact, machine: Machine) -> Fact:
    """The fact, saying that a mark on the machine's dial will do where its marks are known."""
    if not machine.dials.get(fact.id):
        return fact
    return replace(fact, example=f"{fact.example}, or the mark on your dial")


def of_mark(fact: Fact, machine: Machine, text: str) -> str:
    """What a mark on the machine's dial stands for; "" for text that is no mark of it."""
    words = " ".join(text.split()).removeprefix("mark ")
    value = at_mark(machine, fact.id, words) if fact.setting else None
    return show(rounded(value)) if value else ""


def checked(rules: RuleBase, fact: Fact, text: str, system: str | None) -> str:
    """The value to keep for what was typed; EntryError, one plain line, when it cannot be."""
    if not text.strip():
        return ""
    if fact.setting:
        return entries.measured(rules, fact.id, text, system)
    if fact.id == "thickness":
        return entries.thickness(text, system)
    told = entries.answered(rules, fact.id, text)
    return told.value if isinstance(told, Situated) else ""
