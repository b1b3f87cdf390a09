"""What makes rules worth having: cases both ways, a remedy, checks that tell causes apart.

Each check is one function from a survey to problems; its docstring shows one rule that passes and
one that fails. A base with these faults can be used, so an operator may write rules step by step.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from weldwhy.model import Cause, Check
from weldwhy.problems import Problem
from weldwhy.survey import Item, Survey


def case_missing(survey: Survey) -> Iterator[Problem]:
    """A cause has a case where it must lead and one where it must not.

    Passes: a case with `leads: yes` and a case with `leads: no`.
    Fails: two cases with `leads: yes`.
    """
    for item in survey.all("cause"):
        told = {case["leads"] for case in item.data["cases"]}
        for leads, word in ((True, "yes"), (False, "no")):
            if leads not in told:
                yield item.problem(("cases",), f"no case with leads: {word}", "case-missing")


def remedy_missing(survey: Survey) -> Iterator[Problem]:
    """A cause has at least one remedy.

    Passes: one entry under `remedies:`. Fails: `remedies: []`.
    """
    for item in survey.all("cause"):
        if not item.data["remedies"]:
            words = "no remedy: say what puts it right, or whom to call"
            yield item.problem(("remedies",), words, "remedy-missing")


def check_idle(survey: Survey) -> Iterator[Problem]:
    """Some cause makes a check come out differently; otherwise asking it tells nothing.

    Passes: check "nozzle-look" and a cause with `nozzle-look: {clogged: often}`.
    Fails: a check that no cause names.
    """
    linked = {name for cause in survey.base.causes.values() for name in cause.shows}
    for name in survey.base.checks:
        if name not in linked and survey.whole("cause"):
            words = "this check separates nothing: no cause names it under shows"
            yield survey.item("check", name).problem((), words, "check-idle")


def answer_idle(survey: Survey) -> Iterator[Problem]:
    """Each answer after the normal one is named by some cause; otherwise it points nowhere.

    Passes: answers right, low, high; one cause names low, another high.
    Fails: the same where no cause names high.
    """
    named: dict[str, set[str]] = {}
    for cause in survey.base.causes.values():
        for shown, row in cause.shows.items():
            named.setdefault(shown, set()).update(row)
    for name, each in survey.base.checks.items():
        for answer in each.answers[1:]:
            if survey.whole("cause") and answer.id not in named.get(name, {answer.id}):
                words = f'no cause names the answer "{answer.id}", so it points nowhere'
                path = ("answers", answer.id)
                yield survey.item("check", name).problem(path, words, "answer-idle", "warning")


def shows_baseline(survey: Survey) -> Iterator[Problem]:
    """A chance under shows differs from what the check gives anyway.

    Passes: `{low: often}` for a check where low is seldom. Fails: `{low: seldom}` there.
    """
    for name, cause in survey.base.causes.items():
        for check_id, row in cause.shows.items():
            check = survey.base.checks.get(check_id)
            if check is not None and _as_baseline(check, row):
                words = "this is what the check gives when nothing is wrong, so it tells nothing"
                item = survey.item("cause", name)
                yield item.problem(("shows", check_id), words, "shows-baseline", "warning")


def _as_baseline(check: Check, row: object) -> bool:
    usual = dict(zip((each.id for each in check.answers), check.baseline, strict=True))
    pairs = row.items() if isinstance(row, dict) else ()
    return all(abs(usual.get(answer, -1.0) - chance) < 1e-9 for answer, chance in pairs)


def cause_unreachable(survey: Survey) -> Iterator[Problem]:
    """In each of its processes a cause shows in some check, or in a reading of a setting.

    Passes: a cause of gmaw and smaw that shows in a check of all processes.
    Fails: the same that shows only in a check of gmaw: in smaw no question leads to it.
    """
    for name, cause in survey.base.causes.items():
        if cause.setting is not None or not survey.whole("check"):
            continue
        item = survey.item("cause", name)
        for place, process in enumerate(cause.processes):
            if not _offered(survey, cause, process):
                words = f"no check that is offered in {process} shows this cause"
                yield item.problem(("processes", place), words, "cause-unreachable", "warning")


def _offered(survey: Survey, cause: Cause, process: str) -> bool:
    checks = (survey.base.checks.get(name) for name in cause.shows)
    return any(check and (not check.processes or process in check.processes) for check in checks)


def hazard_unseen(survey: Survey) -> Iterator[Problem]:
    """A cause that endangers people has a check that finds it at least 85 times in 100.

    Passes: `hazard: yes` with `metal-surface: {zinc-or-plated: almost always}`.
    Fails: `hazard: yes` with `metal-surface: {zinc-or-plated: sometimes}` only.
    """
    for name, cause in survey.base.causes.items():
        best = max((chance for row in cause.shows.values() for chance in row.values()), default=0)
        if cause.hazard and best < survey.base.likelihoods["usually"]:
            words = "no check usually finds this danger; it needs one that comes first"
            yield survey.item("cause", name).problem(("hazard",), words, "hazard-unseen")


def sides_together(survey: Survey) -> Iterator[Problem]:
    """Causes at the two sides of one setting never occur together, and say so.

    Passes: "volts too low" and "volts too high" with the same `exclusive` words.
    Fails: the same without.
    """
    sides: dict[str, list[Item]] = {}
    for name, cause in survey.base.causes.items():
        if cause.setting is not None:
            sides.setdefault(cause.setting[0], []).append(survey.item("cause", name))
    for setting, items in sides.items():
        words = f'causes at both sides of "{setting}" need the same exclusive words'
        if len({item.data["setting"] for item in items}) > 1 and (
            len({item.data.get("exclusive") for item in items}) > 1
            or "exclusive" not in items[0].data
        ):
            yield items[-1].problem(("setting",), words, "sides-together", "warning")


def symptom_bare(survey: Survey) -> Iterator[Problem]:
    """In each of its processes a symptom has at least two causes to choose from.

    Passes: "porosity" in smaw, given by damp-rods and rust-or-scale. Fails: by one or none.
    """
    for name, symptom in survey.base.symptoms.items():
        for place, process in enumerate(symptom.processes):
            causes = [
                cause.id
                for cause in survey.base.causes.values()
                if name in cause.symptoms and process in cause.processes
            ]
            if len(causes) < 2 and survey.whole("cause"):
                words = f"only {len(causes)} cause(s) for it in {process}"
                item = survey.item("symptom", name)
                yield item.problem(("processes", place), words, "symptom-bare", "warning")


def source_unplaced(survey: Survey) -> Iterator[Problem]:
    """A publication is cited with the place in it.

    Passes: `source: hull-technician, chapter 10`. Fails: `source: hull-technician`.
    """
    for kind in ("process", "symptom", "check", "cause", "caution", "window"):
        for item in survey.all(kind):
            yield from _unplaced(item, (), item.data.get("source"))
            for place, remedy in enumerate(item.data.get("remedies", [])):
                yield from _unplaced(item, ("remedies", place), remedy["source"])


def _unplaced(item: Item, path: tuple[str | int, ...], source: str | None) -> Iterator[Problem]:
    if source is not None and "," not in source and source.replace(" ", "-") != "common-practice":
        words = "say where in it: a comma, then chapter, table or paragraph"
        yield item.problem((*path, "source"), words, "source-unplaced", "warning")


def phrase_shared(survey: Survey) -> Iterator[Problem]:
    """A phrase means one answer of a check only, and one process, metal, job, joint and so on.

    Passes: `said: {low: [gas is low], none: [no gas at all]}`.
    Fails: `said: {low: [gas is low], none: [gas is low]}`. Symptoms and causes may share phrases.
    """
    meant: dict[tuple[str, str], str] = {}
    for meaning, phrases in survey.base.said.items():
        kind, _, what = meaning.partition(" ")
        name = what.partition(" ")[0]
        if kind in ("symptom", "cause", "remedy", "setting", "beside"):
            continue
        where = f"answer {name}" if kind == "answer" else kind
        for phrase in phrases:
            other = meant.setdefault((where, phrase), what)
            if other == what:
                continue
            words = f'"{phrase}" means "{other.rpartition(" ")[2]}" as well'
            item, path = _said_in(survey, kind, what)
            yield item.problem(path, words, "phrase-shared", "warning")


def _said_in(survey: Survey, kind: str, what: str) -> tuple[Item, tuple[str, ...]]:
    """The item that holds the phrases of a meaning, and the path to them."""
    name, _, answer = what.partition(" ")
    if kind == "answer":
        return survey.item("check", name), ("said", answer)
    if kind in survey.items and name in survey.items[kind]:
        return survey.item(kind, name), ("said",)
    sayings = survey.all("saying")
    return next(
        each for each in sayings if (each.data["field"], each.data["value"]) == (kind, what)
    ), ("said",)


CHECKS: tuple[Callable[[Survey], Iterator[Problem]], ...] = (
    case_missing, remedy_missing, check_idle, answer_idle, shows_baseline, cause_unreachable,
    hazard_unseen, sides_together, symptom_bare, source_unplaced, phrase_shared,
)  # fmt: skip
