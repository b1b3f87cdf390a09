"""Start the program: `weldwhy`, or `python -m weldwhy`."""

import gc
import os
import signal
import sys

FEWER = 50_000
"""New values after which garbage is looked for. Nearly all that a start makes stays, so to look
after every 700 of them, as is usual, costs a sixth of the start and finds nothing."""

INTERRUPTED = 130
"""As `surroundings.ExitCode`, which may not be there yet when Control-C comes."""


def run() -> None:
    """Run the command line and leave with its exit code."""
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, leave_at_once)
    gc.set_threshold(FEWER)
    from weldwhy.cli import main

    sys.exit(main(sys.argv[1:]))


def leave_at_once(*_: object) -> None:
    """Leave with 130 on Control-C; the screens see to it themselves, once they are open.

    An exception, Python's usual way, is lost or turned into another one when it falls into a
    callback or into the making of a class, of which this program makes many while it loads.
    Nothing has to be tidied up: a case is on the disk after every entry.
    """
    for stream in (sys.stdout, sys.stderr):
        try:
            if stream is not None:
                stream.flush()
                if stream.isatty():  # the shell's next line must not begin after the ^C
                    os.write(stream.fileno(), b"\n")
                    break
        except (OSError, ValueError, RuntimeError):  # closed, or in the middle of writing
            continue
    os._exit(INTERRUPTED)


if __name__ == "__main__":
    run()
