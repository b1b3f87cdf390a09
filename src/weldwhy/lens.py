"""The lightest lens shade: by the current where known, else the darkest that may be due."""

from __future__ import annotations

from weldwhy.model import Lens, RuleBase


def lightest(rules: RuleBase, process: str, amps: float | None) -> Lens | None:
    """The rule for this current; the darker where two meet, the darkest if it is not known.

    None if the process is not known, or no row reaches that current.
    """
    rows = [lens for lens in rules.lenses.values() if process in lens.processes]
    if amps is not None:
        rows = [lens for lens in rows if lens.least <= amps <= lens.most]
    return max(rows, key=lambda lens: lens.shade, default=None)
