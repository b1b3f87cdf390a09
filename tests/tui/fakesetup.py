"""The invented rule base with what a set-up needs: windows, gases, fillers, set-ups, a machine."""

from __future__ import annotations

from dataclasses import replace

from weldwhy.model import Caution, Gas, Machine, Material, RuleBase, Setting, Window, WindowRow
from weldwhy.setupmodel import (
    Filler,
    GasChoice,
    Grade,
    Part,
    Setup,
    SetupStep,
    SizeChoice,
    Suiting,
    TestBead,
    When,
)
from weldwhy.units import Quantity, parse, parse_range, parse_target

from . import fake
from .fake import PRACTICE

KINDS = {"volts": "voltage", "wire_feed": "feed", "amps": "current", "gas_flow": "flow"}

SETTINGS = (
    Setting("volts", "volts", "voltage", fake.POSSIBLE),
    Setting("wire_feed", "wire feed", "feed", too_little="take thicker wire."),
    Setting("amps", "amps", "current"),
    Setting("gas_flow", "gas flow", "flow"),
    Setting("wire", "wire size", "length"),
    Setting("rod", "rod size", "length"),
    Setting("gas", "shielding gas", "text"),
)


def _row(thickness: str, size: str, **targets: str) -> WindowRow:
    read = {name: parse_target(text, KINDS[name]) for name, text in targets.items()}
    return WindowRow(parse(thickness, "length"), parse(size, "length"), read)


WINDOWS = (
    Window(
        "mig-steel", "MIG, steel", ("mig",), ("steel",), "wire", PRACTICE,
        consumable="ER70S-6", gas=("c25",),
        transfer="short circuit", note="Starting numbers only.",
        targets={"gas_flow": parse_target("25 cfh (20-30)", "flow")},
        rows=(
            _row("16 ga", "0.030 in", volts="17 V (16-18)", wire_feed="220 ipm (180-260)"),
            _row("1/8 in", "0.030 in", volts="19 V (18-20)", wire_feed="320 ipm (280-380)"),
            _row("1/4 in", "0.030 in", volts="21 V (20-22)", wire_feed="420 ipm (380-480)"),
        ),
    ),
    Window(
        "stick-steel", "stick, steel", ("stick",), ("steel",), "rod", PRACTICE,
        consumable="E6013",
        rows=(
            _row("1/16 in", "1/8 in", amps="75 A (65-85)"),
            _row("1/8 in", "1/8 in", amps="95 A (80-110)"),
            _row("1/4 in", "1/8 in", amps="120 A (100-135)"),
        ),
    ),
)  # fmt: skip

STEPS = tuple(
    SetupStep(f"{words}.", PRACTICE, cautions=cautions)
    for words, cautions in (
        ("Brush the joint bright", ()), ("Clamp the work lead on bright metal", ()),
        ("Open the cylinder and listen for leaks", ("cylinder",)), ("Set the flow", ()),
        ("Put in the spool", ()), ("Set the brake", ()), ("Set the roll pressure", ()),
        ("Fit the tip and the nozzle", ()), ("Set volts and wire feed", ()),
        ("Feed out a hand of wire", ()),
    )
)  # fmt: skip

BEAD = TestBead(
    "A bead 4 in (100 mm) long on scrap of the same metal.", "Even ripples, no holes.", PRACTICE
)

SETUPS = (
    Setup(
        "mig", "plus", "minus", "gun",
        suits=(
            Suiting("good", "Quick on clean sheet and plate.", PRACTICE),
            Suiting("poor", "Wind blows the gas away.", PRACTICE, When(places=("outdoors",))),
        ),
        parts=(Part("drive rolls", "V groove of the wire's size.", PRACTICE),
               Part("contact tip", "Marked for the wire.", PRACTICE)),
        checklist=STEPS, test_beads=(BEAD,), source=PRACTICE,
        gases=(GasChoice("c25", parse_target("25 cfh (20-30)", "flow"), PRACTICE),),
        sizes=(SizeChoice("wire", parse("0.030 in", "length"), PRACTICE),),
    ),
    Setup(
        "stick", "plus", "minus", "rod holder",
        suits=(Suiting("usable", "Slower, but wind does no harm.", PRACTICE),),
        parts=(), checklist=STEPS[:2], test_beads=(BEAD,), source=PRACTICE,
        sizes=(SizeChoice("rod", parse("1/8 in", "length"), PRACTICE),),
    ),
)  # fmt: skip

MACHINE = Machine(
    "small", "small machine", ("mig", "stick"),
    limits={"volts": parse_range("14 V to 24 V", "voltage"),
            "wire_feed": parse_range("60 ipm to 300 ipm", "feed"),
            "amps": parse_range("30 A to 130 A", "current")},
    dials={"volts": {"1": Quantity("voltage", 15.0, "V"), "4": Quantity("voltage", 21.0, "V")}},
)  # fmt: skip


def rules() -> RuleBase:
    """Two processes that can be set up: MIG on a machine that feeds too little wire, and stick."""
    base = fake.rules()
    bronze = Material("bronze", "bronze", caution="bronze")
    stop = Caution("bronze", "Not a metal for this guide.", PRACTICE, stop=True, call="a foundry")
    return replace(
        base,
        settings={setting.id: setting for setting in SETTINGS},
        windows={window.id: window for window in WINDOWS},
        setups={setup.id: setup for setup in SETUPS},
        machines={MACHINE.id: MACHINE},
        materials={**base.materials, bronze.id: bronze},
        cautions={**base.cautions, stop.id: stop},
        gases={"c25": Gas("c25", "argon with 25 % CO2", {"argon": 75.0, "co2": 25.0}, PRACTICE)},
        grades={"s235": Grade("s235", "S235JR plain steel", "steel", {"C": 0.17}, PRACTICE)},
        fillers={
            "wire": Filler("wire", "ER70S-6", "solid wire", ("mig",), ("steel",),
                           "For clean steel.", PRACTICE),
            "rod": Filler("rod", "E6013", "rod", ("stick",), ("steel",), "For sheet.", PRACTICE,
                          electrode=("minus", "plus")),
        },
    )  # fmt: skip
