"""The set-up for a job, before the first bead: which process, how it is hooked up, what to set.

Pure: the rules, what is told of the work, and the machine go in; a plan comes out. Where the rules
hold no numbers the plan says so, and a metal or job that is not for a small shop gets no plan.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from weldwhy import hotcracks, metalwork, readings
from weldwhy.case import Case
from weldwhy.checklist import ChecklistStep, checklist, standing
from weldwhy.figures import Figure, figures
from weldwhy.hookup import polarity, sides
from weldwhy.lens import lightest
from weldwhy.machine import mark
from weldwhy.model import SUITS, Caution, Gas, Lens, Machine, RuleBase
from weldwhy.setupcase import DIALS
from weldwhy.setupmodel import Filler, Part
from weldwhy.startvalues import StartValues, start_values
from weldwhy.suiting import POOR, USABLE, holding, situation, suits
from weldwhy.testbead import Bead, bead
from weldwhy.units import Quantity, Target

CRACKS_BESIDE = "This alloy cracks beside the weld whatever the filler; bolt or rivet it."


@dataclass(frozen=True, slots=True)
class Plan:
    """How one process is set up for a job. Texts are for the person, "" and None where nothing is.

    `gun` and `clamp` are plus, minus or ac; `targets` and `marks` (of a machine's dial) stand by
    setting id; `beyond` says by setting id what the machine does not reach. `source` is that of
    the window, `sources` hold that of each target. `size` is that of wire, rod or tungsten, the
    person's own or the usual one. `system` is that of all texts.
    """

    process: str
    name: str
    suits: str
    why: tuple[str, ...]
    polarity: str
    gun: str
    clamp: str
    holder: str
    transfer: str
    inductance: str
    gas: tuple[Gas, Target] | None
    filler: Filler | None
    size: Quantity | None
    filler_size: Quantity | None
    targets: Mapping[str, Target]
    sources: Mapping[str, str]
    marks: Mapping[str, str]
    source: str
    note: str
    beyond: Mapping[str, str]
    parts: tuple[Part, ...]
    checklist: tuple[ChecklistStep, ...]
    test_bead: Bead | None
    cautions: tuple[Caution, ...]
    lens: Lens | None
    figures: tuple[Figure, ...]
    notes: tuple[str, ...]
    system: str | None


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why there is no plan, and whom to call: a caution that stops."""

    caution: Caution


def refusal(rules: RuleBase, case: Case) -> Refusal | None:
    """The refusal, if the metal or the job is one that a small shop should not weld."""
    metal, job = rules.materials.get(case.material), rules.jobs.get(case.job)
    for named in (metal, job):
        caution = rules.cautions.get(named.caution) if named else None
        if caution is not None and caution.stop:
            return Refusal(caution)
    return None


def plans(
    rules: RuleBase, case: Case, machine: Machine, system: str | None = None
) -> tuple[Plan, ...] | Refusal:
    """A plan for every process that the machine can do, best first; or the refusal."""
    refused = refusal(rules, case)
    if refused is not None:
        return refused
    able = [name for name in rules.processes if name in machine.processes and name in rules.setups]
    found = [plan(rules, case, machine, name, system) for name in able]
    return tuple(sorted(found, key=lambda each: SUITS.index(each.suits)))


def plan(
    rules: RuleBase, case: Case, machine: Machine, process: str, system: str | None = None
) -> Plan:
    """The plan for one process, in the units asked for or else in those that the person writes.

    ValueError for a metal or job that is refused: ask `refusal` first. KeyError for a process
    that the rules hold no set-up of.
    """
    if refusal(rules, case) is not None:
        raise ValueError("there is no plan for a metal or job that is refused")
    system = system or readings.habit(rules, case)
    setup, work, named = rules.setups[process], situation(case), rules.processes[process]
    trial = bead(rules, setup, work, system)
    start = start_values(rules, case, machine, process, work, trial, system)
    found, targets = start.found, start.targets
    against = [*_cracks(rules, case), *_out_of_reach(start)]
    word, why = suits(setup, work, named, machine, against)
    gun, clamp = sides(setup, start.filler)
    marks = {name: mark(machine, name, target.best) for name, target in targets.items()}
    amps = targets.get("amps")
    return Plan(
        process=process,
        name=named.plain,
        suits=word,
        why=why,
        polarity=polarity(setup.holder, gun),
        gun=gun,
        clamp=clamp,
        holder=setup.holder,
        transfer=found.window.transfer if found else "",
        inductance=found.window.inductance if found else "",
        gas=start.gas,
        filler=start.filler,
        size=start.size,
        filler_size=start.filler_size,
        targets=targets,
        sources=start.sources,
        marks={name: each for name, each in marks.items() if each},
        source=found.window.source if found else "",
        note=found.window.note if found and targets.keys() & set(DIALS) else "",
        beyond=found.beyond if found else {},
        parts=tuple(holding(setup.parts, work)),
        checklist=checklist(rules, setup, work),
        test_bead=trial,
        cautions=standing(rules, setup, work, case),
        lens=lightest(rules, process, amps.high.value if amps else None),
        figures=figures(rules, process, machine, targets, start.size, system),
        notes=start.notes,
        system=system,
    )


def _cracks(rules: RuleBase, case: Case) -> list[tuple[str, str]]:
    """What the grade of the metal says against welding it at all."""
    metal = metalwork.told(rules, case.grade)
    if metal is None:
        return []
    said = list(hotcracks.warning(rules, metal.makes))
    if metal.material == "aluminium" and hotcracks.beside(rules, metal.makes):
        said.append(CRACKS_BESIDE)
    return [(POOR, sentence) for sentence in said]


def _out_of_reach(start: StartValues) -> list[tuple[str, str]]:
    """What the machine does not reach: poor where it misses the whole range, else usable."""
    if start.found is None:
        return []
    at = start.found.targets
    return [
        (POOR if at[name].low == at[name].high else USABLE, sentence)
        for name, sentence in start.found.beyond.items()
        if name in DIALS
    ]
