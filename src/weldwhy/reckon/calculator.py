"""What a calculator is: its inputs, what it gives, and the formulas it rests on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from inspect import getdoc
from math import isfinite

from weldwhy.arithmetic.bounds import Impossible
from weldwhy.model import RuleBase
from weldwhy.plaintext import clean
from weldwhy.problems import did_you_mean
from weldwhy.units import (
    Quantity,
    UnitError,
    parse,
    parse_number,
    show,
    show_worked,
    system_of,
    to_digits,
)

Choices = Callable[[RuleBase], Mapping[str, str]]
"""Id and name of each choice, taken from the rules."""


class ReckonError(ValueError):
    """A calculator cannot be worked with what was given; str() is one plain line."""


@dataclass(frozen=True, slots=True)
class Input:
    """One number or word a calculator asks for.

    `kind` is a kind of quantity, "number" (no unit), "text", or "choice" with `choices`.
    `example` is a choice by its id; an `optional` input may be left out. Texts are read by the
    calculator itself.
    """

    id: str
    name: str
    kind: str
    example: str
    optional: bool = False
    choices: Choices | None = None

    def example_in(self, system: str | None) -> str:
        """The example, a quantity in the units of the system."""
        if system is None or self.kind in ("number", "text", "choice"):
            return self.example
        return show(parse(self.example, self.kind), system)


@dataclass(frozen=True, slots=True)
class Output:
    """One result: its name, and its value as a quantity, a number without a unit, or in words."""

    id: str
    name: str
    value: Quantity | float | str


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a calculator gives: results, what must be said with them, cautions shown before."""

    outputs: tuple[Output, ...]
    remarks: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


class Given:
    """The inputs as read: numbers in the base unit of their kind, choices by id.

    `system` is the unit system wanted for the results, if one is.
    """

    def __init__(
        self, values: Mapping[str, Quantity | float | str], system: str | None = None
    ) -> None:
        self._values = dict(values)
        self._system = system

    def __contains__(self, name: str) -> bool:
        return name in self._values

    def number(self, name: str) -> float:
        """A number, or a quantity in its base unit."""
        value = self._values[name]
        if isinstance(value, Quantity):
            return value.value
        assert isinstance(value, float), name
        return value

    def quantity(self, name: str) -> Quantity:
        """A quantity, with the unit it was given in."""
        value = self._values[name]
        assert isinstance(value, Quantity), name
        return value

    def word(self, name: str) -> str:
        """A text or the id of a choice; "" if it was left out."""
        return str(self._values.get(name, ""))

    @property
    def system(self) -> str | None:
        """The unit system wanted, else the one most of the inputs came in, if any did."""
        if self._system is not None:
            return self._system
        systems = (system_of(each) for each in self._values.values() if isinstance(each, Quantity))
        found = Counter(system for system in systems if system)
        return found.most_common(1)[0][0] if found else None

    def preferring(self, names: Iterable[str]) -> Given:
        """The same inputs, with results wanted in the system of these ones, if they have one."""
        some = {name: self._values[name] for name in names}
        return Given(self._values, Given(some, self._system).system)


@dataclass(frozen=True, slots=True)
class Formula:
    """What a formula's docstring says: the formula, where it holds, and where it is from."""

    says: tuple[str, ...]
    holds: str
    source: str


@dataclass(frozen=True, slots=True)
class Calculator:
    """One thing that can be worked out, from nine inputs at most, each with its digit.

    `formulas` are the functions whose docstrings are shown.
    """

    id: str
    name: str
    topic: str
    about: str
    inputs: tuple[Input, ...]
    work: Callable[[RuleBase, Given], Outcome]
    formulas: tuple[Callable[..., object], ...] = field(default=())

    @property
    def manual(self) -> tuple[Formula, ...]:
        """What the formulas' docstrings say, one after the other."""
        return tuple(_formula(getdoc(each) or "") for each in self.formulas)


HOLDS, SOURCE = "Holds for:", "Source:"


def _formula(text: str) -> Formula:
    parts = [" ".join(part.split()) for part in text.split("\n\n")]

    def after(opening: str) -> str:
        found = (part.removeprefix(opening) for part in parts if part.startswith(opening))
        return " ".join(found).strip()

    says = tuple(part for part in parts if part and not part.startswith((HOLDS, SOURCE)))
    return Formula(says, after(HOLDS), after(SOURCE))


def reckon(
    rules: RuleBase, calculator: Calculator, texts: Mapping[str, str], system: str | None = None
) -> Outcome:
    """The outcome for inputs as typed; ReckonError in one plain line if it cannot be worked."""
    return work(rules, calculator, given(rules, calculator, texts, system))


def given(
    rules: RuleBase, calculator: Calculator, texts: Mapping[str, str], system: str | None = None
) -> Given:
    """The inputs as typed, read; ReckonError for the first that is missing, unknown or no good."""
    wanted = {each.id: each for each in calculator.inputs}
    for name in texts:
        if name not in wanted:
            fault = f'{calculator.id} has no input "{clean(name[:40])}"'
            raise ReckonError(fault + did_you_mean(name, wanted))
    found: dict[str, Quantity | float | str] = {}
    for each in calculator.inputs:
        text = " ".join(texts.get(each.id, "").split())
        if text:
            found[each.id] = read(rules, each, text, system)
        elif not each.optional:
            example = f'{each.id}="{each.example_in(system)}"'
            raise ReckonError(f"{each.name} is missing; write it like {example}")
    return Given(found, system)


def examples(
    rules: RuleBase, calculator: Calculator, system: str | None = None
) -> Mapping[str, str]:
    """The examples of what is needed, and of optional inputs only as far as a result needs them."""
    needed = (each for each in calculator.inputs if not each.optional)
    found = {each.id: each.example_in(system) for each in needed}
    for each in calculator.inputs:
        if each.optional and each.example:
            try:
                reckon(rules, calculator, found, system)
                break
            except ReckonError:
                found[each.id] = each.example_in(system)
    return found


def work(rules: RuleBase, calculator: Calculator, inputs: Given) -> Outcome:
    """The outcome for inputs that were read; ReckonError if they are out of the question."""
    try:
        outcome = calculator.work(rules, inputs)
    except Impossible as fault:
        raise ReckonError(str(fault)) from None
    except KeyError as fault:  # own rules may replace a table by one with fewer rows
        raise ReckonError(f"the rules have no figure for {clean(str(fault.args[0]))}") from None
    for each in outcome.outputs:
        number = each.value.value if isinstance(each.value, Quantity) else each.value
        if isinstance(number, float) and not isfinite(number):
            raise ReckonError(f"{each.name}: these numbers give no finite result")
    return outcome


def read(rules: RuleBase, wanted: Input, text: str, system: str | None) -> Quantity | float | str:
    """One input as typed, read by its kind; ReckonError in one plain line."""
    try:
        if wanted.kind == "number":
            return parse_number(text)
        if wanted.kind == "text":
            return text
        if wanted.kind == "choice":
            return _choice(wanted, wanted.choices(rules) if wanted.choices else {}, text)
        return parse(text, wanted.kind, system)
    except UnitError as fault:
        raise ReckonError(f"{wanted.name}: {fault}") from None


def _choice(wanted: Input, choices: Mapping[str, str], text: str) -> str:
    known = {name.lower(): each for each, name in choices.items()} | {c.lower(): c for c in choices}
    if text.lower() in known:
        return known[text.lower()]
    hint = did_you_mean(text, [*choices, *choices.values()]) or did_you_mean("", choices)
    raise ReckonError(f'{wanted.name}: unknown "{clean(text[:40])}"{hint}')


def by_id(calculators: Sequence[Calculator], name: str) -> Calculator:
    """The calculator of this id; ReckonError with the nearest one if there is none."""
    found = {each.id: each for each in calculators}
    if name in found:
        return found[name]
    raise ReckonError(f'unknown calculator "{clean(name[:40])}"' + did_you_mean(name, found))


def shown(output: Output, system: str | None = None) -> str:
    """The value of a result as text, numbers to three digits."""
    value = output.value
    if isinstance(value, Quantity):
        return show_worked(value, system)
    return value if isinstance(value, str) else to_digits(value)
