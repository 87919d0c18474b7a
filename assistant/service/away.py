"""What an entrance must know of the store: that the same may be tried again later."""

from assistant.store import DatabaseAwayError

__all__ = ["DatabaseAwayError"]
