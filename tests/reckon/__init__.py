"""Tests of the calculators: what they ask, what they give, and what they refuse."""
