"""The declared form of the larger items: cause, remedy, case, check, symptom, window.

Each key has its shape and its line of the manual. `schema` puts them into files.
"""

from __future__ import annotations

from weldwhy.drawforms import PICTURE
from weldwhy.model import POSITIONS
from weldwhy.shape import Key, ListShape, MapShape, keys, optional
from weldwhy.values import (
    cited,
    in_short,
    new_id,
    number,
    pattern,
    phrase,
    quantity,
    ref,
    text,
    word,
    yes_no,
)

GRADES = (
    "never", "hardly ever", "seldom", "sometimes", "half the time",
    "often", "usually", "almost always", "always",
)  # fmt: skip
BASES = ("rare", "occasional", "common", "very common")
NOISES = ("gauge", "plain", "by eye")

GRADE = word(*GRADES, called="a likelihood word")
_PROCESSES = ListShape(ref("process"), least=1)
_SOME_PROCESSES = ListShape(ref("process"))
_MATERIALS = ListShape(ref("material"))
_CAUTIONS = ListShape(ref("caution"))
_SETTING_IDS = ListShape(ref("setting"))
ALSO = ListShape(text())
SAID = ListShape(phrase())
SOURCE = Key("source", cited(), "where this is from")
_TARGETS = MapShape(ref("setting"), text('a target, such as "18.5 V (17.5-19.5)"'))


REMEDY = keys(
    "remedy",
    Key("remedy", new_id("remedy"), "its id"),
    Key("do", text(), "what to do, in one or two short sentences"),
    optional("short", in_short(100), "the same in short for a wall chart, nothing dangerous lost"),
    Key("minutes", number(0, 1000), "how long it takes, without the test bead"),
    optional("works", GRADE, "how often it cures this cause; almost always if left out"),
    optional("said", SAID, "what people say who have done it already"),
    optional("settings", _SETTING_IDS, "settings shown with it: yours, try, allowed range"),
    optional("cautions", _CAUTIONS, "warnings shown before it"),
    Key("source", cited(), "where the remedy is from"),
    optional("stop", yes_no(), "yes: the remedy is to stop work and call somebody"),
    optional("call", text(), "whom to call; needed with stop"),
)

CASE = keys(
    "case",
    Key("story", text(), "what a welder would tell, in a sentence or two"),
    Key("process", ref("process"), "the process of the story"),
    Key("symptom", ref("symptom"), "what is reported"),
    optional("material", ref("material"), "the metal, if the story says so"),
    optional("thickness", quantity("length"), "the thickness, if the story says so"),
    optional("settings", MapShape(ref("setting"), text("a value with its unit")), "read values"),
    optional("answers", MapShape(ref("check"), text("an answer id")), "what the checks would find"),
    Key("leads", yes_no(), "yes: this cause must come out on top; no: it must not"),
    Key("says", cited(), "who says so"),
)

CAUSE = keys(
    "cause",
    Key("cause", new_id("cause"), "its id, the same as the file's name"),
    Key("name", text(), "its short name, as said in a shop"),
    Key("what", text(), "what is wrong and why that shows, in one or two sentences"),
    Key("family", ref("family"), "the family; the file lies in the folder of that name"),
    Key("share", word("operator", "machine", "material", "consumable"), "where the fault lies"),
    Key("processes", _PROCESSES, "the processes where it happens"),
    optional("materials", _MATERIALS, "only when the cause needs that metal"),
    Key("base", word(*BASES), "how often it is met in a small shop, before any evidence"),
    optional("base_in", MapShape(ref("process"), word(*BASES)),
             "processes where it is met more or less often than that"),
    optional("exclusive", text(), "causes with the same words here never occur together"),
    optional("hazard", yes_no(), "yes: it endangers people, so its check comes first"),
    optional(
        "setting",
        pattern(
            "a setting and its side", "[a-z0-9_-]+ too (?:low|high)", "gas_flow too low", "setting"
        ),
        "the setting whose read value speaks for or against it",
    ),
    Key("symptoms", MapShape(ref("symptom"), GRADE, least=1),
        "how often each symptom shows when only this is wrong"),
    optional("shows", MapShape(ref("check"), MapShape(text("an answer id"), GRADE, least=1)),
             "how often a check gets an answer when only this is wrong"),
    Key("remedies", ListShape(REMEDY), "the cheapest sensible one first"),
    optional("said", SAID, "what people say who suspect it"),
    optional("prevent", text(), "how to keep it from coming back"),
    Key("source", cited(), "where the cause is from"),
    Key("cases", ListShape(CASE), "stories to test the rule by, both leads: yes and leads: no"),
)  # fmt: skip

CHECK = keys(
    "check",
    Key("check", new_id("check"), "its id"),
    Key("ask", text(), "what to ask, or what to do and look for"),
    Key("how", word("ask", "look", "try", "measure"), "what kind of check it is"),
    Key("minutes", number(0, 1000), "how long it takes"),
    optional("processes", _SOME_PROCESSES, "only for these; all if left out"),
    optional("symptoms", ListShape(ref("symptom")), "only for these; all if left out"),
    optional("materials", _MATERIALS, "only for these; all if left out"),
    Key("answers", MapShape(new_id("answer"), text(), least=2),
        "answer id and its short text; the normal answer first"),
    Key("off_normal", GRADE,
        "how often the answer is not the normal one though nothing linked to it is wrong"),
    optional("spread", MapShape(text("an answer id"), number(0.01, 100)),
             "shares of the other answers in that; equal if left out"),
    optional("said", MapShape(text("an answer id"), SAID), "what people say who mean an answer"),
    optional("noise", word(*NOISES), "how sure an answer is; plain if left out"),
    optional("dont_know", GRADE, "how often nobody can say; seldom if left out"),
    optional("ordered", yes_no(), "yes: the answers stand in order of size"),
    optional("same_look", text(), "checks with the same words here look at the same thing"),
    optional("setting", ref("setting"), "a read value of this setting answers the check"),
    optional("cautions", _CAUTIONS, "warnings shown before it"),
    Key("settles", text(), "why it is worth doing: what it tells apart"),
    SOURCE,
)  # fmt: skip

SYMPTOM = keys(
    "symptom",
    Key("symptom", new_id("symptom"), "its id, the same as the file's name"),
    Key("name", text(), "its name in the trade"),
    optional("also", ALSO, "other names people use"),
    optional("said", SAID, "what else people say who mean it"),
    Key("group", ref("group"), "where one notices it"),
    Key("processes", _PROCESSES, "the processes where it happens"),
    optional("materials", _MATERIALS, "only in these metals; any if left out"),
    Key("looks", text(), "what it looks like"),
    optional("confused_with", text(), "what it is often taken for, and how to tell"),
    optional("picture", PICTURE, "how it is drawn"),
    optional("looks_like", MapShape(ref("symptom"), GRADE),
             "other symptoms, and how often one is taken for this picture; its own counts as 1"),
    optional("iso_6520_1", text(), "its number in ISO 6520-1"),
    optional("limits", text(), "how much of it a standard allows"),
    optional("cautions", _CAUTIONS, "warnings shown before every step of a case that reports it"),
    SOURCE,
)  # fmt: skip

ROW = keys(
    "row",
    optional("thickness", quantity("length"), "the thickness; any if left out"),
    optional("size", quantity("length"), "the wire, rod or tungsten; any if left out"),
    Key("targets", _TARGETS, "setting id and its target and range"),
)

WINDOW = keys(
    "window",
    Key("window", new_id("window"), "its id"),
    Key("name", text(), "what it is for"),
    Key("processes", _PROCESSES, "the processes it holds for"),
    Key("materials", ListShape(ref("material"), least=1), "the metals it holds for"),
    Key("size_of", ref("setting"), "what size means in the rows: wire, rod or tungsten"),
    optional("consumable", text(), "the class of wire, rod or filler"),
    optional("gas", ListShape(ref("gas")), "the shielding gases it holds for, the usual one first"),
    optional("transfer", text(), "how the metal crosses the arc: short circuit, globular, spray"),
    optional("inductance", text(), "where the inductance dial starts, in words"),
    optional("positions", ListShape(word(*POSITIONS)), "only in these; all if left out"),
    optional("targets", _TARGETS, "what holds in every row"),
    optional("outdoors", _TARGETS, "what changes in moving air"),
    optional("rows", ListShape(ROW), "targets at one thickness and size"),
    optional("note", text(), "anything to be told with it"),
    SOURCE,
)
