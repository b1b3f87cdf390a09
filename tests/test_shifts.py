"""What a joint and a position change: modest, said in words, and as published where it is."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import units
from weldwhy.model import JOINTS, POSITIONS
from weldwhy.units import parse
from weldwhy.windows import Found, find

RULES = shipped_rules()
WORK = [
    ("gmaw", "mild-steel", {"wire": "0.035 in"}), ("fcaw-s", "mild-steel", {"wire": "0.035 in"}),
    ("fcaw-g", "mild-steel", {"wire": "0.045 in"}), ("smaw", "mild-steel", {"rod": "1/8 in 7018"}),
    ("gtaw-dc", "stainless", {"tungsten": "3/32 in"}),
    ("gtaw-ac", "aluminium", {"tungsten": "3/32 in"}), ("gmaw", "aluminium", {"wire": "3/64 in"}),
]  # fmt: skip


def seek(work: int, joint: str = "", position: str = "", thickness: str = "3/16 in") -> Found:
    process, metal, typed = WORK[work]
    thick = parse(thickness, "length")
    found = find(RULES, process, metal, thick, typed, "", joint=joint, position=position)
    assert found is not None
    return found


def amps(found: Found) -> float:
    """Amps, or wire feed where a window gives no amps."""
    name = "amps" if "amps" in found.targets else "wire_feed"
    return found.targets[name].best.value


@pytest.mark.parametrize("work", range(len(WORK)))
def test_overhead_vertical_up_edges_and_corners_take_less(work: int) -> None:
    plain = amps(seek(work))
    for found in (
        seek(work, position="overhead"),
        seek(work, position="vertical up"),
        seek(work, joint="corner"),
        seek(work, joint="edge"),
    ):
        assert 0.8 * plain <= amps(found) < plain


@pytest.mark.parametrize("work", [3, 4, 5])
def test_a_fillet_takes_more_than_a_butt_joint_with_stick_and_tig(work: int) -> None:
    butt, fillet, lap = (amps(seek(work, joint=j)) for j in ("butt", "fillet", "lap"))
    assert 1.03 * butt <= fillet <= 1.2 * butt
    assert fillet == lap


def test_the_published_pairs_of_butt_and_fillet_hold_on_aluminium() -> None:
    """Pairs of one text: each middle lies in the range of its joint, and so does our best place."""
    facts = yaml.safe_load((Path(__file__).parent / "published" / "settings.yaml").read_text())
    pairs = [f for f in facts["settings"] if f["source"].startswith("trade-instructor-course")]
    assert {f["joint"] for f in pairs} == {"butt", "fillet"}
    for fact in pairs:
        thick, typed = parse(fact["thickness"], "length"), {"tungsten": fact["size"]}
        found = find(RULES, "gtaw-ac", "aluminium", thick, typed, "", joint=fact["joint"])
        assert found is not None
        least, most = (float(x) for x in fact["amps"].split("-"))
        target = found.targets["amps"]
        assert target.low.value <= (least + most) / 2 <= target.high.value
        assert least <= target.best.value <= most


@pytest.mark.parametrize("work", range(len(WORK)))
def test_what_is_changed_is_said_in_one_sentence(work: int) -> None:
    plain = seek(work)
    for joint in JOINTS:
        for position in POSITIONS:
            found = seek(work, joint, position)
            if found.targets != plain.targets:
                assert len(found.note) > len(plain.note)


def test_flat_work_and_an_unknown_joint_change_nothing() -> None:
    for work in range(len(WORK)):
        assert seek(work, "", "flat").targets == seek(work).targets
        assert seek(work, "somewhere", "on the moon").targets == seek(work).targets


def test_joint_and_position_both_count() -> None:
    both = amps(seek(3, "edge", "overhead"))
    assert both < min(amps(seek(3, "edge")), amps(seek(3, "", "overhead")))


def test_every_shift_is_modest_and_names_settings_that_its_windows_have() -> None:
    """5 to 20 %, but for travel: vertical up the hand goes at about half its pace."""
    for shift in RULES.shifts.values():
        held = {
            name
            for window in RULES.windows.values()
            if set(window.processes) & set(shift.processes)
            for targets in (window.targets, *(row.targets for row in window.rows))
            for name in targets
        }
        assert shift.scale.keys() <= held
        assert any(abs(by - 1) >= 0.04 for by in shift.scale.values())
        for name, by in shift.scale.items():
            assert name == "travel" or 0.8 <= by <= 1.2
        assert shift.why.endswith(".")
        assert shift.joints or shift.positions


def test_shifted_volts_and_feed_stay_on_the_laws_of_short_circuit() -> None:
    """Within half a volt of 14 + 0.042 A, and an eighth of the feed that melts."""
    for position in POSITIONS:
        for thickness in ("16 ga", "1/8 in", "3/16 in"):
            plain, found = seek(0, thickness=thickness), seek(0, "", position, thickness)
            ratio = amps(found) / amps(plain)
            volts = found.targets["volts"].best.value
            assert volts == pytest.approx(14 + 0.042 * amps(found), abs=0.75)
            feed = found.targets["wire_feed"].best.value / plain.targets["wire_feed"].best.value
            assert feed == pytest.approx(ratio**1.35, rel=0.06)


@given(
    st.integers(0, len(WORK) - 1), st.sampled_from(["", *JOINTS]),
    st.sampled_from(["", *POSITIONS]), st.floats(0.6, 15),
)  # fmt: skip
def test_shifted_targets_are_in_order_and_on_the_steps_of_a_dial(
    work: int, joint: str, position: str, thickness: float
) -> None:
    process, metal, typed = WORK[work]
    thick = units.Quantity("length", thickness, "mm")
    found = find(RULES, process, metal, thick, typed, "", joint=joint, position=position)
    assert found is not None
    for target in found.targets.values():
        assert target.low.value <= target.best.value <= target.high.value
        for q in (target.low, target.best, target.high):
            if q.kind == "speed":
                shown = units.convert(q, q.unit)
                assert shown == pytest.approx(float(f"{shown:.2g}")), "travel has two digits"
            else:
                assert q.value == pytest.approx(units.rounded(q).value)
