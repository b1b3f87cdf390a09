"""Where volts, feed, amps and gas flow should lie for this process, metal and thickness.

Pure: a rule base and what is known go in; the window, its targets and a plain note come out.
The note says whatever was assumed, so that nobody takes a guess for a number from a table.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from weldwhy import consumables
from weldwhy.model import RuleBase, Window
from weldwhy.units import Quantity, Target, gauge_number, show
from weldwhy.unitwords import aluminium_gauge
from weldwhy.windowrows import targets_from_rows

Settings = Mapping[str, Quantity | str]


@dataclass(frozen=True)
class Found:
    """The window that fits, its targets by setting id, and what had to be assumed."""

    window: Window
    targets: Mapping[str, Target]
    note: str


def find(
    rules: RuleBase,
    process: str,
    material: str,
    thickness: Quantity | None,
    settings: Settings,
    place: str,
) -> Found | None:
    """The targets for this situation, or None when no window covers process and metal.

    `material` may be "" (not known). A setting may be a quantity or text as typed.
    """
    notes: list[str] = []
    fitting = _for_metal(rules, process, material, notes)
    if not fitting:
        return None
    window, gas_fits = _for_consumable(fitting, settings, notes)
    rows: dict[str, Target] = {}
    if gas_fits:
        size = _size(settings.get(window.size_of, ""))
        rows = targets_from_rows(window, _true_thickness(thickness, window, notes), size, notes)
    outdoors = window.outdoors if place == "outdoors" else {}
    return Found(window, {**window.targets, **rows, **outdoors}, " ".join(notes))


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


def _for_consumable(
    fitting: Sequence[Window], settings: Settings, notes: list[str]
) -> tuple[Window, bool]:
    """The window for the class and the gas in use, and whether its rows hold for that gas."""
    asked = next((c for name in ("wire", "rod") if (c := _class(settings.get(name, "")))), "")
    general = [w for w in fitting if not w.consumable]
    named = [w for w in fitting if asked and consumables.same_class(asked, w.consumable)]
    if asked and not named:
        known = (general or fitting)[0].consumable or "rods in general"
        notes.append(f"No table for {asked}: these numbers are for {known}.")
    left = named or general or list(fitting)
    gas = settings.get("gas", "")
    if not isinstance(gas, str):
        gas = ""
    with_gas = [w for w in left if consumables.same_gas(gas, w.gas)]
    if not with_gas:
        notes.append("No volts, feed or amps here for the gas in use.")
    return (with_gas or left)[0], bool(with_gas)


def _class(value: Quantity | str) -> str:
    """The filler class named in a setting as typed."""
    return consumables.read(value)[1] if isinstance(value, str) else ""


def _size(value: Quantity | str) -> Quantity | None:
    """The size in a setting as typed or as read."""
    if isinstance(value, str):
        return consumables.read(value)[0]
    return value if value.kind == "length" else None


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
