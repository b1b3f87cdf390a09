"""Where volts, feed, amps and gas flow should lie for this process, metal and thickness.

Pure: a rule base and what is known go in; the window, its targets and a plain note come out.
The note says whatever was assumed, so that nobody takes a guess for a number from a table.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from weldwhy import consumables, gases
from weldwhy.consumables import size_of
from weldwhy.model import RuleBase, Window
from weldwhy.shifts import shifted
from weldwhy.units import Quantity, Target, gauge_number, show
from weldwhy.unitwords import aluminium_gauge
from weldwhy.windowrows import reaches, targets_from_rows

Settings = Mapping[str, Quantity | str]


@dataclass(frozen=True)
class Found:
    """The window that fits, its targets by setting id, and what had to be assumed.

    `beyond` says by setting id where a machine does not reach the target, and what to change;
    `said` what else belongs to one target alone.
    """

    window: Window
    targets: Mapping[str, Target]
    note: str
    beyond: Mapping[str, str] = field(default_factory=dict)
    said: Mapping[str, str] = field(default_factory=dict)


def find(
    rules: RuleBase,
    process: str,
    material: str,
    thickness: Quantity | None,
    settings: Settings,
    place: str,
    joint: str = "",
    position: str = "",
) -> Found | None:
    """The targets for this situation, or None when no window covers process and metal.

    `material`, `place`, `joint` and `position` may be "" (not known). A setting may be a quantity
    or text as typed.
    """
    notes: list[str] = []
    fitting = _for_metal(rules, process, material, notes)
    if not fitting:
        return None
    thick = _true_thickness(thickness, fitting[0], notes)
    window, holds = _choose(rules, fitting, settings, position, thick, notes)
    rows: dict[str, Target] = {}
    if holds:
        rows = targets_from_rows(window, thick, size_of(settings.get(window.size_of)), notes)
    outdoors = window.outdoors if place == "outdoors" else {}
    targets = {**window.targets, **rows, **outdoors}
    targets = shifted(rules, process, joint, position, targets, notes)
    return Found(window, targets, " ".join(notes))


def distance(q: Quantity, t: Target) -> float:
    """How far past the best place: 0 there, +1 at the upper limit, -1 at the lower one.

    Each side has its own scale, so an uneven range still ends at 1.
    """
    side = t.high.value - t.best.value if q.value > t.best.value else t.best.value - t.low.value
    # a target without width is a single wanted number: allow it a twentieth either way
    return (q.value - t.best.value) / (side or abs(t.best.value) / 20 or 1.0)


def _for_metal(
    rules: RuleBase, process: str, material: str, notes: list[str]
) -> tuple[Window, ...]:
    """The windows of a process for a metal; an unknown metal is taken as mild steel."""
    running = [w for w in rules.windows.values() if process in w.processes]
    if material or not running:
        return tuple(w for w in running if material in w.materials)
    metal = "mild-steel" if any("mild-steel" in w.materials for w in running) else ""
    metal = metal or running[0].materials[0]
    notes.append(f"Metal not known: {metal.replace('-', ' ')} is assumed.")
    return tuple(w for w in running if metal in w.materials)


def _choose(
    rules: RuleBase,
    fitting: Sequence[Window],
    settings: Settings,
    position: str,
    thick: Quantity | None,
    notes: list[str],
) -> tuple[Window, bool]:
    """The window for the class, gas and position, and whether its rows hold for them.

    Of several the first whose rows reach the thickness and size in use, else the first.
    """
    left = _for_class(fitting, settings, notes)
    with_gas = _for_gas(rules, left, settings.get("gas", ""), notes)
    if not with_gas:
        notes.append("No volts, feed or amps here for the gas in use.")
        return left[0], False
    able = [w for w in with_gas if not position or not w.positions or position in w.positions]
    if not able:
        only = " and ".join(with_gas[0].positions)
        notes.append(f"No numbers here for {position}: this is for {only} only.")
        return with_gas[0], False
    reaching = (w for w in able if reaches(w, thick, size_of(settings.get(w.size_of))))
    return next(reaching, able[0]), True


def _for_class(fitting: Sequence[Window], settings: Settings, notes: list[str]) -> Sequence[Window]:
    """The windows for the class of wire or rod in use; those for any class if none is for it."""
    asked = next((c for name in ("wire", "rod") if (c := _class(settings.get(name, "")))), "")
    general = [w for w in fitting if not w.consumable]
    named = [w for w in fitting if asked and consumables.same_class(asked, w.consumable)]
    if asked and not named:
        known = (general or fitting)[0].consumable or "rods in general"
        notes.append(f"No table for {asked}: these numbers are for {known}.")
    return named or general or fitting


def _for_gas(
    rules: RuleBase, left: Sequence[Window], gas: Quantity | str, notes: list[str]
) -> Sequence[Window]:
    """The windows for the gas in use; if it was not told, for the usual one, which is said."""
    if isinstance(gas, str) and gas.strip():
        return [w for w in left if gases.fits(rules, gas, w.gas)]
    usual = left[0].gas[:1]
    with_usual = [w for w in left if set(usual) <= set(w.gas)]
    if len(with_usual) < len(left):
        notes.append(f"Gas not told: {rules.gases[usual[0]].name} is assumed.")
    return with_usual


def _class(value: Quantity | str) -> str:
    """The filler class named in a setting as typed."""
    return consumables.read(value)[1] if isinstance(value, str) else ""


def _true_thickness(
    thickness: Quantity | None, window: Window, notes: list[str]
) -> Quantity | None:
    """The thickness in millimetres; aluminium sheet has thinner gauges than steel."""
    if thickness is None or not thickness.value > 0:
        return None
    if thickness.unit == "ga" and "aluminium" in window.materials:
        inches = aluminium_gauge(gauge_number(thickness))
        notes.append(f"{show(thickness)} aluminium sheet is {inches:.3f} in.")
        return Quantity("length", inches * 25.4, "in")
    return thickness
