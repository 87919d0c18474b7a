"""What grows: shoots that stand, leaves that open, seedlings too old, rain on them."""
