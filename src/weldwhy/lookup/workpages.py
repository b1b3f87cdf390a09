"""The pages of what is welded with, and on: words, processes, metals, gases, fillers, settings."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.lookup.leaf import Leaf, Line, part, said
from weldwhy.lookup.links import RESTING, UNPUBLISHED, links, source_id
from weldwhy.lookup.things import KINDS, Ref, things
from weldwhy.lookup.wordings import cautions, linked, metal_names, plain_leaf, plain_names
from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.units import show

SIDES = {"plus": "the plus side", "minus": "the minus side", "ac": "alternating current"}
"""Where the electrode hangs, in words."""


def term_leaf(rules: RuleBase, name: str) -> Leaf:
    """A word of the trade: what it means."""
    term = rules.terms[name]
    parts = part("", [Line(term.means), *said("Also called", ", ".join(term.also), "dim")])
    return plain_leaf(rules, Ref("term", name), term.name, parts, term.source)


def process_leaf(rules: RuleBase, name: str) -> Leaf:
    """A process: how it is hooked up, and what goes wrong in it, group by group."""
    known, ref = things(rules), Ref("process", name)
    process = rules.processes[name]
    parts = part("", [Line(capital(process.name)), Line(process.polarity, "strong")])
    for group, title in rules.groups.items():
        met = [
            each
            for each in links(rules).of(ref, "symptom")
            if rules.symptoms[each.id].group == group
        ]
        parts += part(title, linked(known, met))
    return plain_leaf(rules, ref, process.plain, parts, process.source, draws=True)


def metal_leaf(rules: RuleBase, name: str) -> Leaf:
    """A metal, what people call it, and the warning that stands over it."""
    metal = rules.materials[name]
    lines = cautions(rules, [metal.caution])
    lines += said("Also called", ", ".join(metal.also)) or [Line("A metal of this guide.")]
    return plain_leaf(rules, Ref("metal", name), metal.name, part("", lines), "")


def grade_leaf(rules: RuleBase, name: str) -> Leaf:
    """A base metal by its standard name, and what it is made of."""
    known, ref, grade = things(rules), Ref("grade", name), rules.grades[name]
    lines = [*said("Also called", ", ".join(grade.also), "dim"), Line(grade.note)]
    lines += said("Made of, percent", _figures(grade.makes))
    metal = Ref("metal", grade.material)
    parts = part("", lines)
    parts += part("The metal it belongs to", linked(known, [metal] if metal in known else []))
    return plain_leaf(rules, ref, known.name(ref), parts, grade.source)


def gas_leaf(rules: RuleBase, name: str) -> Leaf:
    """A shielding gas and its parts."""
    gas = rules.gases[name]
    lines = said("Parts, percent", _figures(gas.parts)) + said("Group in ISO 14175", gas.group)
    lines += said("Also called", ", ".join(gas.also), "dim")
    return plain_leaf(rules, Ref("gas", name), gas.name, part("", lines), gas.source)


def filler_leaf(rules: RuleBase, name: str) -> Leaf:
    """A class of wire or rod, and what it is for."""
    filler = rules.fillers[name]
    lines = [Line(filler.use), Line(capital(filler.kind), "dim")]
    lines += said("For", plain_names(rules, filler.processes))
    lines += said("On", metal_names(rules, filler.materials))
    lines += said("Hangs on", " or ".join(SIDES.get(s, s) for s in filler.electrode))
    lines += said("Positions", ", ".join(filler.positions))
    if filler.hydrogen is not None:
        lines.append(Line(f"Hydrogen it leaves: {filler.hydrogen:g} ml in 100 g of weld."))
    return plain_leaf(rules, Ref("filler", name), filler.name, part("", lines), filler.source)


def setting_leaf(rules: RuleBase, name: str, system: str | None = None) -> Leaf:
    """A setting: what it may be, what to do at its ends, and what is its fault."""
    known, ref, setting = things(rules), Ref("setting", name), rules.settings[name]
    lines: list[Line] = []
    if setting.possible:
        low, high = (show(each, system) for each in setting.possible)
        lines.append(Line(f"The guide takes {low} to {high}; anything else is taken for a slip."))
    lines += said("If the machine gives too little", setting.too_little)
    lines += said("If it cannot go low enough", setting.too_much)
    parts = part("", lines or [Line("Told by name, not by a number.")])
    notes = {
        Ref("cause", c.id): c.setting[1]
        for c in rules.causes.values()
        if c.setting and c.setting[0] == name
    }
    parts += part("Its fault", linked(known, notes, notes))
    return plain_leaf(rules, ref, setting.name, parts, "")


def job_leaf(rules: RuleBase, name: str) -> Leaf:
    """A kind of work, and the warning that stands over it."""
    job = rules.jobs[name]
    lines = cautions(rules, [job.caution]) or [Line("No warning of its own stands over this work.")]
    return plain_leaf(rules, Ref("job", name), job.name, part("", lines), "")


BASIS = {
    "found": "The text was seen.",
    "memory": "Written from memory: check it before you rely on it.",
    "common practice": "What the trade does, with no publication behind it.",
}
"""How well a source is known, in words."""


def source_leaf(rules: RuleBase, name: str) -> Leaf:
    """A source, whether its text was seen; what rests on it follows as links."""
    source = rules.sources[name]
    lines = [Line(BASIS[source.basis]), *said("Place", source.place)]
    if name == UNPUBLISHED:
        lines.append(Line(_counted(rules)))
    return plain_leaf(rules, Ref("source", name), source.title, part("", lines), "")


def _counted(rules: RuleBase) -> str:
    """How much rests on no publication, by kind."""
    known = things(rules)
    counts = dict.fromkeys(RESTING, 0)
    for ref, item in known.all.items():
        if ref.kind in counts:
            cited = item[1].source if ref.kind == "remedy" else item.source
            counts[ref.kind] += source_id(cited) == UNPUBLISHED
    told = (f"{n} {KINDS[k].many.partition(':')[0]}" for k, n in counts.items() if n)
    return f"What rests on it: {', '.join(told)}."


def _figures(figures: Mapping[str, float]) -> str:
    return ", ".join(f"{name} {value:g}" for name, value in figures.items())
