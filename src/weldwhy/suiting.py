"""How well a process suits a job: which lines of its set-up hold, and which of them decides."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Protocol, TypeVar

from weldwhy.advice import read_thickness
from weldwhy.case import Case
from weldwhy.model import SUITS, Machine, Process
from weldwhy.setupmodel import Setup, When
from weldwhy.units import gauge_number
from weldwhy.unitwords import aluminium_gauge

GOOD, USABLE, POOR = SUITS
UNSAID = "The rules do not say how well it suits this metal."


@dataclass(frozen=True, slots=True)
class Situation:
    """The work as far as it is told: ids and words, "" where not; thickness in mm, else None."""

    material: str = ""
    joint: str = ""
    position: str = ""
    place: str = ""
    thickness: float | None = None


class _Line(Protocol):
    @property
    def when(self) -> When: ...


Held = TypeVar("Held", bound=_Line)


def situation(case: Case) -> Situation:
    """The situation of a case; sheet gauges of aluminium are thinner than those of steel."""
    told = read_thickness(case.thickness)
    millimetres = None if told is None else told.value
    if told is not None and told.unit == "ga" and case.material == "aluminium":
        millimetres = aluminium_gauge(gauge_number(told)) * 25.4
    return Situation(case.material, case.joint, case.position, case.place, millimetres)


def holds(when: When, work: Situation) -> bool:
    """Whether a line speaks of this work; what is not told fits only lines that do not ask it."""
    asked = (
        (when.materials, work.material),
        (when.joints, work.joint),
        (when.positions, work.position),
        (when.places, work.place),
    )
    if any(words and told not in words for words, told in asked):
        return False
    if when.above is None and when.below is None:
        return True
    if work.thickness is None:
        return False
    thick = when.above is None or work.thickness > when.above
    return thick and (when.below is None or work.thickness < when.below)


def holding(lines: Iterable[Held], work: Situation) -> list[Held]:
    """The lines that speak of this work, in their order."""
    return [line for line in lines if holds(line.when, work)]


def suits(
    setup: Setup,
    work: Situation,
    process: Process,
    machine: Machine,
    against: Sequence[tuple[str, str]] = (),
) -> tuple[str, tuple[str, ...]]:
    """How well the process suits, and why: of all that holds the worst decides, and comes first.

    `against` holds what else speaks against it, such as the machine's reach: how well, and why.
    """
    found = [(line.suits, line.why) for line in holding(setup.suits, work)]
    if process.id not in machine.processes:
        found.insert(0, (POOR, f"As far as is told, your machine does not do {process.plain}."))
    found += against
    found = found or [(USABLE, UNSAID)]
    worst = max(SUITS.index(word) for word, _ in found)
    ordered = sorted(found, key=lambda each: -SUITS.index(each[0]))
    # what speaks for it is only of use where nothing speaks against it
    reasons = (why for word, why in ordered if word != GOOD or worst == 0)
    return SUITS[worst], tuple(dict.fromkeys(reasons))
