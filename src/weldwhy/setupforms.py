"""The declared form of what a set-up needs: gases, grades, fillers, tables, set-ups, machines.

Each key has its shape and its line of the manual. `schema` puts them into files.
"""

from __future__ import annotations

from weldwhy.model import JOINTS, PLACES, POSITIONS, SUITS
from weldwhy.shape import Key, ListShape, MapShape, Shape, keys, optional
from weldwhy.units import parse_target
from weldwhy.values import cited, new_id, number, quantity, ref, text, word, yes_no

_SOURCE = Key("source", cited(), "where this is from")
_PROCESSES = ListShape(ref("process"), least=1)
_MATERIALS = ListShape(ref("material"))
_CAUTIONS = ListShape(ref("caution"))
_ALSO = ListShape(text())
_RANGE = text('a range, such as "30 A to 180 A"')
_LIMITS = MapShape(ref("setting"), _RANGE)
_SIDE = word("plus", "minus", "ac")


def _flow(found: str) -> str:
    """The text of a gas flow with its range, known to be good."""
    parse_target(found, "flow")
    return found


_FLOW = Shape(
    'a flow with its range, such as "25 cfh (20-30)"', {"type": "string"}, _flow, "bad-target"
)

GRADE = keys(
    "grade",
    Key("grade", new_id("grade"), "its id"),
    Key("name", text(), "what it is, in a few words, with its standard name"),
    Key("material", ref("material"), "the metal it belongs to"),
    optional("also", _ALSO, "other names of the same grade"),
    Key("makes", MapShape(text("an element, such as Mn"), number(0, 100), least=1),
        "mass percent of each element: the highest its standard allows, or as the note says"),
    optional("note", text(), "anything to be told with it"),
    _SOURCE,
)  # fmt: skip

GAS = keys(
    "gas",
    Key("gas", new_id("gas"), "its id"),
    Key("name", text(), "its name"),
    optional("also", _ALSO, "other names people use"),
    optional("group", text(), "its group in ISO 14175"),
    Key("parts", MapShape(word("argon", "helium", "co2", "oxygen", "hydrogen", "nitrogen"),
                          number(0, 100), least=1), "volume percent of each part"),
    _SOURCE,
)  # fmt: skip

FILLER = keys(
    "filler",
    Key("filler", new_id("filler"), "its id"),
    Key("name", text(), "its class in the standard"),
    Key("kind", word("solid wire", "cored wire", "rod", "filler rod"), "what it is"),
    Key("processes", _PROCESSES, "the processes it is for"),
    Key("materials", ListShape(ref("material"), least=1), "the metals it is for"),
    optional("grades", ListShape(ref("grade")), "only for these grades; all of the metal if none"),
    Key("use", text(), "what it is good for, in one sentence"),
    optional("electrode", ListShape(_SIDE), "polarity on its side, the usual one first"),
    optional("hydrogen", number(0, 60), "diffusible hydrogen it leaves, ml in 100 g of weld"),
    optional("positions", ListShape(word(*POSITIONS)), "only in these; all if left out"),
    _SOURCE,
)

TABLE = keys(
    "table",
    Key("table", new_id("table"), "its id"),
    Key("name", text(), "what its figures are"),
    Key("columns", MapShape(text("a column"), text("its unit")), "each column and its unit"),
    Key("rows", MapShape(text("a row"), ListShape(number(0, 1e9), unique=False), least=1),
        "what each row stands for, and its figures in the order of the columns"),
    optional("note", text(), "anything to be told with it"),
    _SOURCE,
)  # fmt: skip

SHIFT = keys(
    "shift",
    Key("shift", new_id("shift"), "its id"),
    Key("name", text(), "what it is"),
    Key("processes", _PROCESSES, "the processes it holds for"),
    optional("joints", ListShape(word(*JOINTS)), "the joints it is for"),
    optional("positions", ListShape(word(*POSITIONS)), "the positions it is for"),
    Key("scale", MapShape(ref("setting"), number(0.3, 2), least=1),
        "each setting, and how many times as much of it"),
    Key("why", text(), "why, in one sentence"),
    _SOURCE,
)  # fmt: skip

_WHEN = (
    optional("materials", _MATERIALS, "only for these metals"),
    optional("joints", ListShape(word(*JOINTS)), "only for these joints"),
    optional("positions", ListShape(word(*POSITIONS)), "only in these positions"),
    optional("places", ListShape(word(*PLACES)), "only in these places"),
    optional("above", quantity("length"), "only for metal thicker than this"),
    optional("below", quantity("length"), "only for metal thinner than this"),
)

SUITING = keys(
    "suiting",
    Key("suits", word(*SUITS), "how well it suits"),
    Key("why", text(), "why, in one sentence"),
    *_WHEN,
    _SOURCE,
)
PART = keys(
    "part",
    Key("part", text(), "what it is: drive rolls, contact tip, liner, cup"),
    Key("choose", text(), "which one to choose"),
    *_WHEN,
    _SOURCE,
)
SETUP_STEP = keys(
    "checklist step",
    Key("do", text(), "what to do, in one or two short sentences"),
    optional("cautions", _CAUTIONS, "warnings shown before it"),
    *_WHEN,
    _SOURCE,
)
TEST_BEAD = keys(
    "test bead",
    Key("run", text(), "what to run, and on what"),
    Key("sound", text(), "what a sound one looks like"),
    optional("fillet", yes_no(), "whether it is a fillet, whose leg is measured"),
    optional("cautions", _CAUTIONS, "warnings shown before it"),
    *_WHEN,
    _SOURCE,
)
GAS_CHOICE = keys(
    "gas choice",
    Key("gas", ref("gas"), "the gas to take"),
    Key("flow", _FLOW, "the usual flow of it"),
    *_WHEN,
    _SOURCE,
)
SIZE_CHOICE = keys(
    "size choice",
    Key("of", word("wire", "rod", "tungsten", "filler rod"), "what it is the size of"),
    Key("size", quantity("length"), "the usual size"),
    *_WHEN,
    _SOURCE,
)
STANDING = keys(
    "standing caution",
    Key("caution", ref("caution"), "the warning that stands over the whole work"),
    *_WHEN,
)
SETUP = keys(
    "setup",
    Key("setup", ref("process"), "the process; the file has its name"),
    Key("gun", _SIDE, "the terminal of gun, torch or rod holder"),
    Key("clamp", _SIDE, "the terminal of the work clamp"),
    Key("holder", text(), "what is in the hand: gun, torch or rod holder"),
    optional("note", text(), "anything to be told with the hook-up"),
    Key("suits", ListShape(SUITING), "how well the process suits; of several, the worst counts"),
    optional("gases", ListShape(GAS_CHOICE), "the shielding gas; the first that fits is taken"),
    optional("sizes", ListShape(SIZE_CHOICE), "the usual sizes; of each the first that fits"),
    optional("cautions", ListShape(STANDING), "warnings that stand over the whole work"),
    Key("parts", ListShape(PART), "what goes into or onto the machine"),
    Key("checklist", ListShape(SETUP_STEP, least=1), "what to do, in order"),
    Key("test_beads", ListShape(TEST_BEAD, least=1), "the test bead; the first that fits is shown"),
    _SOURCE,
)

MACHINE_KEYS = (
    Key("name", text(), "what you call it"),
    Key("processes", _PROCESSES, "the processes it can do"),
    optional("limits", _LIMITS, "what it reaches, by setting"),
    optional("limits_in", MapShape(ref("process"), _LIMITS),
             "processes where it reaches more or less"),
    optional("duty", ListShape(text('a rating, such as "30 % at 130 A"')), "its duty cycle"),
    optional("supply", quantity("voltage"), "the mains voltage it is plugged into"),
    optional("breaker", quantity("current"), "the breaker or fuse of that socket"),
    optional("dials", MapShape(ref("setting"), MapShape(text("a mark"), text("its value"))),
             "for dials with marks only: what some of the marks stand for"),
    optional("gun", quantity("distance"), "length of the gun's or torch's cable"),
    optional("work_lead", quantity("distance"), "length of the work lead"),
    optional("lead", quantity("section"), "section of the copper in both leads"),
    optional("cord", quantity("distance"), "length of an extension cord, if one is in use"),
    optional("note", text(), "anything to be told with it"),
)  # fmt: skip
MACHINE = keys("machine", Key("machine", new_id("machine"), "its id"), *MACHINE_KEYS)
