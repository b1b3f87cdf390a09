"""The engine's own numbers (none of welding): shares of one and more faults, costs, limits."""

from __future__ import annotations

from dataclasses import dataclass, replace

ONE_FAULT, TWO_FAULTS, THREE_FAULTS, UNLISTED = 0.62, 0.30, 0.08, 0.03
"""Prior share of sets of one, two and three faults; `UNLISTED` on top for a fault not listed."""

REPORTS = ("better", "no change", "worse")
REMOVED_ONE = {"better": 0.68, "no change": 0.29, "worse": 0.03}
"""P(report | the remedy removed one fault, but the bead is still bad)."""
REMOVED_NONE = {"better": 0.08, "no change": 0.86, "worse": 0.06}
"""P(report | the remedy removed nothing)."""

SECOND_TRY = 0.5
"""P(the same remedy works when it is done again)."""
TRIES = 2
"""After so many tries without success a cause counts as one that cannot be cured here."""

TRIPLES = 400
"""At most so many sets of three faults are held, the likeliest; the rest weigh next to nothing."""

HAZARD = 0.01
"""From this probability on, the check of a dangerous cause comes before everything else."""
LIKELY_DANGER = 0.5
"""Above this probability a danger is put right before anything else."""
HOPELESS = 0.7
"""Above this probability of "nothing here can cure it", the guide advises to call for help."""


SUPPOSED = 0.5
"""P(an answer that was taken from doubtful words was meant so)."""
GUESSED = 2.0
"""Factor on the odds of a cause that the person suspects; common practice, no source."""
LOOKED_AT = 0.05
"""Least chance at which a look-alike of a picked picture is held in play."""


@dataclass(frozen=True, slots=True)
class Tuning:
    """Costs in minutes. `attention` is the price of being asked one more question.

    `help` is the price of calling somebody, `test_bead` that of one bead after a remedy,
    `valued` the number of questions that are priced in full at each step, `in_a_row` the number
    of answers after which the plan's first step comes even if one more question would pay.
    """

    attention: float = 0.3
    test_bead: float = 2.0
    help: float = 120.0
    valued: int = 16
    in_a_row: int = 9

    def scaled(self, factor: float) -> Tuning:
        """The same tuning with all minutes multiplied by `factor`."""
        return replace(
            self,
            attention=self.attention * factor,
            test_bead=self.test_bead * factor,
            help=self.help * factor,
        )


PATIENCE = {
    "brisk": Tuning(attention=2.5, in_a_row=4),
    "normal": Tuning(attention=0.6),
    "thorough": Tuning(attention=0.0, in_a_row=30),
}
