"""Search as you type: everything that can be looked up, by its names, phrases and texts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from weldwhy.lookup.things import KINDS, Ref, Things, things
from weldwhy.lookup.words import FILLERS, as_typed, near_words, starting, words_of
from weldwhy.model import RuleBase

EXACT, STARTS, NAME, ALSO, SAID, TEXT = range(6)
"""How well a thing is found: by its whole name, the start of its name, a word in it, another name,
a phrase people say, or a word in its text. The lower the better."""

SLIP = 10
"""What is added where a word had to be put right, so that it comes after all that fits."""

MOST = 63
"""Things found that are worth listing."""

CALLED_BY_SENTENCE = ("check", "remedy", "caution", "source")
"""Kinds whose name is a sentence: a word in it is no more than a word in a text."""


@dataclass(frozen=True, slots=True)
class Hit:
    """A thing that was found, and how well: `EXACT` to `TEXT`, or `SLIP` more."""

    ref: Ref
    rank: int


class Index:
    """The words of every thing, each with how well it finds the thing."""

    def __init__(self, known: Things) -> None:
        self._known = known
        self._refs = list(known.all)
        self._names = [known.name(ref).lower() for ref in self._refs]
        kinds = list(KINDS)
        self._order = [
            (kinds.index(ref.kind), len(name.partition(" (")[0]))
            for ref, name in zip(self._refs, self._names, strict=True)
        ]
        """Of things found equally well the earlier kind comes first, then the shorter name."""
        self._whole: dict[str, dict[int, int]] = {}
        self._found: dict[str, dict[int, int]] = {}
        for number, ref in enumerate(self._refs):
            self._take(number, ref)
        self._vocabulary = sorted(self._found)

    def _take(self, number: int, ref: Ref) -> None:
        name, item = self._names[number], self._known.all[ref]
        others = [*self._known.also(ref), ref.id.replace("_", " ")]
        said = list(self._known.said(ref))
        if ref.kind in CALLED_BY_SENTENCE:
            self._add(number, TEXT, [name])
        else:
            self._add(number, NAME, [name, name.replace("-", "")] if "-" in name else [name])
            others += [name, name.partition(" (")[0], name.partition(":")[0]]
        for rank, texts in ((EXACT, others), (STARTS, said)):
            for text in texts:
                self._whole.setdefault(as_typed(text), {}).setdefault(number, rank)
        self._add(number, ALSO, others)
        self._add(number, SAID, said)
        self._add(number, TEXT, texts_of(ref, item))

    def _add(self, number: int, rank: int, texts: Iterable[str]) -> None:
        found = self._found
        for word in words_of(" ".join(texts)):
            held = found.get(word)
            if held is None:
                found[word] = {number: rank}
            elif number not in held:  # else it was found better already
                held[number] = rank

    def whole(self, text: str) -> list[Ref]:
        """The things whose name, other name or id is just this text; else those whose phrase is."""
        found = self._whole.get(as_typed(text), {})
        best = min(found.values(), default=EXACT)
        return [self._refs[number] for number in sorted(found) if found[number] == best]

    def continues(self, text: str) -> bool:
        """Whether what is typed so far is the beginning of the words of some name."""
        words = words_of(text)
        return bool(words) and any(rank <= ALSO for rank in self._all(words).values())

    def search(self, text: str, kind: str = "") -> list[Hit]:
        """What is found by a text that may be half typed, best first; of one kind if it is told."""
        typed = words_of(text)
        words = [w for w in typed[:-1] if w not in FILLERS] + typed[-1:]
        if not words:
            return []
        ranks = self._all(words) or self._all(words, slips=True) or self._most(words)
        whole = self._whole.get(as_typed(text), {})
        start = text.lower().strip()
        longest = len(start) + 1  # a name that is no longer than this was misspelt as a whole
        hits = []
        for number, rank in ranks.items():
            ref = self._refs[number]
            if kind in ("", ref.kind):
                if number in whole:
                    rank = whole[number]
                elif rank <= NAME and self._names[number].startswith(start):
                    rank = STARTS
                elif rank == SLIP + NAME and self._order[number][1] <= longest:
                    rank = SLIP + STARTS
                hits.append((rank, self._order[number], number))
        return [Hit(self._refs[number], rank) for rank, _, number in sorted(hits)[:MOST]]

    def _all(self, words: list[str], slips: bool = False) -> dict[int, int]:
        """What has every word, with the rank of its worst one."""
        found: dict[int, int] | None = None
        for word in words:
            held = self._one(word, slips)
            if found is None:
                found = held
            else:
                found = {n: max(rank, held[n]) for n, rank in found.items() if n in held}
        return found or {}

    def _one(self, word: str, slips: bool) -> dict[int, int]:
        """What has a word that begins like this one; with `slips`, or nearly so."""
        found = self._union(starting(self._vocabulary, word))
        if slips and not found:
            near = self._union(near_words(self._vocabulary, word))
            return {number: rank + SLIP for number, rank in near.items()}
        return found

    def _union(self, words: Iterable[str]) -> dict[int, int]:
        found: dict[int, int] = {}
        for word in words:
            for number, rank in self._found[word].items():
                if found.get(number, SLIP) > rank:
                    found[number] = rank
        return found

    def _most(self, words: list[str]) -> dict[int, int]:
        """What has the most of the words, and at least half of them."""
        counted: dict[int, int] = {}
        worst: dict[int, int] = {}
        for word in words:
            for number, rank in self._one(word, slips=True).items():
                counted[number] = counted.get(number, 0) + 1
                worst[number] = max(worst.get(number, 0), rank)
        most = max(counted.values(), default=0)
        if 2 * most < len(words):
            return {}
        return {n: worst[n] + SLIP for n, count in counted.items() if count == most}

    def nearest(self, text: str, most: int = 3) -> list[str]:
        """Words of names that are spelt most like this text, for a complaint."""
        import difflib  # only needed when something is wrong, and slow to import

        naming = [word for word, held in self._found.items() if min(held.values()) <= ALSO]
        found: dict[str, None] = {}
        for word in words_of(text[:80]):
            found.update(dict.fromkeys(difflib.get_close_matches(word, naming, most, 0.7)))
        return list(found)[:most]


def texts_of(ref: Ref, item: Any) -> Iterator[str]:
    """The texts of a thing beyond its names."""
    if ref.kind == "remedy":
        return
    for field in TEXTS.get(ref.kind, ()):
        yield str(getattr(item, field))
    if ref.kind == "check":
        yield from (answer.text for answer in item.answers)


TEXTS: Mapping[str, tuple[str, ...]] = {
    "symptom": ("looks", "confused_with", "limits", "iso_6520_1"),
    "cause": ("what", "prevent"),
    "check": ("settles",),
    "term": ("means",),
    "calculator": ("about", "topic"),
    "setting": ("too_little", "too_much"),
    "window": ("note", "transfer", "consumable"),
    "process": ("polarity",),
    "grade": ("note",),
    "gas": ("group",),
    "filler": ("use", "kind"),
    "setup": ("note",),
}
"""The fields of a thing that are searched beside its names."""


@lru_cache(maxsize=4)  # rules are equal only to themselves
def index(rules: RuleBase) -> Index:
    """The index of these rules."""
    return Index(things(rules))
