"""What the rules say of one id, in lines: the page of a cause, check, symptom, caution and so on.

For those who write rules (`weldwhy rules explain ID`): figures are shown as figures, and every
page ends with its source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from weldwhy import setuppages
from weldwhy.lines import safe
from weldwhy.model import (
    Cause,
    Caution,
    Check,
    Material,
    Process,
    Remedy,
    RuleBase,
    Setting,
    Source,
    Symptom,
    Window,
)
from weldwhy.report import source_text
from weldwhy.units import show, show_target


def pages(rules: RuleBase, name: str) -> list[str]:
    """The lines about everything called `name`, each kind of thing after the other."""
    lines: list[str] = []
    for kind, page in KINDS.items():
        item = getattr(rules, kind).get(name)
        if item is not None:
            lines += ([""] if lines else []) + page(rules, item)
    return safe(lines)


def cause_page(rules: RuleBase, cause: Cause) -> list[str]:
    """A cause with its figures, remedies and the cases it is tested by."""
    lines = [f"cause {cause.id}: {cause.name}", cause.what]
    lines.append(f"family {cause.family}, share {cause.share}, base {cause.base:g}")
    lines += _some("base elsewhere", [f"{p} {rate:g}" for p, rate in cause.base_in.items()])
    lines.append(f"processes: {', '.join(cause.processes)}")
    lines += _some("materials", cause.materials)
    if cause.hazard:
        lines.append("a danger to people: its check comes first")
    if cause.setting:
        lines.append(f"read value: {cause.setting[0]} {cause.setting[1]}")
    lines.append("symptoms, when only this is wrong:")
    lines += [f"  {symptom}: {_word(rules, grade)}" for symptom, grade in cause.symptoms.items()]
    lines += ["checks, when only this is wrong:"] if cause.shows else []
    for check, row in cause.shows.items():
        told = ", ".join(f"{answer} {_word(rules, grade)}" for answer, grade in row.items())
        lines.append(f"  {check}: {told}")
    for number, remedy in enumerate(cause.remedies, 1):
        lines += _remedy(rules, number, remedy)
    lines += _some("to keep it from coming back", [cause.prevent] if cause.prevent else [])
    for case in cause.cases:
        led = "leads" if case.leads else "does not lead"
        lines.append(f"case, {led}: {case.story}")
    return [*lines, _source(rules, cause.source)]


def _word(rules: RuleBase, grade: float) -> str:
    """A chance as the rules' own word for it, with the number that the word stands for."""
    found = [word for word, value in rules.likelihoods.items() if value == grade]
    return f"{found[0]} ({grade:g})" if found else f"{grade:g}"


def _remedy(rules: RuleBase, number: int, remedy: Remedy) -> list[str]:
    lines = [f"  caution: {rules.cautions[c].text}" for c in remedy.cautions if c in rules.cautions]
    lines.append(
        f"  {remedy.do} ({remedy.minutes:g} min, works {_word(rules, remedy.works)}; "
        f"{source_text(rules, remedy.source)})"
    )
    lines += [f"  call: {remedy.call}"] if remedy.call else []
    return [f"remedy {number}, {remedy.id}:", *lines]


def check_page(rules: RuleBase, check: Check) -> list[str]:
    """A check with its answers, and what each answer speaks for."""
    lines = [f"check {check.id} ({check.how}, {check.minutes:g} min): {check.ask}"]
    lines.append(f"settles: {check.settles}")
    for answer, baseline in zip(check.answers, check.baseline, strict=True):
        lines.append(f"  {answer.id}: {answer.text} (nothing linked is wrong: {baseline:.2f})")
        for cause in rules.causes.values():
            grade = cause.shows.get(check.id, {}).get(answer.id)
            if grade is not None:
                lines.append(f"    {_word(rules, grade)} when it is {cause.id}")
    lines.append(f"a slip {check.noise:.2f}, don't know {_word(rules, check.dont_know)}")
    lines += _some("processes", check.processes) + _some("symptoms", check.symptoms)
    lines += _some("materials", check.materials) + _some("cautions", check.cautions)
    return [*lines, _source(rules, check.source)]


def symptom_page(rules: RuleBase, symptom: Symptom) -> list[str]:
    """A symptom, and the causes that can give it, likeliest first."""
    lines = [f"symptom {symptom.id}: {symptom.name}", symptom.looks]
    lines += _some("also called", symptom.also) + _some("noticed", [rules.groups[symptom.group]])
    lines += [f"not to be taken for: {symptom.confused_with}"] if symptom.confused_with else []
    lines += [f"ISO 6520-1: {symptom.iso_6520_1}"] if symptom.iso_6520_1 else []
    lines += [f"limits: {symptom.limits}"] if symptom.limits else []
    lines.append(f"processes: {', '.join(symptom.processes)}")
    lines += _some("materials", symptom.materials)
    giving = [cause for cause in rules.causes.values() if symptom.id in cause.symptoms]
    giving.sort(key=lambda cause: -cause.base * cause.symptoms[symptom.id])
    lines.append("causes, likeliest first before any answer:")
    lines += [
        f"  {c.id}: base {c.base:g}, shows it {_word(rules, c.symptoms[symptom.id])}"
        for c in giving
    ]
    return [*lines, _source(rules, symptom.source)]


def caution_page(rules: RuleBase, caution: Caution) -> list[str]:
    """A caution and where it is shown."""
    lines = [f"caution {caution.id}{' (stop)' if caution.stop else ''}: {caution.text}"]
    lines += [f"call: {caution.call}"] if caution.call else []
    shown = [f"check {c.id}" for c in rules.checks.values() if caution.id in c.cautions]
    for cause in rules.causes.values():
        shown += [f"remedy {r.id}" for r in cause.remedies if caution.id in r.cautions]
    shown += [f"job {job.id}" for job in rules.jobs.values() if job.caution == caution.id]
    return [*lines, *_some("shown with", shown), _source(rules, caution.source)]


def source_page(rules: RuleBase, source: Source) -> list[str]:
    """A source, whether its text was seen, and what rests on it."""
    lines = [f"source {source.id} ({source.basis}): {source.title}"]
    lines += [f"place: {source.place}"] if source.place else []
    for kind in ("causes", "checks", "symptoms", "cautions", "windows", "processes"):
        resting = [
            item.id
            for item in getattr(rules, kind).values()
            if item.source.partition(",")[0].strip().replace(" ", "-") == source.id
        ]
        lines += _some(kind, resting)
    return lines


def window_page(rules: RuleBase, window: Window) -> list[str]:
    """An operating window with its rows."""
    lines = [f"window {window.id}: {window.name}"]
    lines.append(f"processes: {', '.join(window.processes)}; size is the {window.size_of}")
    lines += _some("materials", window.materials) + _some("gas", window.gas)
    lines += [f"consumable: {window.consumable}"] if window.consumable else []
    lines += [f"  {name}: {show_target(t)}" for name, t in window.targets.items()]
    lines += [f"  outdoors {name}: {show_target(t)}" for name, t in window.outdoors.items()]
    for row in window.rows:
        place = [show(q) for q in (row.thickness, row.size) if q is not None]
        told = ", ".join(f"{name} {show_target(t)}" for name, t in row.targets.items())
        lines.append(f"  {' with '.join(place) or 'any'}: {told}")
    lines += [window.note] if window.note else []
    return [*lines, _source(rules, window.source)]


def process_page(rules: RuleBase, process: Process) -> list[str]:
    """A process, and how it is hooked up."""
    lines = [f"process {process.id}: {process.name} ({process.plain})"]
    return [*lines, f"hook-up: {process.polarity}", _source(rules, process.source)]


def material_page(rules: RuleBase, material: Material) -> list[str]:
    """A metal and what people call it."""
    return [f"material {material.id}: {material.name}", *_some("also called", material.also)]


def setting_page(rules: RuleBase, setting: Setting) -> list[str]:
    """A setting, what it may be, and the causes that are its fault."""
    lines = [f"setting {setting.id}: {setting.name} ({setting.quantity})"]
    if setting.possible:
        lines.append(f"possible: {show(setting.possible[0])} to {show(setting.possible[1])}")
    blamed = (c for c in rules.causes.values() if c.setting and c.setting[0] == setting.id)
    return lines + _some("its fault", [f"{c.id} ({c.setting[1]})" for c in blamed if c.setting])


def _some(title: str, words: Iterable[str]) -> list[str]:
    """A titled list, or no line at all when there is nothing in it."""
    told = ", ".join(words)
    return [f"{title}: {told}"] if told else []


def _source(rules: RuleBase, cited: str) -> str:
    return f"source: {source_text(rules, cited)}"


KINDS: Mapping[str, Callable[[RuleBase, Any], list[str]]] = {
    "causes": cause_page,
    "checks": check_page,
    "symptoms": symptom_page,
    "cautions": caution_page,
    "sources": source_page,
    "windows": window_page,
    "processes": process_page,
    "materials": material_page,
    "settings": setting_page,
    "grades": setuppages.grade_page,
    "gases": setuppages.gas_page,
    "fillers": setuppages.filler_page,
    "tables": setuppages.table_page,
    "shifts": setuppages.shift_page,
    "setups": setuppages.setup_page,
    "machines": setuppages.machine_page,
}
"""The kinds of things an id may name, by their place in the rule base, and the page of each."""
