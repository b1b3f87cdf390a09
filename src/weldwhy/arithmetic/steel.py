"""How readily a steel hardens beside a weld, and the preheat that keeps it from cracking."""

from __future__ import annotations

from collections.abc import Mapping
from math import tanh

from weldwhy.arithmetic.bounds import Reckoned, outside, possible, remarks
from weldwhy.arithmetic.makes import Makes, sound

_CE = {"C": 1, "Mn": 6, "Cr": 5, "Mo": 5, "V": 5, "Ni": 15, "Cu": 15}
_PCM = {"C": 1, "Si": 30, "Mn": 20, "Cu": 20, "Cr": 20, "Ni": 60, "Mo": 15, "V": 10, "B": 0.2}
_CET = {"C": 1, "Mn": 10, "Mo": 10, "Cr": 20, "Cu": 20, "Ni": 40}
"""What each element's percent is divided by."""
_CE_HOLDS = {"C": (0.12, 0.25), "Cr": (0, 0.9), "Mo": (0, 0.75), "Ni": (0, 2.5), "Cu": (0, 1.0)}
_PCM_HOLDS = {"C": (0.07, 0.22)}
_CET_HOLDS = {
    "C": (0.05, 0.32), "Si": (0, 0.8), "Mn": (0.5, 1.9), "Cr": (0, 1.5), "Cu": (0, 0.7),
    "Mo": (0, 0.75), "Ni": (0, 2.5),
}  # fmt: skip
CARBON_HOLDS = _CET_HOLDS["C"]
CET_HOLDS = (0.2, 0.5)
THICKNESS_HOLDS = (10.0, 90.0)
HYDROGEN_HOLDS = (1.0, 20.0)
HEAT_HOLDS = (0.5, 4.0)
"""Where the preheat formula holds: % of carbon, % of CET, mm, ml in 100 g, kJ/mm."""


def ce_iiw(makes: Makes) -> Reckoned:
    """Carbon equivalent by the IIW, percent: the higher, the harder the steel beside a weld.

    CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15, each in mass percent.

    Holds for: plain and low-alloy steel with C 0.12 to 0.25, Cr to 0.9, Mo to 0.75, Ni to 2.5, Cu
    to 1.0; with less carbon Pcm parts steels better, with more it still ranks them.

    Source: IIW doc. IX-535-67 and EN 1011-2 (2001), annex C, method A. The limits from memory.
    """
    return _equivalent("CE", makes, _CE, _CE_HOLDS)


def pcm(makes: Makes) -> Reckoned:
    """Cracking parameter Pcm, percent: as the carbon equivalent, for steel low in carbon.

    Pcm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B, each in mass percent.

    Holds for: low-carbon high-strength steel with C 0.07 to 0.22.

    Source: Ito and Bessyo, IIW doc. IX-576-68. From memory.
    """
    return _equivalent("Pcm", makes, _PCM, _PCM_HOLDS)


def cet(makes: Makes) -> Reckoned:
    """Carbon equivalent CET, percent: the one that the preheat formula takes.

    CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40, each in mass percent.

    Holds for: C 0.05 to 0.32, Si to 0.8, Mn 0.5 to 1.9, Cr to 1.5, Cu to 0.7, Mo to 0.75, Ni to
    2.5.

    Source: EN 1011-2 (2001), annex C, method B. From memory.
    """
    return _equivalent("CET", makes, _CET, _CET_HOLDS)


def _equivalent(
    name: str,
    makes: Makes,
    divisors: Mapping[str, float],
    holds: Mapping[str, tuple[float, float]],
) -> Reckoned:
    sound(makes)
    value = sum(makes.get(each, 0.0) / divisor for each, divisor in divisors.items())
    said = (
        outside(f"{name}: {each}", makes.get(each, 0.0), low, high, "%")
        for each, (low, high) in holds.items()
    )
    return Reckoned(value, *said)


def preheat_cet(cet: float, thickness: float, hydrogen: float, heat: float) -> Reckoned:
    """The least preheat against cracks from hydrogen, C; below the air's own warmth none is due.

    Tp = 697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET - 32) Q - 328: CET in percent, d thickness
    in mm, HD hydrogen in ml in 100 g of weld, Q heat input in kJ/mm.

    Holds for: CET 0.2 to 0.5, d 10 to 90 mm, HD 1 to 20, Q 0.5 to 4.0, yield up to 1000 MPa;
    thinner plate mostly needs none.

    Source: EN 1011-2 (2001), annex C.3. From memory.
    """
    possible("CET", cet, 0.0, 3.0, "%")
    possible("thickness", thickness, 0.1, 1000.0, "mm")
    possible("hydrogen", hydrogen, 0.0, 100.0, "ml in 100 g")
    possible("heat input", heat, 0.01, 50.0, "kJ/mm")
    value = (
        697.0 * cet
        + 160.0 * tanh(thickness / 35.0)
        + 62.0 * hydrogen**0.35
        + (53.0 * cet - 32.0) * heat
        - 328.0
    )
    return Reckoned(
        value,
        remarks(cet),
        outside("preheat: CET", cet, *CET_HOLDS, "%"),
        outside("preheat: thickness", thickness, *THICKNESS_HOLDS, "mm"),
        outside("preheat: hydrogen", hydrogen, *HYDROGEN_HOLDS, "ml in 100 g"),
        outside("preheat: heat input", heat, *HEAT_HOLDS, "kJ/mm"),
    )
