"""Shielding gases: what people write, the parts it names, and the group of ISO 14175."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.replay import shipped_rules

from weldwhy import gases

RULES = shipped_rules()


@pytest.mark.parametrize(
    ("text", "gas"),
    [
        ("argon", "argon"), ("Ar", "argon"), ("100 % argon", "argon"), ("pure argon", "argon"),
        ("I1", "argon"), ("helium", "helium"), ("50 Ar 50 He", "ar-he-50"),
        ("helium/argon 75/25", "ar-he-75"), ("C25", "c25"), ("c25", "c25"), ("75/25", "c25"),
        ("25/75", "c25"), ("75/25 mix", "c25"), ("75/25 Ar", "c25"), ("argon mix", "c25"),
        ("75 % argon, 25 % CO2", "c25"), ("argon/CO2 75/25", "c25"), ("25 CO2 75 Ar", "c25"),
        ("Ar 25 CO2", "c25"), ("82 Ar 18 CO2", "c18"), ("C18", "c18"), ("80/20", "c20"),
        ("argon CO2 20", "c20"), ("5 % CO2 in argon", "c5"), ("Ar5CO2", "c5"), ("C2", "c2"),
        ("98/2", "c2"), ("98/2 argon oxygen", "ar-o2-2"), ("Ar + 2 O2", "ar-o2-2"),
        ("93 Ar 5 CO2 2 O2", "ar-co2-o2-5-2"), ("tri-mix", "trimix"),
        ("90 He 7.5 Ar 2.5 CO2", "trimix"), ("90 he 7,5 ar 2,5 co2", "trimix"),
        ("CO2", "co2"), ("100 % carbon dioxide", "co2"), ("C1", "co2"),
        ("argon with 5 % H2", "ar-h2-5"),
        ("nitrogen", "nitrogen"), ("M21", "m21"), ("m12", "m12"), ("M31", "m31"),
    ],
)  # fmt: skip
def test_a_gas_is_known_by_its_names_and_by_its_parts(text: str, gas: str) -> None:
    found = gases.read(RULES, text)
    assert found is not None
    assert found.id == gas


@pytest.mark.parametrize(
    "text",
    ["", "no", "none", "blue bottle", "my usual argon", "Ar CO2 O2", "75/20", "50 Ar 60 CO2",
     "Ar Ar", "0 Ar 100 CO2", "C99", "75", "90/8/2", "helium mix", "argon mixture"],
)  # fmt: skip
def test_what_names_no_one_gas_is_not_guessed(text: str) -> None:
    assert gases.read(RULES, text) is None


def test_a_mix_that_nobody_named_is_worked_out_with_its_group() -> None:
    found = gases.read(RULES, "88 Ar 12 CO2")
    assert found is not None
    assert found.name == "argon with 12 % CO2"
    assert found.parts == {"argon": 88, "co2": 12}
    assert found.group == "M20"
    assert found.id not in RULES.gases


def test_every_listed_gas_is_read_by_each_of_its_names() -> None:
    for gas in RULES.gases.values():
        for name in (gas.id, gas.name, *gas.also):
            assert gases.read(RULES, name) == gas, name


def test_every_listed_gas_is_whole_and_in_the_group_it_says() -> None:
    for gas in RULES.gases.values():
        assert sum(gas.parts.values()) == pytest.approx(100)
        assert gases.group(RULES, gas.parts) == gas.group, gas.id


@pytest.mark.parametrize(
    ("parts", "group"),
    [
        ({"argon": 100}, "I1"), ({"helium": 100}, "I2"), ({"argon": 70, "helium": 30}, "I3"),
        ({"argon": 95, "co2": 5}, "M12"), ({"argon": 94.9, "co2": 5.1}, "M20"),
        ({"argon": 85, "co2": 15}, "M20"), ({"argon": 84, "co2": 16}, "M21"),
        ({"argon": 75, "co2": 25}, "M21"), ({"argon": 74, "co2": 26}, "M31"),
        ({"argon": 50, "co2": 50}, "M31"), ({"argon": 97, "oxygen": 3}, "M13"),
        ({"argon": 96, "oxygen": 4}, "M22"), ({"argon": 91, "co2": 5, "oxygen": 4}, "M23"),
        ({"argon": 90, "co2": 8, "oxygen": 2}, "M24"), ({"co2": 100}, "C1"),
        ({"co2": 80, "oxygen": 20}, "C2"), ({"argon": 98, "hydrogen": 2}, "R1"),
        ({"nitrogen": 100}, "N1"), ({"argon": 40, "co2": 60}, "Z"),
        ({"helium": 90, "argon": 7.5, "co2": 2.5}, "M12"),
    ],
)  # fmt: skip
def test_the_groups_of_iso_14175(parts: dict[str, float], group: str) -> None:
    """From memory; helium may stand for the argon."""
    assert gases.group(RULES, parts) == group


def test_hydrogen_in_the_gas_comes_with_its_warning() -> None:
    for gas in RULES.gases.values():
        if gas.parts.get("hydrogen"):
            assert "cracks other steel" in gas.name
            assert not any(gas.id in window.gas for window in RULES.windows.values())


@pytest.mark.parametrize("asked", ["C25", "C20", "82/18", "M21", "78 Ar 22 CO2", ""])
def test_mixes_of_one_group_fit_one_window(asked: str) -> None:
    assert gases.fits(RULES, asked, ("c25",))


@pytest.mark.parametrize("asked", ["argon", "CO2", "C10", "something else"])
def test_another_group_or_an_unknown_gas_does_not_fit(asked: str) -> None:
    assert not gases.fits(RULES, asked, ("c25",))
    assert gases.fits(RULES, asked, ()), "an empty list fits every gas"


@given(st.integers(1, 49), st.booleans(), st.sampled_from(["", "mix", "%", "in the bottle"]))
def test_order_and_filling_words_do_not_count(share: int, turned: bool, words: str) -> None:
    parts = [f"{100 - share} argon", f"{share} CO2"]
    found = gases.read(RULES, " ".join([*(reversed(parts) if turned else parts), words]))
    assert found is not None
    assert found.parts == {"argon": 100 - share, "co2": share}


@given(st.text(max_size=200))
def test_any_text_about_a_gas_is_taken_calmly(text: str) -> None:
    found = gases.read(RULES, text)
    if found is not None:
        assert sum(found.parts.values()) == pytest.approx(100, abs=0.5)
        assert found.name.isascii()
    assert isinstance(gases.fits(RULES, text, ("c25",)), bool)


def test_mixes_that_belong_to_no_group_do_not_stand_in_for_each_other() -> None:
    odd = gases.read(RULES, "45 Ar 55 CO2")
    assert odd is not None
    assert odd.group == gases.OUTSIDE
    rules = replace(RULES, gases={**RULES.gases, odd.id: odd})
    assert gases.fits(rules, "45 Ar 55 CO2", [odd.id])
    assert not gases.fits(rules, "60 Ar 40 O2", [odd.id])


@pytest.mark.parametrize(
    ("process", "metal", "gas", "right"),
    [
        ("gmaw", "mild-steel", "C25", True),
        ("gmaw", "mild-steel", "CO2", True),
        ("gmaw", "mild-steel", "argon", False),
        ("gmaw", "stainless", "98/2", True),
        ("gmaw", "stainless", "C25", False),
        ("gmaw", "aluminium", "argon", True),
        ("gmaw", "aluminium", "argon 50 helium 50", True),
        ("gmaw", "aluminium", "C25", False),
        ("gtaw-dc", "mild-steel", "argon", True),
        ("gtaw-dc", "mild-steel", "C25", False),
        ("gtaw-dc", "mild-steel", "argon 2 hydrogen", False),
        ("gtaw-dc", "stainless", "argon 2 hydrogen", True),
        ("gtaw-ac", "aluminium", "C25", False),
        ("gtaw-dc", "stainless", "nitrogen", False),
        ("fcaw-g", "mild-steel", "CO2", True),
        ("fcaw-g", "mild-steel", "argon", False),
        ("gmaw", "mild-steel", "swamp gas", None),
        ("smaw", "mild-steel", "argon", None),
        ("gmaw", "", "argon", None),
    ],
)
def test_a_gas_suits_the_metal_or_not(
    process: str, metal: str, gas: str, right: bool | None
) -> None:
    """Common practice, no source."""
    assert gases.suits(RULES, process, metal, gas) is right
