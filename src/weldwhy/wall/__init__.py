"""Wall charts laid out: one page for one symptom and process, and all of them as a book."""
