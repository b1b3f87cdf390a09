"""The words that tell what a number beside them is of are those of the rules."""

from __future__ import annotations

from dataclasses import replace

import pytest

from weldwhy.case import Case, Measured, Reported, Situated, Tried
from weldwhy.rulebase import load
from weldwhy.understanding.beside import SIZES, beside, consumable, sizes_named
from weldwhy.understanding.hearing import understand
from weldwhy.understanding.measures import readings
from weldwhy.understanding.phrases import book

RULES = load()


def _found(text: str, process: str = "gmaw") -> set[tuple[str, str]]:
    entries = (each.entry for each in readings(RULES, text, process))
    return {(e.setting, e.value) for e in entries if isinstance(e, Measured)}


def test_every_size_has_words_and_no_word_names_two_sizes() -> None:
    assert all(beside(RULES, name) for name in SIZES)
    assert len(sizes_named(RULES)) == sum(len(beside(RULES, name)) for name in SIZES)


def test_what_a_process_uses_is_told_by_its_windows() -> None:
    found = {process: consumable(RULES, process) for process in ("gmaw", "smaw", "gtaw-ac", "")}
    assert found == {"gmaw": "wire", "smaw": "rod", "gtaw-ac": "tungsten", "": ""}


@pytest.mark.parametrize(
    ("text", "setting"),
    [("flow on 18", "gas_flow"), ("wfs 250", "wire_feed"), ("amp 90", "amps"),
     ("2.4 mm rutile", "rod")],
)  # fmt: skip
def test_a_number_is_of_the_setting_that_the_word_beside_it_names(text: str, setting: str) -> None:
    assert [name for name, _ in _found(text)] == [setting]


def test_a_word_taken_from_the_rules_tells_nothing_any_more() -> None:
    bare = replace(RULES, said={**RULES.said, "beside rod": (), "beside supply": ()})
    assert readings(RULES, "2.4 mm rutile", "") != readings(bare, "2.4 mm rutile", "")
    assert not readings(RULES, "24 volt supply")
    assert readings(bare, "24 volt supply")


def test_the_dial_turned_may_be_called_by_any_word_of_its_setting() -> None:
    case = Case((Situated("process", "gmaw"), Reported("porosity")))
    for words in ("gas", "argon", "flow"):
        entries = understand(RULES, f"turned the {words} up, no change", case).entries
        assert [e.cause for e in entries if isinstance(e, Tried)] == ["gas-flow-low"], words


def test_words_beside_are_no_phrases() -> None:
    assert not any(m.startswith("beside ") for p in book(RULES).phrases for m in p.meanings)
    assert "genny" not in {phrase.words for phrase in book(RULES).phrases}
