"""The pages of what is set and worked out: operating window, set-up, calculator."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from weldwhy.lookup.leaf import Leaf, Line, part, said
from weldwhy.lookup.things import Ref, things
from weldwhy.lookup.wordings import cautions, metal_names, plain_leaf, plain_names
from weldwhy.model import RuleBase, Window
from weldwhy.plaintext import capital
from weldwhy.reckon.calculator import Calculator, Input
from weldwhy.reckon.wording import example_call, formula_lines, input_line
from weldwhy.setupmodel import Setup, When
from weldwhy.units import Quantity, Target, show, show_target


def window_leaf(rules: RuleBase, name: str, system: str | None = None) -> Leaf:
    """An operating window: the targets at each thickness and size, in the person's units."""
    window = rules.windows[name]
    lines = said("With", plain_names(rules, window.processes))
    lines += said("On", metal_names(rules, window.materials))
    lines += said("Wire, rod or tungsten", window.consumable)
    lines += said("How the metal crosses", window.transfer)
    lines += said("Inductance", window.inductance)
    lines += said("Positions", ", ".join(window.positions))
    lines += [Line(window.note)]
    parts = part("", lines)
    parts += part("Everywhere in it", _targets(rules, window.targets, system))
    parts += part("In moving air instead", _targets(rules, window.outdoors, system))
    parts += part("Start here (allowed range)", _rows(rules, window, system))
    return plain_leaf(rules, Ref("window", name), window.name, parts, window.source)


def _targets(rules: RuleBase, targets: Mapping[str, Target], system: str | None) -> list[Line]:
    told = _told(rules, targets, system)
    return [Line(told)] if told else []


def _told(rules: RuleBase, targets: Mapping[str, Target], system: str | None) -> str:
    names = {
        name: rules.settings[name].name if name in rules.settings else name for name in targets
    }
    return ", ".join(f"{names[n]} {show_target(t, system)}" for n, t in targets.items())


def _rows(rules: RuleBase, window: Window, system: str | None) -> Iterator[Line]:
    for row in window.rows:
        place = [show(row.thickness, system)] if row.thickness else []
        place += [f"{window.size_of} {show(row.size, system)}"] if row.size else []
        yield Line(f"{', '.join(place) or 'Any'}: {_told(rules, row.targets, system)}")


def setup_leaf(rules: RuleBase, name: str, system: str | None = None) -> Leaf:
    """How a process is set up: hook-up, parts, checklist, test bead; each line where it holds."""
    known, ref, setup = things(rules), Ref("setup", name), rules.setups[name]
    parts = part("", [Line(setup.note), *_standing(rules, setup)])
    goes_in = [
        Line(f"{capital(p.part)}{_where(rules, p.when, system)}: {p.choose}") for p in setup.parts
    ]
    parts += part("What goes in", goes_in)
    steps: list[Line] = []
    for step in setup.checklist:
        steps += [
            *cautions(rules, step.cautions),
            Line(f"- {step.do}{_where(rules, step.when, system)}"),
        ]
    parts += part("Before the first bead, where it applies", steps)
    beads: list[Line] = []
    for bead in setup.test_beads:
        beads += [
            *cautions(rules, bead.cautions),
            Line(f"{bead.run} Sound: {bead.sound}{_where(rules, bead.when, system)}"),
        ]
    parts += part("The test bead", beads)
    return plain_leaf(rules, ref, capital(known.name(ref)), parts, setup.source, draws=True)


def _where(rules: RuleBase, when: When, system: str | None) -> str:
    """Where a line of a set-up holds, in brackets; "" if it holds everywhere."""
    words = [metal_names(rules, when.materials), *when.joints, *when.positions, *when.places]
    for word, value in (("over", when.above), ("under", when.below)):
        if value is not None:
            words.append(f"{word} {show(Quantity('length', value, 'mm'), system)}")
    told = ", ".join(filter(None, words))
    return f" ({told})" if told else ""


def _standing(rules: RuleBase, setup: Setup) -> list[Line]:
    return cautions(rules, dict.fromkeys(each.caution for each in setup.cautions))


def calculator_leaf(rules: RuleBase, name: str, system: str | None = None) -> Leaf:
    """A calculator: what it is for, what it needs, and the formulas behind it."""
    known, ref = things(rules), Ref("calculator", name)
    calculator: Calculator = known.all[ref]
    parts = part("", [Line(calculator.about)])
    needs = [Line(f"- {_need(rules, each, system)}") for each in calculator.inputs]
    parts += part("It needs", needs)
    parts += part("On the command line", [Line(example_call(rules, calculator, system), "dim")])
    parts += part("The formulas", [Line(line) for line in formula_lines(calculator)])
    return plain_leaf(rules, ref, calculator.name, parts, "")


NAMED = 6
"""Choices of an input that are named; of more it is said how many others there are."""


def _need(rules: RuleBase, wanted: Input, system: str | None) -> str:
    """What an input is, with its unit or choices."""
    names = list(wanted.choices(rules).values()) if wanted.choices else []
    if len(names) <= NAMED:
        return input_line(rules, wanted, system).partition(": ")[2]
    others = f"{', '.join(names[:NAMED])} or one of {len(names) - NAMED} others"
    return f"{wanted.name}; {others}{'; may be left out' if wanted.optional else ''}"
