"""What a person writes in their own words, made into entries of a case; offline, by phrases alone.

The phrases are the rules' own (`said:` and the names of things); the code knows language only:
clauses, stems, misspellings, negation, guesses, what was tried, and numbers with their units.
"""
