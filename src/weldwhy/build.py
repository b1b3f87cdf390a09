"""From the values of a rule file to the words of the model: likelihood words become numbers here.

Every function takes an item that has its declared shape. What can only be seen with another item
at hand (a target needs its setting's kind of quantity) is checked on the way and added to
`problems`; an item with a problem of its own is left out of the base.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, cast

from weldwhy import dials, machinebuild, sayings, setups
from weldwhy.model import (
    Answer,
    Cause,
    Caution,
    Check,
    Job,
    Lens,
    Material,
    Picture,
    Process,
    Remedy,
    RuleBase,
    Setting,
    Side,
    Source,
    Symptom,
    Term,
    Window,
    WorkedCase,
)
from weldwhy.problems import Problem
from weldwhy.survey import Data, Item, tuples


@dataclass(frozen=True, slots=True)
class Scale:
    """What the likelihood words mean."""

    grades: Mapping[str, float]
    base: Mapping[str, float]
    noise: Mapping[str, float]


@dataclass(slots=True)
class Builder:
    """Builds the items of a base; needs the scale, and the settings before the windows."""

    scale: Scale
    problems: list[Problem] = field(default_factory=list)

    def base(self, items: Mapping[str, Mapping[str, Item]]) -> RuleBase:
        """The rule base of these items by kind and id; faulty ones are left out and noted."""
        settings = self._each(items, "setting", self._setting)
        return RuleBase(
            processes=self._each(items, "process", lambda item: Process(**_texts(item))),
            symptoms=self._each(items, "symptom", symptom),
            causes=self._each(items, "cause", self.cause),
            checks=self._each(items, "check", self.check),
            cautions=self._each(items, "caution", caution),
            sources=self._each(items, "source", lambda item: Source(**_texts(item))),
            materials=self._each(items, "material", material),
            settings=settings,
            windows=self._each(items, "window", lambda item: self._window(item, settings)),
            lenses=self._each(items, "lens", lens),
            jobs=self._each(items, "job", lambda item: Job(**_texts(item))),
            families={item.id: item.data["name"] for item in items.get("family", {}).values()},
            groups={item.id: item.data["name"] for item in items.get("group", {}).values()},
            likelihoods=dict(self.scale.grades),
            grades=self._each(items, "grade", setups.grade),
            gases=self._each(items, "gas", setups.gas),
            fillers=self._each(items, "filler", setups.filler),
            tables=self._each(items, "table", self._noting(setups.table)),
            shifts=self._each(items, "shift", setups.shift),
            setups=self._each(items, "setup", setups.setup),
            machines=self._each(
                items, "machine", self._noting(lambda item: machinebuild.machine(item, settings))
            ),
            pictures={
                name: self._picture(item)
                for name, item in items.get("symptom", {}).items()
                if self._drawn(item)
            },
            terms=self._each(items, "term", term),
            said=sayings.gathered(items),
        )

    def _drawn(self, item: Item) -> bool:
        """Whether a symptom has a picture; notes one that is no drawing, or several."""
        drawings = item.data.get("picture")
        if drawings is not None and len(drawings) != 1:
            words = f"a picture is one drawing, not {len(drawings)}"
            self._say(item, ("picture",), words, "one-drawing")
        return drawings is not None and len(drawings) == 1

    def _picture(self, item: Item) -> Picture:
        draws, parts = next(iter(item.data["picture"].items()))
        like = {
            name: self.scale.grades[word] for name, word in item.data.get("looks_like", {}).items()
        }
        return Picture(item.id, draws, parts, like)

    def _each(
        self, items: Mapping[str, Mapping[str, Item]], kind: str, build: Callable[[Item], Any]
    ) -> dict[str, Any]:
        built = {}
        for name, item in items.get(kind, {}).items():
            before = len(self.problems)
            value = build(item)
            if len(self.problems) == before:
                built[name] = value
        return built

    def _noting(self, build: Callable[[Item], tuple[Any, list[Problem]]]) -> Callable[[Item], Any]:
        """A builder that adds the problems it finds to ours."""

        def built(item: Item) -> Any:
            made, problems = build(item)
            self.problems += problems
            return made

        return built

    def _setting(self, item: Item) -> Setting:
        made, problems = dials.setting(item)
        self.problems += problems
        return made

    def _window(self, item: Item, settings: Mapping[str, Setting]) -> Window:
        made, problems = dials.window(item, settings)
        self.problems += problems
        return made

    def _say(self, item: Item, path: tuple[str | int, ...], words: str, check_id: str) -> None:
        self.problems.append(item.problem(path, words, check_id))

    def check(self, item: Item) -> Check:
        """A check with its baseline: P(answer | nothing linked is wrong), in answer order."""
        data = item.data
        answers = tuple(Answer(name, words) for name, words in data["answers"].items())
        for name in data.get("spread", {}):
            if name not in data["answers"] or name == answers[0].id:
                words = f'"{name}" is not one of the answers after the first'
                self._say(item, ("spread", name), words, "unknown-answer")
        return Check(
            id=item.id,
            ask=data["ask"],
            how=data["how"],
            minutes=data["minutes"],
            answers=answers,
            baseline=baseline(
                self.scale.grades[data["off_normal"]],
                [data.get("spread", {}).get(each.id, 1.0) for each in answers[1:]],
            ),
            noise=self.scale.noise[data.get("noise", "plain")],
            dont_know=self.scale.grades[data.get("dont_know", "seldom")],
            settles=data["settles"],
            source=data["source"],
            ordered=data.get("ordered", False),
            same_look=data.get("same_look", ""),
            setting=data.get("setting", ""),
            **tuples(data, "processes", "materials", "symptoms", "cautions"),
        )

    def cause(self, item: Item) -> Cause:
        """A cause with its chances as numbers."""
        data, grades = item.data, self.scale.grades
        return Cause(
            id=item.id,
            name=data["name"],
            what=data["what"],
            family=data["family"],
            share=data["share"],
            base=self.scale.base[data["base"]],
            base_in={name: self.scale.base[word] for name, word in data.get("base_in", {}).items()},
            symptoms={name: grades[word] for name, word in data["symptoms"].items()},
            shows={
                check: {answer: grades[word] for answer, word in row.items()}
                for check, row in data.get("shows", {}).items()
            },
            remedies=tuple(self._remedy(each) for each in data["remedies"]),
            source=data["source"],
            prevent=data.get("prevent", ""),
            exclusive=data.get("exclusive", ""),
            hazard=data.get("hazard", False),
            setting=_side(data.get("setting", "")),
            cases=tuple(_case(each) for each in data["cases"]),
            **tuples(data, "processes", "materials"),
        )

    def _remedy(self, data: Data) -> Remedy:
        return Remedy(
            id=data["remedy"],
            do=data["do"],
            minutes=data["minutes"],
            works=self.scale.grades[data.get("works", "almost always")],
            source=data["source"],
            stop=data.get("stop", False),
            call=data.get("call", ""),
            short=data.get("short", ""),
            **tuples(data, "settings", "cautions"),
        )


def baseline(off_normal: float, shares: Iterable[float]) -> tuple[float, ...]:
    """The row of a check when nothing linked to it is wrong: the normal answer first.

    >>> baseline(0.2, [1, 3])
    (0.8, 0.05, 0.15000000000000002)
    """
    parts = list(shares)
    whole = sum(parts)
    return (1.0 - off_normal, *(off_normal * part / whole for part in parts))


def symptom(item: Item) -> Symptom:
    """A symptom."""
    apart = ("symptom", "said", "picture", "looks_like")
    values = {name: value for name, value in item.data.items() if name not in apart}
    lists = tuples(item.data, "processes", "also", "materials", "cautions")
    return Symptom(id=item.id, **values | lists)


def material(item: Item) -> Material:
    """A metal."""
    data = item.data
    return Material(item.id, data["name"], tuple(data.get("also", [])), data.get("caution", ""))


def term(item: Item) -> Term:
    """A word of the trade."""
    return Term(**_texts(item) | tuples(item.data, "also", "see"))


def lens(item: Item) -> Lens:
    """A lens shade and the amps it is for."""
    return Lens(**_texts(item) | tuples(item.data, "processes"))


def caution(item: Item) -> Caution:
    """A warning."""
    data = {key: value for key, value in item.data.items() if key != "needed_for"}
    return Caution(id=data.pop("caution"), **data)


def _texts(item: Item) -> Data:
    """The values of an item whose keys are the fields of its model, but for the id and phrases."""
    data = {key: value for key, value in item.data.items() if key != "said"}
    return {"id": data.pop(item.kind), **data}


def _side(text: str) -> tuple[str, Side] | None:
    name, _, side = text.partition(" ")
    return (name, cast(Side, side)) if name else None


def _case(data: Data) -> WorkedCase:
    return WorkedCase(**data)
