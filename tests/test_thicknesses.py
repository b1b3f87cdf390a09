"""The targets at other thicknesses, which are to be compared with those of the work itself."""

from __future__ import annotations

import pytest
from tests.replay import shipped_rules

from weldwhy.advice import window
from weldwhy.case import Case, Measured, Situated
from weldwhy.thicknesses import Neighbour, neighbours

RULES = shipped_rules()


def others(**told: str) -> tuple[Neighbour, ...]:
    """The neighbours of 1/8 in mild steel with stick."""
    work = {"process": "smaw", "material": "mild-steel", "thickness": "1/8 in", **told}
    case = Case(tuple(Situated(name, value) for name, value in work.items()))
    case = case.with_(Measured("rod", "1/8 in E6013"))
    found = window(RULES, case, "mild-steel")
    assert found is not None
    return neighbours(RULES, case, "mild-steel", found.window)


def amps(found: tuple[Neighbour, ...]) -> list[float]:
    return [targets["amps"].best.value for _, targets in found if "amps" in targets]


def test_they_come_thin_first() -> None:
    thick = [thickness.value for thickness, _ in others()]
    assert len(thick) > 2
    assert thick == sorted(thick)


@pytest.mark.parametrize(
    ("told", "times"), [({"position": "overhead"}, -1), ({"joint": "fillet"}, 1)]
)
def test_joint_and_position_change_them_as_they_change_the_work(
    told: dict[str, str], times: int
) -> None:
    plain, changed = amps(others()), amps(others(**told))
    assert len(plain) == len(changed) > 0
    assert all((after - before) * times > 0 for before, after in zip(plain, changed, strict=True))
