"""weldwhy: find out why a weld is bad and how to put it right, in a terminal."""

__version__ = "0.1.0"
