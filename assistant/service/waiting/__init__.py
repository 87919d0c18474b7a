"""What waits for an officer: gathered, ranked, and done from the list."""
