"""A problem is one line that says where, what and how to mend."""

from __future__ import annotations

from weldwhy.problems import Problem, RulesError, did_you_mean, has_errors, nearest


def test_a_problem_is_one_line() -> None:
    problem = Problem("rules/x.yaml", 41, 7, "error", 'unknown key "a"', "unknown-key")
    assert str(problem) == 'rules/x.yaml:41:7: error: unknown key "a" [unknown-key]'


def test_a_number_nobody_knows_is_left_out() -> None:
    assert str(Problem("x", 0, 0, "warning", "gone", "file-place")) == (
        "x: warning: gone [file-place]"
    )


def test_what_a_file_holds_cannot_drive_the_terminal_through_a_problem() -> None:
    problem = Problem("x\x1b[2J.yaml", 1, 2, "error", 'key "\x1b]0;t\x07\nb"', "unknown-key")
    assert str(problem) == 'x.yaml:1:2: error: key " b" [unknown-key]'


def test_the_nearest_word_is_offered_only_when_it_is_near() -> None:
    assert nearest("liklihood", ["limits", "likelihood"]) == "likelihood"
    assert nearest("Gas-Flow", ["gas-flow"]) == "gas-flow"
    assert nearest("zebra", ["gas-flow"]) is None
    assert did_you_mean("zebra", [f"word-{n}" for n in range(30)]) == ""
    assert did_you_mean("x" * 10_000, ["high"]) == "; known: high"


def test_errors_come_before_warnings_and_files_in_order() -> None:
    warning = Problem("a", 1, 1, "warning", "w", "w")
    late, early = Problem("b", 2, 1, "error", "e", "e"), Problem("b", 1, 9, "error", "e", "e")
    assert RulesError([warning, late, early]).problems == (early, late, warning)
    assert has_errors([warning, late])
    assert not has_errors([warning])
