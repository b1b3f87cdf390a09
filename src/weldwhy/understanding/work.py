"""What a text says of the work: process, metal, joint, position, place, and what it is for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property

from weldwhy.case import Situated
from weldwhy.model import Cause
from weldwhy.understanding.beside import beside
from weldwhy.understanding.fillers import named
from weldwhy.understanding.heard import Understood
from weldwhy.understanding.leanings import leanings
from weldwhy.understanding.matching import Match, going_on
from weldwhy.understanding.telling import Said, Telling
from weldwhy.understanding.tokens import Token, without

CLEAR = 0.85
"""How well a phrase must fit that tells something of the work."""
WHOLE = 0.99
"""How far a phrase for the place must be covered: "in the shed" is one, "shed" is not."""
FIRM = 5.0
"""Score of a leaning to a symptom from which on it may tell the process."""
ALIKE = 3
"""Letters by which a word of a name of several is known in another form of it."""
NEARLY = 0.75
"""A symptom of the process named that scores so much of the best leaves the name alone."""
NAMED, TAKEN = 0.95, 0.8
"""How sure a process is that was named, and one that is taken for a word said of several."""


class Work:
    """What is told of the work, here or in the case before."""

    def __init__(self, telling: Telling) -> None:
        self.telling = telling
        self.rules, self.case, self.words = telling.rules, telling.case, telling.words

    @cached_property
    def process(self) -> str:
        """The process; "" if it is not told."""
        return self.case.process or (self._process[0] if self._process else "")

    @cached_property
    def material(self) -> str:
        """The metal; "" if it is not told."""
        return self.case.material or (self._material.what if self._material else "")

    @cached_property
    def numbers(self) -> set[int]:
        """The numbers of the words that told process and metal."""
        process = self._process[1] if self._process else ()
        metal = self._material.match.words if self._material else ()
        return self.telling.telling((*process, *metal))

    @cached_property
    def free(self) -> tuple[Token, ...]:
        """The words of the text; those that told process and metal, or go on, are blank."""
        return without(self.words, self.numbers | set(going_on(self.words)))

    def whole(self, match: Match) -> float:
        """What share of the telling words of its clauses a match is, those of the work left out."""
        first, last = self.words[match.first].clause, self.words[match.last].clause
        telling = sum(first <= word.clause <= last and not word.weak for word in self.free)
        return min(1.0, len(self.telling.telling(match.words)) / max(telling, 1))

    def entries(self) -> Iterator[Understood]:
        """What is new of the work, in the order of the case."""
        if self._process and not self.case.told("process"):
            process, source, sure = self._process
            yield self.telling.made(source, Situated("process", process), sure)
        if self._material and not self.case.told("material"):
            metal = self._material
            entry = Situated("material", metal.what)
            yield self.telling.made(metal.match.words, entry, metal.fit)
        for field in ("joint", "position", "place", "job"):
            held = [each for each in self.telling.said(field) if self._tells(field, each)]
            if held and not self.case.told(field):
                entry = Situated(field, held[0].what)
                yield self.telling.made(held[0].match.words, entry, held[0].fit)

    def _tells(self, field: str, said: Said) -> bool:
        """Whether a phrase is enough to tell this: a lone word is not, where little hangs on it."""
        phrase = said.match.phrase
        if said.match.denied or said.fit < CLEAR:
            return False
        if field == "place":
            return said.match.covered >= WHOLE and (" " in phrase.words or "door" in phrase.words)
        job = self.rules.jobs.get(said.what) if field == "job" else None
        return job is None or bool(job.caution) or phrase.strong > 1

    @cached_property
    def _material(self) -> Said | None:
        """The metal that is welded: the first one named, but "steel" only if there is no other."""
        held = [
            each
            for each in self.telling.said("material")
            if not each.match.denied and each.fit >= CLEAR and not self._of_a_tool(each)
        ]
        longest = [
            each
            for each in held
            if not any(set(each.match.words) < set(other.match.words) for other in held)
        ]
        plain = next(iter(self.rules.materials), "")
        longest.sort(key=lambda each: (each.what == plain, each.match.first, -each.strength))
        return longest[0] if longest else None

    def _of_a_tool(self, said: Said) -> bool:
        """Whether the metal is that of a tool or a part: "brass brush"."""
        last = said.match.last
        after = self.words[last + 1 : last + 2]
        return any(
            word.word in beside(self.rules, "tool") and word.clause == self.words[last].clause
            for word in after
        )

    @cached_property
    def _process(self) -> tuple[str, tuple[int, ...], float] | None:
        """The process, the words that tell it and how surely; named, or by its wire or rod."""
        options, source, lone = self._named()
        for number, names in named(self.rules, self.words):
            both = tuple(name for name in names if name in options) if options else names
            if both and (options or len(names) == 1):
                options, source = both, source or (number,)
                self.telling.used.add(number)
        if not options:
            return None
        fitting = self._fitting(options)
        if lone:
            fitting = self._of_symptom(fitting)
        return fitting[0], source, NAMED if len(options) == 1 else TAKEN

    def _named(self) -> tuple[tuple[str, ...], tuple[int, ...], bool]:
        """The processes that names of them can mean, the words, and whether it is a lone word."""
        options: tuple[str, ...] = ()
        source: Said | None = None
        sets: dict[tuple[int, ...], dict[str, Said]] = {}
        for said in self.telling.said("process"):
            if not said.match.denied and said.fit >= CLEAR and self._that_very_word(said):
                sets.setdefault(said.match.words, {})[said.what] = said
        for words, meant in sets.items():
            if any(set(words) < set(other) for other in sets):
                continue  # "mig" in "gasless mig"
            both = tuple(name for name in meant if name in options) if options else tuple(meant)
            if both:
                options, source = both, next(iter(meant.values()))
        if source is None:
            return (), (), False
        return options, source.match.words, source.match.phrase.strong == 1

    def _that_very_word(self, said: Said) -> bool:
        """Whether a name stands there as it is: "it sticks" and "stuck in" are no stick welding."""
        name = said.match.phrase.words.split()
        typed = [self.words[number].word for number in said.match.words]
        if said.match.phrase.strong > 1:
            begins = {word[:ALIKE] for word in name}
            return all(word[:ALIKE] in begins for word in typed) or set(name) == set(typed)
        return any(word in name for word in typed)

    def _of_symptom(self, options: Sequence[str]) -> Sequence[str]:
        """The processes, or those of the symptom that the words lean to if it is of others only.

        "The tungsten stick melts" is no stick welding.
        """
        leans = leanings(self.rules, self.words, "symptom").values()
        best = max(leans, key=lambda lean: (lean.score, lean.meaning), default=None)
        if best is None or best.score < FIRM or best.covered < 1.0:
            return options
        shown = self.rules.symptoms[best.meaning].processes
        if any(each in shown for each in options):
            return [each for each in options if each in shown]
        fitting = (lean.score for lean in leans if self._shows(lean.meaning, options))
        if max(fitting, default=0.0) > NEARLY * best.score:
            return options
        return self._fitting(shown) if len({_way(each) for each in shown}) == 1 else options

    def _shows(self, symptom: str, options: Sequence[str]) -> bool:
        return not set(options).isdisjoint(self.rules.symptoms[symptom].processes)

    def _fitting(self, options: Sequence[str]) -> Sequence[str]:
        """Of the processes that the words can mean, those that the rules have for the metal."""
        meant = self._with_sisters(options)
        order = [name for name in self.rules.processes if name in meant]
        pairs = {
            (process, metal)
            for window in self.rules.windows.values()
            for process in window.processes
            for metal in window.materials
        }
        return [name for name in order if (name, self.material) in pairs] or order

    def _with_sisters(self, options: Sequence[str]) -> set[str]:
        """The options, and the other current of TIG: a lone "tig" is said for both."""
        told = {s.what for s in self.telling.said("process") if s.match.phrase.strong > 1}
        if told & set(options) or not all(name.startswith("gtaw") for name in options):
            return set(options)
        return {name for name in self.rules.processes if _way(name) == _way(options[0])}


def met_in(cause: Cause, process: str) -> bool:
    """Whether a cause can be met in a process ("" if that is not told)."""
    return not process or not cause.processes or process in cause.processes


def _way(process: str) -> str:
    """The process without its current or shield: gtaw for gtaw-dc."""
    return process.partition("-")[0]
