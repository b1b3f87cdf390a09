"""What must hold over the whole rule base before anything may think with it.

Each check is one function from a survey to problems; its docstring shows one rule that passes and
one that fails. All of these are errors: a base that has one is not used.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import PurePath

from weldwhy import units
from weldwhy.problems import Problem, did_you_mean
from weldwhy.survey import Item, Survey


def problems(survey: Survey) -> list[Problem]:
    """Every fault of the whole base."""
    return [problem for check in CHECKS for problem in check(survey)]


def unknown_id(survey: Survey) -> Iterator[Problem]:
    """Every id that a rule names exists.

    Passes: `cautions: [cylinder]` with a caution "cylinder".
    Fails: `cautions: [cilinder]`.
    """
    for items in survey.items.values():
        for item in items.values():
            for named in item.references:
                if not survey.known(named.kind, named.id):
                    near = did_you_mean(named.id, survey.items.get(named.kind, {}))
                    words = f'no {named.kind} "{named.id}"{near}'
                    yield Problem(
                        named.file, named.line, named.column, "error", words, "unknown-id"
                    )


def unknown_answer(survey: Survey) -> Iterator[Problem]:
    """An answer that a cause or a case names is one of its check's.

    Passes: `nozzle-look: {clogged: often}`.
    Fails: `nozzle-look: {blocked: often}`.
    """
    for item in survey.all("cause"):
        for check, row in item.data.get("shows", {}).items():
            yield from _answers(survey, item, check, row, ("shows", check))
        for place, case in enumerate(item.data["cases"]):
            for check, answer in case.get("answers", {}).items():
                path = ("cases", place, "answers", check)
                yield from _answers(survey, item, check, {answer: ""}, path)


def _answers(
    survey: Survey, item: Item, check: str, row: Mapping[str, str], path: tuple[str | int, ...]
) -> Iterator[Problem]:
    known = survey.items.get("check", {}).get(check)
    if known is None:
        return
    for answer in row:
        if answer not in known.data["answers"]:
            hint = did_you_mean(answer, known.data["answers"])
            words = f'check "{check}" has no answer "{answer}"{hint}'
            yield item.problem((*path, answer), words, "unknown-answer")


def row_sum(survey: Survey) -> Iterator[Problem]:
    """The chances named for one check leave room for the answers not named.

    Passes: `gas-flow-reading: {low: often, none: seldom}` (0.70 + 0.15).
    Fails: `gas-flow-reading: {low: often, none: sometimes}` (0.70 + 0.30).
    """
    for name, cause in survey.base.causes.items():
        for check, row in cause.shows.items():
            if len(row) > 1 and sum(row.values()) >= 1:
                words = f"these chances add up to {sum(row.values()):.2f}; they must stay below 1"
                yield survey.item("cause", name).problem(("shows", check), words, "row-sum")


def exclusive_alone(survey: Survey) -> Iterator[Problem]:
    """Causes that never occur together are at least two.

    Passes: `exclusive: gas flow` in two causes.
    Fails: `exclusive: gas flow` in one, and `exclusive: gasflow` in the other.
    """
    groups: dict[str, list[Item]] = {}
    for item in survey.all("cause"):
        if "exclusive" in item.data:
            groups.setdefault(item.data["exclusive"], []).append(item)
    for group, members in groups.items():
        if len(members) == 1 and survey.whole("cause"):
            hint = did_you_mean(group, [each for each in groups if each != group])
            words = f'no other cause has exclusive "{group}"{hint}'
            yield members[0].problem(("exclusive",), words, "exclusive-alone")


def file_name(survey: Survey) -> Iterator[Problem]:
    """A cause lies in the folder of its family; causes and symptoms in the file of their name.

    Passes: cause "draught" of family shielding in `causes/shielding/draught.yaml`.
    Fails: the same in `causes/technique/wind.yaml`.
    """
    for kind in ("cause", "symptom"):
        for item in survey.all(kind):
            path = PurePath(item.file)
            if path.stem != item.id:
                words = f'{kind} "{item.id}" must be in a file "{item.id}.yaml"'
                yield item.problem((), words, "file-name")
            family = item.data.get("family", path.parent.name)
            if family != path.parent.name:
                words = f'family "{family}", but the folder is "{path.parent.name}"'
                yield item.problem(("family",), words, "folder-family")


def process_mismatch(survey: Survey) -> Iterator[Problem]:
    """A cause, its symptoms and its checks can meet in some process.

    Passes: a cause of gtaw-ac that shows in check "tungsten-look" of gtaw-dc and gtaw-ac.
    Fails: a cause of smaw only that shows in check "gas-flow-reading" of gmaw.
    """
    checks, symptoms = survey.items.get("check", {}), survey.items.get("symptom", {})
    for item in survey.all("cause"):
        mine = set(item.data["processes"])
        for name in item.data["symptoms"]:
            if name in symptoms and not mine & set(symptoms[name].data["processes"]):
                words = f'symptom "{name}" is not met in any process of this cause'
                yield item.problem(("symptoms", name), words, "process-mismatch")
        for name in item.data.get("shows", {}):
            limits = checks[name].data if name in checks else {}
            if limits.get("processes") and not mine & set(limits["processes"]):
                words = f'check "{name}" is not for any process of this cause'
                yield item.problem(("shows", name), words, "process-mismatch")
            offered = limits.get("symptoms")
            if offered and not set(offered) & set(item.data["symptoms"]):
                words = f'check "{name}" is not for any symptom of this cause'
                yield item.problem(("shows", name), words, "process-mismatch")


def process_uncovered(survey: Survey) -> Iterator[Problem]:
    """In each of its processes a cause can give at least one of its symptoms.

    Passes: processes [gmaw] with the symptom "birds-nest", which is met in gmaw.
    Fails: processes [gmaw, smaw] with only the symptom "birds-nest".
    """
    symptoms = survey.items.get("symptom", {})
    for item in survey.all("cause"):
        met = {
            process
            for name in item.data["symptoms"]
            if name in symptoms
            for process in symptoms[name].data["processes"]
        }
        for place, process in enumerate(item.data["processes"]):
            if met and process not in met:
                words = f"none of this cause's symptoms is met in {process}"
                yield item.problem(("processes", place), words, "process-mismatch")


def case_mismatch(survey: Survey) -> Iterator[Problem]:
    """A worked case fits its cause and its checks, and its readings can be read.

    Passes: a case in gmaw under a cause of gmaw, with `settings: {gas_flow: 8 cfh}`.
    Fails: `leads: yes` in smaw under a cause of gmaw; `settings: {gas_flow: 8 V}`.
    """
    for item in survey.all("cause"):
        for place in range(len(item.data["cases"])):
            yield from _case(survey, item, place)


def _case(survey: Survey, item: Item, place: int) -> Iterator[Problem]:
    case, path = item.data["cases"][place], ("cases", place)
    for key, mine in (("process", "processes"), ("symptom", "symptoms")):
        if case["leads"] and case[key] not in item.data[mine]:
            words = f'this cause has no {key} "{case[key]}", so it cannot lead here'
            yield item.problem((*path, key), words, "case-mismatch")
    for name in case.get("answers", {}):
        check = survey.items.get("check", {}).get(name)
        if check is not None and case["process"] not in check.data.get(
            "processes", [case["process"]]
        ):
            words = f'check "{name}" is not for {case["process"]}'
            yield item.problem((*path, "answers", name), words, "case-mismatch")
    for name, text in case.get("settings", {}).items():
        setting = survey.base.settings.get(name)
        if setting is not None and setting.quantity != "text":
            try:
                units.parse(text, setting.quantity)
            except units.UnitError as fault:
                yield item.problem((*path, "settings", name), str(fault), "bad-quantity")


def call_missing(survey: Survey) -> Iterator[Problem]:
    """Whoever is told to stop is told whom to call.

    Passes: `stop: yes` and `call: a licensed electrician`.
    Fails: `stop: yes` alone, or `call` without `stop: yes`.
    """
    for item in survey.all("caution"):
        yield from _stop(item, item.data, ())
    for item in survey.all("cause"):
        for place, remedy in enumerate(item.data["remedies"]):
            yield from _stop(item, remedy, ("remedies", place))


def _stop(item: Item, data: Mapping[str, object], path: tuple[str | int, ...]) -> Iterator[Problem]:
    if data.get("stop") and "call" not in data:
        yield item.problem((*path, "stop"), "stop needs call: say whom to call", "call-missing")
    if "call" in data and not data.get("stop"):
        yield item.problem((*path, "call"), "call is only for stop: yes", "call-missing")


def twice_named(survey: Survey) -> Iterator[Problem]:
    """No two remedies have the same id, and none has that of a check: a case tells them by it.

    Passes: set-gas-flow and new-regulator. Fails: set-gas-flow twice, in one cause or in two.
    """
    seen = {item.id: "a check" for item in survey.all("check")}
    for item in survey.all("cause"):
        for place, remedy in enumerate(item.data["remedies"]):
            name = remedy["remedy"]
            if name in seen:
                there = "here twice" if seen[name] == item.id else f"that of {seen[name]} too"
                words = f'remedy "{name}" is {there}; give it an id of its own'
                yield item.problem(("remedies", place, "remedy"), words, "duplicate-id")
            seen.setdefault(name, item.id)


SEEN = (
    "symptom", "cause", "check", "caution", "setting", "process", "material", "grade", "gas",
    "filler", "window", "job", "setup", "term",
)  # fmt: skip
"""The kinds of things that a word of the trade may see, beside remedies."""


def unknown_see(survey: Survey) -> Iterator[Problem]:
    """What a word of the trade sees exists, be it of whatever kind.

    Passes: `see: [stick_out, undercut]`. Fails: `see: [undercutt]`.
    """
    known = {name for kind in SEEN for name in survey.items.get(kind, {})}
    for cause in survey.all("cause"):
        known |= {remedy["remedy"] for remedy in cause.data["remedies"]}
    if not all(map(survey.whole, SEEN)):
        return  # what is missed may stand in a file that could not be read
    for item in survey.all("term"):
        for place, name in enumerate(item.data.get("see", [])):
            if name not in known:
                words = f'nothing is called "{name}"{did_you_mean(name, known)}'
                yield item.problem(("see", place), words, "unknown-see")


def looks_like(survey: Survey) -> Iterator[Problem]:
    """What looks like a symptom's picture is another symptom, and there is a picture.

    Passes: `looks_like: {wormholes: sometimes}` beside the picture of porosity.
    Fails: `looks_like: {porosity: often}` there, or in a symptom without a picture.
    """
    for item in survey.all("symptom"):
        alike = item.data.get("looks_like", {})
        if item.id in alike:
            words = "this is the picture of the symptom itself; leave this line out"
            yield item.problem(("looks_like", item.id), words, "looks-like")
        if alike and "picture" not in item.data:
            words = "nothing looks like a picture that is not here; add picture: or leave this out"
            yield item.problem(("looks_like",), words, "looks-like")


CHECKS: tuple[Callable[[Survey], Iterator[Problem]], ...] = (
    unknown_id, unknown_answer, row_sum, exclusive_alone, file_name, process_mismatch,
    process_uncovered, case_mismatch, call_missing, twice_named, unknown_see,
    looks_like,
)  # fmt: skip
