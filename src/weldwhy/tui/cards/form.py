"""A form: numbered lines that are picked from a list or typed, each with what stands there now."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from weldwhy.plaintext import capital
from weldwhy.tui.cards.card import Act, Card, Choice, text_body

TYPE_IT = "type"
"""The choice to type what is not listed."""
_PICKED = "="
"""Before the value in the act of a picked option."""


@dataclass(frozen=True, slots=True)
class Field:
    """One line of a form. With `options` (value, name) it is picked; `typed` too, if that is set.

    `none` is what is said where nothing stands; "" in the value means that nothing does.
    """

    id: str
    name: str
    value: str = ""
    shown: str = ""
    options: tuple[tuple[str, str], ...] = ()
    example: str = ""
    typed: bool = False
    none: str = "don't know"
    heading: str = ""


@dataclass(frozen=True, slots=True)
class Editing:
    """The field being typed into, what stands in it, and what is wrong with it."""

    field: str
    text: str
    fault: str = ""


def form_card(
    said: Sequence[tuple[str, str]],
    fields: Sequence[Field],
    editing: Editing | None,
    others: tuple[Choice, ...] = (),
    where: str = "",
) -> Card:
    """The form as a card; `others` are left out while something is typed."""
    choices = tuple(_choice(field, editing) for field in fields)
    return Card(text_body(said), choices, () if editing else others, where=where)


def _choice(field: Field, editing: Editing | None) -> Choice:
    name = capital(field.name)
    if editing is None or editing.field != field.id:
        return Choice(f"{name}: {field.shown or field.none}", field.id, field.heading)
    note = editing.fault or f"Such as {field.example}. " * bool(field.example)
    if not editing.fault:
        note += "Enter keeps it, esc leaves it."
    role = "caution" if editing.fault else "dim"
    return Choice(f"{name}: {editing.text}_", field.id, field.heading, note, note_role=role)


def options_card(field: Field, where: str = "") -> Card:
    """What may be picked for a field; "" stands for nothing, which is told too."""
    choices = [Choice(capital(name), f"{_PICKED}{value}") for value, name in field.options]
    if field.typed:
        choices.append(Choice("Another one: type it", TYPE_IT))
    unknown = Choice(capital(field.none), _PICKED, key="0")
    body = text_body([(f"{capital(field.name)}?", "strong")])
    return Card(body, tuple(choices), (unknown,), where=where)


def picked(act: Act | None) -> str | None:
    """The value that was picked; None when none was."""
    if isinstance(act, str) and act.startswith(_PICKED):
        return act.removeprefix(_PICKED)
    return None
