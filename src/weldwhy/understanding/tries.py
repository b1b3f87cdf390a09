"""What was tried already, and what came of it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from weldwhy.case import BETTER, NO_CHANGE, WORSE, Answered, Measured, Tried
from weldwhy.model import Cause, RuleBase
from weldwhy.understanding import manner, turning
from weldwhy.understanding.heard import Understood
from weldwhy.understanding.matching import NEAR, Match
from weldwhy.understanding.telling import Said, Telling
from weldwhy.understanding.tokens import NOT, Token
from weldwhy.understanding.work import Work, met_in

LEAST = 0.6
"""Fits below this are no remedy done."""
REACH = 90
"""How many letters after what was done its result may stand."""
OFF = 0.6
"""What a remedy is worth of a cause that does not give the symptom told."""
TURNED = 0.8
"""How sure it is that a dial was turned, where that is told with what came of it."""
_AS_ANSWER = {BETTER: "better", NO_CHANGE: "same", WORSE: "worse"}
_VALUE = re.compile(r"[0-9.]+")


@dataclass(frozen=True, slots=True)
class Done:
    """Something done, in these words; an answer where the rules hold a check for the same try."""

    source: tuple[int, ...]
    entry: Tried | Answered
    cause: Cause
    sure: float


def done(
    telling: Telling, work: Work, symptoms: set[str], numbers: Sequence[Understood]
) -> list[Done]:
    """Dials turned and remedies done, each cause once; those without a result are left out."""
    found: dict[str, Done] = {}
    for each in (*_turned(telling, work, numbers), *_remedies(telling, work, symptoms)):
        found.setdefault(each.cause.id, each)
    return list(found.values())


def _turned(telling: Telling, work: Work, numbers: Sequence[Understood]) -> Iterator[Done]:
    measured = {
        each.entry.setting: float(value[0])
        for each in numbers
        if isinstance(each.entry, Measured) and (value := _VALUE.match(each.entry.value))
    }
    turns = turning.turns(telling.rules, work.process, telling.text, telling.results, measured)
    for turn in turns:
        remedy = turn.cause.remedies[0].id
        source = telling.between(turn.start, turn.end)
        if not source or _denied(telling.words, source[0]):
            continue
        yield _entry(telling.rules, source, turn.cause, remedy, turn.result, TURNED)


def _denied(words: Sequence[Token], place: int) -> bool:
    """Whether a word that denies stands right before: "did not turn up the gas"."""
    before = (word for word in words[:place] if word.clause == words[place].clause)
    return any(word.stem == NOT and words[place].at - word.at <= NEAR for word in before)


def _remedies(telling: Telling, work: Work, symptoms: set[str]) -> Iterator[Done]:
    acts = _acts(telling, work, symptoms)
    for place, (said, cause) in enumerate(acts):
        following = acts[place + 1][0].match if place + 1 < len(acts) else None
        result = _result(telling, said.match, following)
        if result is not None:
            remedy = said.what.partition(" ")[2]
            yield _entry(telling.rules, said.match.words, cause, remedy, result, said.fit)


def _entry(
    rules: RuleBase, source: tuple[int, ...], cause: Cause, remedy: str, result: str, sure: float
) -> Done:
    check = turning.check_of(rules, cause)
    answer = _AS_ANSWER[result]
    if check is not None and answer in [each.id for each in check.answers]:
        return Done(source, Answered(check.id, answer), cause, sure)
    return Done(source, Tried(cause.id, remedy, result), cause, sure)


def _acts(telling: Telling, work: Work, symptoms: set[str]) -> list[tuple[Said, Cause]]:
    """What was done, in the order of the text; of several for the same words the likeliest."""
    ranked = []
    for each in telling.said("remedy"):
        cause = telling.rules.causes.get(each.what.partition(" ")[0])
        if cause is None or not _is_done(telling, work, each):
            continue
        if not met_in(cause, work.process):
            continue
        off = bool(symptoms) and symptoms.isdisjoint(cause.symptoms)
        ranked.append((each.strength * (OFF if off else 1.0), each, cause))
    ranked.sort(key=lambda found: (-found[0], found[1].match.first, found[1].what))
    kept: list[tuple[Said, Cause]] = []
    taken: set[int] = set()
    for _, each, cause in ranked:
        strong = telling.telling(each.match.words)
        if taken.isdisjoint(strong) and cause.id not in [other.id for _, other in kept]:
            taken |= strong
            kept.append((each, cause))
    return sorted(kept, key=lambda pair: pair[0].match.first)


def _is_done(telling: Telling, work: Work, said: Said) -> bool:
    """Whether a phrase tells of a remedy that was done."""
    match = said.match
    return (
        not match.denied
        and said.fit >= LEAST
        and match.phrase.strong > 1
        and not telling.telling(match.words) <= work.numbers
        and manner.done(telling.words, telling.words[match.first].clause)
    )


def _result(telling: Telling, match: Match, following: Match | None) -> str | None:
    """The first result after what was done: in its sentence or the next, before another act."""
    words, text = telling.words, telling.text
    start, end = words[match.first].start, words[match.last].end
    stops = words[following.first].start if following is not None else end + REACH
    sentence_end = next(
        (word.start for word in words if word.sentence > words[match.last].sentence), len(text)
    )
    near = [
        each
        for each in telling.results
        if each.end > start
        and each.start <= end + REACH
        and (each.start < sentence_end or each.start < stops)
    ]
    firm = [each for each in near if not each.weak]
    found = firm or near
    return found[0].result if found else None
