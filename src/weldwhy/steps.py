"""A step as a person meets it: what to answer, check or do, why now, and its cautions first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from weldwhy.case import NONE_OF_THESE
from weldwhy.model import Answer, Caution, Check, RuleBase, Symptom

ASKED = ("ask", "look")
"""How a check is done when it needs no more than the eye; the others are "check" steps."""
SHORT_LIST = 9
"""Symptoms that are listed at once; of more, the group is asked first."""


NOT_FOR = (
    "Not for welds that carry a building, people, a load on a hook, pressure, or a vehicle's "
    "frame, steering or brakes: those are for a certified welder."
)
"""Where this guide stops; said on the first screens and at the end of every report."""
MEANT, MEANT_ONE = "Which of these is it?", "Is this what is wrong?"
"""Ask back which symptom is meant, of several and of one."""
HELP = "somebody who can stand beside you: an instructor, your supplier or a service shop"
"""Whom to call when the guide is at its end."""


@dataclass(frozen=True, slots=True)
class Step:
    """The next step: kind is ask, check, remedy, stop or done.

    `cause` is the cause that a remedy or a stop is about; `call` says whom to call.
    """

    kind: str
    id: str
    text: str
    answers: tuple[Answer, ...] = ()
    minutes: float = 0.0
    reason: str = ""
    cautions: tuple[Caution, ...] = ()
    cause: str = ""
    call: str = ""


def symptoms_of(rules: RuleBase, process: str, group: str = "") -> list[Symptom]:
    """The symptoms that the process can show, of one group if it is told.

    They come group by group, and inside a group the one that is met most often comes first.
    """
    order = list(rules.groups)
    found = [
        symptom
        for symptom in rules.symptoms.values()
        if (not process or process in symptom.processes) and group in ("", symptom.group)
    ]
    met = dict.fromkeys((symptom.id for symptom in found), 0.0)
    for cause in rules.causes.values():
        if not process or process in cause.processes:
            for shown in cause.symptoms.keys() & met.keys():
                met[shown] += cause.rate(process) * cause.symptoms[shown]

    def place(symptom: Symptom) -> tuple[int, float]:
        at = order.index(symptom.group) if symptom.group in order else len(order)
        return at, -met[symptom.id]

    return sorted(found, key=place)


def ask_group(rules: RuleBase, process: str) -> Step:
    """Where is it noticed? The groups in which the process has symptoms."""
    present = {symptom.group for symptom in symptoms_of(rules, process)}
    answers = tuple(Answer(group, name) for group, name in rules.groups.items() if group in present)
    reason = "it brings you to a short list"
    return Step("ask", "group", "Where do you notice it?", answers, 0.1, reason)


def ask_symptom(rules: RuleBase, process: str, group: str = "") -> Step:
    """What is wrong? The symptoms that the process can show, of one group if it is told."""
    answers = tuple(Answer(s.id, s.name) for s in symptoms_of(rules, process, group))
    return Step("ask", "symptom", "What is wrong?", answers, 0.2, "this is the way in")


def ask_meant(rules: RuleBase, hinted: Sequence[str]) -> Step:
    """Which of the symptoms that the words may mean is it?"""
    answers = [Answer(name, rules.symptoms[name].name) for name in hinted]
    text, none = (MEANT, "none of these") if len(answers) > 1 else (MEANT_ONE, "no, something else")
    answers.append(Answer(NONE_OF_THESE, none))
    return Step("ask", "symptom", text, tuple(answers), 0.1, "your words may mean this")


def ask_process(rules: RuleBase, symptoms: Iterable[str]) -> Step:
    """Which process? Those that can show all the symptoms reported."""
    reported = [rules.symptoms[s] for s in symptoms if s in rules.symptoms]
    answers = tuple(
        Answer(process.id, process.plain)
        for process in rules.processes.values()
        if all(process.id in symptom.processes for symptom in reported)
    )
    reason = "what can be wrong depends on it"
    return Step("ask", "process", "Which process are you welding with?", answers, 0.1, reason)


def ask_material(rules: RuleBase) -> Step:
    """Which metal?"""
    answers = tuple(Answer(metal.id, metal.name) for metal in rules.materials.values())
    reason = "some faults and checks belong to one metal only"
    return Step("ask", "material", "Which metal are you welding?", answers, 0.1, reason)


def put_check(rules: RuleBase, check: Check, reason: str) -> Step:
    """Ask or do one check."""
    return Step(
        kind="ask" if check.how in ASKED else "check",
        id=check.id,
        text=check.ask,
        answers=check.answers,
        minutes=check.minutes,
        reason=reason,
        cautions=cautions(rules, check.cautions),
    )


def offer_remedy(rules: RuleBase, cause_id: str, number: int, probability: float) -> Step:
    """Try remedy `number` of a cause (its last one if there are fewer), or stop and call."""
    cause = rules.causes[cause_id]
    remedy = cause.remedy(number)
    return Step(
        kind="stop" if remedy.stop else "remedy",
        id=remedy.id,
        text=remedy.do,
        minutes=remedy.minutes,
        reason=f"best odds for the time it takes: {cause.name}, {round(100 * probability)} %",
        cautions=cautions(rules, remedy.cautions),
        cause=cause_id,
        call=remedy.call,
    )


def stop_for_job(caution: Caution) -> Step:
    """Stop: the weld is one that people's safety hangs on."""
    return Step("stop", caution.id, caution.text, cautions=(caution,), call=caution.call)


def call_for_help(minutes: float) -> Step:
    """Nothing cheap is left to try."""
    return Step(
        kind="stop",
        id="call",
        text="Nothing cheap is left that would find it. Stop here and ask somebody.",
        minutes=minutes,
        reason="more guessing would cost more than asking",
        call=HELP,
    )


def cautions(rules: RuleBase, ids: Iterable[str]) -> tuple[Caution, ...]:
    """The cautions with these ids, in order."""
    return tuple(rules.cautions[each] for each in ids if each in rules.cautions)
