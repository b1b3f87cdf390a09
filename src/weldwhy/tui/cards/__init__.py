"""Cards: what one step shows and what can be chosen there, made by pure functions."""
