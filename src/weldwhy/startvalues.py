"""What to set for a job in one process: filler, sizes, gas, and every target that follows."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from weldwhy import figures, hookup, limits, preheat, readings, testbead, windows
from weldwhy.advice import read_thickness
from weldwhy.case import Case, Measured, Situated
from weldwhy.consumables import size_of
from weldwhy.model import Gas, Machine, RuleBase
from weldwhy.setupcase import DIALS
from weldwhy.setupmodel import Filler, Setup
from weldwhy.suiting import Situation
from weldwhy.testbead import Bead
from weldwhy.units import Quantity, Target, result_unit, two_digits
from weldwhy.windows import Found, Settings

NO_NUMBERS = (
    "No volts, wire feed or amps here for this work: start from the label or packet of the wire "
    "or rod, and try on scrap."
)

WORKED_OUT = {
    "travel": "worked out from wire feed, wire size and the leg of the test bead",
    "preheat": "worked out from the grade or the kind of metal, thickness, hydrogen and heat input",
}
"""Where a target is from that no window holds; the gas flow of a process is common practice."""


@dataclass(frozen=True, slots=True)
class StartValues:
    """What to set. `found` is the window, held to the machine; None where no window fits.

    `targets` and their `sources` stand by setting id: those of the window, gas flow, travel and
    preheat.
    """

    filler: Filler | None
    size: Quantity | None
    filler_size: Quantity | None
    gas: tuple[Gas, Target] | None
    found: Found | None
    targets: Mapping[str, Target]
    sources: Mapping[str, str]
    notes: tuple[str, ...]


def start_values(
    rules: RuleBase,
    case: Case,
    machine: Machine,
    process: str,
    work: Situation,
    bead: Bead | None,
    system: str | None,
) -> StartValues:
    """The person's own wire, rod, tungsten and gas where told, else the usual ones; and targets."""
    case = case.with_(Situated("process", process))
    setup = rules.setups[process]
    told: Settings = readings.told(rules, case.measured)
    words = case.measured.get(hookup.consumed(setup), "")
    filler, filler_note = hookup.filler(rules, process, work, case.grade, words)

    def fitted(settings: Settings) -> Found | None:
        found = _found(rules, case, work, settings, filler)
        return limits.fit(rules, found, machine, process, system) if found else None

    found, told = _within_reach(setup, work, told, fitted)
    gas, gas_note = hookup.gas(rules, setup, work, case.measured.get("gas", ""), found)
    size, rod = hookup.sizes(setup, work, told, found)
    targets = dict(found.targets) if found else {}
    targets |= {"gas_flow": gas[1]} if gas else {}
    targets |= _travel(rules, process, targets, size, bead, system)
    targets |= _preheat(rules, case, hookup.with_class(told, filler), targets)
    empty = "" if targets.keys() & set(DIALS) else NO_NUMBERS
    grade = rules.grades[case.grade].note if case.grade in rules.grades else ""
    said = (grade, filler_note, gas_note, found.note if found else "", empty, setup.note)
    sources = {name: _source(name, found) for name in targets}
    notes = tuple(note for note in said if note)
    return StartValues(filler, size, rod, gas, found, targets, sources, notes)


def _within_reach(
    setup: Setup, work: Situation, told: Settings, fitted: Callable[[Settings], Found | None]
) -> tuple[Found | None, Settings]:
    """The window for the size told or usual, and the settings it is for; where the machine falls
    short of a usual size, those for the next smaller one that it can burn."""
    found = fitted(told)
    if found is None or not found.beyond:
        return found, told
    name = found.window.size_of
    usual = hookup.usual(setup, found.window, work)
    if usual is None or size_of(told.get(name)) is not None:
        return found, told
    listed = {row.size.value: row.size for row in found.window.rows if row.size}
    for value in sorted((each for each in listed if each < usual.value), reverse=True):
        smaller = {**told, name: listed[value]}
        other = fitted(smaller)
        if other and not other.beyond and other.targets.keys() & set(DIALS):
            return other, smaller
    return found, told


def _source(name: str, found: Found | None) -> str:
    """Where a target is from: the window, else what it is worked out from."""
    if name != "preheat" and found is not None and name in found.targets:
        return found.window.source
    return WORKED_OUT.get(name, "common practice")


def _found(
    rules: RuleBase, case: Case, work: Situation, told: Settings, filler: Filler | None
) -> Found | None:
    """The window for the class in use; if it has no numbers, that for any class."""

    def find(settings: Settings) -> Found | None:
        return windows.find(
            rules, case.process, work.material, read_thickness(case.thickness), settings,
            work.place, joint=work.joint, position=work.position,
        )  # fmt: skip

    setup = rules.setups[case.process]
    found = find(hookup.with_class(told, filler))
    if found is not None and not found.targets.keys() & set(DIALS):
        general = find(told)
        return general if general is not None and general.targets.keys() & set(DIALS) else found
    if found is None:
        return None
    # asked once more with what is usual, since the plan names it and need not call it assumed
    again = find(hookup.with_class({**_usual(rules, setup, found, work), **told}, filler))
    return again if again is not None and again.window is found.window else found


def _usual(
    rules: RuleBase, setup: Setup, found: Found, work: Situation
) -> dict[str, Quantity | str]:
    """The size and the gas that a window takes where none is told."""
    window = found.window
    size = hookup.usual(setup, window, work)
    usual: dict[str, Quantity | str] = {window.size_of: size} if size else {}
    if window.gas and window.gas[0] in rules.gases:
        usual["gas"] = rules.gases[window.gas[0]].name
    return usual


def _travel(
    rules: RuleBase,
    process: str,
    targets: Mapping[str, Target],
    size: Quantity | None,
    bead: Bead | None,
    system: str | None,
) -> dict[str, Target]:
    """The window's speed in the person's units, else the one that lays the leg of the test bead."""
    feed, named = targets.get("wire_feed"), targets.get("travel")
    if named is not None:
        unit = result_unit(named.best, system)
        ends = (replace(q, unit=unit) for q in (named.low, named.best, named.high))
        return {"travel": Target(*map(two_digits, ends))}
    if feed is None or size is None or bead is None or bead.leg is None:
        return {}
    found = testbead.travel(rules, process, bead.leg, feed.best, size, system)
    return {"travel": found} if found else {}


def _preheat(
    rules: RuleBase, case: Case, told: Settings, targets: Mapping[str, Target]
) -> dict[str, Target]:
    """The preheat with the class that is taken, since the hydrogen it leaves counts."""
    said = [(name, told[name]) for name in ("wire", "rod") if name in told]
    case = case.with_(*(Measured(name, text) for name, text in said if isinstance(text, str)))
    heat = figures.heat(rules, case.process, targets)
    found = preheat.target(rules, case, read_thickness(case.thickness), heat)
    return {"preheat": found} if found else {}
