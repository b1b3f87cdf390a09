"""What the rules say of a grade, gas, filler, table, shift, set-up or machine, in lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from weldwhy.model import Gas, Machine, RuleBase, Shift, Table
from weldwhy.report import source_text
from weldwhy.setupmodel import Filler, Grade, Setup, When
from weldwhy.units import Quantity, show


def grade_page(rules: RuleBase, grade: Grade) -> list[str]:
    """A base metal and what it is made of."""
    lines = [f"grade {grade.id}: {grade.name}", f"metal: {grade.material}"]
    lines += [f"also called: {', '.join(grade.also)}"] if grade.also else []
    lines.append(f"percent: {_figures(grade.makes)}")
    return [*lines, *_end(rules, grade.note, grade.source)]


def gas_page(rules: RuleBase, gas: Gas) -> list[str]:
    """A shielding gas, its parts and its group."""
    lines = [f"gas {gas.id}: {gas.name}", f"percent: {_figures(gas.parts)}"]
    lines += [f"group in ISO 14175: {gas.group}"] if gas.group else []
    lines += [f"also called: {', '.join(gas.also)}"] if gas.also else []
    return [*lines, *_end(rules, "", gas.source)]


def filler_page(rules: RuleBase, filler: Filler) -> list[str]:
    """A class of wire or rod, and what it is for."""
    lines = [f"filler {filler.id}: {filler.name}, {filler.kind}", filler.use]
    lines.append(f"for: {', '.join(filler.materials)}; {', '.join(filler.processes)}")
    lists = {
        "grades": filler.grades,
        "polarity on its side": filler.electrode,
        "positions": filler.positions,
    }
    lines += [f"{title}: {', '.join(words)}" for title, words in lists.items() if words]
    if filler.hydrogen is not None:
        lines.append(f"hydrogen: {filler.hydrogen:g} ml in 100 g")
    return [*lines, *_end(rules, "", filler.source)]


def table_page(rules: RuleBase, table: Table) -> list[str]:
    """A table, a row a line."""
    columns = [f"{name} ({unit})" for name, unit in zip(table.columns, table.units, strict=True)]
    lines = [f"table {table.id}: {table.name}", f"columns: {', '.join(columns)}"]
    lines += [f"  {row}: {', '.join(f'{n:g}' for n in held)}" for row, held in table.rows.items()]
    return [*lines, *_end(rules, table.note, table.source)]


def shift_page(rules: RuleBase, shift: Shift) -> list[str]:
    """What a joint or a position changes."""
    lines = [f"shift {shift.id}: {shift.name}", f"processes: {', '.join(shift.processes)}"]
    words = [*shift.joints, *shift.positions]
    lines += [f"for: {', '.join(words)}"] if words else []
    lines.append(f"times: {_figures(shift.scale)}")
    return [*lines, *_end(rules, shift.why, shift.source)]


def setup_page(rules: RuleBase, setup: Setup) -> list[str]:
    """How a process is set up, each line with where it holds."""
    lines = [f"set-up {setup.id}", f"{setup.holder} to {setup.gun}, work clamp to {setup.clamp}"]
    lines += [f"{s.suits}{_where(s.when)}: {s.why}" for s in setup.suits]
    lines += [f"{p.part}{_where(p.when)}: {p.choose}" for p in setup.parts]
    lines += [f"step{_where(s.when)}: {s.do}" for s in setup.checklist]
    lines += [f"test bead{_where(b.when)}: {b.run} Sound: {b.sound}" for b in setup.test_beads]
    return [*lines, *_end(rules, setup.note, setup.source)]


def machine_page(_rules: RuleBase, machine: Machine) -> list[str]:
    """A machine and what it reaches."""
    lines = [f"machine {machine.id}: {machine.name}", f"processes: {', '.join(machine.processes)}"]
    lines += list(_limits(machine.limits, ""))
    for process, limits in machine.limits_in.items():
        lines += list(_limits(limits, f" in {process}"))
    lines += [f"duty cycle: {point.percent:g} % at {point.amps:g} A" for point in machine.duty]
    return [*lines, *([machine.note] if machine.note else [])]


def _limits(limits: Mapping[str, tuple[Quantity, Quantity]], where: str) -> Iterator[str]:
    for setting, (low, high) in limits.items():
        yield f"{setting}{where}: {show(low)} to {show(high)}"


def _where(when: When) -> str:
    """Where a line holds, in brackets; "" if it holds everywhere."""
    words: Iterable[str] = (*when.materials, *when.joints, *when.positions, *when.places)
    ends = [
        f"{word} {show(Quantity('length', value, 'mm'))}"
        for word, value in (("over", when.above), ("under", when.below))
        if value is not None
    ]
    said = ", ".join([*words, *ends])
    return f" ({said})" if said else ""


def _figures(figures: Mapping[str, float]) -> str:
    return ", ".join(f"{name} {value:g}" for name, value in figures.items())


def _end(rules: RuleBase, note: str, cited: str) -> list[str]:
    return [*([note] if note else []), f"source: {source_text(rules, cited)}"]
