"""The cause that a person suspects, in a guess or a question."""

from __future__ import annotations

from dataclasses import dataclass

from weldwhy.case import Suspected
from weldwhy.understanding.heard import Understood
from weldwhy.understanding.leanings import leanings
from weldwhy.understanding.manner import guessing
from weldwhy.understanding.telling import Telling, source_of
from weldwhy.understanding.tokens import NOT
from weldwhy.understanding.work import Work, met_in

GUESSED = 0.45
"""How far a guess must be covered by what is said of a cause."""
OFF = 0.6
"""What a cause is worth that does not give the symptom told."""
SHORT = 2
"""A clause of so few telling words opens a guess, and the rest of its sentence goes on with it."""


@dataclass(frozen=True, slots=True)
class _Guess:
    weight: float
    fit: float
    cause: str
    source: tuple[int, ...]


def suspected(telling: Telling, work: Work, symptoms: set[str]) -> list[Understood]:
    """The cause suspected: one at most, for a guess is worth little."""
    guesses = [
        guess
        for clause in sorted({*telling.guessed, *guessing(telling.words, telling.asked)})
        for guess in _guesses(telling, work, symptoms, _words(telling, clause))
    ]
    best = max(guesses, key=lambda guess: guess.weight, default=None)
    if best is None:
        return []
    return [telling.made(best.source, Suspected(best.cause), (1.0 + best.fit) / 2)]


def _guesses(telling: Telling, work: Work, symptoms: set[str], numbers: list[int]) -> list[_Guess]:
    """Every cause that these words may mean."""
    leans = leanings(
        telling.rules, [telling.words[n] for n in _undenied(telling, numbers)], "cause"
    )
    said = {
        each.what: each
        for each in reversed(telling.said("cause"))
        if not each.match.denied and set(each.match.words) <= set(numbers)
    }
    found = []
    for name in sorted({*leans, *said}):
        cause = telling.rules.causes.get(name)
        if cause is None or not met_in(cause, work.process):
            continue
        lean, phrase = leans.get(name), said.get(name)
        fit = max(min(lean.covered, 1.0) if lean else 0.0, phrase.fit if phrase else 0.0)
        weight = (lean.score if lean else 0.0) + (phrase.strength if phrase else 0.0)
        if symptoms and symptoms.isdisjoint(cause.symptoms):
            weight, fit = weight * OFF, fit * OFF
        if fit >= GUESSED:
            # a leaning counts the words from the first of these
            source = source_of(phrase, None) or tuple(numbers)
            found.append(_Guess(weight, fit, name, source))
    return found


def _undenied(telling: Telling, numbers: list[int]) -> list[int]:
    """The words before one that denies: "it is not the liner" is no guess at the liner."""
    denies = (place for place, n in enumerate(numbers) if telling.words[n].stem == NOT)
    return numbers[: next(denies, len(numbers))]


def _words(telling: Telling, clause: int) -> list[int]:
    """The words of a clause and, after "he thinks,", of the rest of its sentence."""
    words = telling.words
    mine = [n for n, word in enumerate(words) if word.clause == clause]
    if len(telling.telling(mine)) > SHORT:
        return mine
    sentence = words[mine[0]].sentence
    rest = range(mine[-1] + 1, len(words))
    return [*mine, *(n for n in rest if words[n].sentence == sentence)]
