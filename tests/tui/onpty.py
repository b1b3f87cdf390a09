"""Runs the program on a real pseudo-terminal and keeps every byte it sends."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Mapping
from pathlib import Path
from types import TracebackType


class OnPty:
    """`python -m weldwhy` of `package` on a pseudo-terminal of a given size; a context manager."""

    def __init__(
        self,
        package: Path,
        home: Path,
        environ: Mapping[str, str],
        width: int = 80,
        height: int = 24,
    ) -> None:
        self.master, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", height, width, 0, 0))
        kept = {k: v for k, v in os.environ.items() if k in ("PATH", "HOME", "SYSTEMROOT")}
        self.process = subprocess.Popen(
            [sys.executable, "-m", "weldwhy"],
            stdin=slave, stdout=slave, stderr=slave, start_new_session=True,
            env={**kept, "PYTHONPATH": str(package), "WELDWHY_HOME": str(home), **environ},
        )  # fmt: skip
        os.close(slave)
        self.sent = b""

    def read_until(self, wanted: bytes, seconds: float = 20.0) -> bytes:
        """Bytes up to the first quiet moment after `wanted` was seen; fails if it never is."""
        got, end = b"", time.monotonic() + seconds
        while time.monotonic() < end:
            ready, _, _ = select.select([self.master], [], [], 0.3)
            if not ready:
                if wanted in got:
                    return got
                continue
            try:
                more = os.read(self.master, 65536)
            except OSError:  # the other side is gone
                break
            got += more
            self.sent += more
        assert wanted in got, f"never saw {wanted!r} in {got[-2000:]!r}"
        return got

    def press(self, keys: str) -> None:
        """Send keys as typed."""
        self.press_bytes(keys.encode())

    def press_bytes(self, keys: bytes) -> None:
        """Send bytes as a terminal of another encoding would."""
        os.write(self.master, keys)

    def end(self, number: signal.Signals) -> int:
        """Send a signal and give the exit code."""
        self.process.send_signal(number)
        self.read_until(b"\x1b[?25h")
        return self.process.wait(10)

    def __enter__(self) -> OnPty:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:  # fmt: skip
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait(10)
        os.close(self.master)
