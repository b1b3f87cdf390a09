"""`weldwhy info`: which version runs, where its rules and your files are, what it knows."""

from __future__ import annotations

import argparse
import platform
from collections.abc import Iterator

from weldwhy import __version__
from weldwhy.plaintext import clean
from weldwhy.rulebase import default_folder, load
from weldwhy.surroundings import ExitCode, data_folder, environment, own_rules


def info(options: argparse.Namespace) -> ExitCode:
    """Print one `name: value` line for each thing worth knowing when something is amiss."""
    for name, value in list(_facts(options)):
        print(f"{name}: {clean(value)}")
    return ExitCode.FINE


def _facts(options: argparse.Namespace) -> Iterator[tuple[str, str]]:
    from importlib.metadata import PackageNotFoundError, version

    yield "weldwhy", __version__
    yield "python", platform.python_version()
    for package in ("textual", "rich", "PyYAML"):
        try:
            yield package.lower(), version(package)
        except PackageNotFoundError:
            yield package.lower(), "not installed"
    own = own_rules(options.rules, environment())
    yield "rules", str(default_folder())
    yield "your rules", str(own) if own else "none"
    yield "your cases", str(data_folder(environment()))
    rules = load(own)
    counted = (
        "symptoms", "processes", "causes", "checks", "windows", "cautions", "sources", "grades",
        "gases", "fillers", "tables", "setups", "machines",
    )  # fmt: skip
    for kind in counted:
        yield kind, str(len(getattr(rules, kind)))
