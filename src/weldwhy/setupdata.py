"""A set-up as data: the stable shape of `weldwhy setup --json`.

`schemas/setup.json` describes it, and a test holds the two together. Texts are cleaned here,
because whoever prints them next may not.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from weldwhy.plaintext import clean
from weldwhy.report import source_text
from weldwhy.units import Quantity, Target, convert, parse, result_unit, show

if TYPE_CHECKING:
    from weldwhy.checklist import ChecklistStep
    from weldwhy.model import Caution, RuleBase
    from weldwhy.setup import Plan, Refusal
    from weldwhy.testbead import Bead

SETTINGS = ("volts", "wire_feed", "amps", "stick_out", "travel")
"""The settings in the order in which they are told; gas flow and preheat stand elsewhere."""
DIGITS = 4
"""Digits after the point: far finer than any dial, and no trail of binary noise."""


def setups(rules: RuleBase, found: Iterable[Plan]) -> dict[str, Any]:
    """The plans as data that JSON can hold, in their order."""
    return {"processes": [_plan(rules, plan) for plan in found]}


def refused(refusal: Refusal) -> dict[str, Any]:
    """A metal or job that is not to be welded, as data."""
    caution = refusal.caution
    stop = {"text": clean(caution.text), "call": clean(caution.call)}
    return {"processes": [], "stop": stop}


def _plan(rules: RuleBase, plan: Plan) -> dict[str, Any]:
    gas = plan.gas
    return {
        "process": plan.process,
        "name": clean(plan.name),
        "suits": plan.suits,
        "why": " ".join(clean(why) for why in plan.why),
        "polarity": plan.polarity,
        "transfer": plan.transfer,
        "inductance": clean(plan.inductance),
        "gas": None
        if gas is None
        else {"mix": clean(gas[0].name), "flow": _target(gas[1], plan.system)},
        "consumable": _consumable(plan),
        "settings": [_setting(rules, plan, name) for name in SETTINGS if name in plan.targets],
        "preheat": _target(plan.targets["preheat"], plan.system)
        if "preheat" in plan.targets
        else None,
        "parts": [{"part": clean(each.part), "choose": clean(each.choose)} for each in plan.parts],
        "checklist": [_step(step) for step in plan.checklist],
        "test_bead": None if plan.test_bead is None else _bead(plan.test_bead, plan.system),
        "cautions": [clean(caution.text) for caution in plan.cautions],
        "lens": None if plan.lens is None else plan.lens.shade,
        "figures": [{"name": each.name, "text": clean(each.text)} for each in plan.figures],
        "beyond": [clean(sentence) for sentence in plan.beyond.values()],
        "notes": [clean(note) for note in (*plan.notes, plan.note) if note],
    }


def _consumable(plan: Plan) -> dict[str, Any]:
    """What is used up: its class, if one is known, and its sizes."""
    found: dict[str, Any] = {}
    if plan.filler is not None:
        found |= {"class": plan.filler.name, "kind": plan.filler.kind}
        found |= {"use": clean(plan.filler.use)}
    if plan.size is not None:
        found["size"] = _quantity(plan.size, plan.system)
    if plan.filler_size is not None:
        found["filler_size"] = _quantity(plan.filler_size, plan.system)
    return found


def _setting(rules: RuleBase, plan: Plan, name: str) -> dict[str, Any]:
    source = clean(source_text(rules, plan.sources.get(name, "")))
    told = {"name": name, **_target(plan.targets[name], plan.system), "source": source}
    return told | ({"mark": clean(plan.marks[name])} if name in plan.marks else {})


def _step(step: ChecklistStep) -> dict[str, str]:
    return {"text": clean(step.text), "caution": _cautions(step.cautions)}


def _cautions(cautions: Iterable[Caution]) -> str:
    """The cautions of a step in one text, to be read before it; "" if it has none."""
    return " ".join(clean(caution.text) for caution in cautions)


def _bead(bead: Bead, system: str | None) -> dict[str, Any]:
    return {
        "text": clean(bead.run),
        "caution": _cautions(bead.cautions),
        "sound": clean(bead.sound),
        "leg": None if bead.leg is None else _target(bead.leg, system),
        "throat": None if bead.throat is None else _target(bead.throat, system),
    }


def _target(target: Target, system: str | None) -> dict[str, Any]:
    """All three numbers in the unit of the best one."""
    unit = result_unit(target.best, system)
    ends = (target.low, target.best, target.high)
    shown = (_number(Quantity(q.kind, q.value, target.best.unit), system) for q in ends)
    return {**dict(zip(("low", "try", "high"), shown, strict=True)), "unit": unit}


def _quantity(q: Quantity, system: str | None) -> dict[str, Any]:
    return {"value": _number(q, system), "unit": result_unit(q, system)}


def _number(q: Quantity, system: str | None) -> float:
    """The number that a person is shown, so that data and text never differ."""
    shown = parse(show(q, system), q.kind)
    return round(convert(shown, result_unit(q, system)), DIGITS)
