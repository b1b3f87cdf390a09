"""How a thing is said: as a guess, a question, or as something tried, and with what result."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from weldwhy.case import BETTER, NO_CHANGE, WORSE
from weldwhy.understanding.tokens import Token

_GUESS = re.compile(
    r"\bi(?:'?m| am)? (?:\w+ )?(?:think|thinking|reckon|guess|guessing|suspect|bet|suppose|wonder"
    r"|wondering|blame|figure)\b"
    r"|\bput (?:my )?money on\b|\b(?:gotta|got to|has to|must) be\b"
    r"|\bsuspect(?:s|ed)?\b"
    r"|\b(?:he|she|they|mate|boss|neighbour|dad|wife|son) (?:thinks?|reckons?|thought)\b"
    r"|\bi'?d (?:bet|say|guess|blame)\b"
    r"|\b(?:maybe|perhaps|probably|possibly|guessing)\b"
    r"|\b(?:could|might|must|may|can) (?:it|that|this|they|be)\b|\bcould (?:\w+ ){1,3}be\b"
    r"|\bis (?:it|that|this) (?:my|the|a|an|because|cause|cos|down|just)\b|\bmy guess\b"
    r"|\b(?:does|do) (?:it|that|i|this) (?:need|have)\b"
    r"|\b(?:says|said|told me|reckons) (?:it'?s|its|my|the)\b"
)
_SAME = (
    r"\b(?:no|any|zero) (?:real |big |much |bloody )?(?:diff|difference|change|different|better"
    r"|help|effect|odds|luck|joy|good|improvement|cure|use)\b"
    r"|\b(?:did|does|do|made|makes|has|have|was|is|would|could)(?:n'?t| not|nt) (?:\w+ )?(?:help"
    r"|change|matter|make|work|do|fix|cure|better|improve|any|different)\w*"
    r"|\b(?:did|does|done|changed|changes) (?:nothing|nowt|naff all)\b"
    r"|\bnever (?:helped|changed|made)\b|\b(?:just )?the same\b"
    r"|\bsame (?:thing|again|result|story|rubbish|problem|as before)\b"
    r"|\b(?:just )?as bad\b|\bto no avail\b|\bin vain\b|\bnothing changed\b|\bstill \w+"
)
_CURED = (
    r"\bdid(?:n'?t| not|nt) (?:(?:do (?:it|that)|happen)(?: again| since)?\b(?! any| no| a)"
    r"|come back|return)"
    r"|\bnever (?:came back|happened again|did it again)\b"
)
"""What denies in words, and tells that a thing is put right."""
_SMOOTH = (
    r"\b(?:went|goes|ran|runs|laid|lays|flowed|flows|welds|welded|feeds|fed)(?: \w+){0,2}"
    r" like (?:glass|butter|silk|a dream|a train|clockwork|new)\b"
)
_BETTER = (
    r"\b(?:better|improved|improves|helped|helps|cured|cures|sorted it|fixed it|solved it"
    r"|cleared up|went away|goes away|quieter|calmer|smoother|calmed down|settled down"
    r"|did the trick)\b"
    r"|\bno more (?:trouble|bother|problems?|\w+ing)\b"
    r"|\bno (?:trouble|bother|problem)s? (?:since|after)\b"
    r"|\b(?:works?|worked|runs?|ran|welds?|feeds?|fed|came|comes|went|goes|laid|lays|stood|burns?)"
    r"(?: \w+){0,2} (?:fine|now|again|lovely|sweet|nice|nicely|good|well|perfect|smooth|clean"
    r"|quiet|soft|straight|ok|great)\b"
    r"|\bperfect(?:ly)?\b|\b(?:gone|cured)\b|\bsound\b|\b(?:lovely|sweet|spot on|fine)\b"
    r"|\b(?:smoothed out|straightened (?:up|out)|stood up straight|came (?:good|right)"
    r"|back to normal|good as gold|stopped (?:it|doing it|happening)|hey presto)\b"
    r"|\b(?:lights|starts|strikes|fires) (?:up )?(?:first time|every time|straight away)\b"
    rf"|{_SMOOTH}"
)
_RESULT = re.compile(
    rf"(?P<cured>{_CURED})|(?P<same>{_SAME})|(?P<worse>\bworse\b|\bworsened\b)|(?P<better>{_BETTER})"
)
_RUNS_SMOOTHLY = re.compile(_SMOOTH)
_DOUBTS = frozenset(("is", "are", "could", "can", "am", "might", "isnt", "isn't"))
_ASKS = _DOUBTS | frozenset(("do", "does", "did", "should", "would"))
"""Words that open a guess, such as "could it be the liner?", and those that open a question."""
_DONE = """
tried try changed swapped replaced turned fitted put new fresh different another spare more less
up down cleaned moved went set used ran upped raised lowered cranked bumped dropped reground
switched checked tightened blew adjusted opened closed added borrowed bought took wound dialled
dialed reduced increased already scraped wiped ground
"""
_DID = frozenset(_DONE.split())
"""Words of which one stands in a clause that tells what was done."""
AS_ANSWER = {
    "better": BETTER, "sound": BETTER, "works": BETTER, "feeds-well": BETTER,
    "works-again": BETTER, "sound-there": BETTER, "same": NO_CHANGE, "worse": WORSE,
}  # fmt: skip
"""Answers that are the result of a try."""
_WHICH = {"same": NO_CHANGE, "worse": WORSE, "better": BETTER, "cured": BETTER}


@dataclass(frozen=True, slots=True)
class Result:
    """What came of something, with the place of its words in the text."""

    start: int
    end: int
    result: str
    weak: bool


def guesses(text: str, words: Sequence[Token]) -> frozenset[int]:
    """The clauses that are the person's guess, not what was seen."""
    low = text.lower().replace("\u2019", "'")
    found: set[int] = set()
    for match in _GUESS.finditer(low):
        inside = [n for n, word in enumerate(words) if word.start >= match.start()]
        if not inside:
            continue
        first = words[inside[0]]
        found.add(first.clause)
        mates = [word for word in words if word.clause == first.clause]
        if sum(not word.weak for word in mates) <= 2 and first.clause:
            # "the liner, I think": the guess is in the clause before
            before = [word for word in words if word.clause == first.clause - 1]
            if before and before[0].sentence == first.sentence:
                found.add(first.clause - 1)
    return frozenset(found)


def questions(text: str, words: Sequence[Token]) -> frozenset[int]:
    """The clauses that ask whether something is so ("is the tip bad?") or doubt it ("??")."""
    found = set()
    for number, word in enumerate(words):
        end = words[number + 1].start if number + 1 < len(words) else len(text)
        after = text[word.end : end]
        if "?" in after:
            mine = [each for each in words if each.clause == word.clause]
            if "??" in after or any(each.word in _ASKS for each in mine[:3]):
                found.add(word.clause)
    return frozenset(found)


def guessing(words: Sequence[Token], asked: Iterable[int]) -> Iterator[int]:
    """Those of the clauses that ask which ask whether some thing is the cause."""
    for clause in asked:
        mine = [word for word in words if word.clause == clause]
        if any(word.word in _DOUBTS for word in mine[:3]):
            yield clause


def results(text: str) -> tuple[Result, ...]:
    """Everything that is said to have come of something, in order."""
    found = []
    for match in _RESULT.finditer(text.lower().replace("\u2019", "'")):
        which = match.lastgroup or "same"
        weak = match[0].startswith("still")
        found.append(Result(match.start(), match.end(), _WHICH[which], weak))
    return tuple(found)


def smooth(text: str) -> tuple[tuple[int, int], ...]:
    """The parts of the text that liken good welding to something: "it went on like glass"."""
    return tuple(found.span() for found in _RUNS_SMOOTHLY.finditer(text.lower()))


def done(words: Sequence[Token], clause: int) -> bool:
    """Whether a clause tells of something that was done."""
    return any(word.word in _DID for word in words if word.clause == clause)
