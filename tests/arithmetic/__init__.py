"""Tests of the formulas: published figures, properties, and what they refuse."""
