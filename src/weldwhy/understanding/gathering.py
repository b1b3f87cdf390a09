"""Everything that a text says, made to agree with itself, with the case and with the rules."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from weldwhy.case import Answered, Entry, Hinted, Measured, Reported, Situated, Tried
from weldwhy.understanding import measures, symptoms, tries
from weldwhy.understanding.answers import Answers, Held
from weldwhy.understanding.heard import SURE, Heard, Understood
from weldwhy.understanding.suspicions import suspected
from weldwhy.understanding.telling import Telling
from weldwhy.understanding.tokens import tokens
from weldwhy.understanding.topic import LONG, is_elsewhere
from weldwhy.understanding.tries import Done
from weldwhy.understanding.work import Work

FEW, PLAIN = 1, 0.45
"""A text that gave so few sure entries may be about something else. There, and where its words say
that something is in order, a symptom is asked back from this confidence on."""
TRY = "-try"
"""How the id of a check ends whose answer is what came of a try."""


def gathered(telling: Telling) -> Heard:
    """Everything understood in the order in which it enters the case, and the clauses left over."""
    work = Work(telling)
    of_the_work = list(work.entries())
    of_work = set(telling.used)
    numbers = list(_numbers(telling, work.process))
    reported = symptoms.told(telling, work)
    told = _symptoms(telling, reported)
    done = tries.done(telling, work, told, numbers)
    answers = Answers(telling, work, told, of_work)
    given = list(answers.told(_tried_answers(answers, done)))
    found = (
        *of_the_work,
        *(each for each in numbers if isinstance(each.entry, Situated)),
        *_not_fine(telling, reported, given),
        *given,
        *(each for each in numbers if isinstance(each.entry, Measured)),
        *suspected(telling, work, told),
        *_tried(telling, done, given),
    )
    denied = (match for match in telling.found if match.denied and not telling.is_inability(match))
    telling.used |= {n for match in denied for n in match.words}
    elsewhere = is_elsewhere(telling)
    if elsewhere or _is_thin(telling, found):
        kept = tuple(each for each in found if _is_plain(each, elsewhere))
        if len(kept) < len(found):
            telling.used = {n for each in kept for n in _words_of(telling, each.text)}
        found = kept
    return Heard(found, tuple(_leftovers(telling)))


def _words_of(telling: Telling, text: str) -> tuple[int, ...]:
    start = telling.text.find(text)
    return telling.between(start, start + len(text))


def _is_thin(telling: Telling, found: Sequence[Understood]) -> bool:
    """Whether a long text gave hardly anything for sure."""
    long = len(telling.telling(range(len(telling.words)))) >= LONG
    return long and sum(each.sure for each in found) <= FEW


def _is_plain(each: Understood, elsewhere: bool) -> bool:
    """Whether it can be taken from a text that is, or may be, about something else."""
    if isinstance(each.entry, Hinted):
        return each.confidence >= PLAIN and not elsewhere
    return each.sure and len(each.text.split()) > 1


def _symptoms(telling: Telling, understood: Sequence[Understood]) -> set[str]:
    """The symptoms that the rest of the text is read with: of those hinted at, the likeliest."""
    found = [each.entry for each in understood]
    told = {*telling.case.symptoms, *(e.symptom for e in found if isinstance(e, Reported))}
    return told or {e.symptom for e in found[:1] if isinstance(e, Hinted)}


def _numbers(telling: Telling, process: str) -> Iterator[Understood]:
    """The values told, as far as they are sure; the thickness only if the case has none yet."""
    for each in measures.readings(telling.rules, telling.text, process, telling.system):
        telling.used |= {
            n
            for n, word in enumerate(telling.words)
            if word.start < each.end and word.end > each.start
        }
        known = isinstance(each.entry, Situated) and telling.case.told("thickness")
        if each.sure >= SURE and not known:
            words = telling.text[each.start : each.end].strip()
            yield Understood(words, each.entry, each.sure)


def _not_fine(
    telling: Telling, reported: Sequence[Understood], given: Sequence[Understood]
) -> list[Understood]:
    """The symptoms, without doubtful ones from words that say that something is in order.

    "The clamp is tight" leans to hot clamps.
    """
    fine = {
        word
        for each in given
        if each.sure and _is_normal(telling, each.entry)
        for word in _telling(each.text)
    }
    return [
        each
        for each in reported
        if each.confidence >= PLAIN or fine.isdisjoint(_telling(each.text))
    ]


def _telling(text: str) -> set[str]:
    """The stems of the telling words of a text."""
    return {word.stem for word in tokens(text) if not word.weak}


def _is_normal(telling: Telling, entry: Entry) -> bool:
    if not isinstance(entry, Answered):
        return False
    return entry.answer == telling.rules.checks[entry.check].answers[0].id


def _tried_answers(answers: Answers, done: Sequence[Done]) -> dict[str, Held]:
    """The results of tries that are answers of checks."""
    return {
        each.entry.check: (each.sure, each.entry.answer, each.source)
        for each in done
        if isinstance(each.entry, Answered)
        and each.source
        and answers.can_be_asked(answers.rules.checks[each.entry.check])
    }


def _tried(
    telling: Telling, done: Sequence[Done], given: Sequence[Understood]
) -> Iterator[Understood]:
    """The remedies done, but for those whose result was taken as an answer of a try already."""
    answered = [
        (each.text, each.entry.check)
        for each in given
        if isinstance(each.entry, Answered) and each.entry.check.endswith(TRY)
    ]
    for each in done:
        if isinstance(each.entry, Tried) and each.source:
            made = telling.made(each.source, each.entry, each.sure)
            if not any(check in each.cause.shows and made.text in text for text, check in answered):
                yield made


def _leftovers(telling: Telling) -> Iterator[str]:
    """The clauses with a telling word of which nothing was made."""
    clauses: dict[int, list[int]] = {}
    for number, word in enumerate(telling.words):
        clauses.setdefault(word.clause, []).append(number)
    for numbers in clauses.values():
        if telling.telling(numbers) and telling.used.isdisjoint(numbers):
            start, end = telling.words[numbers[0]].start, telling.words[numbers[-1]].end
            yield telling.text[start:end]
