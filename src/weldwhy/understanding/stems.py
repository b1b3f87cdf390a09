"""Words brought to one form, so that "holes" meets "hole" and "ground" meets "grinding".

A light stemmer of our own: endings off, and the irregular forms that shop talk is full of. It need
not be right about English, only the same for a phrase and for what is typed.
"""

from __future__ import annotations

from functools import lru_cache

from weldwhy.understanding.samewords import SAME

_FORMS = """
blow blew blown
break broke broken
burn burnt
bend bent
bite bitten
choose chose
come came
cut cutting
die died dying dead
draw drew drawn
eat ate eaten
fall fell fallen
feed fed
feel felt
find found
fly flew
freeze froze frozen
get got gotten
go went gone goes
grind ground grinded
hang hung
hear heard
hold held
keep kept
lay laid lain lies lying lie
leave left
light lit
lose lost
make made
melt molten
put putting
ride rode
ring rang
rise rose risen
run ran running
see saw seen
send sent
shake shook
shine shone shiny
shoot shot
shrink shrank shrunk
shut shutting
sit sat sitting
spin spun spinning
spit spat spitting
split splitting
stand stood
stick stuck
sting stung
strike struck
sweep swept
take took taken
tear tore torn
throw threw thrown
wear worn wore
wind wound
dry dried dries
dirt dirty
rust rusty rusted
oil oily oiled
grease greasy
damp damper
wet wetted wetting
paint painty
hole holey
noise noisy
dust dusty
thick thickness
hot hotter hottest
aluminium aluminum ali alu ally alum alumin
gray grey
center centre
galvanise galvanized galvanised galv galvanize
color colour coloured colored
spatter splatter spattery splattery
meter metre
liter litre
mold mould
gauge gage guage
draft draught drafty draughty
tire tyre
vice vise
oxide oxidised oxidized oxidation oxidize oxidise
birdsnest birdnest
quick quickly
slow slowly slower
fast faster
slip slippy
low lower
high higher
long longer
short shorter
small smaller
big bigger
wide wider
thin thinner
even evenly
skinny skinnier
"""
_IRREGULAR = {
    form: line.split()[0] for line in _FORMS.strip().splitlines() for form in line.split()
}
"""Each irregular form with its word."""
_DOUBLED = ("bb", "dd", "gg", "mm", "nn", "pp", "rr", "tt")


_ALIKE: dict[str, str] = {}


@lru_cache(maxsize=16384)
def stem(word: str) -> str:
    """The form that stands for a word in lower case; words with digits stay as they are."""
    if not _ALIKE:
        _ALIKE.update({_bare(each): _bare(first) for each, first in SAME.items()})
    found = _bare(word)
    return _ALIKE.get(found, found)


def _bare(word: str) -> str:
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if len(word) < 4 or not word.isalpha():
        return word
    found = _without_ending(word)
    return _IRREGULAR.get(found, found)


def _without_ending(word: str) -> str:
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    for ending in ("ing", "ed"):
        if word.endswith(ending) and _has_vowel(word[: -len(ending)]) and len(word) > 4:
            return _root(word[: -len(ending)])
    if word.endswith(("sses", "shes", "ches", "xes", "zes")):
        return _silent(word[:-2])
    if word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return _silent(word[:-1])
    for ending in ("ly", "y"):
        if word.endswith(ending) and len(word) > 5 and _has_vowel(word[: -len(ending)]):
            return _root(word[: -len(ending)])
    return _silent(word)


def _root(part: str) -> str:
    """What is left without an ending: one letter for two at its end, "fir" as "fire"."""
    if part.endswith(_DOUBLED):
        return part[:-1] if len(part) > 3 else part
    if (
        len(part) == 3
        and part[1] in "aeiou"
        and part[0] not in "aeiou"
        and part[2] not in "aeiouwxy"
    ):
        return part + "e"
    return _silent(part)


def _silent(word: str) -> str:
    """The word without a silent e at its end; short words keep it ("site" is not "sit")."""
    return word[:-1] if word.endswith("e") and len(word) > 4 else word


def _has_vowel(part: str) -> bool:
    return len(part) > 1 and any(letter in "aeiouy" for letter in part)
