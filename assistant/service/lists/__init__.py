"""Lists of farmers as an office keeps them, from a file; a part that may be left out."""
