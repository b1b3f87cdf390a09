"""What goes onto the machine: polarity, filler, sizes and gas; the person's own before the usual.

Each function gives None, or a note, where the rules hold no answer; nothing is guessed.
"""

from __future__ import annotations

from weldwhy import consumables, gases
from weldwhy.consumables import size_of
from weldwhy.model import Gas, RuleBase, Window
from weldwhy.setupmodel import Filler, Setup
from weldwhy.suiting import Situation, holding
from weldwhy.units import Quantity, Target, show
from weldwhy.windowrows import usual_size
from weldwhy.windows import Found, Settings

FILLER_ROD = "filler rod"
_OTHER = {"plus": "minus", "minus": "plus"}
_SIGNS = {"plus": "positive", "minus": "negative"}


def sides(setup: Setup, filler: Filler | None) -> tuple[str, str]:
    """Terminal of gun, torch or rod holder, and of the work clamp: as the filler wants it."""
    if filler is not None and filler.electrode:
        gun = filler.electrode[0]
        return gun, _OTHER.get(gun, gun)
    return setup.gun, setup.clamp


def polarity(holder: str, gun: str) -> str:
    """The hook-up in words: "gun positive, work clamp negative (DCEP)"."""
    if gun not in _SIGNS:
        return "alternating current, neither side positive (AC)"
    kind = "DCEP" if gun == "plus" else "DCEN"
    return f"{holder} {_SIGNS[gun]}, work clamp {_SIGNS[_OTHER[gun]]} ({kind})"


def consumed(setup: Setup) -> str:
    """The setting under which the filler of a process is told: wire or rod."""
    return "wire" if any(line.of == "wire" for line in setup.sizes) else "rod"


def fillers(rules: RuleBase, process: str, work: Situation, grade: str) -> list[Filler]:
    """The classes for this work, the first to start with; those made for the grade lead."""
    found = [
        each
        for each in rules.fillers.values()
        if process in each.processes
        and work.material in each.materials
        and (not each.grades or grade in each.grades)
        and (not each.positions or work.position in ("", *each.positions))
    ]
    return sorted(found, key=lambda each: grade not in each.grades)


def filler(
    rules: RuleBase, process: str, work: Situation, grade: str, told: str
) -> tuple[Filler | None, str]:
    """The class told in a text such as "1/8 in E7018", else the usual one; and a note.

    A class that is not for this metal, process or position is not taken, and the note says so.
    """
    fitting = fillers(rules, process, work, grade)
    usual = fitting[0] if fitting else None
    asked = [
        each
        for each in rules.fillers.values()
        if any(consumables.same_class(word, each.name) for word in told.split())
    ]
    if not asked:
        unknown = consumables.read(told)[1]
        note = f"{unknown} is not among the classes of this guide: its label decides."
        return (None, note) if unknown else (usual, "")
    mine = [each for each in asked if process in each.processes]
    right = [each for each in mine if work.material in (*each.materials, "")]
    instead = f" Take {usual.name}." if usual else ""
    if right:
        only = right[0].positions
        if not only or work.position in ("", *only):
            return right[0], ""
        return usual, f"{right[0].name} is not for {work.position}.{instead}"
    return usual, f"{asked[0].name} is not for this metal with this process.{instead}"


def with_class(told: Settings, chosen: Filler | None) -> dict[str, Quantity | str]:
    """The settings with the class of the filler beside its size, as the windows want it."""
    if chosen is None:
        return dict(told)
    place = "rod" if chosen.kind in ("rod", FILLER_ROD) else "wire"
    size = size_of(told.get(place))
    return {**told, place: f"{show(size)} {chosen.name}" if size is not None else chosen.name}


def sizes(
    setup: Setup, work: Situation, told: Settings, found: Found | None
) -> tuple[Quantity | None, Quantity | None]:
    """Size of wire, rod or tungsten, and of the filler rod where one is used besides."""
    listed: dict[str, Quantity] = {}
    for line in holding(setup.sizes, work):
        listed.setdefault(line.of, line.size)
    main = next((line.of for line in setup.sizes if line.of != FILLER_ROD), "wire")
    own = size_of(told.get(main))
    if own is None and found is not None:
        own = usual(setup, found.window, work)
    rod = None
    if any(line.of == FILLER_ROD for line in setup.sizes):
        rod = size_of(told.get("rod")) or listed.get(FILLER_ROD)
    return own or listed.get(main), rod


def usual(setup: Setup, window: Window, work: Situation) -> Quantity | None:
    """The size of wire, rod or tungsten that a window takes where none is told.

    A size that the set-up lists for the position is the greatest there: a larger pool falls out.
    """
    thick = None if work.thickness is None else Quantity("length", work.thickness, "mm")
    size = usual_size(window, thick)
    listed = (
        line.size
        for line in holding(setup.sizes, work)
        if line.of == window.size_of and line.when.positions
    )
    greatest = next(listed, None)
    return greatest if size and greatest and greatest.value < size.value else size


def gas(
    rules: RuleBase, setup: Setup, work: Situation, told: str, found: Found | None
) -> tuple[tuple[Gas, Target] | None, str]:
    """The gas told, else the one that the numbers are for, else the usual; its flow; a note."""
    choice = next(iter(holding(setup.gases, work)), None)
    if choice is None:
        return None, ""
    listed = found.window.gas if found is not None else ()
    normal = rules.gases.get(listed[0] if listed else choice.gas)
    own = gases.read(rules, told) if told else None
    taken = own or normal
    if taken is None:
        return None, ""
    flow = (found.targets if found is not None else {}).get("gas_flow", choice.flow)
    note = ""
    if told and own is None:
        note = f"The gas told is not one of this guide; {taken.name} is taken."
    elif normal is not None and not gases.fits(rules, told, listed or (normal.id,)):
        note = f"{taken.name} is not the gas that is usual here: {normal.name}."
        # a heavier or lighter gas wants its own flow, where the set-up lists it
        own_flows = (each.flow for each in holding(setup.gases, work) if each.gas == taken.id)
        flow = next(own_flows, flow)
    return (taken, flow), note
