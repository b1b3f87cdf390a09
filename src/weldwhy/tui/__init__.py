"""The screens. Importing this costs nothing; `run` loads the framework."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from weldwhy.model import RuleBase
    from weldwhy.store import Store


def run(rules: RuleBase, store: Store, own_keys: Mapping[str, str] | None = None) -> int:
    """Open the screens and return the exit code: 0, 130 for Ctrl-C, 128 + number for a signal.

    The caller has made sure that this is a terminal that can show them. `own_keys` gives commands
    (by id) other keys.
    """
    import os
    import signal
    import sys
    from datetime import datetime

    from weldwhy.tui.app import WeldwhyApp
    from weldwhy.tui.terminal import look

    def clock() -> str:
        return datetime.now().astimezone().isoformat(timespec="seconds")

    liked = store.preferences
    # The framework draws on stderr, so its encoding is the one that counts.
    terminal = look(os.environ, getattr(sys.__stderr__, "encoding", None), liked.ascii)
    app = WeldwhyApp(rules, store, clock, terminal, own_keys=own_keys)
    # From here on an interrupt must give the terminal back first.
    signal.signal(signal.SIGINT, signal.default_int_handler)
    code = app.run(mouse=liked.mouse)
    return app.return_code or 1 if code is None else code
