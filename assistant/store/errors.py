"""What can go wrong with the store. Texts say what was expected, what came, what to do next.

Nothing of SQLAlchemy leaves this room: its errors come out as DatabaseFailedError.
"""

from sqlalchemy.exc import DontWrapMixin


class StoreError(Exception):
    """The store could not do what it was asked."""


class DatabaseUrlError(StoreError):
    """The database address is not one this program can open."""


class DatabaseFailedError(StoreError):
    """The database refused or could not be reached; the whole transaction was undone."""


class DatabaseAwayError(DatabaseFailedError):
    """The database is locked, full, restarting or not to be reached: the same may do later."""


class NoRoomError(DatabaseAwayError):
    """The disk is full, or takes no writing: people must make room."""


class NaiveTimeError(StoreError, DontWrapMixin):
    """A time without a zone reached the store."""


class AlreadyThereError(StoreError):
    """Something with this name or number is kept already."""


class NotThereError(StoreError):
    """Something that was named is not kept."""


class BadRowError(StoreError):
    """A kept row no longer makes a value that the core accepts."""
