"""Lists to pick from: the open questions, and symptoms that were not there before."""

from __future__ import annotations

from weldwhy.case import BETTER, NO_CHANGE, SOUND, WORSE, Reported, Tried
from weldwhy.interview import Interview
from weldwhy.model import RuleBase, Symptom
from weldwhy.plaintext import capital, clean
from weldwhy.report import minutes
from weldwhy.steps import SHORT_LIST, Step, symptoms_of
from weldwhy.tui.cards.card import Card, Choice, text_body
from weldwhy.tui.cards.start import short_name, symptom_choices

LONGEST = 136
"""Letters of a question in a list: two lines on the smallest screen. Opened, it is whole."""

HOW = {"ask": "Recall", "look": "Look", "try": "Try", "measure": "Measure"}


def questions_card(interview: Interview) -> Card:
    """Every open question, the most telling first; the choice is the check's id."""
    choices = tuple(
        Choice(f"{HOW[check.how]}, {minutes(check.minutes)}: {shortened(check.ask)}", check.id)
        for check in interview.open_checks
    )
    words = "Answer any of these, the most telling first." if choices else "No question is open."
    return Card(text_body([(words, "strong")]), choices, where="Other questions")


def shortened(text: str) -> str:
    """A question cut to what a list has room for, at a word."""
    words = clean(text)
    if len(words) <= LONGEST:
        return words
    return words[: LONGEST - 2].rpartition(" ")[0] + " .."


def symptoms_left(interview: Interview, group: str = "") -> list[Symptom]:
    """Symptoms of the process, of one group if it is told, that were not reported yet."""
    found = symptoms_of(interview.rules, interview.case.process, group)
    return [symptom for symptom in found if symptom.id not in interview.case.symptoms]


def symptoms_card(interview: Interview, group: str = "") -> Card:
    """Which other thing is wrong now: of many the group first, whose id is the choice."""
    rules, left = interview.rules, symptoms_left(interview, group)
    choices = symptom_choices(rules, left)
    if not group and len(left) > SHORT_LIST:
        present = dict.fromkeys(symptom.group for symptom in left)
        choices = [Choice(capital(rules.groups.get(g, g)), g) for g in present]
    words = "What else is wrong?" if left else "Every symptom of this process was told already."
    return Card(text_body([(words, "strong")]), tuple(choices), where="Symptoms")


def same_card(rules: RuleBase, symptoms: tuple[str, ...], step: Step, new: Reported) -> Card:
    """After a remedy that brought a new symptom: what became of the old one.

    If the old one is gone, a new case begins on the same work ("gone").
    """
    names = [short_name(rules.symptoms[s].name) for s in symptoms if s in rules.symptoms]
    told = (("Less", BETTER), ("The same", NO_CHANGE), ("More", WORSE))
    choices = [Choice("Gone", (Tried(step.cause, step.id, SOUND), new))]
    choices += [Choice(text, (Tried(step.cause, step.id, result), new)) for text, result in told]
    words = f"And the {' and '.join(names)} that you had before?"
    return Card(text_body([(words, "strong")]), tuple(choices), where="After the remedy")
