"""The calculators of metals: hardening and preheat of steel, ferrite, filler for aluminium."""

from __future__ import annotations

from weldwhy.arithmetic import aluminium, stainless, steel
from weldwhy.arithmetic.makes import mixed
from weldwhy.reckon import alloys, steels
from weldwhy.reckon.calculator import Calculator, Input

_STEEL = Input("metal", 'steel: its grade, or "C 0.18 Mn 1.2"', "text", "S355")

CALCULATORS = (
    Calculator(
        "carbon-equivalent", "carbon equivalent of a steel", "metals",
        "How readily a steel hardens and cracks beside the weld, by what it is made of.",
        (_STEEL,), steels.carbon_equivalent,
        (steel.ce_iiw, steel.pcm, steel.cet),
    ),
    Calculator(
        "preheat", "preheat of a steel", "metals",
        "How warm the metal is to be before the first bead and between beads.",
        (
            _STEEL,
            Input("thickness", "thickness of the metal", "length", "20 mm"),
            Input("hydrogen", "filler class, or its hydrogen in ml in 100 g", "text", "E7018",
                  optional=True),
            Input("heat", "heat input", "heat", "1.2 kJ/mm", optional=True),
        ),
        steels.preheat_needed, (steel.cet, steel.preheat_cet),
    ),
    Calculator(
        "stainless-ferrite", "ferrite of a stainless weld", "metals",
        "Whether a stainless weld is given to hot cracks, sound, or brittle.",
        (
            Input("base", 'base metal: its grade, or "Cr 18 Ni 8 C 0.05"', "text", "304"),
            Input("other", "the other base metal, if it differs", "text", "A36", optional=True),
            Input("filler", "filler", "choice", "309l", choices=alloys.stainless_fillers),
            Input("dilution", "share of the weld that is melted base metal", "percent", "30 %",
                  optional=True),
        ),
        alloys.stainless_ferrite,
        (mixed, stainless.schaeffler, stainless.delong, stainless.wrc, stainless.ferrite_number,
         stainless.martensite_below),
    ),
    Calculator(
        "aluminium-filler", "filler for aluminium", "metals",
        "Which filler suits an alloy and a use, and whether the bead is given to hot cracks.",
        (
            Input("base", 'base alloy: its grade, or "Si 0.6 Mg 1"', "text", "6061"),
            Input("use", "what counts most", "choice", "general", choices=alloys.uses),
            Input("dilution", "share of the weld that is melted base metal", "percent", "40 %",
                  optional=True),
        ),
        alloys.aluminium_filler,
        (mixed, aluminium.magnesium_silicide, aluminium.crack_sensitivity),
    ),
)  # fmt: skip
