"""Screens: they hold what is open and talk to the bench; pages and cards know nothing of them."""
