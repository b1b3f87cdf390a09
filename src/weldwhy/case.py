"""One troubleshooting from report to end: an immutable log of entries, nothing else.

Undo is "the log without its last entry". What is believed follows from the log alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, fields
from typing import Any

from weldwhy.plaintext import clean

SOUND, BETTER, NO_CHANGE, WORSE = RESULTS = ("sound", "better", "no change", "worse")
"""What a test bead after a remedy can be."""
SITUATION = (
    "process", "group", "material", "grade", "thickness", "joint", "position", "place", "job",
)  # fmt: skip
"""What may be known of the work, or of where the fault shows; empty means "don't know"."""
DONT_KNOW, SKIP = REASONS = ("don't know", "skip")

LONGEST_TEXT = 6000
"""Letters kept of a text in a person's own words."""
LONGEST_WORDS = 200
"""Letters kept of the words that one entry was taken from."""


class CaseError(ValueError):
    """A case that cannot be read; one plain line."""


@dataclass(frozen=True, slots=True)
class Said:
    """The person's own words, cleaned and cut; what was taken from them follows as entries.

    `struck` are the words of what was understood in them and then struck out by the person.
    """

    text: str
    not_understood: tuple[str, ...] = ()
    struck: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        object.__setattr__(self, "text", _kept(self.text, LONGEST_TEXT))
        for name, most in (("not_understood", LONGEST_TEXT), ("struck", LONGEST_WORDS)):
            kept = (_kept(words, most) for words in getattr(self, name))
            object.__setattr__(self, name, tuple(filter(None, kept)))


@dataclass(frozen=True, slots=True)
class _Told:
    """What was told; `words`: those it was taken from, "" if it was told outright.

    The same told in other words is the same, so they count for nothing in a comparison.
    """

    words: str = field(default="", compare=False, kw_only=True)

    def __post_init__(self) -> None:
        if self.words:
            object.__setattr__(self, "words", _kept(self.words, LONGEST_WORDS))


@dataclass(frozen=True, slots=True)
class Situated(_Told):
    """Something of the work was told, such as metal or place; "" means "don't know"."""

    field: str
    value: str


@dataclass(frozen=True, slots=True)
class Reported(_Told):
    """A symptom was reported."""

    symptom: str


@dataclass(frozen=True, slots=True)
class Resembled(_Told):
    """A picture was picked as the one most like it: the symptom itself, or one that looks alike."""

    symptom: str


@dataclass(frozen=True, slots=True)
class Hinted(_Told):
    """A symptom that somebody's words may mean; it is asked back before anything is built on it."""

    symptom: str


@dataclass(frozen=True, slots=True)
class Answered(_Told):
    """A check was answered."""

    check: str
    answer: str


@dataclass(frozen=True, slots=True)
class Supposed(_Told):
    """An answer taken from somebody's words that is not certain; the check stays open."""

    check: str
    answer: str


@dataclass(frozen=True, slots=True)
class Suspected(_Told):
    """The person's own guess at the cause."""

    cause: str


@dataclass(frozen=True, slots=True)
class Passed(_Told):
    """A check was left unanswered, or a remedy undone; reason "don't know" or "skip"."""

    check: str
    reason: str


@dataclass(frozen=True, slots=True)
class Measured(_Told):
    """A setting was told, as typed; "" withdraws it."""

    setting: str
    value: str


@dataclass(frozen=True, slots=True)
class Tried(_Told):
    """A remedy for a cause was tried; result of the test bead."""

    cause: str
    remedy: str
    result: str


Told = (
    Situated | Reported | Resembled | Hinted | Answered | Supposed | Suspected | Passed | Measured
    | Tried
)  # fmt: skip
"""What can be taken from a person's own words, or told outright."""
Entry = Said | Told
KINDS: dict[str, type[Entry]] = {
    "said": Said,
    "situated": Situated,
    "reported": Reported,
    "resembled": Resembled,
    "hinted": Hinted,
    "answered": Answered,
    "supposed": Supposed,
    "suspected": Suspected,
    "passed": Passed,
    "measured": Measured,
    "tried": Tried,
}


@dataclass(frozen=True)
class Case:
    """The log of one case, oldest entry first."""

    entries: tuple[Entry, ...] = field(default=())

    def with_(self, *entries: Entry) -> Case:
        """The case with the entries added."""
        return Case((*self.entries, *entries))

    def undo(self) -> Case:
        """The case without its last entry; an empty case stays empty."""
        return Case(self.entries[:-1])

    def told(self, name: str) -> str | None:
        """The last value told for a field; "" if passed over, None if never told."""
        for entry in reversed(self.entries):
            if isinstance(entry, Situated) and entry.field == name:
                return entry.value
            if isinstance(entry, Passed) and entry.check == name:
                return ""
        return None

    @property
    def process(self) -> str:
        """Process id, "" if not known."""
        return self.told("process") or ""

    @property
    def material(self) -> str:
        """Metal id, "" if not known."""
        return self.told("material") or ""

    @property
    def thickness(self) -> str:
        """Thickness as typed, "" if not known."""
        return self.told("thickness") or ""

    @property
    def grade(self) -> str:
        """Grade id of the base metal, "" if not known."""
        return self.told("grade") or ""

    @property
    def joint(self) -> str:
        """One of `model.JOINTS`, or "" if not known."""
        return self.told("joint") or ""

    @property
    def position(self) -> str:
        """One of `model.POSITIONS`, or "" if not known."""
        return self.told("position") or ""

    @property
    def place(self) -> str:
        """indoors, outdoors, or "" if not known."""
        return self.told("place") or ""

    @property
    def job(self) -> str:
        """What the weld is for, "" if not known."""
        return self.told("job") or ""

    @property
    def symptoms(self) -> tuple[str, ...]:
        """Symptoms reported, or picked by their picture, in order, each once."""
        kinds = (Reported, Resembled)
        return tuple(dict.fromkeys(e.symptom for e in self.entries if isinstance(e, kinds)))

    @property
    def hinted(self) -> tuple[str, ...]:
        """Symptoms to choose from, the likeliest first, while none is told and they were not all
        refused."""
        if any(isinstance(e, Reported | Resembled) for e in self.entries):
            return ()
        refused = [n for n, e in enumerate(self.entries) if e in NONE_MEANT]
        after = self.entries[refused[-1] + 1 :] if refused else self.entries
        return tuple(dict.fromkeys(e.symptom for e in after if isinstance(e, Hinted)))

    @property
    def resembled(self) -> tuple[str, ...]:
        """Those of the symptoms that were picked by their picture only: look-alikes are open."""
        sure = {e.symptom for e in self.entries if isinstance(e, Reported)}
        return tuple(symptom for symptom in self.symptoms if symptom not in sure)

    @property
    def answers(self) -> dict[str, str]:
        """The answer that now stands for each check; a later "don't know" withdraws it."""
        found: dict[str, str] = {}
        for entry in self.entries:
            if isinstance(entry, Answered):
                found[entry.check] = entry.answer
            elif isinstance(entry, Passed):
                found.pop(entry.check, None)
        return found

    @property
    def passed(self) -> tuple[str, ...]:
        """Checks left unanswered and not answered since, and remedies passed over."""
        found: dict[str, None] = {}
        for entry in self.entries:
            if isinstance(entry, Passed):
                found[entry.check] = None
            elif isinstance(entry, Answered):
                found.pop(entry.check, None)
        return tuple(found)

    @property
    def measured(self) -> dict[str, str]:
        """Settings as last typed; withdrawn ones left out."""
        found: dict[str, str] = {}
        for entry in self.entries:
            if isinstance(entry, Measured):
                found[entry.setting] = entry.value
        return {setting: value for setting, value in found.items() if value}

    @property
    def tried(self) -> tuple[Tried, ...]:
        """Remedies tried, in order."""
        return tuple(entry for entry in self.entries if isinstance(entry, Tried))

    @property
    def own_words(self) -> tuple[tuple[Said, tuple[Told, ...]], ...]:
        """What was said in the person's own words, each with what was taken from it and stands."""
        found: list[tuple[Said, tuple[Told, ...]]] = []
        for entry in self.entries:
            if isinstance(entry, Said):
                found.append((entry, ()))
            elif entry.words and found:
                said, taken = found[-1]
                found[-1] = (said, (*taken, entry))
        return tuple(found)

    @property
    def sound(self) -> bool:
        """Whether the last test bead was sound: the case is done."""
        return bool(self.tried) and self.tried[-1].result == SOUND


NONE_OF_THESE = "none-of-these"
"""The answer that a person means none of the symptoms hinted at."""
NONE_MEANT = tuple(Passed("symptom", reason) for reason in REASONS)


def entry_for(check: str, answer: str) -> Entry:
    """The entry that an answer makes; symptom, group and process are asked like checks."""
    if check == "symptom":
        return NONE_MEANT[-1] if answer == NONE_OF_THESE else Reported(answer)
    if check in SITUATION:
        return Situated(check, answer)
    return Answered(check, answer)


def to_data(case: Case) -> list[dict[str, Any]]:
    """The case as plain data, one mapping an entry; an entry told outright has no words."""
    names = {kind: name for name, kind in KINDS.items()}
    return [
        {"entry": names[type(entry)]}
        | {key: value for key, value in asdict(entry).items() if value or key != "words"}
        for entry in case.entries
    ]


def from_data(data: Any) -> Case:
    """The case written by `to_data`; CaseError in one plain line if it is not one."""
    if not isinstance(data, list):
        raise CaseError("a case must be a list of entries")
    return Case(tuple(_entry(number, item) for number, item in enumerate(data, 1)))


def _entry(number: int, item: Any) -> Entry:
    name = item.get("entry") if isinstance(item, Mapping) else None
    if not isinstance(name, str) or name not in KINDS:
        raise CaseError(f"entry {number} of the case is of no known kind")
    kind = KINDS[name]
    names = [f.name for f in fields(kind) if f.name != "words"]
    wanted = {"entry", *names}
    # cases that were kept before their words were have none
    if not wanted <= {*item} <= wanted | ({"words"} if kind is not Said else set()):
        raise CaseError(f"entry {number} of the case must have just the keys {', '.join(names)}")
    if not all(_is_text(value, key in LISTS) for key, value in item.items()):
        raise CaseError(f"entry {number} of the case must hold texts only")
    allowed = {"field": SITUATION, "reason": REASONS, "result": RESULTS}
    for key, values in allowed.items():
        if key in names and item[key] not in values:
            raise CaseError(f"entry {number} of the case: {key} must be one of {', '.join(values)}")
    return kind(**{key: value for key, value in item.items() if key != "entry"})


LISTS = ("not_understood", "struck")
"""What holds several texts."""


def _is_text(value: Any, several: bool) -> bool:
    if several:
        return isinstance(value, (list, tuple)) and all(isinstance(each, str) for each in value)
    return isinstance(value, str)


def _kept(text: str, most: int) -> str:
    """The text as one safe line of at most so many letters, cut at a word."""
    shown = clean(text[: 4 * most])  # marks that are not shown must not cost much time either
    if len(shown) <= most and len(text) <= 4 * most:
        return shown
    cut = shown[: most - len(" ..")]
    return f"{cut.rpartition(' ')[0] or cut} ..".strip()
