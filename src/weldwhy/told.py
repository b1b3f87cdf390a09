"""What a person told, put back into words: one line for each entry of a case."""

from __future__ import annotations

import re

from weldwhy.case import (
    Answered,
    Entry,
    Hinted,
    Measured,
    Passed,
    Reported,
    Resembled,
    Said,
    Situated,
    Supposed,
    Suspected,
    Tried,
)
from weldwhy.model import RuleBase
from weldwhy.steps import MEANT

SHORTEST = 80
"""Letters of the longest question that is told whole beside its answer."""
BARE = 40
"""Letters up to which a question says too little without the sentence before it."""
_SENTENCE = re.compile(r"[^.?!]+[.?!]?")


def answer_line(rules: RuleBase, check_id: str, answer_id: str) -> str:
    """The check's words and the answer's; the bare ids if the rules no longer hold them."""
    check = rules.checks.get(check_id)
    if check is None:
        return f"{check_id}: {answer_id}"
    texts = {answer.id: answer.text for answer in check.answers}
    return f"{check.ask} {texts.get(answer_id, answer_id)}"


def setting_line(rules: RuleBase, setting: str, value: str) -> str:
    """A setting's name and value."""
    name = rules.settings[setting].name if setting in rules.settings else setting
    return f"{name}: {value}"


BEFORE_NAME = {Reported: "", Resembled: "looks like: ", Hinted: "perhaps: "}
"""What stands before the name of a symptom, by how it was told."""


def entry_line(rules: RuleBase, entry: Entry) -> str:
    """One line that says what the entry told."""
    match entry:
        case Said(text):
            return f'own words: "{_cut(text, SHORTEST)}"'
        case Situated(name, value):
            label = "noticed" if name == "group" else name
            return f"{label}: {situation(rules, name, value) or 'not known'}"
        case Reported(symptom) | Resembled(symptom) | Hinted(symptom):
            name = rules.symptoms[symptom].name if symptom in rules.symptoms else symptom
            return f"{BEFORE_NAME[type(entry)]}{name}"
        case Answered(check, answer):
            return answer_line(rules, check, answer)
        case Supposed(check, answer):
            return f"{answer_line(rules, check, answer)} (from words, not certain)"
        case Suspected(cause):
            return f"own guess: {rules.causes[cause].name if cause in rules.causes else cause}"
        case Passed(check, reason):
            none = "none of these" if check == "symptom" else reason
            return f"{_asked(rules, check)} ({none})"
        case Measured(setting, value):
            return setting_line(rules, setting, value or "withdrawn")
        case Tried(cause, _, result):
            return (
                f"tried: {rules.causes[cause].name if cause in rules.causes else cause}: {result}"
            )


def in_short(rules: RuleBase, entry: Entry) -> str:
    """The same, but of a check that was answered only the sentence that asks."""
    if isinstance(entry, Answered | Supposed) and entry.check in rules.checks:
        check = rules.checks[entry.check]
        answer = next((a.text for a in check.answers if a.id == entry.answer), entry.answer)
        return f"{question(check.ask)} {answer}"
    return entry_line(rules, entry)


def question(ask: str) -> str:
    """The sentence of a check that asks, with the one before it where both fit.

    A bare "What is on it?" leans on that one, which is cut then. The whole check where none asks.
    """
    said = [each.strip() for each in _SENTENCE.findall(ask)]
    at = next((at for at, each in enumerate(said) if each.endswith("?")), None)
    asked = ask.strip() if at is None else said[at]
    if at and (len(f"{said[at - 1]} {asked}") <= SHORTEST or len(asked) <= BARE):
        return f"{_cut(said[at - 1], SHORTEST - len(asked))} {asked}"
    return _cut(asked, SHORTEST)


def _cut(text: str, length: int) -> str:
    """The text, or its start: to a comma if there is one, else to the end of a word."""
    if len(text) <= length:
        return text
    kept = text[: length - len(" ..")]
    return f"{kept.rpartition(', ')[0] or kept.rpartition(' ')[0]} .."


def _asked(rules: RuleBase, step: str) -> str:
    """The words of a check or a remedy; the bare id if the rules no longer hold it."""
    if step == "symptom":
        return MEANT
    if step in rules.checks:
        return rules.checks[step].ask
    remedies = (r for cause in rules.causes.values() for r in cause.remedies if r.id == step)
    return next((remedy.do for remedy in remedies), step)


def situation(rules: RuleBase, name: str, value: str) -> str:
    """What was told of the work, by the name that people know it by."""
    if name == "process" and value in rules.processes:
        return rules.processes[value].plain
    if name == "group":
        return rules.groups.get(value, value)
    if name == "material" and value in rules.materials:
        return rules.materials[value].name
    if name == "grade" and value in rules.grades:
        return rules.grades[value].name
    if name == "job" and value in rules.jobs:
        return rules.jobs[value].name
    return value
