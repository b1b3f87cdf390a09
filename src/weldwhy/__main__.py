"""Start the program: `weldwhy`, or `python -m weldwhy`."""

import sys

from weldwhy.cli import main


def run() -> None:
    """Run the command line and leave with its exit code."""
    sys.exit(main(sys.argv[1:]))


if __name__ == "__main__":
    run()
