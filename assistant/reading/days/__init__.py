"""What a reply says about a day."""
