"""A small invented rule base and a guide with fixed numbers, so that screens can be compared."""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property
from typing import Literal

from weldwhy.advice import Advice, SettingAdvice
from weldwhy.interview import Interview, Ranked
from weldwhy.model import (
    Answer,
    Cause,
    Caution,
    Check,
    Job,
    Material,
    Picture,
    Process,
    Remedy,
    RuleBase,
    Setting,
    Share,
    Source,
    Symptom,
)
from weldwhy.reasons import Reason
from weldwhy.steps import Step
from weldwhy.units import Quantity

PRACTICE: Literal["common practice"] = "common practice"


def _check(name: str, ask: str, *answers: str, minutes: float = 0.5, **more: object) -> Check:
    made = tuple(Answer(text.split()[0].lower().strip(","), text) for text in answers)
    even = tuple(1 / len(made) for _ in made)
    return Check(
        name, ask, "look", minutes, made, even, 0.06, 0.15, "tells gas faults from dirty metal",
        PRACTICE, **more,  # type: ignore[arg-type]
    )  # fmt: skip


def _cause(name: str, text: str, share: Share, *remedies: Remedy, **more: object) -> Cause:
    return Cause(
        name, text, f"{text.capitalize()} lets air in.", "shielding", share, ("mig", "stick"), 3.0,
        {"holes": 0.7}, {}, remedies, PRACTICE, **more,  # type: ignore[arg-type]
    )  # fmt: skip


POSSIBLE = (Quantity("voltage", 5.0, "V"), Quantity("voltage", 60.0, "V"))

CAUTIONS = (
    Caution("cylinder", "Open the valve slowly and stand to one side of the gauge.", PRACTICE),
    Caution("zinc", "White smoke from zinc makes you ill. Grind it off outdoors.", PRACTICE),
    Caution("people", "A weld that carries people is not for this guide.", PRACTICE, stop=True,
            call="a certified welder"),
)  # fmt: skip

CAUSES = (
    _cause("flow-low", "gas flow too low", "operator",
           Remedy("set-flow", "Set the flow while the trigger is pulled.", 1.0, 0.95, PRACTICE,
                  settings=("gas_flow",), cautions=("cylinder",)),
           Remedy("new-gauge", "Swap the flow gauge.", 10.0, 0.9, PRACTICE),
           prevent="Set the flow each morning with the trigger pulled."),
    _cause("draught", "draught", "material",
           Remedy("screen", "Put a screen between the joint and the wind.", 3.0, 0.9, PRACTICE)),
    _cause("valve", "gas valve stuck", "machine",
           Remedy("service", "Leave the valve to a service shop.", 60.0, 0.9, PRACTICE, stop=True,
                  call="a welding-machine service shop")),
    _cause("damp", "damp rods", "consumable",
           Remedy("dry-rods", "Open a fresh packet.", 2.0, 0.9, PRACTICE)),
)  # fmt: skip

CHECKS = (
    _check("flow", "Pull the trigger. What does the flow gauge read while gas runs?",
           "Right, in the usual range", "None at all", "Low, below the range",
           setting="gas_flow", cautions=("cylinder",)),
    _check("air", "Is the air moving where you weld?", "Still", "Fan or open door", "Wind"),
    _check("nozzle", "Look into the nozzle. What is there?", "Clean", "Spatter in it", minutes=1),
)  # fmt: skip


def rules() -> RuleBase:
    """An invented rule base: two processes, two symptoms, four causes, three checks."""
    return RuleBase(
        processes={
            "mig": Process("mig", "MIG", "MIG with gas", "gun plus", PRACTICE),
            "stick": Process("stick", "stick", "stick", "holder plus", PRACTICE),
        },
        symptoms={
            "holes": Symptom("holes", "holes in the bead", "holes", ("mig", "stick"),
                             "Round holes.", PRACTICE, also=("bubbles", "pinholes")),
            "jam": Symptom("jam", "wire jam", "wire", ("mig",), "A tangle.", PRACTICE),
        },
        causes={cause.id: cause for cause in CAUSES},
        checks={check.id: check for check in CHECKS},
        cautions={caution.id: caution for caution in CAUTIONS},
        sources={"common-practice": Source("common-practice", "Common practice", PRACTICE)},
        materials={"steel": Material("steel", "mild steel"), "alu": Material("alu", "aluminium")},
        settings={
            "volts": Setting("volts", "volts", "voltage", POSSIBLE),
            "gas_flow": Setting("gas_flow", "gas flow", "flow"),
        },
        groups={"holes": "What you see", "wire": "What the wire does"},
        jobs={"scrap": Job("scrap", "practice or scrap"),
              "stairs": Job("stairs", "stairs or railing", caution="people")},
        pictures={
            "holes": Picture("holes", "bead", {}, {"jam": 0.3}),
            "jam": Picture("jam", "path", {"fault": "nest at rolls"}),
        },
    )  # fmt: skip


def many_symptoms() -> RuleBase:
    """The invented rules with more kinds of tangle than one list holds."""
    base = rules()
    tangles = {
        f"tangle-{n}": Symptom(f"tangle-{n}", f"tangle {n}", "wire", ("mig",), "Loops.", PRACTICE)
        for n in range(1, 10)
    }
    gives = dict.fromkeys(tangles, 0.5)
    causes = {c.id: replace(c, symptoms={**c.symptoms, **gives}) for c in base.causes.values()}
    return replace(base, symptoms={**base.symptoms, **tangles}, causes=causes)


class FakeInterview(Interview):
    """Asks the checks in order, then offers the first cause's remedy. The numbers are made up."""

    @cached_property
    def ranked(self) -> tuple[Ranked, ...]:
        if not self.case.symptoms or self.case.told("process") is None:
            return ()
        first = min(0.35 + 0.2 * len(self.case.answers), 0.85)
        parts = (first, (1 - first) * 0.6, (1 - first) * 0.25, (1 - first) * 0.1)
        causes = self.rules.causes.values()
        return tuple(Ranked(c, p) for c, p in zip(causes, parts, strict=True))

    @cached_property
    def unlisted(self) -> float:
        return 0.02

    @cached_property
    def expected_minutes(self) -> float:
        return 20.0 - 4 * len(self.case.answers)

    @cached_property
    def notice(self) -> str:
        return ""

    @cached_property
    def step(self) -> Step:
        told = super().step
        if told.kind in ("stop", "done") or told.id in ("symptom", "group", "process"):
            return told
        left = self.open_checks
        return self.ask(left[0].id) if left else self.remedy(next(iter(self.rules.causes)), 0)

    @cached_property
    def open_checks(self) -> tuple[Check, ...]:
        gone = {*self.case.answers, *self.case.passed}
        return tuple(check for check in self.rules.checks.values() if check.id not in gone)

    def why(self, cause_id: str) -> tuple[Reason, ...]:
        told = [(c, a) for c, a in self.case.answers.items()]
        return tuple(
            Reason(c, a, 7.0 - 9 * at, f"{self.rules.checks[c].ask} {a}")
            for at, (c, a) in enumerate(told)
        )

    @cached_property
    def mind_changers(self) -> tuple[str, ...]:
        return ('Is the air moving where you weld? "Wind": then draught leads.',)

    def confirm(self, cause_id: str) -> tuple[Check, ...]:
        return (self.rules.checks["nozzle"],)

    def remedies(self, cause_id: str) -> tuple[Advice, ...]:
        flow = SettingAdvice("gas_flow", "gas flow", self.case.measured.get("gas_flow", ""),
                             "25 cfh", "20 cfh", "30 cfh", "Thickness not told: any.")  # fmt: skip
        return tuple(
            Advice(
                remedy,
                tuple(self.rules.cautions[name] for name in remedy.cautions),
                (flow,) if remedy.settings else (),
            )
            for remedy in self.rules.causes[cause_id].remedies
        )
