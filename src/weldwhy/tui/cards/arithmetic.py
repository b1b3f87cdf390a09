"""The calculators: the list by topic, and one opened, with its inputs, results and formulas."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from weldwhy.model import RuleBase
from weldwhy.plaintext import capital
from weldwhy.reckon.calculator import (
    HOLDS,
    SOURCE,
    Calculator,
    Input,
    Outcome,
    ReckonError,
    examples,
    given,
    shown,
    work,
)
from weldwhy.reckon.wording import topics
from weldwhy.tui.cards.card import Card, Choice, opening, text_body
from weldwhy.tui.cards.form import Editing, Field, form_card
from weldwhy.tui.rows import BLANK, Row, inset, paragraph, rule

WHERE = "Arithmetic"
LEFT_OUT, EXAMPLE = "left out", "the example"


@dataclass(frozen=True, slots=True)
class Sum:
    """A calculator as it stands: its texts, and its outcome or what is wrong with them.

    `system` is the unit system to show results in; `examples` are the texts nobody typed.
    """

    calculator: Calculator
    texts: Mapping[str, str]
    system: str | None
    examples: frozenset[str]
    outcome: Outcome | None = None
    fault: str = ""


def reckoned(
    rules: RuleBase, calculator: Calculator, typed: Mapping[str, str], system: str | None
) -> Sum:
    """What comes of the inputs typed ("": left out), with examples for the others."""
    texts = {**examples(rules, calculator, system), **typed}
    texts = {name: text for name, text in texts.items() if text.strip()}
    assumed = frozenset(texts) - frozenset(typed)
    try:
        inputs = given(rules, calculator, texts, system)
        inputs = inputs.preferring(name for name in texts if name not in assumed)
        outcome = work(rules, calculator, inputs)
    except ReckonError as fault:
        return Sum(calculator, texts, system, assumed, fault=str(fault))
    return Sum(calculator, texts, inputs.system, assumed, outcome)


def told(calculator: Calculator, typed: Mapping[str, str], name: str, text: str) -> dict[str, str]:
    """What is typed once an input is this text; an empty one leaves it out or to its example."""
    optional = next(each.optional for each in calculator.inputs if each.id == name)
    others = {known: old for known, old in typed.items() if known != name}
    return {**others, name: text} if text.strip() or optional else others


def topics_card(calculators: Sequence[Calculator]) -> Card:
    """The topics, each with the names of its calculators."""
    choices = tuple(
        Choice(f"{capital(topic)}: {'; '.join(each.name for each in found)}", topic)
        for topic, found in topics(calculators).items()
    )
    return Card(text_body([("What do you want to work out?", "strong")]), choices, where=WHERE)


def topic_card(topic: str, calculators: Sequence[Calculator]) -> Card:
    """The calculators of one topic."""
    found = topics(calculators)[topic]
    choices = tuple(Choice(capital(each.name), each.id, note=each.about) for each in found)
    return Card(text_body([(f"{capital(topic)}:", "strong")]), choices, where=WHERE)


def fields_of(rules: RuleBase, made: Sum) -> list[Field]:
    """A line for each input, with what was typed or its example."""
    return [_field(rules, each, made) for each in made.calculator.inputs]


def _field(rules: RuleBase, wanted: Input, made: Sum) -> Field:
    options = tuple(wanted.choices(rules).items()) if wanted.choices else ()
    text = made.texts.get(wanted.id, "")
    shown_text, assumed = dict(options).get(text, text), wanted.id in made.examples
    return Field(
        wanted.id,
        wanted.name,
        "" if assumed else text,
        f"{shown_text} (example)" if assumed else shown_text,
        options,
        f'"{wanted.example_in(made.system)}"' if wanted.example else "",
        none=LEFT_OUT if wanted.optional else EXAMPLE,
    )


def sum_card(
    fields: Sequence[Field], editing: Editing | None, made: Sum, copy_key: str, note: str
) -> Card:
    """A calculator opened. Its page goes on with the formulas below the results."""
    calculator = made.calculator
    choices = form_card((), fields, editing).choices

    def body(width: int, room: int) -> list[Row]:
        rows = inset(calculator.about, width, "strong")
        rows += _caution_rows(made, width)
        rows.append(BLANK)
        for number, choice in enumerate(choices, 1):
            rows += _input_rows(choice, number, width)
        title = "Result, with the examples" if made.examples else "Result"
        rows += [BLANK, rule(title, width, f"{copy_key}: copy" * bool(made.outcome))]
        rows += _result_rows(made, width)
        rows += inset(note, width, "notice") if note else []
        return [
            *rows,
            BLANK,
            rule("How it is worked out", width),
            *_formula_rows(calculator, width),
        ]

    return Card(body, choices, where=capital(calculator.name), in_body=True)


def _input_rows(choice: Choice, number: int, width: int) -> list[Row]:
    rows = paragraph(choice.text, width - 1, "text", opening(number))
    if choice.note:
        rows += paragraph(choice.note, width - 1, choice.note_role, ("     ", "text"))
    return [Row(line.spans, number) for line in rows]


def _caution_rows(made: Sum, width: int) -> list[Row]:
    """What must be read before anything is measured or done."""
    cautions = made.outcome.cautions if made.outcome else ()
    return [
        line
        for text in cautions
        for line in paragraph(text, width - 1, "caution", (" CAUTION  ", "caution"))
    ]


def _result_rows(made: Sum, width: int) -> list[Row]:
    if made.outcome is None:
        return inset(made.fault, width, "caution")
    rows: list[Row] = []
    for each in made.outcome.outputs:
        name = (f" {capital(each.name)}: ", "text")
        rows += paragraph(shown(each, made.system), width - 1, "strong", name, hang=3)
    for remark in made.outcome.remarks:
        rows += paragraph(remark, width - 1, "notice", (" NOTE  ", "notice"))
    return rows


def _formula_rows(calculator: Calculator, width: int) -> list[Row]:
    rows: list[Row] = []
    for formula in calculator.manual:
        rows += [BLANK] if rows else []
        for text in formula.says:
            rows += inset(text, width)
        for title, text in ((HOLDS, formula.holds), (SOURCE, formula.source)):
            rows += paragraph(f"{title} {text}", width - 1, "dim", (" ", "text"), hang=3)
    return rows
