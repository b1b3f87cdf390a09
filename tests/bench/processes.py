"""Whole processes timed from outside: CPU seconds and peak memory."""

from __future__ import annotations

import fcntl
import os
import pty
import struct
import sys
import termios
import threading
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median

HELLO = """
from textual.app import App
from textual.widgets import Static
class Hello(App):
    def compose(self):
        yield Static("hello")
    def on_ready(self):
        self.call_after_refresh(self.exit)
Hello().run()
"""
GUIDE = """
from weldwhy import tui
real = tui.run
def once(*all):
    from weldwhy.tui.app import WeldwhyApp
    WeldwhyApp.on_ready = lambda self: self.call_after_refresh(self.exit, 0)
    return real(*all)
tui.run = once
from weldwhy.__main__ import run
run()
"""
ANSWER = """
import sys
sys.argv = ["weldwhy", "diagnose", "--process", "gmaw", "--symptom", "porosity", "--answer",
            "material=mild-steel", "--answer", "gas-flow-reading=low", "--json"]
from weldwhy.__main__ import run
run()
"""


PEAK = """
import atexit, os
def _peak():
    lines = open("/proc/self/status").read().splitlines()
    found = [line.split()[1] for line in lines if line.startswith("VmHWM")]
    open(os.environ["PEAK"], "w").write(found[0])
atexit.register(_peak)
"""
"""The kernel's own figure counts the parent before the start too, so the child tells its peak."""


@dataclass(frozen=True)
class Cost:
    """CPU seconds (user and system) and peak memory in KiB."""

    cpu: float
    memory: float


def run(code: str, place: Path, on_terminal: bool) -> Cost:
    """One run of `python -c code` with the package from `place`."""
    environ = {
        "PATH": os.environ["PATH"], "HOME": str(place), "WELDWHY_HOME": str(place / "home"),
        "PEAK": str(place / "peak"), "PYTHONPATH": str(place), "TERM": "xterm-256color",
        "LANG": "C.UTF-8",
    }  # fmt: skip
    master, slave = pty.openpty()
    fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    child = os.fork()
    if child == 0:
        os.setsid()
        fcntl.ioctl(slave, termios.TIOCSCTTY, 0)
        sink = slave if on_terminal else os.open(os.devnull, os.O_RDWR)
        for number in (0, 1, 2):
            os.dup2(sink, number)
        os.execve(sys.executable, [sys.executable, "-c", PEAK + code], environ)
    os.close(slave)
    drain = threading.Thread(target=_drain, args=(master,), daemon=True)
    drain.start()
    _, _, used = os.wait4(child, 0)
    drain.join(1.0)
    os.close(master)
    return Cost(used.ru_utime + used.ru_stime, float((place / "peak").read_text()))


def _drain(master: int) -> None:
    try:
        while os.read(master, 65536):
            pass
    except OSError:
        return  # the child has closed its side


def medians(codes: Sequence[tuple[str, bool]], place: Path, runs: int) -> list[Cost]:
    """The median of interleaved runs of each code, after one that is not counted."""
    costs: list[list[Cost]] = [[] for _ in codes]
    for number in range(runs + 1):
        for kept, (code, on_terminal) in zip(costs, codes):
            found = run(code, place, on_terminal)
            if number:
                kept.append(found)
    return [Cost(median(c.cpu for c in kept), median(c.memory for c in kept)) for kept in costs]
