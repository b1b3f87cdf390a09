"""A small sound rules folder that each test may break in its own copy."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

HERE = Path(__file__).parent
SHIPPED = HERE.parent.parent / "rules"


@pytest.fixture
def sound(tmp_path: Path) -> Path:
    """A copy of the small base in `sound/`, in which nothing is wrong."""
    return Path(shutil.copytree(HERE / "sound", tmp_path / "rules"))
