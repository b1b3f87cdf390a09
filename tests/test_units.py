"""What people type becomes a quantity or one plain line of help; what is shown can be read back."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pint
import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from weldwhy.units import (
    Quantity,
    Target,
    UnitError,
    convert,
    gauge_number,
    parse,
    parse_number,
    parse_range,
    parse_target,
    rounded,
    show,
    show_target,
    show_worked,
    system_of,
)
from weldwhy.unitwords import (
    BASE,
    EXAMPLES,
    GAUGE,
    HOME,
    INCHES,
    LEAST_AWG,
    MOST_AWG,
    SPELLINGS,
    WORTH,
    aluminium_gauge,
    awg_section,
)

PUBLISHED = Path(__file__).parent / "published" / "sheet-gauge.yaml"
KINDS = st.sampled_from(sorted(BASE))
DIALLED = ("length", "voltage", "current", "feed", "flow", "temperature", "time", "percent")
SYSTEMS = st.sampled_from([None, "in", "mm"])


@pytest.mark.parametrize(
    ("text", "kind", "value", "unit"),
    [
        ("1/8 in", "length", 3.175, "in"),
        ('1/8"', "length", 3.175, "in"),
        ("0.035", "length", 0.889, "in"),
        ("1/8", "length", 3.175, "in"),
        ("1 1/2 in", "length", 38.1, "in"),
        ("1-1/2 inches", "length", 38.1, "in"),
        ("18 ga", "length", 1.21412, "ga"),
        ("16 Gauge", "length", 1.51892, "ga"),
        ("3 mm", "length", 3.0, "mm"),
        ("0,9 mm", "length", 0.9, "mm"),
        ("250 ipm", "feed", 6.35, "ipm"),
        ("250 in/min", "feed", 6.35, "ipm"),
        ("250", "feed", 6.35, "ipm"),
        ("6.3 m/min", "feed", 6.3, "m/min"),
        ("6.3", "feed", 6.3, "m/min"),
        ("25 cfh", "flow", 11.79869, "cfh"),
        ("12 l/min", "flow", 12.0, "L/min"),
        ("0 cfh", "flow", 0.0, "cfh"),
        ("18.5V", "voltage", 18.5, "V"),
        ("18.5", "voltage", 18.5, "V"),
        ("120 amps", "current", 120.0, "A"),
        ("300 F", "temperature", 148.88889, "F"),
        ("-40 C", "temperature", -40.0, "C"),
        ("30 s", "time", 0.5, "s"),
        ("70 %", "percent", 70.0, "%"),
        ("12 ipm", "speed", 5.08, "in/min"),
        ("0.3 m/min", "speed", 5.0, "m/min"),
        ("25 ft", "distance", 7.62, "ft"),
        ("2/0", "section", 67.43, "AWG"),
        ("#2 AWG", "section", 33.63, "AWG"),
        ("# 2", "section", 33.63, "AWG"),
        ("00 awg", "section", 67.43, "AWG"),
        ("0 AWG", "section", 53.48, "AWG"),
        ("10 ga", "section", 5.261, "AWG"),
        ("35 mm2", "section", 35.0, "mm2"),
        ("80 cf", "volume", 2265.348, "ft3"),
        ("2000 psi", "pressure", 137.8951, "psi"),
        ("11 lb", "mass", 4.989516, "lb"),
        ("30 kJ/in", "heat", 1.181102, "kJ/in"),
        ("45000 J/in", "heat", 1.771654, "J/in"),
        ("3mm", "length", 3.0, "mm"),
        ('5/16"', "length", 7.9375, "in"),
    ],
)
def test_the_ways_people_write_are_read(text: str, kind: str, value: float, unit: str) -> None:
    found = parse(text, kind)
    assert (found.kind, found.unit) == (kind, unit)
    assert found.value == pytest.approx(value, rel=1e-4 if unit == "AWG" else 1e-6)


@pytest.mark.parametrize(
    ("text", "kind", "hint"),
    [
        ("3", "length", "needs its unit"),
        ("25", "flow", "25 cfh"),
        ("30", "feed", "needs its unit"),
        ("1,500 ipm", "feed", "comma"),
        ("-5 V", "voltage", "below zero"),
        ("1/0 in", "length", "divides by zero"),
        ("2 ga", "length", "3 ga to 30 ga"),
        ("5 kV", "voltage", "18.5 V"),
        ("25 cfh", "voltage", "18.5 V"),
        ("", "length", "write it like"),
        ("nan", "voltage", "write it like"),
        ("1e5 V", "voltage", "write it like"),
        ("٣ mm", "length", "write it like"),
        ("8018 1/8 in", "length", "write it like"),
        ("12 V", "loudness", "no kind"),
        ("2", "section", "needs its unit"),
        ("2.5 AWG", "section", "no wire gauge; they run from 40 AWG to 4/0 AWG"),
        ("41 AWG", "section", "no wire gauge"),
        ("5/0 AWG", "section", "divides by zero"),
        ("100", "pressure", "needs its unit"),
        ("-5 kg", "mass", "below zero"),
    ],
)
def test_what_is_no_quantity_gets_a_line_that_helps(text: str, kind: str, hint: str) -> None:
    with pytest.raises(UnitError, match=hint):
        parse(text, kind)


def test_a_bare_number_takes_the_units_of_the_shop() -> None:
    assert parse("3", "length", "mm").value == 3.0
    assert parse("25", "flow", "in").unit == "cfh"
    assert parse("0.035", "length", "mm").unit == "in", "no wire is 0.035 mm thick"
    assert show(parse("2", "section", "in")) == "2 AWG"
    assert show(parse("2", "section", "mm")) == "2 mm2"


def test_a_number_without_a_unit_is_read_alone() -> None:
    assert [parse_number(text) for text in ("0.18", "0,18", "9/50")] == pytest.approx([0.18] * 3)
    for text in ("0.18 V", "-1", "", "nan", "1,500"):
        with pytest.raises(UnitError):
            parse_number(text)


def _said(
    read: Callable[[str, str], Any], write: Callable[[Any], str], text: str, kind: str
) -> str:
    try:
        return write(read(text, kind))
    except UnitError as fault:
        return str(fault)


@given(st.text(max_size=80) | st.from_regex(r"[0-9./, -]{1,12} ?[a-z%\"/]{0,6}"), KINDS)
def test_any_text_is_read_or_refused_in_one_printable_line(text: str, kind: str) -> None:
    """Nothing but UnitError ever comes out, and its line cannot drive a terminal."""
    said = [_said(parse, show, text, kind), _said(parse_target, show_target, text, kind)]
    assert all(line.isprintable() and line.isascii() for line in said)


def test_a_very_long_text_is_refused_at_once_and_not_repeated() -> None:
    with pytest.raises(UnitError) as fault:
        parse("1" * 100_000 + " " + "x" * 100_000, "length")
    assert len(str(fault.value)) < 200


@st.composite
def quantities(draw: st.DrawFn) -> Quantity:
    kind = draw(KINDS)
    unit = draw(st.sampled_from(sorted(WORTH[kind])))
    if unit == "ga":
        return parse(f"{draw(st.sampled_from(sorted(GAUGE)))} ga", kind)
    if unit == "AWG":
        return Quantity(kind, awg_section(draw(st.integers(LEAST_AWG, MOST_AWG))), unit)
    number = draw(st.decimals(0, 2000, places=1))
    return parse(f"{number} {unit}", kind)


@given(quantities())
def test_what_is_shown_as_given_reads_back_the_same(q: Quantity) -> None:
    again = parse(show(q), q.kind)
    assert again.unit == q.unit
    assert again.value == pytest.approx(q.value, rel=1e-9, abs=1e-9)


@given(quantities(), st.sampled_from(["in", "mm"]))
def test_what_is_shown_in_the_other_system_reads_back_close(q: Quantity, system: str) -> None:
    """Converting rounds to what can be set or bought; else to 3 digits, a speed to 2."""
    again = parse(show(q, system), q.kind)
    unit = again.unit
    assert unit in (q.unit, HOME[system].get(q.kind), BASE[q.kind])
    if unit in ("ga", "AWG"):
        return
    step = {"ipm": 2.6, "in": 1 / 15, "mm": 0.51, "F": 2.6, "C": 2.6}.get(unit, 0.51)
    if q.kind not in DIALLED:
        step = (0.051 if q.kind == "speed" else 0.0051) * convert(q, unit) + 1e-6
    assert abs(convert(again, unit) - convert(q, unit)) <= step


@given(st.floats(1.5, 60), st.floats(1.5, 60))
def test_a_thicker_plate_never_shows_as_a_thinner_one(a: float, b: float) -> None:
    low, high = sorted((a, b))
    shown = [parse(show(Quantity("length", x, "mm"), "in"), "length").value for x in (low, high)]
    assert shown[0] <= shown[1]


@pytest.mark.parametrize(
    ("text", "kind", "system", "shown"),
    [
        ("0.030 in", "length", None, "0.030 in"),
        ("0.035 in", "length", "mm", "0.9 mm"),
        ("0.045 in", "length", "mm", "1.2 mm"),
        ("1.2 mm", "length", "in", "0.045 in"),
        ("3/64 in", "length", None, "3/64 in"),
        ("0.8 mm", "length", "in", "0.030 in"),
        ("3 mm", "length", "in", "1/8 in"),
        ("10 mm", "length", "in", "3/8 in"),
        ("1/8 in", "length", "mm", "3.2 mm"),
        ("0.125 in", "length", None, "1/8 in"),
        ("18 ga", "length", None, "18 ga"),
        ("18 ga", "length", "in", "18 ga"),
        ("18 ga", "length", "mm", "1.2 mm"),
        ("250 ipm", "feed", "mm", "6.4 m/min"),
        ("6.3 m/min", "feed", "in", "250 ipm"),
        ("25 cfh", "flow", "mm", "12 L/min"),
        ("12 L/min", "flow", "in", "25 cfh"),
        ("18.2 V", "voltage", "mm", "18.2 V"),
        ("150 C", "temperature", "in", "300 F"),
    ],
)
def test_numbers_are_shown_as_welders_say_them(
    text: str, kind: str, system: str | None, shown: str
) -> None:
    assert show(parse(text, kind), system) == shown


@pytest.mark.parametrize(
    ("text", "kind", "shown", "metric"),
    [
        ("18.5 V (17.5-19.5)", "voltage", "18.5 V (17.5-19.5)", "18.5 V (17.5-19.5)"),
        ("3/8 in (1/4-1/2)", "length", "3/8 in (1/4-1/2)", "9.5 mm (6.4-13)"),
        ("1 1/2 in (1-1 3/4)", "length", "1 1/2 in (1-1 3/4)", "38 mm (25-44)"),
        ("25 cfh (20 to 30 cfh)", "flow", "25 cfh (20-30)", "12 L/min (9.5-14)"),
        ("20-30 cfh", "flow", "25 cfh (20-30)", "12 L/min (9.5-14)"),
    ],
)
def test_targets_are_read_and_shown(text: str, kind: str, shown: str, metric: str) -> None:
    target = parse_target(text, kind)
    assert (show_target(target), show_target(target, "mm")) == (shown, metric)
    again = parse_target(show_target(target), kind)
    assert again.best.value == pytest.approx(target.best.value)
    assert (again.low, again.high) == (target.low, target.high)


@pytest.mark.parametrize(
    "text",
    ["18.5 V", "18.5 V (17.5)", "18.5 V (19-20)", "18.5 V (19.5-17.5)", "18 V (17-19", "V (1-2)",
     "18 V (17-19) or so", "18 V (17-18-19)", "17-19 V (18)"],
)  # fmt: skip
def test_a_target_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(UnitError):
        parse_target(text, "voltage")


@given(quantities(), st.floats(0, 1), st.floats(1, 2), SYSTEMS)
def test_a_target_keeps_its_order_however_it_is_shown(
    best: Quantity, less: float, more: float, system: str | None
) -> None:
    """low <= best <= high holds after rounding and conversion, and the text is a good target."""
    if best.unit in ("ga", "AWG") or best.value < 0 or (system == "in" and best.kind == "section"):
        return  # gauges count backwards, and a range has no room for a minus
    low, high = (Quantity(best.kind, best.value * part, best.unit) for part in (less, more))
    if convert(low, best.unit) < 0:
        return
    again = parse_target(show_target(Target(low, best, high), system), best.kind)
    assert again.low.value <= again.best.value <= again.high.value


def test_a_range_is_read_with_the_unit_once_or_twice() -> None:
    assert parse_range("5 V to 60 V", "voltage") == parse_range("5-60 V", "voltage")
    with pytest.raises(UnitError, match="out of order"):
        parse_range("60 V to 5 V", "voltage")


@given(quantities())
def test_rounding_a_quantity_twice_changes_nothing(q: Quantity) -> None:
    assert rounded(rounded(q)).value == pytest.approx(rounded(q).value)


@given(quantities(), SYSTEMS)
def test_a_result_reads_back_to_three_digits(q: Quantity, system: str | None) -> None:
    text = show_worked(q, system)
    again = parse(text, q.kind)
    if again.unit == "AWG":
        assert again.value >= q.value * (1 - 1e-6), "a thinner cable than was worked out"
        assert again.value <= q.value * 1.27
    else:
        have, want = convert(again, again.unit), convert(q, again.unit)
        assert abs(have - want) <= 0.0051 * abs(want) + 1e-6
    if system and system_of(q):
        assert again.unit == HOME[system][q.kind] or q.kind == "section"


@pytest.mark.parametrize(
    ("value", "kind", "system", "shown"),
    [
        (4.4901, "length", "in", "0.177 in"),
        (6.35, "length", "in", "1/4 in"),
        (3.175, "length", "mm", "3.18 mm"),
        (0.81234, "voltage", "in", "0.812 V"),
        (1.23456, "heat", "mm", "1.23 kJ/mm"),
        (1.23456, "heat", "in", "31.4 kJ/in"),
        (35.0, "section", "in", "1 AWG"),
        (110.0, "section", "in", "110 mm2"),
        (12345.6, "volume", "mm", "12300 L"),
        (0.0, "mass", "in", "0 lb"),
    ],
)
def test_results_are_shown_to_three_digits_and_cables_never_thinner(
    value: float, kind: str, system: str, shown: str
) -> None:
    assert show_worked(Quantity(kind, value, BASE[kind]), system) == shown


@pytest.mark.parametrize(
    ("text", "kind", "system"),
    [
        ("18 ga", "length", "in"), ("2 AWG", "section", "in"), ("30 kJ/in", "heat", "in"),
        ("3 mm", "length", "mm"), ("5 L/min", "flow", "mm"), ("100 A", "current", None),
    ],
)  # fmt: skip
def test_a_unit_tells_which_system_a_person_works_in(
    text: str, kind: str, system: str | None
) -> None:
    assert system_of(parse(text, kind)) == system


def test_each_unit_belongs_to_one_system_and_examples_can_be_read() -> None:
    assert set(HOME["in"].values()) <= INCHES
    assert not set(HOME["mm"].values()) & INCHES
    for kind, text in EXAMPLES.items():
        for example in text.split('"')[1::2]:
            assert parse(example, kind).kind == kind


REFERENCE: pint.UnitRegistry[float] = pint.UnitRegistry()
NAMES = {
    "A": "ampere", "C": "degC", "F": "degF", "L": "liter", "V": "volt", "cfh": "foot**3/hour",
    "ft3": "foot**3", "h": "hour", "in": "inch", "in/min": "inch/minute", "in2": "inch**2",
    "ipm": "inch/minute", "kJ/in": "kilojoule/inch", "J/in": "joule/inch", "lb/h": "pound/hour",
    "m3": "meter**3", "min": "minute", "mm2": "millimeter**2", "oz": "ounce", "s": "second",
}  # fmt: skip
"""What the reference library calls those units that it would not understand as they are."""

UNITS = [(kind, unit) for kind in sorted(BASE) for unit in sorted(WORTH[kind])]
PLAIN = [pair for pair in UNITS if pair[1] not in ("ga", "AWG")]
"""The two gauges are tables of trade; they are checked against published ones below."""


@pytest.mark.parametrize(("kind", "unit"), PLAIN)
@pytest.mark.parametrize("amount", [0.01, 1.0, 37.5, 250.0, 2000.0])
def test_every_unit_is_worth_what_the_reference_library_says(
    kind: str, unit: str, amount: float
) -> None:
    """Both ways: into the base unit by reading, and out of it by converting."""
    one, base = (REFERENCE.Unit(NAMES.get(name, name)) for name in (unit, BASE[kind]))
    into = REFERENCE.Quantity(amount, one).to(base).magnitude
    assert parse(f"{amount} {unit}", kind).value == pytest.approx(into, rel=1e-9, abs=1e-12)
    out = REFERENCE.Quantity(amount, base).to(one).magnitude
    assert convert(Quantity(kind, amount, unit), unit) == pytest.approx(out, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("kind", sorted(BASE))
def test_every_unit_has_a_spelling_and_every_spelling_a_unit(kind: str) -> None:
    assert set(SPELLINGS[kind].values()) == set(WORTH[kind])
    assert BASE[kind] in WORTH[kind]


def test_sheet_gauges_agree_with_the_published_weights() -> None:
    """The trade table is the statute's weight by gauge over 41.82 lb/ft2 for each inch."""
    facts = yaml.safe_load(PUBLISHED.read_text())
    for sheet in facts["sheets"]:
        inches = sheet["pounds"] / facts["pounds_per_inch"]
        assert GAUGE[sheet["gauge"]] == pytest.approx(inches, abs=0.00006), sheet
        assert gauge_number(Quantity("length", inches * 25.4, "in")) == sheet["gauge"]
    for wire in facts["wires"]:
        assert aluminium_gauge(wire["gauge"]) == pytest.approx(wire["inches"], abs=0.00005)
    for cable in facts["cables"]:
        wanted = cable["circular_mils"] * math.pi / 4 * 0.0254**2
        assert parse(f"{cable['gauge']} AWG", "section").value == pytest.approx(wanted, rel=5e-4)


def test_a_higher_gauge_is_a_thinner_sheet() -> None:
    sizes = [GAUGE[number] for number in sorted(GAUGE)]
    assert sizes == sorted(sizes, reverse=True)
