"""The words of a set-up as frozen values: grade, filler, and how a process is set up.

Apart from `model`, since nothing of it is needed to find a fault, and classes take time to make.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from weldwhy.units import Quantity, Target


@dataclass(frozen=True, slots=True)
class Grade:
    """A base metal by its standard name. `makes`: mass percent of each element, the worst usual."""

    id: str
    name: str
    material: str
    makes: Mapping[str, float]
    source: str
    also: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Filler:
    """A class of wire, rod or filler rod, and what it is for.

    `hydrogen` is what it leaves in the weld, ml in 100 g, where known; `electrode` the polarity
    on its side (plus, minus, ac; the usual one first).
    """

    id: str
    name: str
    kind: Literal["solid wire", "cored wire", "rod", "filler rod"]
    processes: tuple[str, ...]
    materials: tuple[str, ...]
    use: str
    source: str
    electrode: tuple[str, ...] = ()
    hydrogen: float | None = None
    positions: tuple[str, ...] = ()
    grades: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class When:
    """Where a line of a set-up holds; an empty field holds everywhere. Thickness in mm."""

    materials: tuple[str, ...] = ()
    joints: tuple[str, ...] = ()
    positions: tuple[str, ...] = ()
    places: tuple[str, ...] = ()
    above: float | None = None
    below: float | None = None


@dataclass(frozen=True, slots=True)
class Suiting:
    """How well a process suits a job, and why."""

    suits: str
    why: str
    source: str
    when: When = When()


@dataclass(frozen=True, slots=True)
class Part:
    """What goes into or onto the machine, and which one to choose."""

    part: str
    choose: str
    source: str
    when: When = When()


@dataclass(frozen=True, slots=True)
class SetupStep:
    """One step of the checklist; its cautions are shown before it."""

    do: str
    source: str
    cautions: tuple[str, ...] = ()
    when: When = When()


@dataclass(frozen=True, slots=True)
class TestBead:
    """A test bead to run, and what a sound one looks like; the leg of a `fillet` is measured."""

    run: str
    sound: str
    source: str
    fillet: bool = False
    cautions: tuple[str, ...] = ()
    when: When = When()


@dataclass(frozen=True, slots=True)
class GasChoice:
    """The gas to take, by its id, and its usual flow."""

    gas: str
    flow: Target
    source: str
    when: When = When()


@dataclass(frozen=True, slots=True)
class SizeChoice:
    """The usual size of what is used up: `of` is wire, rod, tungsten or filler rod."""

    of: str
    size: Quantity
    source: str
    when: When = When()


@dataclass(frozen=True, slots=True)
class Standing:
    """A caution, by its id, that stands over the whole work."""

    caution: str
    when: When = When()


@dataclass(frozen=True, slots=True)
class Setup:
    """How one process is set up. `gun` and `clamp` are plus, minus or ac, the usual case.

    Of `gases` and of the `sizes` of one thing the first that fits is taken.
    """

    id: str
    gun: str
    clamp: str
    holder: str
    suits: tuple[Suiting, ...]
    parts: tuple[Part, ...]
    checklist: tuple[SetupStep, ...]
    test_beads: tuple[TestBead, ...]
    source: str
    note: str = ""
    gases: tuple[GasChoice, ...] = ()
    sizes: tuple[SizeChoice, ...] = ()
    cautions: tuple[Standing, ...] = ()
