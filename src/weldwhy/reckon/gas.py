"""Calculators of gas: what is left in a cylinder, and how long it lasts."""

from __future__ import annotations

from weldwhy.arithmetic import gas, realgas
from weldwhy.arithmetic.bounds import Reckoned, remarks
from weldwhy.model import RuleBase
from weldwhy.reckon import figures, rows
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome, Output, ReckonError
from weldwhy.unitwords import WORTH

_CO2 = {"co2": 100.0}
_HOLD = ("water", "gas")
_OTHER = "other"
_FULLEST = 115.0
"""Percent of a full cylinder past which gauge or cylinder must be another one."""
_TOO_FULL = (
    "That is more than a full one holds: look again at the gauge, its unit and the size of the "
    "cylinder."
)
_LAST = "The time is to the last of it: change the cylinder once the gauge has begun to fall."
_FLOW = Input("flow", "gas flow", "flow", "12 L/min", optional=True)
_PRESSURE = Input("pressure", "pressure on the gauge", "pressure", "100 bar")
_WARM = Input("temperature", "temperature of the cylinder", "temperature", "15 C", optional=True)


def _cylinders(rules: RuleBase) -> dict[str, str]:
    """Every cylinder of the tables, and one of another size."""
    tables = [rules.tables[f"cylinder-{name}"] for name in ("water", "gas")]
    known = {row: f"{row} of {name}" for table, name in zip(tables, _HOLD) for row in table.rows}
    return known | {_OTHER: "another, by the water volume stamped on it"}


def _cylinder(rules: RuleBase, given: Given) -> tuple[float, float | None]:
    """Water volume in L and full gauge pressure in bar, None where only the volume was given."""
    row = given.word("cylinder")
    if row == _OTHER:
        if "volume" not in given:
            raise ReckonError("volume is missing; it is stamped on the cylinder, in litres")
        return given.number("volume"), None
    by_water = rules.tables["cylinder-water"]
    if row in by_water.rows:
        return by_water.value(row, "water"), by_water.value(row, "full")
    by_gas = rules.tables["cylinder-gas"]
    litres = by_gas.value(row, "gas") * WORTH["volume"]["ft3"]
    full = by_gas.value(row, "full") * WORTH["pressure"]["psi"]
    return gas.water_volume(litres, full, _usual_warmth(rules), {"argon": 100.0}), full


def _usual_warmth(rules: RuleBase) -> float:
    return rows.figure(rules, "cylinder-air", "temperature")


def _warmth(rules: RuleBase, given: Given) -> float:
    """Temperature of the gas, C."""
    return given.number("temperature") if "temperature" in given else _usual_warmth(rules)


def _reserve(rules: RuleBase, given: Given) -> float:
    """Gauge pressure, bar, at which the cylinder is changed."""
    if "reserve" in given:
        return given.number("reserve")
    return rows.figure(rules, "cylinder-reserve", "pressure")


def _gas_left(rules: RuleBase, given: Given) -> Outcome:
    if figures.mostly_co2(rules, given.word("gas")):
        raise ReckonError(
            "CO2 is kept as liquid, and its gauge tells nothing: weigh the cylinder (co2-left)"
        )
    parts = rules.gases[given.word("gas")].parts
    volume, full = _cylinder(rules, given)
    warm, pressure = _warmth(rules, given), given.number("pressure")
    left = gas.contents(pressure, volume, warm, parts)
    reserve = min(_reserve(rules, given), pressure)
    usable = max(0.0, left - gas.contents(reserve, volume, warm, parts))
    made = [figures.result("left", "gas in the cylinder", "volume", left)]
    said = ["Read the gauge with the valve open and no gas flowing."]
    if full is not None:
        share = 100 * left / gas.contents(full, volume, _usual_warmth(rules), parts)
        made.append(figures.result("share", "share of a full one", "percent", share))
        said += [_TOO_FULL] if share > _FULLEST else []
    made.append(figures.result("usable", "gas to use, down to the reserve", "volume", usable))
    made += _lasting(given, usable)
    return Outcome(tuple(made), (*remarks(left), *said), rows.warnings(rules, "cylinder"))


def _lasting(given: Given, litres: float) -> list[Output]:
    """How long so many litres flow, where a flow was given."""
    if "flow" not in given:
        return []
    minutes = gas.minutes_left(litres, given.number("flow"))
    return [figures.result("lasts", "it lasts with the gas on", "time", minutes)]


def _co2_left(rules: RuleBase, given: Given) -> Outcome:
    mass = given.number("weight") - given.number("empty")
    if mass < 0:
        raise ReckonError("the cylinder cannot weigh less than when empty; was its cap left out?")
    litres = gas.liquid_contents(mass)
    said = "Weigh it upright and held fast, without the regulator."
    last = (_LAST,) if "flow" in given else ()
    return _of_co2(rules, litres, _lasting(given, litres), (said, *last))


def _co2_gauge(rules: RuleBase, given: Given) -> Outcome:
    warm, pressure = _warmth(rules, given), given.number("pressure")
    if gas.liquid_left(pressure, warm):
        raise ReckonError(
            "liquid may be left, and then the pressure stays the same to the last drop: weigh the "
            "cylinder"
        )
    volume = given.number("volume")
    left = gas.contents(pressure, volume, warm, _CO2)
    usable = left - gas.contents(min(_reserve(rules, given), pressure), volume, warm, _CO2)
    lasts = [figures.result("usable", "gas to use, down to the reserve", "volume", usable)]
    lasts += _lasting(given, usable)
    said = ["Only gas is left: change the cylinder soon, it falls fast from here."]
    if "temperature" not in given:
        said.append(f"Reckoned at {warm:g} C ({warm * 1.8 + 32:g} F); in a colder cylinder this "
                    "pressure may still mean liquid.")  # fmt: skip
    return _of_co2(rules, left, lasts, (*said, *remarks(left)))


def _of_co2(
    rules: RuleBase, litres: Reckoned, lasts: list[Output], said: tuple[str, ...]
) -> Outcome:
    left = figures.result("left", "gas in the cylinder", "volume", litres)
    return Outcome((left, *lasts), said, rows.warnings(rules, "cylinder"))


CALCULATORS = (
    Calculator(
        "gas-left", "gas left in a cylinder", "gas",
        "Argon, helium and mixes: gas in the cylinder by its gauge, and how long it lasts. Gas is "
        "not ideal: 200 bar of argon is 5 % more than the pressure times the volume.",
        (Input("gas", "gas", "choice", "argon", choices=figures.gases),
         Input("cylinder", "cylinder", "choice", "20 L", choices=_cylinders),
         Input("volume", "water volume of another cylinder", "volume", "13 L", optional=True),
         _PRESSURE, _WARM, _FLOW,
         Input("reserve", "pressure at which you change it", "pressure", "10 bar", optional=True)),
        _gas_left, (gas.contents, gas.water_volume, gas.minutes_left, realgas.compressibility),
    ),
    Calculator(
        "co2-left", "CO2 left in a cylinder, by weight", "gas",
        "CO2 is kept as liquid, so the gauge stays the same until the last of it: weigh the "
        "cylinder.",
        (Input("weight", "weight of the cylinder now", "mass", "22 kg"),
         Input("empty", "weight stamped on it, empty", "mass", "16 kg"),
         _FLOW),
        _co2_left, (gas.liquid_contents, gas.minutes_left),
    ),
    Calculator(
        "co2-gauge", "CO2 left when all liquid is gone", "gas",
        "Gas in a CO2 cylinder by its gauge, once that has begun to fall.",
        (Input("pressure", "pressure on the gauge", "pressure", "20 bar"),
         Input("volume", "water volume stamped on it", "volume", "13 L"),
         _WARM, _FLOW),
        _co2_gauge, (gas.contents, gas.liquid_left, realgas.co2_pressure, gas.minutes_left),
    ),
)  # fmt: skip
