"""The checker as a whole: the shipped rules pass it, and nothing makes it raise."""

from __future__ import annotations

import random
import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from weldwhy import lint, rulebase
from weldwhy.problems import has_errors

from .conftest import HERE, SHIPPED

SOUND = sorted((HERE / "sound").rglob("*.yaml"))


def test_the_shipped_rules_have_no_error_and_no_warning() -> None:
    assert [str(problem) for problem in lint.check([SHIPPED])] == []


def test_the_checker_was_not_asleep() -> None:
    """It saw every file that the shipped folder holds."""
    survey = rulebase.survey([SHIPPED])
    assert len(survey.items["cause"]) == len(list(SHIPPED.glob("causes/*/*.yaml")))
    assert len(survey.items["symptom"]) == len(list(SHIPPED.glob("symptoms/*.yaml")))
    assert survey.unread == set()


def test_the_command_prints_a_line_for_each_problem_and_a_sum(
    sound: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert lint.main([str(sound)]) == 0
    assert capsys.readouterr().out == (
        "3 causes, 2 checks, 1 symptoms, 1 windows, 2 cautions, 1 sources: 0 errors, 0 warnings\n"
    )
    (sound / "symptoms" / "porosity.yaml").write_text("symptom: porosity\n")
    assert lint.main([str(sound)]) == 1
    assert "symptoms/porosity.yaml:1:1: error: symptom " in capsys.readouterr().out


def test_warnings_alone_are_no_failure(sound: Path) -> None:
    (sound / "more.yaml").write_text("")
    assert lint.main([str(sound)]) == 0


WORDS = st.sampled_from(
    ["", "x", "[]", "{}", "- ", "a: b", "yes", "-1", "1e9", "flow-low", "gas_flow", "always", "|",
     "'", '"', ": ", "\t", "\u00e9", "\x1b[2J", "&a ", "*a", "!!x ", "---\n", "#", "null", "9" * 99]
)  # fmt: skip


@settings(max_examples=80, deadline=None)
@given(path=st.sampled_from(SOUND), seed=st.integers(0, 2**32), word=WORDS, cut=st.booleans())
def test_a_spoilt_file_gives_problems_and_never_raises(
    path: Path, seed: int, word: str, cut: bool
) -> None:
    """One spot of one file is overwritten, or one line is lost, and `word` stands there."""
    chance = random.Random(seed)
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines(keepends=True)
    if cut:
        place = chance.randrange(len(lines))
        spoilt = "".join(lines[:place]) + word + "\n" + "".join(lines[place + 1 :])
    else:
        begin = chance.randrange(len(text))
        spoilt = text[:begin] + word + text[begin + chance.randrange(12) :]
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(shutil.copytree(HERE / "sound", Path(scratch) / "rules"))
        (folder / path.relative_to(HERE / "sound")).write_text(spoilt, encoding="utf-8")
        problems = lint.check([folder])
        base, _ = rulebase.read([folder])
    assert all(str(problem).isprintable() for problem in problems)
    if base is None:
        assert has_errors(problems)
