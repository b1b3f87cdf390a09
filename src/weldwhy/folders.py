"""Where in a rules folder each kind of file lies.

Only known places are looked at, so that a folder named by mistake costs nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from weldwhy.problems import Problem, nearest

# A file at the top holds items of one kind; so do the files of a folder.
TOP_FILES = {
    "likelihood.yaml": "likelihood", "processes.yaml": "process", "materials.yaml": "material",
    "jobs.yaml": "job", "families.yaml": "family", "groups.yaml": "group",
    "settings.yaml": "setting", "lenses.yaml": "lens", "grades.yaml": "grade",
    "gases.yaml": "gas", "fillers.yaml": "filler", "shifts.yaml": "shift",
    "machines.yaml": "machine", "sayings.yaml": "saying", "glossary.yaml": "term",
    "cautions.yaml": "caution", "sources.yaml": "source",
}  # fmt: skip
FOLDERS = {
    "symptoms": "symptom", "checks": "check", "causes": "cause", "windows": "window",
    "tables": "table", "setups": "setup",
}  # fmt: skip


def files(folder: Path) -> Iterator[tuple[str, Path]]:
    """Kind and path of every rule file in its place, in a fixed order."""
    for name, kind in TOP_FILES.items():
        if (folder / name).is_file():
            yield kind, folder / name
    for name, kind in FOLDERS.items():
        inside = "*/*.yaml" if kind == "cause" else "*.yaml"
        for path in sorted((folder / name).glob(inside)):
            if path.is_file():
                yield kind, path


def misplaced(folder: Path) -> Iterator[Problem]:
    """A warning for every YAML file, or folder of them, where no rule file is looked for."""
    known = {path for _, path in files(folder)}
    inside = [folder, *(folder / name for name in FOLDERS)]
    inside += sorted(path for path in (folder / "causes").glob("*") if path.is_dir())
    for each in inside:
        for path in sorted(each.glob("*.y*ml")) if each.is_dir() else ():
            if path not in known:
                yield _warning(path, _hint(path, at_top=each == folder))
    for path in sorted(folder.glob("*/")):
        if path.name not in FOLDERS and any(path.glob("*.y*ml")):
            yield _warning(path, _hint(path, at_top=True))


def _warning(path: Path, hint: str) -> Problem:
    words = f"no rule file is looked for here{hint}"
    return Problem(str(path), 0, 0, "warning", words, "file-place")


def _hint(path: Path, at_top: bool) -> str:
    if path.suffix not in (".yaml", ""):
        return '; its name must end in ".yaml"'
    if path.parent.name == "causes":
        return "; a cause lies in the folder of its family"
    if not at_top:
        return ""
    places = {name.removesuffix(".yaml"): name for name in TOP_FILES}
    places |= {name: f"{name}/" for name in FOLDERS}
    near = nearest(path.stem, places)
    return f'; did you mean "{places[near]}"?' if near else ""
