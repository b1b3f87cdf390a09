"""Any float at all goes into a formula: it is refused, or something finite comes out."""

from __future__ import annotations

from collections.abc import Callable
from math import isfinite

from hypothesis import strategies as st

from weldwhy.arithmetic.bounds import Impossible, Reckoned

FLOATS = st.floats() | st.floats(0.01, 500)
"""The second half is there so that not everything is refused."""


def refused_or_finite(formula: Callable[..., Reckoned], *numbers: float) -> None:
    """Fails if `formula` gives NaN or an infinity, or raises anything but Impossible."""
    try:
        result = formula(*numbers)
    except Impossible:
        return
    assert isfinite(result)
    assert all(line.isascii() for line in result.remarks)
