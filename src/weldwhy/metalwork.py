"""What a metal is: by the name of its grade, by its composition as typed, or by its kind alone."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from weldwhy.arithmetic.bounds import Impossible
from weldwhy.arithmetic.makes import sound
from weldwhy.model import RuleBase, Table
from weldwhy.plaintext import clean
from weldwhy.problems import nearest
from weldwhy.units import UnitError, parse_number

ELEMENTS = frozenset((
    "Al", "B", "Bi", "C", "Co", "Cr", "Cu", "Fe", "Mg", "Mn", "Mo", "N", "Nb", "Ni", "P", "Pb",
    "S", "Se", "Si", "Sn", "Ta", "Te", "Ti", "V", "W", "Zn", "Zr",
))  # fmt: skip
"""Elements that steel, stainless steel and aluminium are made of or spoilt by."""
_JOINED = re.compile(r"(?<=[A-Za-z])(?=[0-9]*[.,][0-9])")


class MetalError(Impossible):
    """Text that names no metal, or one that cannot be; str() is one plain line."""


@dataclass(frozen=True, slots=True)
class Metal:
    """A metal to reckon with: `makes` in mass percent. `id` is its grade or kind, "" if typed."""

    name: str
    material: str
    makes: Mapping[str, float]
    id: str = ""
    note: str = ""


def read(rules: RuleBase, text: str) -> Metal:
    """The metal meant by a grade ("A36", "1.4301") or a composition ("C 0.18 Mn 1.2").

    MetalError for what is neither, Impossible for percents that cannot be.
    """
    names = {
        _key(name): grade
        for grade in reversed([*rules.grades.values()])
        for name in (*grade.also, grade.name, grade.id)
    }
    grade = names.get(_key(text))
    if grade is not None:
        return _of_grade(rules, grade.id)
    words = _JOINED.sub(" ", re.sub(r"[=:;%]", " ", text)).split()
    if len(words) >= 2 and words[0].capitalize() in ELEMENTS:
        makes = _composition(words)
        return Metal(" ".join(text.split()), _kind(rules, makes), makes)
    near = nearest(text[:40], rules.grades)
    hint = (
        f'did you mean "{near}"?'
        if near
        else 'write a grade, such as A36, or what it is made of, such as "C 0.18 Mn 1.2"'
    )
    raise MetalError(f'unknown metal "{clean(text[:40])}"; {hint}')


def told(rules: RuleBase, grade: str) -> Metal | None:
    """The metal told of a case, by the id of its grade or by its composition; None if neither."""
    if grade in rules.grades:
        return _of_grade(rules, grade)
    try:
        return read(rules, grade) if grade else None
    except Impossible:
        return None


def known(rules: RuleBase, grade: str, material: str) -> Metal | None:
    """The metal of a case: as told, else what a steel of that kind is taken to be made of.

    None if neither says what it is made of.
    """
    metal = told(rules, grade)
    if metal is not None:
        return metal
    taken = rules.tables.get("steel-taken")
    if taken is None or material not in taken.rows:
        return None
    kind = rules.materials[material].name if material in rules.materials else material
    return Metal(kind, material, composition_of(taken, material), material)


def is_steel(rules: RuleBase, material: str) -> bool:
    """Whether a metal by its kind is a plain or low-alloy steel, which may harden beside a weld."""
    taken = rules.tables.get("steel-taken")
    return taken is not None and material in taken.rows


def composition_of(table: Table, row: str) -> dict[str, float]:
    """The mass percents in a row of a table: the columns that are named after an element."""
    pairs = zip(table.columns, table.rows[row], strict=True)
    return {column: figure for column, figure in pairs if column in ELEMENTS}


def verdict(table: Table, value: float) -> str:
    """The words of the first row whose figure is not below the value; the last if all are."""
    rows = list(table.rows)
    return next((row for row in rows if value <= table.value(row)), rows[-1])


def _of_grade(rules: RuleBase, grade_id: str) -> Metal:
    grade = rules.grades[grade_id]
    return Metal(grade.name, grade.material, grade.makes, grade.id, grade.note)


def _kind(rules: RuleBase, makes: Mapping[str, float]) -> str:
    """The kind of metal that a composition belongs to; "" if the rules cannot say."""
    stainless, kinds = rules.tables.get("stainless-from"), rules.tables.get("metal-kind")
    if stainless is not None and makes.get("Cr", 0.0) >= stainless.value("Cr"):
        return "stainless"
    for row, (least, *_) in (kinds.rows if kinds else {}).items():
        material, _, element = row.partition(" ")
        if makes.get(element, 0.0) >= least:
            return material
    return ""


def _key(name: str) -> str:
    """A name without what people write as they like: "A-572 gr 50" is "a572 Gr 50"."""
    return re.sub(r"[\s_-]", "", name.lower())


def _composition(words: list[str]) -> dict[str, float]:
    """The mass percents in "C", "0.18", "Mn", "1.2"."""
    makes: dict[str, float] = {}
    if len(words) % 2:
        raise MetalError(
            f'"{clean(words[-1][:20])}" needs its percent; write it like C 0.18 Mn 1.2'
        )
    for symbol, number in zip(words[::2], words[1::2], strict=True):
        element = symbol.strip(",").capitalize()
        if element not in ELEMENTS:
            raise MetalError(f'unknown element "{clean(symbol[:20])}"; write it like C 0.18 Mn 1.2')
        if element in makes:
            raise MetalError(f"{element} is there twice")
        try:
            makes[element] = parse_number(number.rstrip(","))
        except UnitError as fault:
            raise MetalError(f"{element}: {fault}") from None
    return dict(sound(makes))
