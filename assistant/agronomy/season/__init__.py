"""What follows on a season: gap filling, its result, and what is learned from it."""
