"""Imports go one way, and each costly or dangerous thing is done in one place only."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import weldwhy

PACKAGE = Path(weldwhy.__file__).parent

LAYERS: dict[str, tuple[str, ...]] = {
    "words": (
        "marks", "model", "plaintext", "problems", "setupmodel", "slips", "units", "unitwords",
    ),
    "knowledge": (
        "beadforms", "build", "compiled", "coverage", "dials", "drawforms", "folders", "forms",
        "joining", "lint", "machinebuild", "quality", "rulebase", "sayings", "sceneforms", "schema",
        "setupcompiled", "setupforms", "setups", "shape", "soundness", "survey", "values",
        "wording", "yamlfaults", "yamltree",
    ),
    "thinking": (
        "advice", "arithmetic", "beadheat", "beadtravel", "case", "chart", "checklist",
        "consumables", "engine", "figures", "gases", "gradeweights", "hookup", "hotcracks",
        "interview", "ladder", "lens", "limits", "logbook", "machine", "machinepower", "metalwork",
        "pairing", "preheat", "readings", "reasons", "reckon", "setup", "setupcase", "shifts",
        "simulation", "startvalues", "steps", "suiting", "testbead", "thicknesses", "told",
        "wallchart", "walldraft", "windowrows", "windows",
    ),
    "edges": (
        "blocks", "casefacts", "casefile", "casereport", "casetried", "diagnosis", "drawing",
        "entries", "lines", "lookup", "machinefile", "machinetext", "ownmachine", "pages", "report",
        "setupdata", "setuppages", "setupsheet", "sheet", "store", "understanding", "wall",
    ),
    "front": (
        "__main__", "bench", "cli", "commands_chart", "commands_diagnosis", "commands_info",
        "commands_lookup", "commands_machine", "commands_reckon", "commands_rules",
        "commands_setup", "commands_simulate", "console", "options", "plain", "surroundings", "tui",
        "whichmachine",
    ),
}  # fmt: skip
MAY_USE: dict[str, tuple[str, ...]] = {
    "words": (),
    "knowledge": ("words",),
    "thinking": ("words",),
    "edges": ("words", "thinking"),
    "front": ("words", "knowledge", "thinking", "edges"),
}
EXCEPTIONS = {
    # A case file is YAML with a declared shape, like a rule file: one reader for both.
    "casefile": ("yamltree", "shape", "values"),
    # So is the file of a person's machine, which has the keys of the rules' own machines.
    "machinefile": ("yamltree", "shape", "values", "setupforms", "machinebuild", "survey"),
}


def _modules() -> Iterator[tuple[str, Path]]:
    """Name below the package and path of every module."""
    for path in sorted(PACKAGE.rglob("*.py")):
        name = ".".join(path.relative_to(PACKAGE).with_suffix("").parts)
        yield name.removesuffix(".__init__"), path


def _imports(path: Path) -> Iterator[str]:
    """Full names of what a module imports anywhere, at its top or inside a function."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            yield str(node.module)
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def _layer(part: str) -> str:
    found = [layer for layer, parts in LAYERS.items() if part in parts]
    assert found, f"{part} is in no layer: put it into LAYERS and into DEVELOPERS.md"
    return found[0]


def _own_imports(path: Path) -> set[str]:
    """The modules of the package that a module imports, by the first part of their name."""
    parts = {name.split(".")[1] for name in _imports(path) if name.startswith("weldwhy.")}
    known = {module for modules in LAYERS.values() for module in modules}
    return {part for part in parts if part in known or (PACKAGE / f"{part}.py").exists()}


MODULES = dict(_modules())


@pytest.mark.parametrize("name", [name for name in MODULES if name != "__init__"])
def test_a_module_uses_its_own_layer_and_those_below(name: str) -> None:
    part = name.split(".")[0]
    layer = _layer(part)
    for used in _own_imports(MODULES[name]) - {part}:
        allowed = (layer, *MAY_USE[layer])
        assert _layer(used) in allowed or used in EXCEPTIONS.get(part, ()), f"{name} uses {used}"


def test_every_module_in_the_layers_exists() -> None:
    for parts in LAYERS.values():
        for part in parts:
            assert (PACKAGE / f"{part}.py").exists() or (PACKAGE / part).is_dir(), part


def _importers(package: str) -> set[str]:
    return {
        name
        for name, path in MODULES.items()
        if any(used.split(".")[0] == package for used in _imports(path))
    }


def test_only_yamltree_imports_the_yaml_reader() -> None:
    assert _importers("yaml") == {"yamltree"}


def test_only_the_screens_import_the_framework() -> None:
    for package in ("textual", "rich"):
        assert all(name.split(".")[0] == "tui" for name in _importers(package))


def test_the_screens_never_import_the_command_line() -> None:
    for name, path in MODULES.items():
        if name.split(".")[0] == "tui":
            used = _own_imports(path)
            assert not {each for each in used if each in ("cli", "plain") or "commands" in each}


WRITES = {"write_text", "write_bytes", "mkdir", "unlink", "rename", "rmdir", "touch"}


def _writes(tree: ast.AST) -> Iterator[str]:
    """Calls that write, move or remove files: path methods, and open with a writing mode."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else ""
        if isinstance(node.func, ast.Name):
            name = node.func.id
        if name == "open":
            texts = [a.value for a in node.args if isinstance(a, ast.Constant)]
            if any(isinstance(t, str) and t[:1] in ("w", "a", "x") for t in texts):
                yield name
        elif name in WRITES:
            yield name


def test_only_the_store_writes_files() -> None:
    for name, path in MODULES.items():
        if name != "store":
            found = list(_writes(ast.parse(path.read_text(encoding="utf-8"))))
            assert not found, f"{name} writes: {found}"


FRONT = set(LAYERS["front"])
SEEDED = {"engine.world": {"random"}, "simulation": {"random"}}
"""Simulated cases draw from seeds that they are given, so they can be run again."""


def test_only_the_front_reads_the_clock_the_environment_or_chance() -> None:
    outside = ("time", "datetime", "random", "secrets", "uuid", "locale", "platform", "socket")
    for name, path in MODULES.items():
        if name.split(".")[0] in FRONT or name == "store":
            continue
        used = set(_imports(path)) - SEEDED.get(name, set())
        assert not used & set(outside), f"{name} imports {used & set(outside)}"
        assert "os.environ" not in path.read_text(encoding="utf-8"), name


def test_nothing_talks_to_the_network_or_runs_what_it_reads() -> None:
    for name, path in MODULES.items():
        used = {each.split(".")[0] for each in _imports(path)}
        banned = {"socket", "http", "urllib", "ssl", "subprocess", "pickle", "marshal", "shelve"}
        assert not used & banned, f"{name} imports {used & banned}"
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                assert node.func.id not in ("eval", "exec", "compile", "__import__"), name


def _loaded_by(code: str, home: Path) -> set[str]:
    """The modules that a fresh interpreter has loaded after `code`."""
    ending = "\nimport sys\nprint('\\n'.join(sys.modules), file=sys.stderr)"
    done = subprocess.run(
        [sys.executable, "-c", code + ending],
        capture_output=True,
        text=True,
        check=True,
        env={"WELDWHY_HOME": str(home), "PYTHONPATH": str(PACKAGE.parent)},
    )
    return set(done.stderr.split())


HEAVY = ("textual", "rich", "yaml", "importlib.metadata", "importlib.resources", "asyncio")


def test_importing_the_package_loads_nothing_heavy(tmp_path: Path) -> None:
    loaded = _loaded_by("import weldwhy", tmp_path)
    assert not loaded & {*HEAVY, "json", "argparse", "dataclasses"}


@pytest.mark.parametrize(
    "arguments",
    [
        "['diagnose', '--process', 'gmaw', '--symptom', 'porosity', '--json']",
        "['diagnose', '--process', 'gmaw', '--symptom', 'porosity', '--answer', "
        "'gas-flow-reading=low']",
        "['rules', 'explain']",
        "['nonsense']",
    ],
)
def test_a_one_shot_answer_on_compiled_rules_loads_nothing_heavy(
    tmp_path: Path, package: Path, arguments: str
) -> None:
    """As installed: a copy of the code with the rules and their compiled form beside it."""
    code = f"""
import sys
sys.path.insert(0, {str(package)!r})
from weldwhy.cli import main
main({arguments})
import weldwhy
assert weldwhy.__file__.startswith({str(package)!r})
"""
    loaded = _loaded_by(code, tmp_path)
    assert not loaded & set(HEAVY)
