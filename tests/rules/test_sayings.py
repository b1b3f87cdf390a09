"""Phrases reach the rule base by what they mean, and one that means two things is told of."""

from __future__ import annotations

from pathlib import Path

import pytest

from weldwhy import lint, rulebase

FLOW = Path("causes/shielding/flow-low.yaml")
GAS = Path("checks/gas.yaml")
PRACTICE = "    source: common practice\n"


def _change(path: Path, before: str, after: str) -> None:
    text = path.read_text()
    assert before in text
    path.write_text(text.replace(before, after, 1))


def _add(path: Path, name: str, field: str, value: str, phrase: str) -> None:
    """One more item of `sayings.yaml`."""
    words = f"  - saying: {name}\n    field: {field}\n    value: {value}\n    said: [{phrase}]\n"
    path.write_text(path.read_text() + words)


def _said(folder: Path) -> dict[str, tuple[str, ...]]:
    base, problems = rulebase.read([folder])
    assert base is not None, problems
    return dict(base.said)


def _lines(folder: Path) -> list[str]:
    return [str(problem) for problem in lint.check([folder])]


def test_what_is_said_of_a_remedy_means_it_and_its_cause(sound: Path) -> None:
    _change(sound / FLOW, PRACTICE, "    said: [turned the gas up]\n" + PRACTICE)
    assert _said(sound)["remedy flow-low set-flow"] == ("turned the gas up",)


def test_phrases_of_one_meaning_from_two_items_are_all_kept(sound: Path) -> None:
    before = _said(sound)["joint butt"]
    _add(sound / "sayings.yaml", "joint-butt-more", "joint", "butt", "two edges together")
    assert _said(sound)["joint butt"] == (*before, "two edges together")


def test_a_phrase_for_two_joints_is_told_of(sound: Path) -> None:
    _add(sound / "sayings.yaml", "joint-lap", "joint", "lap", "butt joint")
    (line,) = _lines(sound)
    assert '"butt joint" means "butt" as well [phrase-shared]' in line


def test_a_phrase_may_answer_two_checks(sound: Path) -> None:
    """What is said of one thing may well tell of another: "no gas" is a flow and a cylinder."""
    both = "    said:\n      {}: [no gas at all]\n    settles: {}"
    for answer, settles in (("low", "tells a gas"), ("clogged", "shows a choked")):
        _change(sound / GAS, f"    settles: {settles}", both.format(answer, settles))
    assert _lines(sound) == []
    said = _said(sound)
    assert said["answer flow-reading low"] == said["answer nozzle-look clogged"]


@pytest.mark.parametrize("whole", [True, False])
def test_what_a_word_sees_is_not_missed_where_its_file_cannot_be_read(
    sound: Path, whole: bool
) -> None:
    """One fault is told once, and not again for everything that the file held."""
    glossary = sound / "glossary.yaml"
    _change(glossary, PRACTICE, "    see: [nozzle-look]\n" + PRACTICE)
    if not whole:
        (sound / GAS).write_text("checks: [")
    lines = _lines(sound)
    assert not any("unknown-see" in line for line in lines)
    assert bool(lines) is not whole
