"""Which symptoms a text tells."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import log

from weldwhy.case import Hinted, Reported
from weldwhy.model import RuleBase
from weldwhy.understanding.heard import SURE, Understood
from weldwhy.understanding.judging import SymptomView, symptom_chance, symptom_confidence
from weldwhy.understanding.leanings import Leaning, leanings
from weldwhy.understanding.phrases import names_in
from weldwhy.understanding.telling import Said, Telling, source_of
from weldwhy.understanding.tokens import without
from weldwhy.understanding.work import Work

LEADING, DOUBTFUL, HINTS = 0.11, 0.05, 5
"""How sure the likeliest symptom must be to be asked back, how sure one beside it, and how many
are."""
DENIED = 0.6
"""A phrase that is denied and fits so well tells that the symptom is not there."""
FEW, HALF = 2, 0.5
"""So many words at least must lean to a symptom of which no phrase fits so well."""
LOOKED_AT = 8
"""So many symptoms are weighed, the likeliest ones."""
MOST = 3
"""So many are taken at most: each one narrows what can be wrong."""
RARE = -6.0
"""How often a symptom is met that no cause gives (log)."""
MUCH = 1.3
"""A phrase cannot be covered more than this."""

View = tuple[SymptomView, str, tuple[int, ...]]


@dataclass(frozen=True, slots=True)
class _Weighed:
    weight: float
    symptom: str
    said: Said | None
    lean: Leaning | None


def told(telling: Telling, work: Work) -> list[Understood]:
    """The symptoms told for sure, the best first; if there are none, those to be asked back."""
    known = telling.case.symptoms
    found = []
    for view, symptom, source in views(telling, work):
        if symptom in known:
            telling.used.update(source)
        else:
            found.append((symptom_confidence(symptom_chance(view)), symptom, source))
    sure = [each for each in found if each[0] >= SURE][:MOST]
    if sure or known:
        return [telling.made(source, Reported(symptom), chance) for chance, symptom, source in sure]
    found.sort(key=lambda each: -each[0])
    leading = bool(found) and found[0][0] >= LEADING
    hints = [each for each in found if leading and each[0] >= DOUBTFUL][:HINTS]
    return [telling.made(source, Hinted(symptom), chance) for chance, symptom, source in hints]


def views(telling: Telling, work: Work) -> list[View]:
    """The likeliest symptoms, the best first: what speaks for each, and its words."""
    ranked, denied = _ranked(telling, work)
    found: list[View] = []
    held: list[set[int]] = []
    for place, each in enumerate(ranked):
        source = source_of(each.said, each.lean)
        mine = telling.telling(source)
        following = ranked[1].weight if len(ranked) > 1 else 0.0
        lean, said = each.lean, each.said
        view = SymptomView(
            score=lean.score if lean else 0.0,
            covered=min(lean.covered, MUCH) if lean else 0.0,
            fit=said.fit if said else 0.0,
            exact=said.exact if said else 0.0,
            named=said.exact_in(names(telling.rules)[each.symptom]) if said else 0.0,
            whole=work.whole(said.match) * said.fit if said else 0.0,
            unsaid=lean.score if lean and not said else 0.0,
            share=each.weight / ranked[0].weight,
            lead=(each.weight - following) / each.weight if place == 0 else 0.0,
            taken=max((len(mine & other) / max(len(mine), 1) for other in held), default=0.0),
            denied=denied.get(each.symptom, 0.0),
            odd=lean.odd if lean else 0.0,
            own_metal=float(work.material in telling.rules.symptoms[each.symptom].materials),
            common=commonness(telling.rules).get(each.symptom, RARE),
        )
        held.append(mine)
        found.append((view, each.symptom, source))
    return found


def _ranked(telling: Telling, work: Work) -> tuple[list[_Weighed], dict[str, float]]:
    """The likeliest symptoms by leaning and best phrase; and how well denied phrases fit."""
    fits: dict[str, Said] = {}
    denied: dict[str, float] = {}
    absent: set[int] = set()
    for said in telling.said("symptom"):
        if said.match.denied:
            if telling.is_inability(said.match):
                continue
            denied[said.what] = max(denied.get(said.what, 0.0), said.fit)
            absent.update(said.match.words if said.fit >= DENIED else ())
        elif not telling.telling(said.match.words) <= work.numbers and telling.praise.isdisjoint(
            said.match.words
        ):
            fits.setdefault(said.what, said)
    absent.difference_update(*(said.match.words for said in fits.values()))
    leans = leanings(telling.rules, without(work.free, telling.praise | absent), "symptom")
    weighed = []
    for symptom in {*leans, *fits}:
        lean, best = leans.get(symptom), fits.get(symptom)
        if best is None and denied.get(symptom, 0.0) >= DENIED:
            continue
        weak = best is None or not (best.exact or best.fit >= HALF)
        if weak and (lean is None or lean.words < FEW):
            continue
        if _can_show(telling.rules, work, symptom):
            weight = (lean.score if lean else 0.0) + (best.strength if best else 0.0)
            weighed.append(_Weighed(weight, symptom, best, lean))
    weighed.sort(key=lambda each: (-each.weight, each.symptom))
    return weighed[:LOOKED_AT], denied


def _can_show(rules: RuleBase, work: Work, symptom: str) -> bool:
    """Whether process and metal, as far as told, can show the symptom."""
    shown = rules.symptoms.get(symptom)
    if shown is None:
        return False
    return (not work.process or work.process in shown.processes) and (
        not work.material or not shown.materials or work.material in shown.materials
    )


@lru_cache(maxsize=4)  # rules are equal only to themselves
def names(rules: RuleBase) -> dict[str, frozenset[str]]:
    """What the trade calls each symptom, in lower case."""
    return {
        name: frozenset(words.lower() for words in (*names_in(symptom.name), *symptom.also))
        for name, symptom in rules.symptoms.items()
    }


@lru_cache(maxsize=4)  # rules are equal only to themselves
def commonness(rules: RuleBase) -> dict[str, float]:
    """How often each symptom is met, by the rules' own numbers: log, the most common at 0."""
    met: dict[str, float] = {}
    for cause in rules.causes.values():
        for symptom, chance in cause.symptoms.items():
            met[symptom] = met.get(symptom, 0.0) + cause.base * chance
    most = max(met.values(), default=1.0)
    return {symptom: log(each / most) for symptom, each in met.items() if each > 0}
