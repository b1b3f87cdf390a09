"""The README's examples are what the program prints; `python tests/test_readme.py` renews them."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
README = ROOT / "README.md"
EXAMPLE = re.compile(r"^```console\n\$ (?P<command>.+)\n(?P<shown>(?:.*\n)*?)```$", re.MULTILINE)


def _printed(command: str) -> str:
    """What a shell prints for the command, in an empty home."""
    with tempfile.TemporaryDirectory() as folder:
        program = Path(folder) / "bin" / "weldwhy"
        program.parent.mkdir()
        program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m weldwhy "$@"\n')
        program.chmod(0o755)
        surroundings = {
            "PATH": f"{program.parent}{os.pathsep}{os.environ['PATH']}",
            "PYTHONPATH": str(ROOT / "src"),
            "WELDWHY_HOME": str(Path(folder) / "home"),
        }
        done = subprocess.run(
            ["bash", "-c", command],
            capture_output=True, text=True, check=True, env=surroundings, cwd=folder,
        )  # fmt: skip
        assert done.stderr == ""
        return "".join(f"{line.rstrip()}\n" for line in done.stdout.splitlines())


EXAMPLES = [found.groups() for found in EXAMPLE.finditer(README.read_text(encoding="utf-8"))]


def test_there_are_examples() -> None:
    assert len(EXAMPLES) >= 3


@pytest.mark.parametrize(("command", "shown"), EXAMPLES)
def test_an_example_is_what_the_program_prints(command: str, shown: str) -> None:
    assert _printed(command) == shown, "renew with `python tests/test_readme.py`"


def test_the_test_command_is_the_one_that_is_run_for_every_change() -> None:
    run = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    (wanted,) = re.findall(r"grep -m 1 -E '(.+)' README.md", run)
    assert len(re.findall(wanted, README.read_text(encoding="utf-8"), re.MULTILINE)) == 1


def _renew() -> None:
    text = README.read_text(encoding="utf-8")
    renewed = EXAMPLE.sub(
        lambda found: f"```console\n$ {found['command']}\n{_printed(found['command'])}```", text
    )
    README.write_text(renewed, encoding="utf-8")


if __name__ == "__main__":
    _renew()
