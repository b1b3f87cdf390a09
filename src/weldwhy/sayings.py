"""Phrases that people use, by what they mean: gathered from the items of the rules.

A meaning is one text: the kind, then what is meant, such as "symptom porosity",
"answer gas-flow-reading low", "remedy liner-dirty blow-out-liner" or "position vertical up".
"beside volts" are words that tell of a number, or of a metal's name, beside them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from weldwhy.survey import Data, Item

PLAIN = ("symptom", "cause", "process", "material", "setting", "job")
"""Kinds of items whose phrases mean the item itself."""


def gathered(items: Mapping[str, Mapping[str, Item]]) -> dict[str, tuple[str, ...]]:
    """The phrases of all items, in the order of the files."""
    found: dict[str, tuple[str, ...]] = {}
    for kind in ("saying", *PLAIN, "check"):
        for item in items.get(kind, {}).values():
            for meaning, phrases in _of(kind, item.id, item.data):
                found[meaning] = (*found.get(meaning, ()), *phrases)
    return found


def _of(kind: str, name: str, data: Data) -> Iterator[tuple[str, list[str]]]:
    said = data.get("said")
    if kind == "check":
        for answer, phrases in (said or {}).items():
            yield f"answer {name} {answer}", phrases
    elif kind == "saying":
        yield f"{data['field']} {data['value']}", data["said"]
    elif said:
        yield f"{kind} {name}", said
    if kind == "setting" and "words" in data:
        yield f"beside {name}", data["words"]
    for remedy in data.get("remedies", ()) if kind == "cause" else ():
        if "said" in remedy:
            yield f"remedy {name} {remedy['remedy']}", remedy["said"]
