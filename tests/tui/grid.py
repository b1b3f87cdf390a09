"""What a screen shows as text: a grid of characters, then a grid of style letters."""

from __future__ import annotations

import difflib
import os
from pathlib import Path

from textual.app import App

FOLDER = Path(__file__).parent / "grids"
LETTERS = "abcdefghijklmnopqrstuvwxyz"


def text(app: App[int]) -> str:
    """The characters on the screen, one line a row."""
    strips = app.screen._compositor.render_strips()
    return "\n".join(strip.text.rstrip() for strip in strips) + "\n"


def grid(app: App[int]) -> str:
    """Characters and styles of the screen; the legend explains the letters."""
    legend: dict[str, str] = {}
    rows = []
    for strip in app.screen._compositor.render_strips():
        row = ""
        for part in strip:
            letter = legend.setdefault(str(part.style), LETTERS[len(legend) % 26])
            row += letter * part.cell_length
        rows.append(row)
    named = [f"{letter} = {style}" for style, letter in legend.items()]
    return text(app) + "\n".join(["-- styles", *rows, *named]) + "\n"


def same(app: App[int], name: str) -> None:
    """Fail with a readable difference if the screen is not the one kept as `name`.

    WELDWHY_KEEP_GRIDS=1 keeps what is shown now; the change must then be read.
    """
    path, now = FOLDER / f"{name}.txt", grid(app)
    if os.environ.get("WELDWHY_KEEP_GRIDS"):
        path.parent.mkdir(exist_ok=True)
        path.write_text(now, encoding="utf-8")
    kept = path.read_text(encoding="utf-8") if path.exists() else ""
    lines = difflib.unified_diff(kept.splitlines(), now.splitlines(), "kept", "now", lineterm="")
    assert now == kept, "\n".join(lines)
