"""The way into a case: go on with an open one, the symptom, the process."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from weldwhy.case import NONE_OF_THESE, Case, Reported, Situated
from weldwhy.interview import Interview
from weldwhy.model import RuleBase, Symptom
from weldwhy.plaintext import capital, clean
from weldwhy.steps import NOT_FOR, SHORT_LIST, Step
from weldwhy.tui.cards.card import Card, Choice, text_body
from weldwhy.tui.commands import shown_key

WAYS = (
    ("setup", "Set up, before the first bead"),
    ("machine", "My machine: what it reaches"),
    ("arithmetic", "Arithmetic: heat input, gas left, duty cycle"),
    ("lookup", "Look up: symptoms, causes, checks, words"),
)
"""The other places, as they are offered where a case begins."""

WAYS_IN = (
    ("say", "Say it in your own words"),
    ("gallery", "Pick a picture: which looks most like yours?"),
)
"""The ways into a case beside the list."""

NOTES, NOTE_WIDTH = 3, 70
"""Other names told with a symptom, as many as one line holds; none where the list is long."""


def resume_card(rules: RuleBase, case: Case) -> Card:
    """Offers the case that was left open."""
    names = [rules.symptoms[s].name for s in case.symptoms if s in rules.symptoms]
    process = rules.processes.get(case.process)
    what = ", ".join([*names, *([process.plain] if process else [])]) or "nothing told yet"
    count = len(case.entries)
    told = "one thing told" if count == 1 else f"{count} things told"
    body = text_body([("A case is open.", "strong"), (f"{what}; {told} so far.", "text")])
    choices = (
        Choice("Go on with it", "go_on"),
        Choice("Start a new one (the old one is put away, not lost)", "put_away"),
    )
    return Card(body, choices, where="An open case")


def symptom_card(rules: RuleBase, step: Step, own_keys: Mapping[str, str]) -> Card:
    """What is wrong, under the headings of the groups; or which of those that were hinted at."""
    known = [rules.symptoms[a.id] for a in step.answers if a.id in rules.symptoms]
    body, ways = text_body([(step.text, "strong")]), _ways(WAYS_IN, own_keys)
    none_meant = next((a.text for a in step.answers if a.id == NONE_OF_THESE), "")
    if none_meant:
        choices = [Choice(capital(s.name), (Reported(s.id),), note=_also(s)) for s in known]
        none = Choice(capital(none_meant), "dont_know", key="0")
        return Card(body, tuple(choices), (none, *ways), where="New case")
    return Card(body, tuple(symptom_choices(rules, known)), tuple(ways), where="New case")


def symptom_choices(rules: RuleBase, symptoms: Iterable[Symptom]) -> list[Choice]:
    """The symptoms, which come group by group, as choices under their headings."""
    known = list(symptoms)
    choices, last = [], ""
    for symptom in known:
        heading = rules.groups.get(symptom.group, symptom.group)
        also = _also(symptom) if len(known) <= SHORT_LIST else ""
        choices.append(
            Choice(
                capital(symptom.name), (Reported(symptom.id),),
                heading if heading != last else "", also,
            )
        )  # fmt: skip
        last = heading
    return choices


def _also(symptom: Symptom) -> str:
    names = list(symptom.also[:NOTES])
    while len(names) > 1 and len(", ".join(names)) > NOTE_WIDTH:
        names.pop()
    return ", ".join(names)


def process_card(step: Step, symptoms: str, own_keys: Mapping[str, str]) -> Card:
    """Which process; not knowing it is allowed. A new case also shows the way to other places."""
    words = f"{capital(symptoms)}. How are you welding?" if symptoms else "How are you welding?"
    body = text_body([(words, "strong"), (NOT_FOR, "dim")])
    choices = tuple(Choice(capital(a.text), (Situated("process", a.id),)) for a in step.answers)
    nothing = Choice("Don't know", "dont_know", key="0")
    ways = [] if symptoms else _ways((*WAYS_IN, *WAYS), own_keys)
    return Card(body, choices, (nothing, *ways), where="New case")


def _ways(ways: Iterable[tuple[str, str]], own_keys: Mapping[str, str]) -> list[Choice]:
    """Commands offered as choices, each with its key."""
    return [Choice(text, name, key=shown_key(name, own_keys)) for name, text in ways]


def group_card(step: Step, work: str, own_keys: Mapping[str, str]) -> Card:
    """Where the fault is noticed; not knowing it brings the whole list."""
    body = text_body([(f"{capital(work)}. {step.text}" if work else step.text, "strong")])
    choices = tuple(Choice(capital(a.text), (Situated("group", a.id),)) for a in step.answers)
    nothing = Choice("Don't know: show them all", "dont_know", key="0")
    return Card(body, choices, (nothing, *_ways(WAYS_IN, own_keys)), where="New case")


def work_text(interview: Interview) -> str:
    """The case in a few words: what is wrong, with what it is welded, on what."""
    rules, case = interview.rules, interview.case
    names = [short_name(rules.symptoms[s].name) for s in case.symptoms if s in rules.symptoms]
    process, metal = rules.processes.get(case.process), rules.materials.get(case.material)
    parts = [" + ".join(names)]
    parts.append(f"{case.thickness} {metal.name}".strip() if metal else case.thickness)
    parts.append(short_name(process.plain).partition(" with ")[0] if process else "")
    return ", ".join(part for part in parts if part)


def short_name(name: str) -> str:
    """A name without what stands in brackets behind it."""
    return clean(name).partition(" (")[0]


def sure_card() -> Card:
    """Asks before the open case is put away."""
    said = [("Start a new case?", "strong"), ("The old one is put away, not lost.", "text")]
    body = text_body(said)
    choices = (Choice("Yes, start a new one", "put_away"), Choice("No, go on with this", "stay"))
    return Card(body, choices, where="New case")
