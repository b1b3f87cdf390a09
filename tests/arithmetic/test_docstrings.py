"""Every formula says what it holds for and where it is from, and something uses it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from importlib import import_module
from inspect import getdoc, getmembers, isfunction, signature
from pathlib import Path
from types import FunctionType

import pytest

import weldwhy
from weldwhy.reckon.calculator import Calculator
from weldwhy.reckon.catalogue import CALCULATORS

PACKAGE = Path(weldwhy.__file__).parent
GUARDS = "bounds"
"""The module that checks numbers and holds no formula."""

MODULES = [
    path.stem
    for path in sorted((PACKAGE / "arithmetic").glob("*.py"))
    if path.stem not in ("__init__", GUARDS)
]


def _formulas() -> Iterator[tuple[str, FunctionType]]:
    """The public functions that a module of arithmetic defines itself."""
    for name in MODULES:
        module = import_module(f"weldwhy.arithmetic.{name}")
        for _, found in getmembers(module, isfunction):
            if found.__module__ == module.__name__ and not found.__name__.startswith("_"):
                yield name, found


FORMULAS = list(_formulas())
NAMED = pytest.mark.parametrize(
    ("module", "formula"), FORMULAS, ids=[f"{m}.{f.__name__}" for m, f in FORMULAS]
)


@NAMED
def test_a_formula_says_what_it_holds_for_and_where_it_is_from(
    module: str, formula: FunctionType
) -> None:
    parts = (getdoc(formula) or "").split("\n\n")
    assert [part for part in parts if part.startswith("Holds for: ")] == parts[-2:-1]
    assert [part for part in parts if part.startswith("Source: ")] == parts[-1:]
    assert len(parts) > 3, "say what it gives, and the formula with its symbols"
    assert all(part.rstrip().endswith(".") for part in (parts[0], *parts[-2:]))


@NAMED
def test_a_formula_names_the_types_of_what_it_takes_and_gives(
    module: str, formula: FunctionType
) -> None:
    about = signature(formula)
    assert about.return_annotation != about.empty
    assert all(p.annotation != p.empty for p in about.parameters.values())


def _names_used(path: Path) -> set[str]:
    """Names read in a file, as such or after a point; not those that are only imported."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    plain = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    return plain | {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}


USED = {path: _names_used(path) for path in PACKAGE.rglob("*.py")}


@NAMED
def test_a_formula_is_used(module: str, formula: FunctionType) -> None:
    """By a calculator or another module: names are unique enough for a name to be a use."""
    assert any(formula.__name__ in names for names in USED.values()), "nothing calls it"


def test_formulas_have_names_of_their_own() -> None:
    names = [formula.__name__ for _, formula in FORMULAS]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda each: each.id)
def test_what_people_are_shown_of_a_formula_names_no_part_of_the_program(
    calculator: Calculator,
) -> None:
    for formula in calculator.manual:
        for text in (*formula.says, formula.holds, formula.source):
            assert "`" not in text
            assert not re.search(r"[a-z]{2,}_[a-z]{2,}", text)
