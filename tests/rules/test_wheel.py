"""What the build adds to the wheel."""

from __future__ import annotations

import importlib.util
import json
import shutil
import sys
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from weldwhy import compiled

from .conftest import SHIPPED

pytest.importorskip("hatchling", reason="the build hook needs the builder")
ROOT = SHIPPED.parent


def hook_module() -> ModuleType:
    spec = importlib.util.spec_from_file_location("hatch_build", ROOT / "hatch_build.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def hook(root: Path) -> Any:
    return hook_module().RulesHook(str(root), {}, None, None, str(root / "dist"), "wheel")


def test_the_wheel_gets_the_rules_and_their_compiled_form() -> None:
    adding = hook(ROOT)
    data: dict[str, Any] = {"force_include": {}}
    path = list(sys.path)
    adding.initialize("standard", data)
    try:
        added = {into: Path(source) for source, into in data["force_include"].items()}
        for each in SHIPPED.rglob("*.yaml"):
            assert f"weldwhy/_rules/{each.relative_to(SHIPPED).as_posix()}" in added
        content = json.loads(added["weldwhy/_rules/compiled.jsonl"].read_text().partition("\n")[0])
        assert content["key"] == compiled.key(str(SHIPPED))
    finally:
        adding.finalize("standard", data, "")
    assert sys.path == path
    assert not added["weldwhy/_rules/compiled.jsonl"].exists()


def test_an_installed_copy_takes_the_compiled_form(tmp_path: Path) -> None:
    """The files laid out as the wheel lays them."""
    adding = hook(ROOT)
    data: dict[str, Any] = {"force_include": {}}
    adding.initialize("standard", data)
    for source, into in data["force_include"].items():
        (tmp_path / into).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(source, tmp_path / into)
    adding.finalize("standard", data, "")
    assert compiled.load(str(tmp_path / "weldwhy" / "_rules")) is not None


def test_an_editable_build_gets_nothing() -> None:
    adding = hook(ROOT)
    data: dict[str, Any] = {"force_include": {}}
    adding.initialize("editable", data)
    adding.finalize("editable", data, "")
    assert data == {"force_include": {}}


def test_rules_with_an_error_stop_the_build(tmp_path: Path) -> None:
    (tmp_path / "rules").mkdir()
    with pytest.raises(SystemExit, match=r"likelihood\.yaml: error: this file is missing"):
        hook(tmp_path).initialize("standard", {"force_include": {}})
