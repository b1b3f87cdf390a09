"""What people type, made into entries of the case log: a check's answer, a number, a metal.

One place for it, so that a case file, the command line and plain mode take the same words and
refuse the same ones. Every refusal is one plain line that says how to mend it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from weldwhy import consumables
from weldwhy.case import (
    DONT_KNOW,
    NONE_MEANT,
    SITUATION,
    SKIP,
    Answered,
    Case,
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
    entry_for,
)
from weldwhy.model import JOINTS, PLACES, POSITIONS, RuleBase
from weldwhy.problems import did_you_mean
from weldwhy.units import Quantity, UnitError, parse, show

if TYPE_CHECKING:
    from weldwhy.understanding.heard import Heard

PASSES = {"dont-know": DONT_KNOW, "skip": SKIP}
"""Words that may stand in place of an answer, and the reason they give for having none."""

PLAIN = SITUATION
"""What may be told of the work by itself, without a check."""

WORDS = {"place": PLACES, "joint": JOINTS, "position": POSITIONS}
"""What can only be one of a few words."""

THINNEST = Quantity("length", 0.1, "mm")
THICKEST = Quantity("length", 300.0, "mm")
"""Nobody joins thicker metal in a small shop: beyond it the unit is surely wrong."""


class EntryError(ValueError):
    """Words that mean nothing here; str() is one plain line."""


def answered(rules: RuleBase, check_id: str, answer: str) -> Entry:
    """The entry for one answer; `symptom`, `process` and the like are answered the same way."""
    wanted = " ".join(answer.split())
    if check_id in PLAIN or check_id == "symptom":
        return _situated(rules, check_id, wanted)
    known(check_id, [*rules.checks, "symptom", *PLAIN], "check")
    answers = [each.id for each in rules.checks[check_id].answers]
    if wanted in answers:
        return entry_for(check_id, wanted)
    if wanted in PASSES:
        return Passed(check_id, PASSES[wanted])
    hint = did_you_mean(wanted, [*answers, *PASSES])
    raise EntryError(f'unknown answer "{wanted}" to "{check_id}"{hint}')


def _situated(rules: RuleBase, field: str, wanted: str) -> Entry:
    if wanted in PASSES:
        return Passed(field, PASSES[wanted]) if field == "symptom" else Situated(field, "")
    if field == "material":
        return entry_for(field, material_id(rules, wanted))
    if field == "thickness":
        return entry_for(field, thickness(wanted))
    if field == "grade":
        return entry_for(field, grade(rules, wanted))
    words = {"symptom": rules.symptoms, **_words_for(rules)}
    return entry_for(field, known(wanted, words[field], field))


def volunteered(rules: RuleBase, line: str, system: str | None = None) -> Entry:
    """The entry for something told without being asked: "volts 18 V", "material mild steel"."""
    names = {name: name for name in PLAIN if name != "group"}
    for setting in rules.settings.values():
        names |= {_plain_word(setting.id): setting.id, _plain_word(setting.name): setting.id}
    words = line.replace(":", " ").replace("=", " ").split()
    for count in range(min(len(words) - 1, 4), 0, -1):
        name = names.get(_plain_word(" ".join(words[:count])))
        value = " ".join(words[count:])
        if name == "thickness":
            return Situated(name, thickness(value, system))
        if name in PLAIN:
            return answered(rules, name, value)
        if name:
            return Measured(name, measured(rules, name, value, system))
    raise EntryError(f'"{line[:40]}" means nothing here; type ? for help')


def in_own_words(text: str, heard: Heard, struck: Collection[int] = ()) -> tuple[Entry, ...]:
    """A text and what was heard in it as entries: the words first, so that they are undone last.

    `struck` are the places of what the person struck out. Who struck out all that was understood
    has taken it back: then there are none.
    """
    left = [each for at, each in enumerate(heard.understood) if at not in struck]
    # the same words may tell several things, of which only one was struck out
    gone = dict.fromkeys(heard.understood[at].text for at in sorted(struck))
    counted = {each.text for each in left}
    said = Said(text, heard.not_understood, tuple(each for each in gone if each not in counted))
    if not said.text or (gone and not left):
        return ()
    # without words of its own an entry would pass for one that was told outright
    taken = ((each.entry, each.text or said.text) for each in left)
    return (said, *(replace(e, words=words) for e, words in taken if not isinstance(e, Said)))


def still_known(rules: RuleBase, case: Case) -> tuple[Case, int]:
    """The case without entries that these rules do not know, and how many were left out."""
    kept = tuple(entry for entry in case.entries if _is_known(rules, entry))
    return Case(kept), len(case.entries) - len(kept)


def _is_known(rules: RuleBase, entry: Entry) -> bool:
    match entry:
        case Said():
            return True
        case Situated(field="grade", value=value):
            return not value or _is_metal(rules, value)
        case Situated(field=field, value=value):
            return not value or value in _words_for(rules).get(field, (value,))
        case Reported(symptom) | Resembled(symptom) | Hinted(symptom):
            return symptom in rules.symptoms
        case Answered(check=check, answer=answer) | Supposed(check=check, answer=answer):
            found = rules.checks.get(check)
            return found is not None and answer in [each.id for each in found.answers]
        case Passed(check=step):
            return step in rules.checks or _is_remedy(rules, step) or entry in NONE_MEANT
        case Measured(setting=setting):
            return setting in rules.settings
        case Tried(cause=cause) | Suspected(cause=cause):
            return cause in rules.causes


def _is_remedy(rules: RuleBase, name: str) -> bool:
    return any(r.id == name for cause in rules.causes.values() for r in cause.remedies)


def _words_for(rules: RuleBase) -> dict[str, Iterable[str]]:
    """What each field of the work may be, where that is one of a few words."""
    return {
        "process": rules.processes,
        "group": rules.groups,
        "material": rules.materials,
        "job": rules.jobs,
        **WORDS,
    }


def known(wanted: str, words: Iterable[str], what: str) -> str:
    """`wanted`, once it is one of `words`."""
    if wanted in words:
        return wanted
    raise EntryError(f'unknown {what} "{wanted}"{did_you_mean(wanted, words)}')


def material_id(rules: RuleBase, text: str) -> str:
    """The metal's id for its id, its name, or a name people give it, whatever the capitals."""
    wanted = _plain_word(text)
    names: dict[str, str] = {}
    for material in rules.materials.values():
        for name in (material.id, material.name, *material.also):
            names.setdefault(_plain_word(name), material.id)
    return names[known(wanted, names, "material")]


def _is_metal(rules: RuleBase, grade: str) -> bool:
    from weldwhy import metalwork  # few cases tell a grade

    return metalwork.told(rules, grade) is not None


def grade(rules: RuleBase, text: str) -> str:
    """The id of a grade for any name of it, or a composition such as "C 0.18 Mn 1.2" as typed."""
    from weldwhy import metalwork  # few cases tell a grade
    from weldwhy.arithmetic.bounds import Impossible

    try:
        metal = metalwork.read(rules, text)
    except Impossible as fault:
        raise EntryError(str(fault)) from None
    return metal.id or metal.name


def _plain_word(text: str) -> str:
    return " ".join(text.lower().replace("-", " ").replace("_", " ").split())


def thickness(text: str, system: str | None = None) -> str:
    """The thickness as typed, once it is known to be one that can be welded by hand."""
    return _bounded(text, "length", "thickness", (THINNEST, THICKEST), system)


def measured(rules: RuleBase, setting_id: str, text: str, system: str | None = None) -> str:
    """The value of a setting as typed, once it is known to be a possible one."""
    setting = rules.settings[known(setting_id, rules.settings, "setting")]
    if setting.quantity == "text":
        return " ".join(text.split())
    size, named = consumables.read(text)
    if size and named and any(w.size_of == setting_id for w in rules.windows.values()):
        # "1/8 in 6013": the size must be a possible one, and the class is kept with it
        _bounded(show(size), setting.quantity, setting.name, setting.possible, system)
        return " ".join(text.split())
    return _bounded(text, setting.quantity, setting.name, setting.possible, system)


def _bounded(
    text: str, kind: str, name: str, bounds: tuple[Quantity, Quantity] | None, system: str | None
) -> str:
    """The words as typed; a bare number gets the unit it was taken to have."""
    try:
        quantity = parse(text, kind, system)
    except UnitError as fault:
        raise EntryError(f"{name}: {fault}") from None
    low, high = bounds or (quantity, quantity)
    if not low.value <= quantity.value <= high.value:
        span = f"{show(low, system)} to {show(high, system)}"
        raise EntryError(f"{name} {show(quantity)} is not possible; it can be {span}")
    words = " ".join(text.split())
    return show(quantity) if words[-1:].isdigit() else words
