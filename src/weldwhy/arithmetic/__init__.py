"""The arithmetic of welding: numbers in, numbers out, in one unit each.

Pure functions, one for each formula. A docstring gives the formula with its symbols, what it
holds for ("Holds for:") and where it is from ("Source:"). Figures of the trade that belong to a
wire, a metal or a machine are arguments: they live in the rules. Knows no rule, file or screen.
"""
