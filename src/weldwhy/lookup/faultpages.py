"""The pages of what goes wrong: symptom, cause, check, remedy and caution."""

from __future__ import annotations

from collections.abc import Iterator

from weldwhy.lookup.leaf import Leaf, Line, Part, part, said
from weldwhy.lookup.links import Links, links
from weldwhy.lookup.things import Ref, Things, things
from weldwhy.lookup.wordings import (
    causes_of,
    cautions,
    how_common,
    how_often,
    linked,
    metal_names,
    plain_names,
    sources,
    telling,
)
from weldwhy.model import Cause, Remedy, RuleBase
from weldwhy.plaintext import capital
from weldwhy.report import ended, minutes

LIKELIEST = 4
"""Causes named for each process of a symptom, before the others."""

HOW = {
    "ask": "A question.",
    "look": "Look at it.",
    "try": "Try it.",
    "measure": "Measure it.",
}
"""How a check is done, in words."""


def symptom_leaf(rules: RuleBase, name: str, process: str = "") -> Leaf:
    """A symptom: what it looks like, what it is taken for, its causes, and what tells them apart.

    `process`, if it is known, comes first among the processes.
    """
    known, near = things(rules), links(rules)
    symptom, ref = rules.symptoms[name], Ref("symptom", name)
    looks = [*said("Also called", ", ".join(symptom.also), "dim"), Line(symptom.looks)]
    parts = part("", [*cautions(rules, symptom.cautions), *looks])
    alike = linked(known, near.of(ref, "symptom"))
    parts += part("Not to be taken for", [Line(symptom.confused_with), *alike])
    standard = said("ISO 6520-1", symptom.iso_6520_1) + said("Limits", symptom.limits)
    parts += part("In the standards", standard)
    for each in _causes(known, near, name, process):
        parts += each
    tells = [Ref("check", each) for each in near.telling.get(name, ())]
    parts += part("The checks that tell most", linked(known, tells))
    parts += part("Where it is met", _where(rules, known, near, ref))
    parts += part("Source", sources(known, [symptom.source]))
    return Leaf(ref, capital(known.name(ref)), parts, draws=True)


def _causes(known: Things, near: Links, symptom: str, first: str) -> Iterator[tuple[Part, ...]]:
    """The likeliest causes, processes with the same ones together, then all the others."""
    rules = known.rules
    processes = [p for p in rules.symptoms[symptom].processes if p in rules.processes]
    if len(processes) == 1:
        found = causes_of(near, known, symptom, processes[0])
        left = [cause for cause in causes_of(near, known, symptom) if cause not in found]
        yield part("Likely causes, likeliest first", _cause_links(known, [*found, *left]))
        return
    groups: dict[tuple[str, ...], list[str]] = {}
    for process in sorted(processes, key=lambda each: each != first):
        found = causes_of(near, known, symptom, process)[:LIKELIEST]
        groups.setdefault(tuple(cause.id for cause in found), []).append(process)
    for names, having in groups.items():
        with_ = ", ".join(rules.processes[process].plain for process in having)
        likeliest = [rules.causes[name] for name in names]
        yield part(f"Likeliest causes with {with_}", _cause_links(known, likeliest))
    seen = {name for names in groups for name in names}
    others = [cause for cause in causes_of(near, known, symptom) if cause.id not in seen]
    yield part("Other causes, likeliest first", _cause_links(known, others))


def _cause_links(known: Things, causes: list[Cause]) -> list[Line]:
    return linked(known, [Ref("cause", cause.id) for cause in causes])


def _where(rules: RuleBase, known: Things, near: Links, ref: Ref) -> Iterator[Line]:
    symptom = rules.symptoms[ref.id]
    yield from said("Noticed", rules.groups.get(symptom.group, ""))
    yield from linked(known, (*near.of(ref, "process"), *near.of(ref, "metal")))


def cause_leaf(rules: RuleBase, name: str) -> Leaf:
    """A cause: whose it is, how common, how to confirm it, and what puts it right."""
    known = things(rules)
    cause, ref = rules.causes[name], Ref("cause", name)
    parts = part("", _about_cause(rules, cause))
    symptoms = {Ref("symptom", s): how_often(rules, g) for s, g in cause.symptoms.items()}
    shown = sorted((r for r in symptoms if r in known), key=lambda r: -cause.symptoms[r.id])
    parts += part("What it gives, and how often when only this is wrong",
                  linked(known, shown, symptoms))  # fmt: skip
    parts += part("How to confirm it", _confirming(known, cause))
    for number, remedy in enumerate(cause.remedies, 1):
        title = "What to do" if len(cause.remedies) == 1 else f"What to do, {number}"
        parts += part(title, _remedy_lines(rules, remedy))
    parts += part("To keep it from coming back", [Line(cause.prevent)])
    settings = {Ref("setting", cause.setting[0]): cause.setting[1]} if cause.setting else {}
    parts += part("The setting", linked(known, [s for s in settings if s in known], settings))
    stories = [Line(f"{case.story}") for case in cause.cases if case.leads]
    parts += part("As it was told", stories)
    parts += part("Source", sources(known, [cause.source]))
    return Leaf(ref, capital(known.name(ref)), parts)


def _about_cause(rules: RuleBase, cause: Cause) -> Iterator[Line]:
    if cause.hazard:
        yield Line("CAUTION: a danger to people. Look for this before anything else.", "caution")
    yield Line(cause.what)
    yield from said("Whose it is", cause.share)
    common = [capital(how_common(rules, cause.base))]
    for process, rate in cause.base_in.items():
        if process in rules.processes and process in cause.processes:
            common.append(f"{rules.processes[process].plain}: {how_common(rules, rate)}")
    yield from said("How common", "; ".join(common))
    yield from said("Met in", plain_names(rules, cause.processes), "dim")
    yield from said("Only with", metal_names(rules, cause.materials), "dim")


def _confirming(known: Things, cause: Cause) -> list[Line]:
    """The checks a cause shows in, by the answer that speaks for it most, strongest first."""
    found: list[tuple[float, Line]] = []
    for name, row in cause.shows.items():
        check = known.rules.checks.get(name)
        if check is None or not row:
            continue
        usual = {a.id: b for a, b in zip(check.answers, check.baseline, strict=True)}
        texts = {a.id: a.text for a in check.answers}
        best = max(row, key=lambda answer: telling(usual[answer], row[answer]))
        note = f"{texts[best]} ({how_often(known.rules, row[best])})"
        line = Line(check.ask, to=Ref("check", name), note=note)
        found.append((telling(usual[best], row[best]) * row[best], line))
    return [line for _, line in sorted(found, key=lambda each: -each[0])]


def _remedy_lines(rules: RuleBase, remedy: Remedy) -> Iterator[Line]:
    """A remedy with its cautions before it."""
    yield from cautions(rules, remedy.cautions)
    takes = f"{minutes(remedy.minutes)}, then a test bead; {how_often(rules, remedy.works)} works"
    stop = "STOP: " if remedy.stop else ""
    note = f"Call: {ended(remedy.call)}" if remedy.call else ended(capital(takes))
    yield Line(f"{stop}{remedy.do}", "text", Ref("remedy", remedy.id), note)


def check_leaf(rules: RuleBase, name: str) -> Leaf:
    """A check: how it is done, and what each answer speaks for, strongest first."""
    known = things(rules)
    check, ref = rules.checks[name], Ref("check", name)
    about = [*cautions(rules, check.cautions), Line(check.ask, "strong")]
    about += [Line(f"{HOW[check.how]} It takes {minutes(check.minutes)}.", "dim")]
    about += said("What it settles", check.settles)
    about += said("Asked with", plain_names(rules, check.processes), "dim")
    parts = part("", about)
    for answer, usual in zip(check.answers, check.baseline, strict=True):
        parts += part(f'"{answer.text}"', _speaks(known, name, answer.id, usual))
    parts += part("Source", sources(known, [check.source]))
    return Leaf(ref, f"Check: {name.replace('-', ' ')}", parts)


def _speaks(known: Things, check: str, answer: str, usual: float) -> list[Line]:
    """What an answer speaks for and against, the strongest first."""
    found: list[tuple[float, Line]] = []
    for cause in known.rules.causes.values():
        grade = cause.shows.get(check, {}).get(answer)
        if grade is None:
            continue
        side = "for" if grade > usual else "against"
        note = f"speaks {side} it; {how_often(known.rules, grade)} seen when it is"
        line = Line(cause.name, to=Ref("cause", cause.id), note=note)
        found.append((telling(usual, grade), line))
    lines = [line for _, line in sorted(found, key=lambda each: -each[0])]
    return lines or [Line("Speaks for nothing by itself.", "dim")]


def remedy_leaf(rules: RuleBase, name: str) -> Leaf:
    """A remedy: its cautions, then what to do, and what it puts right."""
    known = things(rules)
    ref = Ref("remedy", name)
    cause, remedy = known.remedy(name)
    lines = [*cautions(rules, remedy.cautions)]
    lines.append(Line(f"{'STOP: ' if remedy.stop else ''}{remedy.do}", "strong"))
    lines += said("Call", ended(remedy.call) if remedy.call else "")
    if not remedy.stop:
        works = how_often(rules, remedy.works)
        lines.append(Line(f"It takes {minutes(remedy.minutes)}. Run a test bead after it.", "dim"))
        lines += [Line(f"It {works} works, where this is the cause.", "dim")] if works else []
    parts = part("", lines)
    parts += part("What it puts right", linked(known, [Ref("cause", cause.id)]))
    settings = [r for r in (Ref("setting", s) for s in remedy.settings) if r in known]
    parts += part("The settings it changes", linked(known, settings))
    parts += part("Source", sources(known, [remedy.source]))
    return Leaf(ref, f"Remedy: {name.replace('-', ' ')}", parts)


def caution_leaf(rules: RuleBase, name: str) -> Leaf:
    """A caution in full, and whom to call; what it stands before follows as links."""
    known, caution = things(rules), rules.cautions[name]
    lines = cautions(rules, [name])
    if caution.stop:
        lines.append(Line("The guide stops here: nothing is to be tried after this."))
    parts = part("", lines)
    parts += part("Source", sources(known, [caution.source]))
    return Leaf(Ref("caution", name), f"Caution: {name.replace('-', ' ')}", parts)
