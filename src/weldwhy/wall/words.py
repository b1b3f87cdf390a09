"""The words of a wall chart: every part of the page as pieces of text, in the rules' own words.

Remedies are told in short: their first sentences, but whatever they forbid stays.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from functools import cached_property

from weldwhy.advice import window
from weldwhy.case import Case, Reported, Situated
from weldwhy.ladder import Rung, Sign, metals_of
from weldwhy.model import Cause, Caution, Remedy, RuleBase
from weldwhy.plaintext import capital, clean
from weldwhy.report import ended
from weldwhy.steps import call_for_help
from weldwhy.units import show_target
from weldwhy.wall.pieces import LOOKS, Piece, Run, does, in_short, piece, without_asides
from weldwhy.wallchart import WallChart


class Words:
    """What the page of one symptom in one process says."""

    def __init__(self, rules: RuleBase, symptom: str, process: str) -> None:
        self._rules = rules
        self.symptom = rules.symptoms[symptom]
        self.process = rules.processes[process]

    @property
    def title(self) -> str:
        """The symptom."""
        return clean(capital(self.symptom.name))

    @property
    def subtitle(self) -> str:
        """The process in plain words."""
        return clean(self.process.plain)

    def looks(self) -> list[Piece]:
        """How it looks and what it is taken for, in short."""
        seen = [piece("looks", ("bold", "Looks like:"), in_short(self.symptom.looks, LOOKS))]
        if self.symptom.confused_with:
            other = in_short(without_asides(self.symptom.confused_with), LOOKS)
            seen.append(piece("looks", ("bold", "Not to be taken for:"), other))
        return seen

    def safety(self) -> list[Piece]:
        """What is not to be welded by a page on the wall; one line for all such work."""
        jobs = [job for job in self._rules.jobs.values() if self._stops(job.caution)]
        if not jobs:
            return []
        names = ", ".join(re.split(r", | or ", job.name)[0] for job in jobs)
        told = f"Do not weld by a page: {names}. Call a licensed shop."
        return [piece("caution", ("bold", "STOP."), told, mark="!")]

    def _stops(self, caution: str) -> bool:
        return caution in self._rules.cautions and self._rules.cautions[caution].stop

    def sign(self, sign: Sign, places: Mapping[str, str]) -> Piece:
        """A danger that no rung names: by what it is known, and where its remedy stands."""
        name, place = self._short_name(sign.cause), places.get(sign.cause, "")
        lead: Run = ("bold", "Stop if it may be")
        then = f"then {place}" if place else "ask the live guide"
        if sign.check:
            answers = {answer.id: answer.text for answer in self._rules.checks[sign.check].answers}
            shown = answers[sign.answer]
            if not re.match(r"(Yes|No)\b", shown):
                name = f"{name} ({shown[0].lower()}{shown[1:]})"
        return piece("caution", lead, f"{name}; {then}.", mark="!")

    def caution(self, name: str, number: int) -> Piece:
        """A caution in short under its number; one that stops says so, and whom to call."""
        found: Caution = self._rules.cautions[name]
        call = f"Call {ended(found.call)}" if found.call else ""
        text = found.short or found.text
        return piece("caution", *_told(text, found.stop), ("bold", call), mark=f"!{number}")

    def rung(
        self,
        rung: Rung,
        number: int,
        here: Collection[str],
        places: Mapping[str, str],
        numbers: Mapping[str, int],
    ) -> list[Piece]:
        """A rung: the check, then each answer that tells with what to put right.

        The remedies of `here` are told in full, those of other causes stand where `places` says;
        `numbers` says what each caution is called.
        """
        check = self._rules.checks[rung.check]
        asked = piece("check", _marks(check.cautions, numbers), _asked(check.ask), mark=str(number))
        pieces = [Piece(asked.role, tuple(("bold", t) for _, t in asked.runs), asked.mark)]
        answers = {answer.id: answer.text for answer in check.answers}
        done: set[str] = set()
        for way in rung.ways:
            found = "; or: ".join(answers[each] for each in way.answers)
            runs: list[str | Run] = [("bold", f"{found}:")]
            first = way.causes[0]
            others = way.causes
            if first in here and first not in done:
                runs += self.cure(first, numbers, found)
                others = way.causes[1:]
                done.add(first)
            if others:
                pointed = "; ".join(self._pointer(c, found, places[c]) for c in others)
                runs += [("bold", "Or:")] if len(others) < len(way.causes) else []
                runs.append(("slanted", f"{pointed}."))
            pieces.append(piece("way", *runs))
        return pieces

    def _pointer(self, cause: str, found: str, place: str) -> str:
        """Where the remedy of a cause stands; its name, if what was found does not say it."""
        name = self._short_name(cause)
        return f"see {place}" if _says(found, name) else f"{name} ({place})"

    def item(self, name: str, letter: str, numbers: Mapping[str, int]) -> Piece:
        """A line of the list."""
        return piece("item", *self.cure(name, numbers), mark=letter)

    def cure(self, name: str, numbers: Mapping[str, int], found: str = "") -> list[str | Run]:
        """A cause and its first remedy: cautions by number, what to do, whom to call, settings.

        Where what was `found` says already what is wrong, the cause is not named again.
        """
        cause = self._rules.causes[name]
        remedy = cause.remedies[0]
        named = ended(f"{capital(self._short_name(name))}{self._metal_of(cause)}")
        runs: list[str | Run] = [] if _says(found, cause.name) else [("slanted", named)]
        runs += [("bold", _marks(remedy.cautions, numbers)), *_told(does(remedy), remedy.stop)]
        runs += [("bold", f"Call {ended(remedy.call)}")] if remedy.call else []
        return [*runs, self._settings(remedy)]

    def _short_name(self, cause: str) -> str:
        return without_asides(self._rules.causes[cause].name)

    def _metal_of(self, cause: Cause) -> str:
        """The metal of a cause of one metal only, where its name does not say it."""
        if len(cause.materials) != 1 or cause.materials == (self._metal,):
            return ""
        name = self._rules.materials[cause.materials[0]].name
        words = [word for word in re.findall("[a-z]{4,}", name) if word != "steel"]
        said = any(word in cause.name for word in words)
        return "" if said else f" ({name} only)"

    def _settings(self, remedy: Remedy) -> str:
        """The targets of the settings that the remedy is about, where they hold for any size.

        Where there is one only, the remedy itself says of what.
        """
        aims = {name: self._targets[name] for name in remedy.settings if name in self._targets}
        if len(aims) == 1:
            return f"Aim: {next(iter(aims.values()))}."
        settings = self._rules.settings
        told = (f"{settings[k].name if k in settings else k} {aim}" for k, aim in aims.items())
        return f"Aim: {'; '.join(told)}." if aims else ""

    @cached_property
    def _case(self) -> Case:
        return Case().with_(Reported(self.symptom.id), Situated("process", self.process.id))

    @cached_property
    def _targets(self) -> Mapping[str, str]:
        """What each setting should be, by its id, for the usual metal and gas."""
        found = window(self._rules, self._case, self._metal)
        targets = found.targets.items() if found else ()
        return {name: show_target(target) for name, target in targets}

    @property
    def _metal(self) -> str:
        return self.symptom.materials[0] if len(self.symptom.materials) == 1 else ""

    @cached_property
    def assumed(self) -> str:
        """For which metal the targets are, where the page is for any."""
        found = window(self._rules, self._case, self._metal)
        if self._metal or found is None or "assumed" not in found.note or not self._targets:
            return ""
        return f" Aims are for {self._rules.materials[found.window.materials[0]].name}."

    def call(self) -> Piece:
        """The end of the list."""
        who = call_for_help(0.0).call.rpartition(": ")[2]
        return piece("call", ("bold", "Still bad? Stop, and call"), ended(who))

    @cached_property
    def metals(self) -> str:
        """For which metals the page is, where not for any."""
        known = metals_of(self._rules, self.symptom.id, self.process.id)
        names = [self._rules.materials[each].name for each in known]
        return f" on {', '.join(names)}" if names else ""

    def sources(self, chart: WallChart) -> list[str]:
        """Where what stands on the page comes from, each title once, the most cited first."""
        told = dict.fromkeys([*(c for rung in chart.rungs for c in rung.causes), *chart.items])
        cited = [self.symptom.source]
        cited += [self._rules.checks[rung.check].source for rung in chart.rungs]
        for cause in (self._rules.causes[each] for each in told):
            cited += [cause.source, cause.remedies[0].source]
        cited += [self._rules.cautions[each].source for each in chart.cautions]
        titles = [self._title(one) for each in cited for one in each.split(";")]
        return [title for title, _ in Counter(titles).most_common() if title]

    def _title(self, cited: str) -> str:
        source = cited.partition(",")[0].strip().removeprefix("and ").replace(" ", "-")
        return self._rules.sources[source].title if source in self._rules.sources else ""


def _asked(ask: str) -> str:
    """The question without how to choose an answer, which the rungs show by themselves."""
    return re.sub(r"(?<=\?) Pick [^.?]*\.$", "", ask)


def _says(found: str, name: str) -> bool:
    """Whether an answer holds every longer word of a cause's name, by its first letters."""
    words = re.findall("[a-z]{4,}", without_asides(name).casefold())
    known = {word[:4] for word in re.findall("[a-z]{4,}", found.casefold())}
    return bool(words) and all(word[:4] in known for word in words)


def _told(text: str, stop: bool) -> list[str | Run]:
    """What to do; a stop is said in large letters, and once."""
    if not stop:
        return [text]
    rest = re.sub(r"^Stop( here)?[.:] *", "", text)
    return [("bold", "STOP."), capital(rest)]


def _marks(cautions: Iterable[str], numbers: Mapping[str, int]) -> str:
    """The cautions of a step, by number: "!2,5"."""
    known = sorted({numbers[each] for each in cautions if each in numbers})
    return f"!{','.join(map(str, known))}" if known else ""
