"""`weldwhy lookup`: a page, a list of what may be meant, or one plain line with what is near."""

from __future__ import annotations

import shlex

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from weldwhy import cli, commands_lookup
from weldwhy.lookup.finding import meant
from weldwhy.lookup.things import Ref
from weldwhy.surroundings import ExitCode

from .rules import KINDS, every, shipped

pytestmark = pytest.mark.usefixtures("quick_rules")

Capture = pytest.CaptureFixture[str]


def _run(capsys: Capture, *words: str) -> tuple[int, str, str]:
    code = cli.main(["lookup", *words])
    said = capsys.readouterr()
    return code, said.out, said.err


def test_a_symptom_is_printed_with_its_picture_in_letters_at_the_top(capsys: Capture) -> None:
    code, out, err = _run(capsys, "undercut")
    assert (code, err) == (ExitCode.FINE, "")
    lines = out.splitlines()
    assert lines[0] == "Undercut (symptom undercut)"
    assert "###" in "".join(lines[1:13])
    assert "- travel too fast [travel-fast]" in out
    assert "ISO 6520-1: 5011, 5012" in out


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("gas flow too low", "Gas flow too low (cause gas-flow-low)"),
        ("swiss cheese", "Porosity (bubbles in the weld) (symptom porosity)"),
        ("PREHEAT", "Preheat (word preheat)"),
        ("calculator preheat", "Preheat of a steel (calculator preheat)"),
        ("duty cycle", "Duty cycle (word duty-cycle)"),
        ("porositty", "Porosity (bubbles in the weld) (symptom porosity)"),
        ("gmaw", "MIG with gas and solid wire (process gmaw)"),
    ],
)
def test_the_best_match_is_printed(capsys: Capture, typed: str, first: str) -> None:
    code, out, _ = _run(capsys, *typed.split())
    assert code == ExitCode.FINE
    assert out.splitlines()[0] == first


def test_things_meant_equally_well_are_listed_and_the_code_is_1(capsys: Capture) -> None:
    code, out, err = _run(capsys, "arc", "w")
    assert (code, err) == (ExitCode.FINDINGS, "")
    assert "symptom arc-wanders: arc wanders" in out
    assert "symptom arc-will-not-start: arc will not start" in out


def test_of_several_the_one_that_leads_to_all_others_is_printed(capsys: Capture) -> None:
    code, out, _ = _run(capsys, "poro")
    assert code == ExitCode.FINE
    assert "[porosity-in-line]" in out
    assert "[porosity-at-ends]" in out


def test_an_unknown_word_is_one_plain_line_with_what_is_near(capsys: Capture) -> None:
    code, out, err = _run(capsys, "porstvy", "zzz")
    assert (code, out) == (ExitCode.USAGE, "")
    assert err.startswith('weldwhy: error: nothing is known of "porstvy zzz"; near it: porosity')
    assert len(err.splitlines()) == 1


def test_without_a_word_it_says_what_there_is_with_counts(capsys: Capture) -> None:
    code, out, _ = _run(capsys)
    assert code == ExitCode.FINE
    assert f"{len(shipped().causes)} causes (cause)" in out
    assert out == _run(capsys, "--list")[1]


@pytest.mark.parametrize("kind", KINDS)
def test_a_list_names_everything_of_its_kind(capsys: Capture, kind: str) -> None:
    code, out, _ = _run(capsys, "--list", kind)
    assert code == ExitCode.FINE
    listed = {line.strip().partition(":")[0] for line in out.splitlines() if line[:2] == "  "}
    assert {ref.id for ref in every() if ref.kind == kind} <= listed


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("--list symtom", 'there is no kind "symtom"; did you mean "symptom"?'),
        ("undercut --list symptom", "--list takes the name of a kind alone, or nothing"),
        ("undercut --units cubits", "invalid choice"),
    ],
)
def test_what_cannot_be_done_is_one_line(capsys: Capture, line: str, said: str) -> None:
    code, out, err = _run(capsys, *shlex.split(line))
    assert (code, out) == (ExitCode.USAGE, "")
    assert said in err
    assert len(err.splitlines()) == 1


def test_windows_come_in_the_units_asked_for(capsys: Capture) -> None:
    out = _run(capsys, "window", "mig-steel-short-c25", "--units", "mm")[1]
    assert "m/min" in out
    assert "ipm" not in out


def test_a_kind_and_an_id_always_name_one_thing() -> None:
    for ref in every():
        assert meant(shipped(), f"{ref.kind} {ref.id}") == [ref], ref


def test_of_namesakes_the_one_that_goes_with_all_others_is_taken() -> None:
    assert meant(shipped(), "magnesium") == [Ref("metal", "magnesium")]


@pytest.fixture
def rules_at_hand(monkeypatch: pytest.MonkeyPatch) -> None:
    """Else every command would read the rules and order all their words anew."""
    monkeypatch.setattr(commands_lookup, "load", lambda _: shipped())


@settings(
    suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None
)
@given(st.text(min_size=1, max_size=60))
def test_any_words_end_in_a_page_a_list_or_one_line(
    capsys: Capture, rules_at_hand: None, text: str
) -> None:
    code, out, err = _run(capsys, "--", text) if text.startswith("-") else _run(capsys, text)
    assert code in (ExitCode.FINE, ExitCode.FINDINGS, ExitCode.USAGE)
    assert all(line.isprintable() for line in (out + err).splitlines())
    assert len(err.splitlines()) <= 1
