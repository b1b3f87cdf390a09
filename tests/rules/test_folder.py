"""The rules folder is pleasant to read: one file for each thing a reader looks for, and short."""

from __future__ import annotations

import pytest

from .conftest import SHIPPED

LONGEST, SYMPTOM = 125, 85
FILES = sorted(
    p for name in ("causes", "checks", "symptoms") for p in (SHIPPED / name).rglob("*.yaml")
)


@pytest.mark.parametrize("kind", ["causes", "checks"])
def test_a_file_of_causes_or_checks_is_one_screen_or_two(kind: str) -> None:
    long = {
        path.name: len(path.read_text(encoding="utf-8").splitlines())
        for path in FILES
        if path.is_relative_to(SHIPPED / kind)
    }
    assert {name: count for name, count in long.items() if not 14 <= count <= LONGEST} == {}


def test_a_symptom_fits_on_a_screen() -> None:
    for path in FILES:
        if path.is_relative_to(SHIPPED / "symptoms"):
            assert len(path.read_text(encoding="utf-8").splitlines()) <= SYMPTOM, path.name


def test_every_file_of_checks_says_in_its_first_line_what_it_is_about() -> None:
    for path in (SHIPPED / "checks").glob("*.yaml"):
        first = path.read_text(encoding="utf-8").splitlines()[0]
        assert first.startswith("# "), path.name
        assert first.endswith("."), path.name
