"""From what was typed to meanings, and back: folding, word lists, misspellings, shown words."""
