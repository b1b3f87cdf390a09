"""The printed set-up: cautions before steps, boxes to tick, the same in every format."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape

import pytest
from tests.test_setup import ABLE, GRID, METALS, RULES, case

from weldwhy.blocks import FORMATS
from weldwhy.setup import Plan, Refusal, plan, refusal
from weldwhy.setupsheet import refusal_lines, setup_sheet
from weldwhy.units import Quantity, Target, show

LINES_OF_TWO_PAGES = 164
ASKED = case("mild-steel", "1/8 in", joint="fillet")


def lines(made: Plan, form: str = "text", others: tuple[Plan, ...] = ()) -> list[str]:
    return setup_sheet(RULES, made, ASKED, ABLE, form, others)


def flat(made: Plan, form: str) -> str:
    """The whole sheet as one line of plain words."""
    text = unescape(re.sub(r"<[^>]+>", " ", " ".join(lines(made, form))))
    return " ".join(text.replace("\\", "").replace("#", " ").split())


PLANS = [
    plan(RULES, case(metal, "1/8 in"), ABLE, name) for metal in METALS for name in RULES.setups
]


@pytest.mark.parametrize("form", FORMATS)
def test_every_step_is_there_with_a_box_and_in_order(form: str) -> None:
    for made in PLANS:
        text = flat(made, form)
        boxes = [
            text.index(f"[ ] {number}. {step.text}")
            for number, step in enumerate(made.checklist, 1)
        ]
        assert boxes == sorted(boxes)


@pytest.mark.parametrize("form", FORMATS)
def test_a_caution_stands_before_the_first_step_it_belongs_to_and_once(form: str) -> None:
    for made in PLANS:
        text = flat(made, form)
        for step in made.checklist:
            for caution in step.cautions:
                assert text.count(f"CAUTION: {caution.text}") == 1
                assert text.index(f"CAUTION: {caution.text}") < text.index(step.text)


@pytest.mark.parametrize("form", FORMATS)
def test_numbers_part_choices_and_sources_are_in_every_format(form: str) -> None:
    made = plan(RULES, ASKED, ABLE, "gmaw")
    text = flat(made, form)
    for wanted in (
        "volts: 19 V (17.5-20.5)", "wire feed: 220 ipm (175-280)", "Polarity: gun positive",
        "argon with 25 % CO2, 25 cfh (20-30)", "ER70S-6", "drive rolls: V groove", "heat input",
        "Lens shade 10 or darker", "leg 1/8 in", "from memory", "OSHA 29 CFR 1910.252",
    ):  # fmt: skip
        assert wanted in text, wanted


def test_the_mark_of_the_dial_stands_beside_the_number() -> None:
    marks = {"1": Quantity("voltage", 14, "V"), "6": Quantity("voltage", 24, "V")}
    made = plan(RULES, ASKED, replace(ABLE, dials={"volts": marks}), "gmaw")
    assert "  volts: 19 V (17.5-20.5); on the dial: about 3.5" in lines(made)


def test_text_is_plain_and_fits_two_pages_of_a_small_printer() -> None:
    for made in GRID:
        found = lines(made)
        assert len(found) <= LINES_OF_TWO_PAGES, (made.process, len(found))
        assert all(len(line) <= 76 and line.isascii() for line in found)


def test_other_processes_are_told_in_a_line_each() -> None:
    best, other = PLANS[0], PLANS[1]
    text = "\n".join(lines(best, "text", (other,)))
    assert f"{other.name}: {other.suits}." in text
    assert "Other processes" not in "\n".join(lines(best))


def test_the_html_runs_nothing_and_needs_nothing() -> None:
    text = "\n".join(lines(PLANS[0], "html"))
    assert text.startswith("<!DOCTYPE html>")
    assert "<script" not in text
    assert "http" not in text


def test_a_refusal_says_stop_and_whom_to_call() -> None:
    found = refusal(RULES, case("magnesium", "1/8 in"))
    assert isinstance(found, Refusal)
    assert [line.partition(":")[0] for line in refusal_lines(found)] == ["STOP", "Call"]


def test_the_cautions_of_the_test_bead_stand_before_it() -> None:
    hot = next(iter(RULES.cautions.values()))
    bead = PLANS[0].test_bead
    assert bead is not None
    alone = replace(PLANS[0], cautions=(), checklist=(), test_bead=replace(bead, cautions=(hot,)))
    sheet = flat(alone, "markdown")
    assert 0 < sheet.index(hot.text[:40]) < sheet.index(bead.run[:40])


def test_what_the_machine_does_not_reach_is_on_the_sheet() -> None:
    amps = PLANS[0].targets["amps"].best
    stuck = replace(
        PLANS[0],
        targets={**PLANS[0].targets, "amps": Target(amps, amps, amps)},
        beyond={"gas_flow": "This machine ends at 5 L/min."},
    )
    sheet = flat(stuck, "markdown")
    assert "This machine ends at 5 L/min." in sheet
    assert f"amps: {show(amps, stuck.system)}, the nearest this machine comes" in sheet


def test_the_notes_of_a_plan_are_on_the_sheet() -> None:
    noted = replace(PLANS[0], notes=("Keep the box shut.",), note="From a table.")
    assert "Note: Keep the box shut." in flat(noted, "markdown")
    assert "From a table." in flat(noted, "markdown")
