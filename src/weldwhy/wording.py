"""The texts of the rules: short enough, plain enough, and with a warning where one is due.

Each check is one function from a survey to problems; its docstring shows one rule that passes and
one that fails.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from weldwhy.problems import Problem
from weldwhy.survey import Item, Survey

MAX_TEXT = 400
MAX_ANSWER = 70  # with its number and margin it fits a line of 76 columns
MAX_NAME = 60

_Path = tuple[str | int, ...]


def text_long(survey: Survey) -> Iterator[Problem]:
    """No text is longer than a few lines; people read beside the machine.

    Passes: a text of 400 characters. Fails: one of 401.
    """
    for item, path, text in _every_text(survey):
        if len(text) > MAX_TEXT:
            words = f"{len(text)} characters; keep it to {MAX_TEXT}"
            yield item.problem(path, words, "text-long")


def name_long(survey: Survey) -> Iterator[Problem]:
    """Answers and names of causes and symptoms fit on one line.

    Passes: `low: Below the usual range`. Fails: an answer of 71 characters.
    """
    for item in survey.all("check"):
        for answer, text in item.data["answers"].items():
            if len(text) > MAX_ANSWER:
                words = f"{len(text)} characters; keep an answer to {MAX_ANSWER}"
                yield item.problem(("answers", answer), words, "name-long")
    for kind in ("cause", "symptom"):
        for item in survey.all(kind):
            if len(item.data["name"]) > MAX_NAME:
                words = f"{len(item.data['name'])} characters; keep a name to {MAX_NAME}"
                yield item.problem(("name",), words, "name-long")


def not_ascii(survey: Survey) -> Iterator[Problem]:
    """Texts hold only the marks that every terminal can show.

    Passes: `20 C`. Fails: the same with a degree sign.
    """
    for item, path, text in _every_text(survey):
        strange = sorted({mark for mark in text if not mark.isascii()})
        if strange:
            named = ", ".join(f"U+{ord(mark):04X}" for mark in strange)
            words = f"write this without {named}; not every terminal can show it"
            yield item.problem(path, words, "not-ascii")


def caution_missing(survey: Survey) -> Iterator[Problem]:
    """A check or remedy whose text holds a dangerous word carries the warning that belongs to it.

    The words stand in `rules/cautions.yaml` under `needed_for`.
    Passes: "Grind the rust off." with `cautions: [grinding]`. Fails: the same without.
    """
    due = [
        (item.id, re.compile(rf"(?<![a-z])(?:{'|'.join(map(re.escape, words))})(?![a-z])", re.I))
        for item in survey.all("caution")
        if (words := item.data.get("needed_for"))
    ]
    for item, path, text, carried in _steps(survey):
        for caution, form in due:
            found = form.search(text)
            if found and caution not in carried:
                words = f'"{found[0]}" needs caution "{caution}"'
                yield item.problem(path, words, "caution-missing")


def caution_stops(survey: Survey) -> Iterator[Problem]:
    """A remedy that carries a warning to stop is itself a remedy that stops.

    A symptom never carries one: its warnings stand before every step, and none could be taken.
    Passes: `cautions: [mains]` with `stop: yes`. Fails: `cautions: [mains]` and a step to do.
    """
    stopping = {item.id for item in survey.all("caution") if item.data.get("stop")}
    for item in survey.all("symptom"):
        for number, caution in enumerate(item.data.get("cautions", [])):
            if caution in stopping:
                words = f'caution "{caution}" says stop, so no step could follow it'
                yield item.problem(("cautions", number), words, "caution-stops")
    for item in survey.all("cause"):
        for place, remedy in enumerate(item.data["remedies"]):
            for number, caution in enumerate(remedy.get("cautions", [])):
                if caution in stopping and not remedy.get("stop"):
                    words = f'caution "{caution}" says stop, so the remedy needs stop: yes'
                    path = ("remedies", place, "cautions", number)
                    yield item.problem(path, words, "caution-stops", "warning")


def _steps(survey: Survey) -> Iterator[tuple[Item, _Path, str, list[str]]]:
    """Everything that a person is told to do, with the warnings it carries."""
    for item in survey.all("check"):
        yield item, ("ask",), item.data["ask"], item.data.get("cautions", [])
    for item in survey.all("cause"):
        for place, remedy in enumerate(item.data["remedies"]):
            for key in ("do", "short"):
                path = ("remedies", place, key)
                yield item, path, remedy.get(key, ""), remedy.get("cautions", [])


def _every_text(survey: Survey) -> Iterator[tuple[Item, _Path, str]]:
    for items in survey.items.values():
        for item in items.values():
            for path, text in _texts(item.data, ()):
                yield item, path, text


def _texts(value: object, path: _Path) -> Iterator[tuple[_Path, str]]:
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, dict):
        for key, each in value.items():
            yield from _texts(each, (*path, key))
    elif isinstance(value, list):
        for place, each in enumerate(value):
            yield from _texts(each, (*path, place))


CHECKS: tuple[Callable[[Survey], Iterator[Problem]], ...] = (
    text_long, name_long, not_ascii, caution_missing, caution_stops,
)  # fmt: skip
