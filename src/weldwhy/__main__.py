"""Start the program: `weldwhy`, or `python -m weldwhy`."""

import gc
import sys

from weldwhy.cli import main

FEWER = 50_000
"""New values after which garbage is looked for. Nearly all that a start makes stays, so to look
after every 700 of them, as is usual, costs a sixth of the start and finds nothing."""


def run() -> None:
    """Run the command line and leave with its exit code."""
    gc.set_threshold(FEWER)
    sys.exit(main(sys.argv[1:]))


if __name__ == "__main__":
    run()
