"""The results of a calculator as plain values, for the tests that ask for one by name."""

from __future__ import annotations

from typing import Any

from weldwhy.reckon.calculator import Outcome
from weldwhy.units import Quantity, convert


def value(outcome: Outcome, name: str) -> Any:
    """A result as text or a number, a quantity in the base unit of its kind."""
    (found,) = (each.value for each in outcome.outputs if each.id == name)
    return found.value if isinstance(found, Quantity) else found


def in_unit(outcome: Outcome, name: str, unit: str) -> float:
    """A result in a unit."""
    (found,) = (each.value for each in outcome.outputs if each.id == name)
    assert isinstance(found, Quantity)
    return convert(found, unit)
