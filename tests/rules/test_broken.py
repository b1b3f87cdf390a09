"""Every broken rule file gives exactly the problem lines that stand at its head, and no others.

A file in `broken/` is laid over a copy of the small base in `sound/`, at the place its second
line names; the lines after that say what the checker must print.
"""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from weldwhy import lint

from .conftest import HERE

BROKEN = sorted((HERE / "broken").glob("*.yaml"))
SOURCE = HERE.parent.parent / "src" / "weldwhy"
READERS = (
    "yamltree", "yamlfaults", "shape", "values", "dials", "build", "folders", "joining",
    "soundness", "quality", "wording",
)  # fmt: skip
# What no rule file can show: faults of folders, and of files that are too big to keep.
ELSEWHERE = {"file-missing", "file-unreadable", "file-size", "file-encoding"}


def told(text: str, mark: str) -> list[str]:
    """What follows `mark` in the remarks at the head of a broken file."""
    return [line.removeprefix(mark) for line in text.splitlines() if line.startswith(mark)]


def lines_for(folder: Path) -> list[str]:
    """The checker's lines, with places inside the folder."""
    return [str(problem).replace(f"{folder}/", "") for problem in lint.check([folder])]


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_a_broken_file_gives_exactly_its_lines(path: Path, sound: Path) -> None:
    text = path.read_text(encoding="utf-8")
    (place,) = told(text, "# lies in: ")
    laid = sound / place
    laid.parent.mkdir(parents=True, exist_ok=True)
    laid.write_text(text, encoding="utf-8")
    expected = told(text, "# says: ")
    assert expected, "a broken file must say what is wrong with it"
    assert lines_for(sound) == expected


def test_the_sound_base_gives_no_line(sound: Path) -> None:
    assert lines_for(sound) == []


def check_ids() -> set[str]:
    """Every id of a check in the source: the last text given to whatever makes a problem."""
    found = set()
    for name in READERS:
        for node in ast.walk(ast.parse((SOURCE / f"{name}.py").read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and _makes_a_problem(node.func):
                texts = [each.value for each in node.args if isinstance(each, ast.Constant)]
                found |= {each for each in texts[-2:] if isinstance(each, str) and _is_id(each)}
    return found | {"wrong-value", "yaml-syntax"}


def _makes_a_problem(called: ast.expr) -> bool:
    name = called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")
    return name in ("Problem", "problem", "say", "_say", "_note", "_stop", "Shape")


def _is_id(text: str) -> bool:
    return text.replace("-", "").isalpha() and text.islower() and text not in ("error", "warning")


def test_every_check_has_a_broken_file() -> None:
    """A check that nothing ever fails might as well not be there."""
    shown = {
        line.rpartition("[")[2].rstrip("]")
        for path in BROKEN
        for line in told(path.read_text(encoding="utf-8"), "# says: ")
    }
    assert shown | ELSEWHERE == check_ids()


def test_every_check_function_shows_what_passes_and_what_fails() -> None:
    from weldwhy import soundness

    for check in (*lint.CHECKS, *soundness.CHECKS):
        assert "Passes: " in (check.__doc__ or ""), check.__name__
        assert "Fails: " in (check.__doc__ or ""), check.__name__
