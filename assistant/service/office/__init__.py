"""Lists of farmers as offices keep them: read, shown, and taken in as a whole or not at all."""
