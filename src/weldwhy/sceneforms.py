"""The parameters of the drawings that show no bead, as a rule file writes them."""

from __future__ import annotations

from weldwhy.shape import Key, keys, optional
from weldwhy.values import number, word

PATH = keys(
    "wire path",
    Key("fault", word("sound", "nest at rolls", "nest at spool", "collapse", "slip", "shaved",
                      "jerks", "no feed", "curl", "burnback", "worn tip"),
        "what is wrong on the way of the wire"),
)  # fmt: skip

TUNGSTEN = keys(
    "tungsten",
    Key("point", word("sound", "balled", "split", "eroded", "contaminated"),
        "what became of the ground point"),
    optional("angle", number(10, 120), "angle of a sound point in degrees; 30 if left out"),
)  # fmt: skip

ROD = keys(
    "rod",
    Key("state", word("sound", "fingernail", "overheated", "stuck"), "what the rod does"),
)

ARC = keys(
    "arc",
    Key("arc", word("steady", "wandering", "blown aside", "weak", "harsh", "stuttering", "pulsing",
                    "not starting", "no spark", "stubbing"),
        "what the arc does"),
    optional("tool", word("gun", "torch", "rod"), "what it burns from; a gun if left out"),
)  # fmt: skip

CIRCUIT = keys(
    "circuit",
    Key("trouble", word("sound", "no output", "breaker trips", "thermal trip", "fan or display",
                        "hot leads", "shock", "weak on long cord"),
        "where the current or the machine fails"),
)  # fmt: skip

GAS = keys(
    "gas line",
    Key("trouble", word("sound", "no gas", "leaks", "will not stop", "frosted regulator"),
        "where the gas fails, between cylinder and nozzle"),
)  # fmt: skip

SCENES = (
    optional("path", PATH, "the way of the wire, from the spool to the contact tip"),
    optional("tungsten", TUNGSTEN, "the end of a tungsten in its cup"),
    optional("rod", ROD, "a rod over the plate"),
    optional("arc", ARC, "an arc between gun, torch or rod and the plate"),
    optional("circuit", CIRCUIT, "supply, machine, leads and work"),
    optional("gas", GAS, "cylinder, regulator, hose and torch"),
)
