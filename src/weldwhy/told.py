"""What a person told, put back into words: one line for each entry of a case."""

from __future__ import annotations

from weldwhy.case import Answered, Entry, Measured, Passed, Reported, Situated, Tried
from weldwhy.model import RuleBase


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


def entry_line(rules: RuleBase, entry: Entry) -> str:
    """One line that says what the entry told."""
    match entry:
        case Reported(symptom):
            return rules.symptoms[symptom].name if symptom in rules.symptoms else symptom
        case Situated(name, value):
            label = "noticed" if name == "group" else name
            return f"{label}: {situation(rules, name, value) or 'not known'}"
        case Answered(check, answer):
            return answer_line(rules, check, answer)
        case Passed(check, reason):
            return f"{_asked(rules, check)} ({reason})"
        case Measured(setting, value):
            return setting_line(rules, setting, value or "withdrawn")
        case Tried(cause, _, result):
            return (
                f"tried: {rules.causes[cause].name if cause in rules.causes else cause}: {result}"
            )


def _asked(rules: RuleBase, step: str) -> str:
    """The words of a check or a remedy; the bare id if the rules no longer hold it."""
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
