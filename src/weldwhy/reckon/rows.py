"""Rows of a table: offered as choices, and the least one that is enough."""

from __future__ import annotations

from collections.abc import Mapping

from weldwhy.model import RuleBase, Table
from weldwhy.reckon.calculator import Choices


def of(table: str) -> Choices:
    """The rows of a table, each by its own name."""

    def names(rules: RuleBase) -> Mapping[str, str]:
        return {row: row for row in rules.tables[table].rows}

    return names


def least(table: Table, ending: str = "", **enough: float) -> str:
    """The smallest row, of those that end so, that reaches each of the figures; "" if none does.

    Small is by the first figure named. A column is named with _ for each blank.
    """
    columns = {name.replace("_", " "): wanted for name, wanted in enough.items()}
    fitting = [
        row
        for row in table.rows
        if row.endswith(ending)
        and all(table.value(row, name) >= wanted for name, wanted in columns.items())
    ]
    first = next(iter(columns))
    return min(fitting, key=lambda row: table.value(row, first), default="")


def at_most(table: Table, column: str, value: float) -> str:
    """The row with the greatest figure that is not above the value by more than 1 %; "" if none."""
    fitting = [row for row in table.rows if table.value(row, column) <= value * 1.01]
    return max(fitting, key=lambda row: table.value(row, column), default="")


def figure(rules: RuleBase, table: str, column: str = "") -> float:
    """The one figure of a table that has a single row, "usual"."""
    return rules.tables[table].value("usual", column)


def source(rules: RuleBase, table: str) -> str:
    """Where the figures of a table are from, as a sentence to be said with a result."""
    cited = rules.tables[table].source
    name, _, place = cited.partition(",")
    known = rules.sources.get(name)
    if known is None:
        return f"Where the figures are from: {cited}."
    basis = " (from memory)" if known.basis == "memory" else ""
    return f"Where the figures are from: {known.title},{place}{basis}."


def warnings(rules: RuleBase, *cautions: str) -> tuple[str, ...]:
    """The texts of these cautions, as far as the rules hold them."""
    return tuple(rules.cautions[each].text for each in cautions if each in rules.cautions)
