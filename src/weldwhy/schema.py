"""Every kind of rule file: where it lies, what it holds, and the form of its items.

The same declaration reads the files, makes the JSON Schema that editors complete and warn from
(`json_schema`), and prints the tables of `rules/README.md` (`python -m weldwhy.schema`).
"""

from __future__ import annotations

import sys
from dataclasses import dataclass

from weldwhy.drawforms import PICTURE
from weldwhy.forms import (
    ALSO,
    BASES,
    CASE,
    CAUSE,
    CHECK,
    GRADE,
    NOISES,
    REMEDY,
    ROW,
    SAID,
    SOURCE,
    SYMPTOM,
    WINDOW,
)
from weldwhy.model import BESIDE, JOINTS, PLACES, POSITIONS
from weldwhy.setupforms import (
    FILLER,
    GAS,
    GAS_CHOICE,
    MACHINE,
    PART,
    SETUP,
    SETUP_STEP,
    SHIFT,
    SIZE_CHOICE,
    STANDING,
    SUITING,
    TABLE,
    TEST_BEAD,
)
from weldwhy.setupforms import GRADE as METAL_GRADE
from weldwhy.shape import JsonSchema, Key, Keys, ListShape, MapShape, keys, optional
from weldwhy.values import in_short, new_id, number, ref, text, word, yes_no


@dataclass(frozen=True, slots=True)
class FileKind:
    """One kind of rule file. `list_key` is set where a file holds a list of items."""

    kind: str
    where: str
    about: str
    shape: Keys
    list_key: str = ""

    @property
    def whole(self) -> Keys:
        """The shape of the whole file."""
        if not self.list_key:
            return self.shape
        return keys(self.kind, Key(self.list_key, ListShape(self.shape, least=1), self.about))


_KINDS = (
    FileKind("likelihood", "likelihood.yaml", "what the likelihood words mean as numbers", keys(
        "likelihood",
        Key("grades", MapShape(GRADE, number(0.001, 0.999), least=1), "chance of each word"),
        Key("base", MapShape(word(*BASES), number(0.1, 1000), least=1), "weight of each word"),
        Key("noise", MapShape(word(*NOISES), number(0.001, 0.5), least=1), "chance of a slip"),
    )),
    FileKind("process", "processes.yaml", "the welding processes", keys(
        "process",
        Key("process", new_id("process"), "its id"),
        Key("name", text(), "its standard name"),
        Key("plain", text(), "what people call it"),
        Key("polarity", text(), "how it is hooked up"),
        optional("said", SAID, "what people say who mean it"),
        SOURCE,
    ), "processes"),
    FileKind("material", "materials.yaml", "the metals", keys(
        "material",
        Key("material", new_id("material"), "its id"),
        Key("name", text(), "its name"),
        optional("also", ALSO, "other names people use"),
        optional("said", SAID, "what else people say who mean it"),
        optional("caution", ref("caution"), "the warning that stands over any work on it"),
    ), "materials"),
    FileKind("grade", "grades.yaml", "base metals by their standard names", METAL_GRADE, "grades"),
    FileKind("gas", "gases.yaml", "the shielding gases", GAS, "gases"),
    FileKind("filler", "fillers.yaml", "classes of wire, rod and filler rod", FILLER, "fillers"),
    FileKind("shift", "shifts.yaml", "what a joint or a position changes", SHIFT, "shifts"),
    FileKind("machine", "machines.yaml", "machines to start from", MACHINE, "machines"),
    FileKind("job", "jobs.yaml", "what the weld is for", keys(
        "job",
        Key("job", new_id("job"), "its id"),
        Key("name", text(), "what it is"),
        optional("said", SAID, "what people say who mean it"),
        optional("caution", ref("caution"), "the warning that stands over the whole job"),
    ), "jobs"),
    FileKind("family", "families.yaml", "the families of causes, and their folders", keys(
        "family",
        Key("family", new_id("family"), "its id, the same as the folder's name"),
        Key("name", text(), "its name"),
    ), "families"),
    FileKind("group", "groups.yaml", "where one notices what is wrong", keys(
        "group",
        Key("group", new_id("group"), "its id"),
        Key("name", text(), "its name, as one picks it from a list"),
    ), "groups"),
    FileKind("setting", "settings.yaml", "dials and consumables with a value", keys(
        "setting",
        Key("setting", new_id("setting"), "its id"),
        Key("name", text(), "its name"),
        Key("quantity", word("voltage", "current", "feed", "flow", "length", "temperature",
                             "time", "percent", "speed", "text"), "what is measured"),
        optional("said", SAID, "what people call it"),
        optional("words", SAID, "words that tell that a number beside them is its value"),
        optional("possible", ListShape(text("a value with its unit"), least=2),
                 "two values; an entry outside them is refused"),
        optional("too_little", text(), "what to change when a machine gives less than is wanted"),
        optional("too_much", text(), "what to change when a machine cannot go low enough"),
    ), "settings"),
    FileKind("saying", "sayings.yaml", "what people say of joint, position and place", keys(
        "saying",
        Key("saying", new_id("saying"), "its id"),
        Key("field", word("joint", "position", "place", "beside"), "what it tells"),
        Key("value", word(*JOINTS, *POSITIONS, *PLACES, *BESIDE), "what it says of that"),
        Key("said", SAID, "what people say who mean it"),
    ), "sayings"),
    FileKind("term", "glossary.yaml", "words of the trade", keys(
        "term",
        Key("term", new_id("term"), "its id"),
        Key("name", text(), "the word itself"),
        optional("also", ALSO, "other words for it"),
        Key("means", text(), "what it means, in one or two short sentences"),
        optional("see", ListShape(text("the id of anything")), "what it is about"),
        SOURCE,
    ), "terms"),
    FileKind("lens", "lenses.yaml", "the lightest lens shade by current", keys(
        "lens",
        Key("lens", new_id("lens"), "its id"),
        Key("processes", ListShape(ref("process"), least=1), "where it holds"),
        Key("least", number(0, 2000), "amps from which it holds"),
        Key("most", number(0, 2000), "amps up to which it holds"),
        Key("shade", number(3, 14), "the lightest shade allowed"),
        SOURCE,
    ), "lenses"),
    FileKind("caution", "cautions.yaml", "warnings shown before a step", keys(
        "caution",
        Key("caution", new_id("caution"), "its id"),
        Key("text", text(), "the warning: what to do or not to do"),
        optional("short", in_short(60), "the same in short for a wall chart, no danger lost"),
        SOURCE,
        optional("stop", yes_no(), "yes: do not go on"),
        optional("call", text(), "whom to call; needed with stop"),
        optional("needed_for", ListShape(text()),
                 "words; a step whose text holds one of them must carry this warning"),
    ), "cautions"),
    FileKind("source", "sources.yaml", "where rules come from", keys(
        "source",
        Key("source", new_id("source"), "its id"),
        Key("title", text(), "title of the publication"),
        Key("basis", word("found", "memory", "common practice"), "whether the text was seen"),
        optional("place", text(), "the part of it that was used"),
    ), "sources"),
    FileKind("symptom", "symptoms/<id>.yaml", "what is reported", SYMPTOM),
    FileKind("check", "checks/<topic>.yaml", "questions, looks, tries and readings", CHECK,
             "checks"),
    FileKind("cause", "causes/<family>/<id>.yaml", "what can be wrong", CAUSE),
    FileKind("window", "windows/<topic>.yaml", "where settings may lie", WINDOW, "windows"),
    FileKind("table", "tables/<topic>.yaml", "figures that the arithmetic needs", TABLE, "tables"),
    FileKind("setup", "setups/<process>.yaml", "how a process is set up", SETUP),
)  # fmt: skip

DRAWINGS = {key.shape.noun: key for key in PICTURE.keys if isinstance(key.shape, Keys)}
"""The key of each drawing that a picture can be, by its noun."""

FILES: dict[str, FileKind] = {each.kind: each for each in _KINDS}


def json_schema(kind: str) -> JsonSchema:
    """The JSON Schema of a whole file of this kind."""
    file = FILES[kind]
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"{file.where}: {file.about}",
        **file.whole.schema,
    }


def key_table(shape: Keys) -> list[str]:
    """The Markdown table of a mapping's keys, as `rules/README.md` shows it."""
    rows = ["| key | must be there | what to write | what it is |", "|---|---|---|---|"]
    for key in shape.keys:
        must = "yes" if key.required else "no"
        rows.append(f"| `{key.name}` | {must} | {key.shape.words} | {key.about} |")
    return rows


def tables() -> dict[str, Keys]:
    """Every mapping that the manual explains, by its noun, the larger ones first."""
    parts = {
        "remedy": REMEDY, "case": CASE, "row": ROW, "suiting": SUITING, "part": PART,
        "checklist step": SETUP_STEP, "test bead": TEST_BEAD, "gas choice": GAS_CHOICE,
        "size choice": SIZE_CHOICE, "standing caution": STANDING,
    }  # fmt: skip
    drawn = {"picture": PICTURE} | {
        noun: key.shape for noun, key in DRAWINGS.items() if isinstance(key.shape, Keys)
    }
    large = {kind: FILES[kind].shape for kind in ("cause", "check", "symptom", "window", "setup")}
    rest = {kind: file.shape for kind, file in FILES.items() if kind not in large}
    return large | parts | drawn | rest


def manual() -> list[str]:
    """The end of `rules/README.md`: a table of keys for every mapping there is."""
    lines = ["## Every key"]
    for noun, shape in tables().items():
        lines += ["", f"### {noun}", "", _where(noun), "", *key_table(shape)]
    return lines


def _where(noun: str) -> str:
    file = FILES.get(noun)
    if noun in DRAWINGS:
        return f"Under `{DRAWINGS[noun].name}:` of a picture: {DRAWINGS[noun].about}."
    if file is None and noun == "picture":
        return "Under `picture:` of a symptom: one of these drawings."
    if file is None:
        return f"Each part of the list {_HOLDERS[noun]}."
    listed = f" The file holds a list under `{file.list_key}:`." if file.list_key else ""
    return f"In `{file.where}`: {file.about}.{listed}"


_HOLDERS = {
    "remedy": "`remedies` of a cause",
    "case": "`cases` of a cause",
    "row": "`rows` of a window",
    "suiting": "`suits` of a setup",
    "part": "`parts` of a setup",
    "checklist step": "`checklist` of a setup",
    "test bead": "`test_beads` of a setup",
    "gas choice": "`gases` of a setup",
    "size choice": "`sizes` of a setup",
    "standing caution": "`cautions` of a setup",
}

if __name__ == "__main__":
    sys.stdout.write("\n".join(manual()) + "\n")
