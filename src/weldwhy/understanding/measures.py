"""Values told in a text: what was set, how thick the metal is, which gas.

Only what can be meant in one way is taken. A number that is a supply voltage, a year, a price, a
count or a distance is none of it, and what `entries` refuses as impossible is left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from weldwhy import entries, gases
from weldwhy.case import Entry, Measured, Situated
from weldwhy.model import RuleBase
from weldwhy.understanding.beside import beside, consumable
from weldwhy.understanding.figures import Figure, figures
from weldwhy.understanding.sizes import Meant, sized

CLEAR = 0.8
"""From this confidence on a thickness stands beside another one."""
_GAS_GAUGE = frozenset(("gauge", "reg", "regulator", "at", "said"))
"""Words beside litres that are a flow, besides those of the gas."""
_SET_AT = frozenset(("at", "on", "to", "with", "around"))
_THOUSANDTHS = re.compile(r"0?[.,]?(0(?:23|24|25|30|35|40|45|52|62))|0?\.(0[2-6][0-9])")
_INCH_PARTS = ("2", "4", "8", "16", "32", "64")


@dataclass(frozen=True, slots=True)
class Reading:
    """An entry made of a number, with the place of its words in the text, and how surely."""

    entry: Entry
    start: int
    end: int
    sure: float


def readings(
    rules: RuleBase, text: str, process: str = "", system: str | None = None
) -> tuple[Reading, ...]:
    """Every value told in the text, each setting once: the first that can be meant in one way."""
    found: dict[str, Reading] = {}
    thick: dict[str, Reading] = {}
    for figure in figures(text):
        for name, words, sure in _meant(rules, figure, process):
            entry = _entry(rules, name, words, system)
            if entry is None:
                continue
            reading = Reading(entry, figure.start, figure.end, sure)
            if isinstance(entry, Situated):
                thick.setdefault(entry.value, reading)
            else:
                found.setdefault(name, reading)
    # two thicknesses are two parts, and nobody said which of them is meant
    leading = [each for each in thick.values() if each.sure >= CLEAR] or list(thick.values())
    gas = _gas(rules, text)
    return (
        *(leading if len(leading) == 1 else ()), *found.values(), *([gas] if gas else ()),
    )  # fmt: skip


def _entry(rules: RuleBase, name: str, words: str, system: str | None) -> Entry | None:
    """The entry for a value, None if it is not a possible one."""
    try:
        if name == "thickness":
            return Situated(name, entries.thickness(words, system))
        if name in rules.settings:
            return Measured(name, entries.measured(rules, name, words, system))
    except entries.EntryError:
        pass
    return None


def _meant(rules: RuleBase, figure: Figure, process: str) -> Iterator[Meant]:
    """The setting that a number is the value of, as it is to be read; nothing if none."""
    text, near, supply = figure.text, figure.near, beside(rules, "supply")
    if figure.kind == "voltage" and not near & supply:
        yield "volts", f"{text} V", 0.95
    elif (
        figure.kind == "current"
        and _is_set(rules, figure)
        and not near & {"breaker", *(supply & set(figure.after[:2]))}
    ):
        yield "amps", f"{text} A", 0.95
    elif figure.kind == "feed":
        yield _feed(rules, figure)
    elif figure.kind == "flow":
        yield from _flow(rules, figure)
    elif figure.kind == "temperature" and near & beside(rules, "preheat"):
        unit = "F" if figure.unit.endswith("f") or "fahr" in figure.unit else "C"
        yield "preheat", f"{text} {unit}", 0.85
    elif figure.kind == "length":
        yield from _length(rules, figure, process)
    elif not figure.kind:
        yield from _bare(rules, figure, process)


def _is_set(rules: RuleBase, figure: Figure) -> bool:
    """Whether amps were set: "a 180 amp mig" is what a machine can give at most."""
    names = figure.after[:1] and figure.after[0] in beside(rules, "machine")
    return not names or bool(set(figure.before[-1:]) & _SET_AT)


def _feed(rules: RuleBase, figure: Figure) -> Meant:
    metric = figure.unit.startswith("m")
    if figure.near & beside(rules, "travel"):
        return "travel", f"{figure.text} {'m/min' if metric else 'in/min'}", 0.9
    return "wire_feed", f"{figure.text} {'m/min' if metric else 'ipm'}", 0.95


def _flow(rules: RuleBase, figure: Figure) -> Iterator[Meant]:
    bare = figure.unit in ("l", "litre", "litres", "liter", "liters")
    if not bare or figure.near & (_GAS_GAUGE | beside(rules, "gas_flow")):
        unit = "cfh" if "cf" in figure.unit or "cub" in figure.unit else "L/min"
        yield "gas_flow", f"{figure.text} {unit}", 0.9 if bare else 0.95


def _length(rules: RuleBase, figure: Figure, process: str) -> Iterator[Meant]:
    if figure.unit.startswith("g"):
        yield "thickness", f"{figure.text} ga", 0.95
        return
    inches = not figure.unit.startswith("m")
    words = f"{figure.text} {'in' if inches else 'mm'}"
    found = sized(rules, figure, words, figure.value * (25.4 if inches else 1.0), process)
    if found is not None:
        yield found


def _bare(rules: RuleBase, figure: Figure, process: str) -> Iterator[Meant]:
    """A number without a unit: thousandths of wire, fractions, or by the words around it."""
    text, value = figure.text, figure.value
    thousandths = _THOUSANDTHS.fullmatch(text)
    if thousandths:
        yield "wire", f"0.{thousandths[1] or thousandths[2]} in", 0.95
        return
    named = _by_name(rules, figure) or _set_at(rules, figure, process)
    if named is not None:
        yield named
        return
    found: Meant | None = None
    if "/" in text:
        if text.rpartition("/")[2] in _INCH_PARTS:
            found = sized(rules, figure, f"{text} in", value * 25.4, process)
    elif set(figure.after[:1]) & beside(rules, "leg"):
        found = ("leg", f"{text} mm", CLEAR) if value >= 3 else None
    elif not text.isdigit() or set(figure.after) & {"wire", "rod", "rods", "electrode"}:
        found = sized(rules, figure, f"{text} mm", value, process)
    if found is not None:
        yield found


def _by_name(rules: RuleBase, figure: Figure) -> Meant | None:
    """By the name of a setting right before it: "wire speed 250", "volts 17", "gas on 10"."""
    text, value, before = figure.text, figure.value, figure.before[-2:]
    last = before[-1] if before else ""
    fed = last in ("feed", "speed", "wfs", "wirefeed") and "travel" not in before
    if fed and value > 1:
        return "wire_feed", text, CLEAR
    if set(before) & beside(rules, "volts") and 8 <= value <= 45:
        return "volts", f"{text} V", 0.85
    if set(before) & beside(rules, "amps") and value >= 10:
        return "amps", f"{text} A", 0.85
    if set(before) & beside(rules, "gas_flow") and last in ("at", "on"):
        # nobody runs 10 cubic feet, or 20 litres, unless he says so
        return "gas_flow", f"{text} {'cfh' if value >= 15 else 'L/min'}", 0.75
    return None


def _set_at(rules: RuleBase, figure: Figure, process: str) -> Meant | None:
    """The amps of stick and TIG, which are said without their name: "at 90"."""
    by_amps = consumable(rules, process) in ("rod", "tungsten")
    dial = {*figure.before[-2:], *figure.after[:3]} & beside(rules, "dial")
    told = dial or set(figure.before[-1:]) & _SET_AT
    if not by_amps or not told or not 20 <= figure.value <= 400:
        return None
    if figure.after and figure.after[0] in beside(rules, "metal"):
        return None
    return "amps", f"{figure.text} A", 0.75


_PART = r"(?:argon|ar|co2|helium|oxygen|mix)"
_GAS = re.compile(
    r"(?<![\w/])(?:(?P<mix>c ?-?[0-9]{1,2}|[0-9]{2}/[0-9]{1,2}(?! ?(?:plate|in)))"
    r"|(?:[0-9]{1,3} ?%? ?)?(?:argon|ar|co2|helium|tri-?mix)"
    rf"(?:[ /-]*(?:and|with|plus|\+|/)? ?(?:[0-9]{{1,3}} ?%? ?)?{_PART})*"
    r"|(?:pure|straight|100 ?%) (?:argon|co2|helium)|mig mix)(?![\w/])"
)


def _gas(rules: RuleBase, text: str) -> Reading | None:
    """The shielding gas named in the text, if it is one that can be read."""
    if "gas" not in rules.settings or len(text.lower()) != len(text):
        return None
    for found in _GAS.finditer(text.lower()):
        words = found[0].replace("c-", "c").strip()
        if found["mix"] and "/" in words and sum(map(int, words.split("/"))) != 100:
            continue
        if gases.read(rules, words) is not None:
            named = " ".join(text[found.start() : found.end()].split())
            return Reading(Measured("gas", named), found.start(), found.end(), 0.9)
    return None
