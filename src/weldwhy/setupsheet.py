"""A set-up as a sheet to print and take to the bench: hook-up, start values, boxes to tick.

Text, Markdown and HTML are written from the same boxes as the printed chart. A caution stands
before the first step it belongs to, and is said once, so that it all fits on two pages.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from weldwhy.advice import read_thickness
from weldwhy.blocks import WRITERS, Block
from weldwhy.lines import safe
from weldwhy.plaintext import capital
from weldwhy.report import Once, caution_lines, source_text
from weldwhy.setupdata import SETTINGS
from weldwhy.units import show, show_target

if TYPE_CHECKING:
    from weldwhy.case import Case
    from weldwhy.model import Machine, RuleBase
    from weldwhy.setup import Plan, Refusal
    from weldwhy.units import Target


def setup_sheet(
    rules: RuleBase,
    plan: Plan,
    case: Case,
    machine: Machine,
    form: str,
    others: Sequence[Plan] = (),
) -> list[str]:
    """The lines of the printed set-up in one of `blocks.FORMATS`.

    `others` are the plans of other processes, of which only how well they suit is told.
    """
    return WRITERS[form](_head(rules, plan, case, machine), list(_blocks(rules, plan, others)))


def refusal_lines(refusal: Refusal) -> list[str]:
    """Why there is no set-up, and whom to call."""
    return caution_lines([refusal.caution])


def _head(rules: RuleBase, plan: Plan, case: Case, machine: Machine) -> list[str]:
    metal = rules.materials.get(case.material)
    told = read_thickness(case.thickness)
    work = [metal.name if metal else "", show(told, plan.system) if told else ""]
    work += [rules.grades[case.grade].name if case.grade in rules.grades else ""]
    work += [case.joint, case.position, case.place]
    return safe(
        [
            f"Set-up: {plan.name}",
            f"For: {', '.join(each for each in work if each)}. Machine: {machine.name}.",
            f"This process is {plan.suits} here. {' '.join(plan.why)}",
            "Read the cautions of a step before you do it; tick each box. Then run the test bead.",
        ]
    )


def _blocks(rules: RuleBase, plan: Plan, others: Sequence[Plan]) -> Iterator[Block]:
    said = Once()
    yield from _block("All the time", said.lines(plan.cautions))
    yield from _block("Hook-up", _hookup(plan))
    yield from _block("Parts", [f"{each.part}: {each.choose}" for each in plan.parts])
    yield from _block("Start values", _values(rules, plan))
    yield from _block("Worked out", [f"{each.name}: {each.text}" for each in plan.figures])
    yield from _block("Before the arc", _steps(plan, said))
    yield from _block("Test bead", _bead(plan, said))
    yield from _block("Other processes", [_other(each) for each in others])
    yield from _block("Sources", _sources(rules, plan))


def _block(title: str, lines: Sequence[str]) -> Iterator[Block]:
    """One box; an empty one is left out."""
    if lines:
        yield Block(title, tuple(safe(lines)))


def _hookup(plan: Plan) -> list[str]:
    lines = [f"Polarity: {plan.polarity}."]
    if plan.gas is not None:
        gas, flow = plan.gas
        lines.append(f"Gas: {gas.name}, {show_target(flow, plan.system)}.")
    lines += _consumable(plan)
    if plan.lens is not None:
        shade = f"Lens shade {plan.lens.shade:g} or darker"
        lines.append(f"{shade}: start dark, go lighter until the pool shows.")
    return lines + [f"Note: {note}" for note in plan.notes]


def _consumable(plan: Plan) -> Iterator[str]:
    """What is used up, and its sizes; beside a filler rod stands a tungsten."""
    size = show(plan.size, plan.system) if plan.size else ""
    if plan.filler_size is not None:
        yield from ([f"Tungsten: {size}."] if size else [])
        size = show(plan.filler_size, plan.system)
    kind = plan.filler.kind if plan.filler else "filler"
    named = " ".join(each for each in (size, plan.filler.name if plan.filler else "") if each)
    use = f" {plan.filler.use}" if plan.filler else ""
    if named:
        yield f"{capital(kind)}: {named}.{use}"


def _values(rules: RuleBase, plan: Plan) -> list[str]:
    lines = []
    for name in SETTINGS:
        if name in plan.targets:
            called = rules.settings[name].name if name in rules.settings else name
            mark = f"; on the dial: {plan.marks[name]}" if name in plan.marks else ""
            lines.append(f"{called}: {_reach(plan.targets[name], plan.system)}{mark}")
    lines += [f"transfer: {plan.transfer}"] if plan.transfer else []
    lines += [f"inductance: {plan.inductance}"] if plan.inductance else []
    # what the machine does not reach was said of the process as a whole, unless it is a side issue
    lines += (sentence for sentence in plan.beyond.values() if sentence not in plan.why)
    return lines + ([plan.note] if plan.note else [])


def _reach(target: Target, system: str | None) -> str:
    """The value and its range; a target without one is as near as the machine comes."""
    if target.low.value == target.high.value:
        return f"{show(target.best, system)}, the nearest this machine comes"
    return show_target(target, system)


def _steps(plan: Plan, said: Once) -> list[str]:
    lines: list[str] = []
    for number, step in enumerate(plan.checklist, 1):
        lines += said.lines(step.cautions)
        lines.append(f"[ ] {number}. {step.text}")
    return lines


def _bead(plan: Plan, said: Once) -> list[str]:
    bead = plan.test_bead
    if bead is None:
        return []
    lines = [*said.lines(bead.cautions), f"[ ] {bead.run}", f"A sound one: {bead.sound}"]
    sizes = [
        f"{name} {show_target(target, plan.system)}"
        for name, target in (("leg", bead.leg), ("throat", bead.throat))
        if target is not None
    ]
    return lines + ([f"It measures: {', '.join(sizes)}."] if sizes else [])


def _other(plan: Plan) -> str:
    return f"{plan.name}: {plan.suits}. {' '.join(plan.why)}"


def _sources(rules: RuleBase, plan: Plan) -> list[str]:
    """Every source of what stands on the sheet, each once."""
    cited = [
        *plan.sources.values(),
        *(part.source for part in plan.parts),
        *(step.source for step in plan.checklist),
        plan.test_bead.source if plan.test_bead else "",
        plan.filler.source if plan.filler else "",
        plan.gas[0].source if plan.gas else "",
        plan.lens.source if plan.lens else "",
    ]
    places: dict[str, list[str]] = {}
    singly = (one.strip() for each in cited for one in each.split(";"))
    for each in dict.fromkeys(singly):
        name, _, place = each.partition(",")
        if name.strip().replace(" ", "-") in rules.sources:
            places.setdefault(name, []).extend([place.strip()] if place else [])
    texts = (", ".join([name, *where]) for name, where in places.items())
    return ["; ".join(source_text(rules, text) for text in texts) + "."]
