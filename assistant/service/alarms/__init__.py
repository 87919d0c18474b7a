"""Cries for help: told to a person at once, to the next one where nobody answers."""
