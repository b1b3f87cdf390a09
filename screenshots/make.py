"""Makes every picture in this folder: `python screenshots/make.py`.

The shop, the weld and its numbers are invented. The program is driven by keys as a person would
drive it; nothing is cropped or drawn by hand. The PNG files need a monospace font.
"""

from __future__ import annotations

import asyncio
import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import cairosvg
from contact import contact_sheet

from weldwhy.case import Answered, Entry, Measured, Reported, Situated, Tried
from weldwhy.rulebase import load
from weldwhy.store import Store
from weldwhy.tui.app import WeldwhyApp
from weldwhy.tui.terminal import Terminal

HERE = Path(__file__).parent
NOW = "2026-11-25T10:30:00+00:00"

SPATTER: tuple[Entry, ...] = (
    Reported("spatter"),
    Situated("process", "gmaw"),
    Situated("material", "mild-steel"),
    Situated("thickness", "3 mm"),
    Measured("volts", "22 V"),
    Measured("wire_feed", "250 ipm"),
    Measured("wire", "0.035 in"),
    Answered("metal-surface", "clean"),
)
TRIED = (*SPATTER, Tried("volts-high", "lower-volts", "better"))
SOUND = (*TRIED, Tried("stick-out-long", "shorten-stick-out", "sound"))
NEST: tuple[Entry, ...] = (
    Reported("birds-nest"),
    Situated("process", "fcaw-s"),
    Situated("material", "mild-steel"),
    Answered("what-changed", "wire-or-rods"),
)
CRACKS: tuple[Entry, ...] = (Situated("process", "smaw"), Situated("group", "crack"))
SHOCK: tuple[Entry, ...] = (Situated("process", "smaw"), Reported("shock"))
BRIDGE = (*SPATTER[:3], Situated("job", "structural"))

SAID = (
    "flux core on 1/8 plate, birds nest at the rollers since i put a new spool on. 18 volts, "
    "new tip no change. reckon its the liner"
)

# the keys to a set-up: mild steel, 3 mm, indoors, MIG
PLAN = ("p", "1", "1", "2", *"3 mm", "enter", "5", "1", "6", "1", "0")

DARK, LIGHT = Terminal(), Terminal(dark=False)
SMALL, LARGE = (80, 24), (120, 40)

PICTURES: dict[str, tuple[tuple[Entry, ...], tuple[str, ...], tuple[int, int], Terminal]] = {
    "start-80x24": ((), (), SMALL, DARK),
    "diagnose-80x24": (SPATTER, (), SMALL, DARK),
    "diagnose-120x40": (SPATTER, (), LARGE, DARK),
    "diagnose-light-80x24": (SPATTER, (), SMALL, LIGHT),
    "cause-80x24": (SPATTER, ("c", "1"), SMALL, DARK),
    "cause-120x40": (SPATTER, ("c", "1"), LARGE, DARK),
    "remedy-80x24": (SPATTER, ("c", "1", "1"), SMALL, DARK),
    "birds-nest-80x24": (NEST, (), SMALL, DARK),
    "symptoms-80x24": (CRACKS, (), SMALL, DARK),
    "shock-80x24": (SHOCK, (), SMALL, DARK),
    "stop-80x24": (BRIDGE, (), SMALL, DARK),
    "end-80x24": (SOUND, (), SMALL, DARK),
    "set-up-suits-80x24": ((), (*PLAN[:-3], "0"), SMALL, DARK),
    "set-up-hook-up-80x24": ((), PLAN, SMALL, DARK),
    "set-up-start-values-120x40": ((), (*PLAN, "2"), LARGE, DARK),
    "set-up-checklist-80x24": ((), (*PLAN, "3", "1"), SMALL, DARK),
    "window-80x24": (SPATTER, ("c", "1", "pagedown"), SMALL, DARK),
    "machine-80x24": ((), ("m", "pagedown"), SMALL, DARK),
    "arithmetic-80x24": ((), ("r", "1", "1"), SMALL, DARK),
    "own-words-80x24": ((), ("i", *SAID, "enter"), SMALL, DARK),
    "gallery-80x24": ((), ("1", "g"), SMALL, DARK),
    "gallery-120x40": ((), ("4", "g", "right"), LARGE, DARK),
    "gallery-light-80x24": ((), ("1", "g", "right", "right"), SMALL, LIGHT),
    "picture-80x24": ((), ("4", "g", "right", "1"), SMALL, DARK),
    "look-up-80x24": ((), ("l", *"poros"), SMALL, DARK),
    "look-up-page-120x40": ((), ("l", *"undercut", "enter", "enter"), LARGE, DARK),
}
CHART = ("undercut", "smaw")


async def picture(name: str, folder: Path) -> None:
    """Draw one picture as SVG and PNG."""
    told, keys, size, terminal = PICTURES[name]
    os.environ.pop("NO_COLOR", None)  # a picture cannot show a terminal's own colours
    app = WeldwhyApp(load(), Store(folder / name), lambda: NOW, terminal)
    app.bench.record(*told)
    async with app.run_test(size=size) as pilot:
        for key in keys:
            await pilot.press(key)
        await pilot.pause()
        svg = app.export_screenshot(title="weldwhy", simplify=True)
    # the framework's fonts come from a network host; any monospace font will do
    svg = re.sub(r"@font-face\s*\{[^}]*\}", "", svg)
    svg = re.sub(r"<!--.*?-->", "", svg, flags=re.DOTALL)
    svg = re.sub(r"font-family: [^;]*;", 'font-family: "DejaVu Sans Mono", monospace;', svg)
    (HERE / f"{name}.svg").write_text(svg, encoding="utf-8")
    cairosvg.svg2png(bytestring=svg.encode(), write_to=str(HERE / f"{name}.png"), output_width=1000)


def wall_chart(symptom: str, process: str) -> str:
    """A page for the wall, as the command prints it."""
    command = [
        sys.executable, "-m", "weldwhy", "chart", symptom, "--process", process, "--format", "svg",
    ]  # fmt: skip
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def main() -> None:
    """Draw them all."""
    with tempfile.TemporaryDirectory() as folder:
        for name in PICTURES:
            asyncio.run(picture(name, Path(folder)))
    drawn, letters = contact_sheet(load())
    (HERE / "pictures.svg").write_text(drawn, encoding="utf-8")
    cairosvg.svg2png(bytestring=drawn.encode(), write_to=str(HERE / "pictures.png"))
    (HERE / "pictures-letters.txt").write_text(letters, encoding="utf-8")
    chart = wall_chart(*CHART)
    (HERE / f"chart-{'-'.join(CHART)}.svg").write_text(chart, encoding="utf-8")
    cairosvg.svg2png(
        bytestring=chart.encode(), write_to=str(HERE / f"chart-{'-'.join(CHART)}.png"),
        output_width=1000,
    )  # fmt: skip


if __name__ == "__main__":
    main()
