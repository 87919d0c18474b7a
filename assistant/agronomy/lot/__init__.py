"""The seed lot in hand: its test, weight, choosing in salt water, soaking, mixing."""
