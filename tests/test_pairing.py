"""The volts that go with a wire feed: never those of another feed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy.pairing import paired
from weldwhy.units import Quantity, convert, parse
from weldwhy.windows import Found, find

RULES = shipped_rules()
WIRE = parse("0.035 in", "length")


def plate(**typed: str) -> Found:
    found = find(RULES, "gmaw", "mild-steel", parse("1/8 in", "length"), typed, "")
    assert found is not None
    return found


def volts(feed: str, size: Quantity | None = WIRE) -> float:
    return paired(plate(), size, parse(feed, "feed")).targets["volts"].best.value


def test_an_instructor_sets_22_volts_back_to_about_19_and_a_half_at_250_ipm() -> None:
    """0.035 in wire with argon and 25 % CO2; common practice, no source. By the law of the
    window: 250 ipm melts at about 139 A, and 14 + 0.042 x 139 is 19.8 V."""
    found = paired(plate(), WIRE, parse("250 ipm", "feed"))
    target = found.targets["volts"]
    assert 19 <= target.best.value <= 20
    assert target.low.value >= 17.5
    assert target.high.value <= 21.5
    assert "250 ipm" in found.said["volts"]


def test_more_feed_wants_more_volts() -> None:
    assert volts("180 ipm") < volts("225 ipm") < volts("270 ipm")


@given(st.floats(0, 1), st.floats(0, 1))
def test_volts_never_fall_as_the_feed_rises_in_its_range(a: float, b: float) -> None:
    feed = plate().targets["wire_feed"]
    span = convert(feed.high, "ipm") - convert(feed.low, "ipm")
    low, high = (convert(feed.low, "ipm") + 0.1 + part * (span - 0.2) for part in sorted((a, b)))
    assert volts(f"{low:.1f} ipm") <= volts(f"{high:.1f} ipm")


@pytest.mark.parametrize("feed", ["60 ipm", "500 ipm"])
def test_a_feed_out_of_its_range_keeps_the_volts_of_the_metal(feed: str) -> None:
    assert paired(plate(), WIRE, parse(feed, "feed")) == plate()


def test_nothing_changes_without_a_feed_or_a_size() -> None:
    assert paired(plate(), WIRE, None) == plate()
    assert paired(plate(), None, parse("250 ipm", "feed")) == plate()
    assert paired(plate(), parse("2 mm", "length"), parse("250 ipm", "feed")) == plate()


def test_a_wire_under_its_name_in_millimetres_is_paired_too() -> None:
    """0.8 mm wire is sold as 0.030 in, and 1.2 mm as 0.045 in."""
    for name in ("0.8 mm", "1.2 mm"):
        size = parse(name, "length")
        found = plate(wire=name)
        feed = found.targets["wire_feed"].high
        assert "volts" in paired(found, size, feed).said


def test_what_was_said_of_other_targets_is_still_said() -> None:
    found = replace(plate(), said={"amps": "so it is"})
    said = paired(found, WIRE, parse("250 ipm", "feed")).said
    assert said.keys() == {"amps", "volts"}
