"""What the start values ask of leads, socket and cord: said in words, and only of what is told."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.replay import shipped_rules

from weldwhy.machinepower import asked
from weldwhy.model import Machine
from weldwhy.units import Quantity, Target, parse

RULES = shipped_rules()
PLAIN = Machine("shed", "shed machine", ("gmaw", "smaw"))


def told(**parts: str) -> Machine:
    kinds = {"supply": "voltage", "breaker": "current", "lead": "section"}
    read = {name: parse(text, kinds.get(name, "distance")) for name, text in parts.items()}
    return replace(PLAIN, **read)  # type: ignore[arg-type]


def said(machine: Machine, process: str = "smaw", **best: float) -> dict[str, str]:
    kinds = {"amps": ("current", "A"), "volts": ("voltage", "V")}
    targets = {
        name: Target(*[Quantity(kinds[name][0], value, kinds[name][1])] * 3)
        for name, value in best.items()
    }
    return dict(asked(RULES, process, machine, targets))


def test_of_a_machine_of_which_nothing_is_told_nothing_is_said() -> None:
    assert said(PLAIN, amps=120) == {}
    assert said(told(gun="10 ft", lead="25 mm2")) == {}


def test_the_volts_lost_are_those_of_both_leads() -> None:
    """2 x 12 m x 150 A x 0.0214 ohm mm2/m / 25 mm2 = 3.1 V (arithmetic from the formula)."""
    assert said(told(gun="12 m", lead="25 mm2"), amps=150) == {"leads": "3.1 V lost in both"}


def test_a_loss_that_nobody_feels_is_not_said() -> None:
    assert said(told(gun="10 ft", lead="25 mm2"), amps=150) == {}


def test_long_thin_leads_are_called_too_long_or_thin() -> None:
    found = said(told(gun="15 m", work_lead="15 m", lead="16 mm2"), amps=160)["leads"]
    assert "more than 4 V, so take shorter or thicker leads" in found


@pytest.mark.parametrize(
    ("breaker", "words"),
    [
        ("10 A", "more than your 10 A breaker: weld with fewer amps, or have an electrician"),
        ("25 A", "a transformer can trip your 25 A breaker"),
        ("50 A", ""),
    ],
)
def test_a_socket_that_cannot_give_it_is_named_with_what_to_do(breaker: str, words: str) -> None:
    """Stick at 120 A: 24.8 V by the rating line, 2976 W out; 15 to 33 A at 230 V."""
    found = said(told(supply="230 V", breaker=breaker), amps=120)["supply"]
    assert found.startswith("draws 16 to 33 A at 230 V")
    assert words in found
    assert found.endswith("at 230 V") == (not words)


def test_known_volts_count_before_the_rating_line() -> None:
    low = said(told(supply="230 V"), "gmaw", amps=120, volts=18)["supply"]
    high = said(told(supply="230 V"), "gmaw", amps=120, volts=24)["supply"]
    assert low != high


def test_a_cord_gets_the_least_section_that_will_do() -> None:
    short = said(told(supply="230 V", cord="5 m"), amps=120)["extension cord"]
    long = said(told(supply="230 V", cord="50 m"), amps=120)["extension cord"]
    assert "unrolled all the way" in short
    assert short != long
