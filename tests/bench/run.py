"""Prints one table of ratios from one run: `python tests/bench/run.py [--quick]`.

Nothing is asserted: the ratios hold on any machine, the times behind them on none.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from statistics import mean

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.bench import choosing, drawing, loading, policies, processes
from tests.engine.optimum import Optimum, Policy
from tests.engine.test_policy import TUNED, tiny
from tests.installed import installed

from weldwhy.engine.tuning import PATIENCE

Line = tuple[str, str]


def starts(place: Path, runs: int) -> Iterator[Line]:
    """The guide's first frame and a one-shot answer against bare programs."""
    hello, guide, bare, answer, framework = processes.medians(
        [
            (processes.HELLO, True), (processes.GUIDE, True), ("pass", False),
            (processes.ANSWER, False), ("import textual.app", False),
        ],
        place,
        runs,
    )  # fmt: skip
    yield "first frame / hello-world program, CPU", f"{guide.cpu / hello.cpu:.2f}"
    yield "first frame / hello-world program, peak memory", f"{guide.memory / hello.memory:.2f}"
    yield "one-shot answer / python -c pass, CPU", f"{answer.cpu / bare.cpu:.1f}"
    yield "one-shot answer / import of the framework, CPU", f"{answer.cpu / framework.cpu:.2f}"


def choices(runs: int) -> Iterator[Line]:
    """The next step against the plain oracle and the reference library."""
    for symptom, process in (("burn-through", "smaw"), ("spatter", "gmaw")):
        times, worst, sets = choosing.against_oracle(symptom, process, runs)
        where = f"{symptom} {process}, {sets} sets"
        yield f"plain oracle / next step ({where})", f"{times:.1f}, agree to {worst:.0e}"
        times, worst = choosing.against_library(symptom, process, 5 * runs)
        yield f"library / bits of every question ({where})", f"{times:.1f}, agree to {worst:.0e}"


def senses(runs: int) -> Iterator[Line]:
    """Pictures and own words."""
    for (width, height), (usual, worst) in drawing.pictures(runs).items():
        yield f"a picture of {width}x{height}, mean and worst", f"{usual:.2f}, {worst:.2f} ms"
    yield "a text understood / choice of a step (spatter gmaw)", f"{drawing.words(runs):.2f}"


def comparisons(cases: int, tiny_models: int) -> Iterator[Line]:
    """The policies on the same simulated cases."""
    tuned = PATIENCE["normal"]
    for title, networks in (
        ("shipped rules", policies.shipped()),
        ("synthetic", policies.synthetic(10)),
    ):
        found = {
            name: policies.outcome(policy, networks, cases, tuned, 11)
            for name, policy in policies.POLICIES.items()
        }
        live = found["live guide"]
        for name, other in found.items():
            share = other.minutes / found["fixed list"].minutes
            yield (
                f"{title}: {name}",
                f"{other.minutes:.0f} min, {share:.2f} x list, {other.asked:.1f} asked, "
                f"{other.fixes:.1f} fixes, {100 * other.calls:.0f} % calls",
            )
        saved, error = live.saved(found["fixed list"])
        yield f"{title}: live guide saves of the list", f"{saved:.0f} min +- {error:.0f} a case"
        off = [
            policies.outcome(policies.POLICIES[name], networks, cases, tuned, 11, blurred=True)
            for name in ("live guide", "fixed list")
        ]
        yield (
            f"{title}: live guide, half the grades a step off",
            f"{off[0].minutes:.0f} min, {off[0].minutes / off[1].minutes:.2f} x list",
        )
        yield f"{title}: hits at first fix, top 1 and 3", f"{live.top1:.2f}, {live.top3:.2f}"
        bins = policies.calibration(networks, cases * 3, 5)
        gaps = [abs(said - seen) for said, seen, count in bins if count >= 100]
        yield f"{title}: calibration, worst and mean bin", f"{max(gaps):.2f}, {mean(gaps):.2f}"
    ratios = [
        Policy(n, TUNED).minutes() / Optimum(n, TUNED).minutes()
        for n in map(tiny, range(tiny_models))
    ]
    yield (
        f"{tiny_models} tiny models: live / exact optimum",
        (f"{mean(ratios):.3f}, worst {max(ratios):.3f}"),
    )


def main() -> None:
    """The whole table."""
    quick = "--quick" in sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        place = installed(Path(folder) / "installed")
        table = [*starts(place, 3 if quick else 9)]
        ratios = loading.ratios(place, 3 if quick else 9)
        table += [(f"{what} / CSafeLoader", f"{r:.2f}") for what, r in ratios.items()]
    table += choices(1 if quick else 3)
    table += senses(3 if quick else 9)
    table += comparisons(40 if quick else 160, 4 if quick else 12)
    width = max(len(what) for what, _ in table)
    for what, value in table:
        print(f"{what:{width}}  {value}")


if __name__ == "__main__":
    main()
