"""Every calculator, by topic, in the order in which they are listed."""

from __future__ import annotations

from weldwhy.reckon import (
    arc,
    bead,
    gas,
    groove,
    heatflow,
    melting,
    metals,
    power,
    sizes,
    stock,
    transfer,
)
from weldwhy.reckon.calculator import Calculator

CALCULATORS: tuple[Calculator, ...] = (
    *arc.CALCULATORS,
    *transfer.CALCULATORS,
    *heatflow.CALCULATORS,
    *melting.CALCULATORS,
    *bead.CALCULATORS,
    *groove.CALCULATORS,
    *metals.CALCULATORS,
    *power.CALCULATORS,
    *gas.CALCULATORS,
    *stock.CALCULATORS,
    *sizes.CALCULATORS,
)
