"""A wall chart laid out: what stands on the page from top to bottom, and that it fits.

A `Form` (print, or letters) says how high a piece of text becomes; the page is filled by that.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Protocol, TypeVar

from weldwhy.ladder import Rung, Sign
from weldwhy.model import RuleBase
from weldwhy.wall.pieces import Piece, piece
from weldwhy.wall.words import Words
from weldwhy.wallchart import WallChart, build

WIDEST = 88
"""A number of two digits, to measure with before the numbers are known."""
DOWN = "Found: put it right, test bead. Not found, or still bad: next rung"
NEXT = "Those that a rung points at; at the end all, in this order"
BRIEF = "In short: the whole text is in the live guide and in the book"
TRIES = (-2.5, -1.5, -0.5, 0.5, 2.0, 4.0)
"""Lines that are left free while a page is filled, until it fits as it is set; less than none,
because parts that run on take less together than by themselves."""


class Form(Protocol):
    """How large pieces become: heights in one unit, of which a page has `room` below its head."""

    def height(self, each: Piece) -> float:
        """The height of a piece with the space after it, as a part of the whole it is set with."""
        ...

    def whole(self, pieces: Iterable[Piece]) -> float:
        """The height of all these pieces as they are set."""
        ...

    def room(self, looks: Iterable[Piece]) -> float:
        """What a page with this head has left for everything else."""
        ...

    @property
    def step(self) -> float:
        """The height of one line."""
        ...

    @property
    def line(self) -> float:
        """How many letters one line of the foot holds."""
        ...

    @property
    def enough(self) -> float:
        """The next form is taken if the remedy stands on the page more seldom than this."""
        ...

    @property
    def said(self) -> str:
        """The size of its letters in words, or nothing."""
        ...


F = TypeVar("F", bound=Form)


@dataclass(frozen=True)
class Page:
    """One page: its head, then pieces in order, then its foot. `number` is its place in a book."""

    title: str
    subtitle: str
    looks: tuple[Piece, ...]
    body: tuple[Piece, ...]
    foot: tuple[Piece, ...] = ()
    number: int = 0


class _Fit:
    """The sizes of the parts of a page in one form, with `spare` lines to be left free."""

    def __init__(self, rules: RuleBase, words: Words, form: Form) -> None:
        self._words = words
        self._form = form
        self._widest = {name: 10 + place for place, name in enumerate(rules.cautions)}
        self._places = dict.fromkeys(rules.causes, "WW")
        self._known: dict[object, float] = {}
        fixed = [*frame(words), *foot(words, None, form)]
        self._whole = form.room(words.looks()) - form.whole(fixed)
        self.spare = 0.0

    @property
    def room(self) -> float:
        return self._whole - self.spare * self._form.step

    def _once(self, key: object, pieces: Callable[[], Iterable[Piece]]) -> float:
        known = self._known.get(key)
        if known is None:
            known = self._known[key] = sum(self._form.height(each) for each in pieces())
        return known

    def rung(self, rung: Rung, told: Collection[str]) -> float:
        here = rung.tells(told)
        make = partial(self._words.rung, rung, WIDEST, here, self._places, self._widest)
        return self._once((rung, here), make)

    def item(self, cause: str) -> float:
        return self._once(cause, lambda: [self._words.item(cause, "W", self._widest)])

    def caution(self, caution: str) -> float:
        return self._once(("!", caution), lambda: [self._words.caution(caution, WIDEST)])

    def sign(self, sign: Sign) -> float:
        return self._once(sign, lambda: [self._words.sign(sign, self._places)])


def page(
    rules: RuleBase, symptom: str, process: str, forms: Sequence[F], number: int = 0
) -> tuple[Page, F]:
    """The page of a symptom in a process, and its form.

    That is the first of `forms` in which the page holds enough, else the last.
    """
    _, made, form = filled(rules, symptom, process, forms, number)
    return made, form


def filled(
    rules: RuleBase, symptom: str, process: str, forms: Sequence[F], number: int = 0
) -> tuple[WallChart, Page, F]:
    """What stands on the page, the page, and its form."""
    words = Words(rules, symptom, process)
    for form in forms:
        least = 0.0 if form is forms[-1] else form.enough
        chart, made = _filled(rules, words, form, number, least)
        if chart.stands >= form.enough:
            break
    return chart, made, form


def _filled(
    rules: RuleBase, words: Words, form: Form, number: int, least: float
) -> tuple[WallChart, Page]:
    """The fullest page that fits in this form; any where that covers less than `least`."""
    sizes = _Fit(rules, words, form)
    for sizes.spare in TRIES:
        chart = build(rules, words.symptom.id, words.process.id, sizes)
        made = compose(words, chart, form, number)
        fits = form.whole((*made.body, *made.foot)) <= form.room(made.looks)
        if fits or chart.stands < least:
            break
    return chart, made


def compose(words: Words, chart: WallChart, form: Form, number: int = 0) -> Page:
    """The page of a chart: cautions, ladder, list, call, foot."""
    return Page(
        words.title,
        words.subtitle,
        tuple(words.looks()),
        tuple(_body(words, chart)),
        tuple(foot(words, chart, form)),
        number,
    )


def frame(words: Words) -> list[Piece]:
    """What stands on every page, however much else there is."""
    return [
        piece("heading", "Care first", mark=BRIEF),
        *words.safety(),
        piece("heading", "The ladder", mark=DOWN),
        piece("heading", "What else it may be", mark=NEXT),
        words.call(),
    ]


def _body(words: Words, chart: WallChart) -> Iterator[Piece]:
    head, *safety, ladder, after, call = frame(words)
    numbers = {name: number for number, name in enumerate(chart.cautions, 1)}
    places = {name: letter(number) for number, name in enumerate(chart.items)}
    for number, (_, here) in enumerate(chart.told, 1):
        places |= dict.fromkeys(here, f"rung {number}")
    if safety or numbers or chart.signs:
        yield head
        yield from safety
        yield from (words.sign(sign, places) for sign in chart.signs)
        yield from (words.caution(name, number) for name, number in numbers.items())
    if chart.rungs:
        yield ladder
    for number, (rung, here) in enumerate(chart.told, 1):
        yield from words.rung(rung, number, here, places, numbers)
    if chart.items:
        yield after
    yield from (words.item(name, places[name], numbers) for name in chart.items)
    yield call


def letter(number: int) -> str:
    """A, B and so on; AA after Z.

    >>> letter(0), letter(26)
    ('A', 'AA')
    """
    return chr(ord("A") + number % 26) * (number // 26 + 1)


def foot(words: Words, chart: WallChart | None, form: Form) -> list[Piece]:
    """What the page covers, and its sources in one line; without a chart, as long as it gets."""
    if chart is None:
        told = _covers(88, 88, 888, words, form.said)
        return [piece("foot", told), piece("foot", "Sources.")]
    stands, leads = min(round(100 * chart.stands), 99), min(round(100 * chart.leads), 99)
    told = _covers(stands, leads, chart.left_out, words, form.said)
    return [piece("foot", told), piece("foot", _one_line(words.sources(chart), form.line))]


def _covers(stands: int, leads: int, left_out: int, words: Words, said: str) -> str:
    """What the page covers, as honestly as the rules know."""
    rarer = "1 rarer cause" if left_out == 1 else f"{left_out} rarer causes"
    rest = f" {rarer}: ask the live guide." if left_out else ""
    return (
        f"If one thing is wrong{words.metals}, as the rules know it: its remedy is on this page "
        f"{stands} times in 100, the rungs lead to it {leads} times.{rest}{words.assumed} {said}"
    )


def _one_line(titles: list[str], most: float) -> str:
    """As many titles as one line holds; the others by number."""
    for count in range(len(titles), -1, -1):
        rest = len(titles) - count
        named = titles[:count] + ([f"{rest} more"] if rest else [])
        line = f"Sources: {'; '.join(named)}."
        if len(line) <= most:
            return line
    return ""
