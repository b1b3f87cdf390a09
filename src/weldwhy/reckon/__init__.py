"""The calculators: the arithmetic with the figures of the rules, asked and answered in words."""
