"""What goes with what: every link between two things, told once and walked both ways."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache

from weldwhy.lookup.telling import telling_checks
from weldwhy.lookup.things import KINDS, Ref, Things, things
from weldwhy.model import RuleBase, Window

Edge = tuple[Ref, Ref]


class Links:
    """The neighbours of every thing. If one thing has another among them, so has that one."""

    def __init__(self, known: Things) -> None:
        order = {ref: at for at, ref in enumerate(known.all)}
        near: dict[Ref, dict[Ref, None]] = {ref: {} for ref in order}
        self.telling = telling_checks(known.rules)
        """The checks that tell most about each symptom, the most telling first."""
        for one, two in _edges(known, self.telling):
            if one != two and one in near and two in near:
                near[one][two] = None
                near[two][one] = None
        self._near = {
            ref: tuple(sorted(found, key=order.__getitem__)) for ref, found in near.items()
        }

    def of(self, ref: Ref, kind: str = "") -> tuple[Ref, ...]:
        """What goes with a thing, in the order of the kinds; of one kind if it is named."""
        near = self._near[ref]
        return tuple(each for each in near if each.kind == kind) if kind else near


@lru_cache(maxsize=4)  # rules are equal only to themselves
def links(rules: RuleBase) -> Links:
    """The links of these rules."""
    return Links(things(rules))


def source_id(cited: str) -> str:
    """The id in a citation: "iso-5817, table 1" is "iso-5817"."""
    return cited.partition(",")[0].strip().replace(" ", "-")


def _edges(known: Things, telling: Mapping[str, Iterable[str]]) -> Iterator[Edge]:
    rules = known.rules
    for symptom, checks in telling.items():
        yield from _each(Ref("symptom", symptom), "check", checks)
    yield from _of_symptoms(rules)
    yield from _of_causes(rules)
    yield from _of_checks(rules)
    yield from _of_work(rules)
    yield from _of_settings(known)
    yield from _of_terms(known)
    yield from _of_namesakes(known)
    yield from _of_sources(known)


def _each(one: Ref, kind: str, names: Iterable[str]) -> Iterator[Edge]:
    return ((one, Ref(kind, name)) for name in names)


def _of_symptoms(rules: RuleBase) -> Iterator[Edge]:
    names = _symptom_names(rules)
    for symptom in rules.symptoms.values():
        here = Ref("symptom", symptom.id)
        yield from _each(here, "process", symptom.processes)
        yield from _each(here, "metal", symptom.materials)
        yield from _each(here, "caution", symptom.cautions)
        yield from _each(here, "symptom", _named(symptom.confused_with, names))
        if symptom.id in rules.pictures:
            yield from _each(here, "symptom", rules.pictures[symptom.id].like)


def _symptom_names(rules: RuleBase) -> dict[str, str]:
    """The id of each symptom by its name without what stands in brackets, in small letters."""
    return {s.name.partition(" (")[0].lower(): s.id for s in rules.symptoms.values()}


def _named(text: str, names: dict[str, str]) -> list[str]:
    """The symptoms whose whole names stand in a text."""
    low = text.lower()
    return [
        symptom
        for name, symptom in names.items()
        if name in low and re.search(rf"(?<![a-z]){re.escape(name)}(?![a-z])", low)
    ]


def _of_causes(rules: RuleBase) -> Iterator[Edge]:
    for cause in rules.causes.values():
        here = Ref("cause", cause.id)
        yield from _each(here, "symptom", cause.symptoms)
        yield from _each(here, "check", cause.shows)
        yield from _each(here, "metal", cause.materials)
        yield from _each(here, "remedy", (remedy.id for remedy in cause.remedies))
        if cause.setting:
            yield here, Ref("setting", cause.setting[0])
        for remedy in cause.remedies:
            yield from _each(Ref("remedy", remedy.id), "caution", remedy.cautions)
            yield from _each(Ref("remedy", remedy.id), "setting", remedy.settings)


def _of_checks(rules: RuleBase) -> Iterator[Edge]:
    for check in rules.checks.values():
        here = Ref("check", check.id)
        yield from _each(here, "caution", check.cautions)
        yield from _each(here, "setting", [check.setting] if check.setting else [])


def _of_work(rules: RuleBase) -> Iterator[Edge]:
    """Metals, jobs, fillers, grades, set-ups and windows."""
    for metal in rules.materials.values():
        yield Ref("metal", metal.id), Ref("caution", metal.caution)
    for job in rules.jobs.values():
        yield Ref("job", job.id), Ref("caution", job.caution)
    for grade in rules.grades.values():
        yield Ref("grade", grade.id), Ref("metal", grade.material)
    for filler in rules.fillers.values():
        here = Ref("filler", filler.id)
        yield from _each(here, "process", filler.processes)
        yield from _each(here, "metal", filler.materials)
        yield from _each(here, "grade", filler.grades)
    for setup in rules.setups.values():
        here = Ref("setup", setup.id)
        yield here, Ref("process", setup.id)
        yield from _each(here, "gas", (choice.gas for choice in setup.gases))
        yield from _each(here, "caution", (standing.caution for standing in setup.cautions))
        for step in setup.checklist:
            yield from _each(here, "caution", step.cautions)
        for bead in setup.test_beads:
            yield from _each(here, "caution", bead.cautions)
    for window in rules.windows.values():
        here = Ref("window", window.id)
        yield from _each(here, "process", window.processes)
        yield from _each(here, "metal", window.materials)
        yield from _each(here, "gas", window.gas)
        yield from _each(here, "setting", settings_in(window))


def settings_in(window: Window) -> list[str]:
    """The settings that a window has targets for, each once."""
    rows = (row.targets for row in window.rows)
    return list(
        dict.fromkeys(name for held in (window.targets, window.outdoors, *rows) for name in held)
    )


def _of_settings(known: Things) -> Iterator[Edge]:
    """A calculator asks for settings under their own ids."""
    for ref in known.of_kind("calculator"):
        yield from _each(ref, "setting", (wanted.id for wanted in known.all[ref].inputs))


def _of_terms(known: Things) -> Iterator[Edge]:
    """A word goes with what it sees."""
    for ref in known.of_kind("term"):
        for name in known.all[ref].see:
            yield from ((ref, other) for other in known.called(name))


def _of_namesakes(known: Things) -> Iterator[Edge]:
    """Things of several kinds that have one id are about one thing: the setting preheat and the
    calculator preheat."""
    for ref in known.all:
        yield from ((ref, other) for other in known.called(ref.id))


UNPUBLISHED = "common-practice"
"""The source of what has none: far too much to list."""

RESTING = tuple(
    kind for kind in KINDS if kind not in ("source", "job", "metal", "calculator", "setting")
)
"""The kinds of things that name a source."""


def _of_sources(known: Things) -> Iterator[Edge]:
    for ref, item in known.all.items():
        if ref.kind in RESTING:
            cited = item[1].source if ref.kind == "remedy" else item.source
            if source_id(cited) != UNPUBLISHED:
                yield ref, Ref("source", source_id(cited))
