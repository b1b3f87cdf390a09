"""Quantities as a welder writes them: "1/8 in", "18 ga", "250 ipm", "25 cfh", "18.5 V".

A `Quantity` holds its value in the base unit of its kind and remembers the unit the person used,
so numbers are shown back the way they came. Bad text raises `UnitError`, whose one line says how
to mend it; nothing else is ever raised.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from weldwhy.unitwords import (
    BASE,
    EXAMPLES,
    GAUGE,
    HOME,
    INCHES,
    LEAST_AWG,
    MOST_AWG,
    SPELLINGS,
    WIRE_NAMES,
    WORTH,
    awg_number,
    awg_section,
)

_NUMBER = r"[0-9]{1,9}(?:[.,][0-9]{1,6})?|[.,][0-9]{1,6}"
_FRACTION = r"(?:(?P<whole>[0-9]{1,2})[ -])?(?P<top>[0-9]{1,3})/(?P<bottom>[0-9]{1,3})"
_AMOUNT = re.compile(
    rf"(?P<sign>-?)(?:{_FRACTION}|(?P<number>{_NUMBER})) ?(?P<unit>[^0-9].{{0,20}})?"
)
_AWG = re.compile(r"(#? ?)(?:([1-4])(/0)|(0{1,4})|([1-9][0-9]?))( ?(?:awg|ga))?")

# Kinds that no dial is set in: typed ones come back whole, others have so many digits.
_WORKED_OUT = frozenset((
    "speed", "distance", "section", "area", "pressure", "volume", "mass", "heat", "rate", "angle",
    "power",
))  # fmt: skip
_DIGITS = 3

# below so many inches, a rule is read to one part in so many
_FINENESS = ((0.125, 64), (0.25, 32), (1.0, 16))


class UnitError(ValueError):
    """Text that is no quantity of the kind wanted; str() is one plain line saying how to mend."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """An amount: `value` in the base unit of `kind`, `unit` the one the person used."""

    kind: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Target:
    """A range with the best place to start; low <= best <= high, all of one kind."""

    low: Quantity
    best: Quantity
    high: Quantity


def parse(text: str, kind: str, system: str | None = None) -> Quantity:
    """Read one quantity. `system` ("in" or "mm") says what a bare number means, where it matters.

    Without `system` a bare length, feed or flow is taken only when it can mean one thing.
    """
    if kind not in BASE:
        raise UnitError(f"there is no kind of quantity called {_quoted(kind)}")
    if kind == "section" and (number := _awg(text, system)) is not None:
        return Quantity(kind, awg_section(number), "AWG")
    found = _AMOUNT.fullmatch(" ".join(text.split()))
    if found is None:
        raise UnitError(f"cannot read {_quoted(text)}; write it like {EXAMPLES[kind]}")
    amount = _amount(found, text, kind)
    if found["sign"]:
        if kind != "temperature":
            raise UnitError(f"{_quoted(text)} is below zero; write it like {EXAMPLES[kind]}")
        amount = -amount
    unit = _unit(found["unit"], amount, found["top"] is not None, kind, system, text)
    return Quantity(kind, _to_base(amount, unit, kind, text), unit)


def parse_number(text: str) -> float:
    """Read a plain number without a unit, such as "0.18" or "0,18"; a fraction will do."""
    found = _AMOUNT.fullmatch(" ".join(text.split()))
    if found is None or found["unit"] or found["sign"]:
        raise UnitError(f"cannot read {_quoted(text)}; write a plain number, such as 0.18")
    return _amount(found, text, "percent")


def _awg(text: str, system: str | None) -> int | None:
    """The number in "#2", "2/0" or "2 AWG", those above 1 AWG being 0 and below; else None."""
    found = _AWG.fullmatch(" ".join(text.lower().split()))
    if found is None:
        return None
    sign, ought, slash, noughts, number, unit = found.groups()
    if not (sign or slash or unit or system == "in"):
        return None  # a bare number may be mm2
    wire = int(number) if number else 1 - int(ought or len(noughts))
    return wire if wire <= MOST_AWG else None


def _amount(found: re.Match[str], text: str, kind: str) -> float:
    """The number itself: a fraction, a mixed number or a decimal."""
    if found["top"]:
        if int(found["bottom"]) == 0:
            raise UnitError(f"{_quoted(text)} divides by zero; write it like {EXAMPLES[kind]}")
        return int(found["whole"] or 0) + int(found["top"]) / int(found["bottom"])
    number: str = found["number"]
    whole, comma, rest = number.partition(",")
    if comma and len(rest) > 2 and whole not in ("", "0"):
        # "1,500" is fifteen hundred to one reader and one and a half to another
        raise UnitError(f"{_quoted(text)} has a comma that can mean two things; leave it out")
    return float(number.replace(",", "."))


def _unit(
    word: str | None, amount: float, fraction: bool, kind: str, system: str | None, text: str
) -> str:
    """The unit meant; a missing one is filled in only where there is no doubt."""
    if word is not None:
        unit = SPELLINGS[kind].get(word.strip().lower())
        if unit is None:
            raise UnitError(f"cannot read {_quoted(text)}; write it like {EXAMPLES[kind]}")
        return unit
    if kind == "length" and (fraction or 0 < amount < 0.5):
        return "in"  # no metal or wire on a small bench is half a millimetre or less
    if system in HOME and kind in HOME[system]:
        return HOME[system][kind]
    if kind == "feed" and not 25 < amount < 40:
        return "ipm" if amount >= 40 else "m/min"  # hand-held wire feed ends near 25 m/min
    if kind in HOME["in"]:
        raise UnitError(f"{_quoted(text)} needs its unit; write it like {EXAMPLES[kind]}")
    return BASE[kind]


def _to_base(amount: float, unit: str, kind: str, text: str) -> float:
    """The amount in the base unit of its kind."""
    if unit == "F":
        return (amount - 32.0) / 1.8
    if unit == "ga":
        if amount not in GAUGE:
            raise UnitError(f"{_quoted(text)} is no sheet gauge; they run from 3 ga to 30 ga")
        amount = GAUGE[int(amount)]
    if unit == "AWG":
        raise UnitError(f"{_quoted(text)} is no wire gauge; they run from 40 AWG to 4/0 AWG")
    return amount * WORTH[kind][unit]


def _quoted(text: str) -> str:
    """The text as it may safely stand in a message: one short printable ASCII line."""
    safe = "".join(c if " " <= c <= "~" else "?" for c in text[:41])
    return f'"{safe[:40]}..."' if len(text) > 40 else f'"{safe}"'


def convert(q: Quantity, unit: str) -> float:
    """The value of `q` in another unit of its kind, not rounded; for "ga" and "AWG" see INCHES."""
    if unit == "F":
        return q.value * 1.8 + 32.0
    return q.value / WORTH[q.kind][unit]


def _shown_unit(q: Quantity, system: str | None) -> str:
    """The unit to show in: the person's own, unless the other system is asked for."""
    if system not in HOME or q.kind not in HOME[system]:
        return q.unit
    if q.unit == "ga" and system == "in":
        return "ga"
    if q.kind == "section" and not LEAST_AWG - 0.5 < awg_number(q.value) < MOST_AWG + 0.5:
        return BASE[q.kind]
    return HOME[system][q.kind]


def show(q: Quantity, system: str | None = None) -> str:
    """The quantity as text. In its own unit a typed number comes back whole; a converted one is
    rounded as a welder would round it."""
    unit = _shown_unit(q, system)
    return f"{_digits(q, unit)} {unit}"


def result_unit(q: Quantity, system: str | None = None) -> str:
    """The unit of a result that is to be a plain number: no gauge."""
    unit = _shown_unit(q, system)
    return {"ga": "in", "AWG": "mm2"}.get(unit, unit)


def show_worked(q: Quantity, system: str | None = None) -> str:
    """A result as text: to three digits, a wire gauge never thinner, inches as a fraction only if
    they are one."""
    if _shown_unit(q, system) == "AWG":
        number = math.floor(awg_number(q.value) + 1e-6)
        if number >= LEAST_AWG:
            return f"{_awg_name(number)} AWG"
    unit = result_unit(q, system)
    value = convert(q, unit)
    if unit == "in" and value >= 1 / 16 and _is_64ths(value):
        return f"{_inches(value, True)} in"
    return f"{to_digits(value)} {unit}"


def system_of(q: Quantity) -> str | None:
    """The system, "in" or "mm", of the unit it was given in; None for a unit of both."""
    if q.kind not in HOME["mm"]:
        return None
    return "in" if q.unit in INCHES else "mm"


def _digits(q: Quantity, unit: str) -> str:
    """The number alone, in `unit`."""
    if unit == "ga":
        return str(gauge_number(q))
    if unit == "AWG":
        return _awg_name(round(awg_number(q.value)))
    value = convert(q, unit)
    own = unit == q.unit
    if q.kind in _WORKED_OUT:
        # nobody moves a gun to within a hundredth
        return _plain(value, 6) if own else to_digits(value, 2 if q.kind == "speed" else _DIGITS)
    if unit == "in":
        return _inches(value, own)
    if not own:
        value = _millimetres(value) if unit == "mm" else _to_step(value, _step(unit, value))
    return _plain(value, 2 if unit == "mm" else 1)


def _awg_name(number: int) -> str:
    return f"{1 - number}/0" if number < 1 else str(number)


def to_digits(value: float, digits: int = _DIGITS) -> str:
    """A worked-out number as text, to so many digits."""
    # halves go up, also those that binary fractions put a hair too low
    return _plain(float(f"{value * (1 + 1e-12):.{digits}g}"), 6)


def _plain(value: float, places: int) -> str:
    """A decimal without needless noughts; never "-0"."""
    text = f"{value:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def _inches(value: float, own: bool) -> str:
    """Inches: fractions from about 1/16 up, and own ones below; else thousandths."""
    if value >= 100:
        return _plain(value, 4 if own else 0)
    if own:
        if value > 0 and _is_64ths(value):
            return _fraction(value, 64)
        # wire is named in thousandths: 0.030, not 0.03
        return max(f"{value:.3f}", _plain(value, 4), key=len)
    if value >= 0.0575:
        return _fraction(value, next((parts for top, parts in _FINENESS if value < top), 8))
    named = [inch for mm, inch in WIRE_NAMES if abs(value * 25.4 - mm) < 0.005]
    return f"{named[0] if named else value:.3f}"


def _is_64ths(value: float) -> bool:
    return abs(value * 64 - round(value * 64)) < 1e-6


def _fraction(value: float, bottom: int) -> str:
    """Nearest fraction with this denominator, in lowest terms: "3/8", "1 1/2", "2"."""
    top = round(value * bottom)
    while bottom > 1 and top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    whole, rest = divmod(top, bottom)
    parts = [str(whole)] if whole or not rest else []
    return " ".join([*parts, f"{rest}/{bottom}"] if rest else parts)


def _millimetres(value: float) -> float:
    """Millimetres rounded as metal and wire are sold."""
    named = [mm for mm, inch in WIRE_NAMES if abs(value / 25.4 - inch) < 0.0002]
    return named[0] if named else _to_step(value, _step("mm", value))


def _step(unit: str, value: float) -> float:
    """The step a welder sets or reads in."""
    if unit == "A":
        return 1.0 if value < 30 else 5.0
    if unit == "mm":
        return 0.1 if value < 10 else 1.0
    return {"V": 0.5, "ipm": 5.0, "m/min": 0.1, "L/min": 0.5, "C": 5.0, "F": 5.0}.get(unit, 1.0)


def _to_step(value: float, step: float) -> float:
    # halves go up, also those that binary fractions put a hair too low
    return math.floor(value / step + 0.5 + 1e-9) * step


def rounded(q: Quantity) -> Quantity:
    """`q` at the nearest step of its own unit; what no dial is set in is left alone."""
    if q.kind == "length" or q.kind in _WORKED_OUT:
        return q
    value = convert(q, q.unit)
    unit_value = _to_step(value, _step(q.unit, value))
    return Quantity(q.kind, _to_base(unit_value, q.unit, q.kind, ""), q.unit)


def two_digits(q: Quantity) -> Quantity:
    """`q` to two digits of its own unit: all that a number worked out of a bead is worth."""
    value = float(f"{convert(q, q.unit):.2g}")
    return Quantity(q.kind, _to_base(value, q.unit, q.kind, ""), q.unit)


def gauge_number(q: Quantity) -> int:
    """The steel sheet gauge nearest to a length."""
    return min(GAUGE, key=lambda number: abs(GAUGE[number] * 25.4 - q.value))


def parse_range(text: str, kind: str) -> tuple[Quantity, Quantity]:
    """Read "5 V to 60 V" or "20-30 cfh", lowest first; an end without a unit takes the other's."""
    parts = [part.strip() for part in text.replace(" to ", "-").split("-")]
    if kind not in BASE or len(parts) != 2 or not all(parts):
        raise UnitError(f'cannot read {_quoted(text)} as a range; write it like "20-30 cfh"')
    unit = _trailing_unit(parts[1], kind)
    low, high = (parse(part if _trailing_unit(part, kind) else part + unit, kind) for part in parts)
    if low.value > high.value:
        raise UnitError(f"{_quoted(text)} is out of order; write the lower number first")
    return low, high


def _trailing_unit(text: str, kind: str) -> str:
    """The unit at the end of a text, with a blank before it; "" when it ends in a digit."""
    unit = text.rstrip().lstrip("0123456789./, ").strip()
    return f" {unit}" if unit.lower() in SPELLINGS[kind] else ""


def parse_target(text: str, kind: str) -> Target:
    """Read "18.5 V (17.5-19.5)"; "20-30 cfh" alone has its best place in the middle."""
    best_text, bracket, rest = text.partition("(")
    if not bracket:
        low, high = parse_range(text, kind)
        return Target(low, Quantity(kind, (low.value + high.value) / 2, high.unit), high)
    range_text, closing, after = rest.partition(")")
    if not closing or after.strip():
        raise UnitError(f'cannot read {_quoted(text)}; write it like "18.5 V (17.5-19.5)"')
    best = parse(best_text, kind)
    if not _trailing_unit(range_text.replace(" to ", "-").rpartition("-")[2], kind):
        range_text = f"{range_text} {best.unit}"
    low, high = parse_range(range_text, kind)
    if not low.value <= best.value <= high.value:
        raise UnitError(f"{_quoted(text)}: the best place lies outside its own range")
    return Target(low, best, high)


def show_target(t: Target, system: str | None = None) -> str:
    """The target as text, its unit said once: "18.5 V (17.5-19.5)"."""
    unit = _shown_unit(t.best, system)
    ends = (Quantity(q.kind, q.value, t.best.unit) for q in (t.low, t.best, t.high))
    low, best, high = (_digits(q, unit) for q in ends)
    return f"{best} {unit} ({low}-{high})"
