"""Tables as Core knows them, for what a turn or a morning asks: mapped objects take two thirds
of the time of such a path."""

from collections.abc import Iterable, Mapping

from sqlalchemy import CursorResult, Insert, Table, Update
from sqlalchemy.orm import Session

from assistant.store.tables import Base


def table_of(row: type[Base]) -> Table:
    """The table of a mapped class."""
    table = row.__table__
    assert isinstance(table, Table)
    return table


def add(session: Session, statement: Insert, columns: Mapping[str, object]) -> int:
    """Adds a row whose key the database gives; the key."""
    done = session.execute(statement, dict(columns))
    assert isinstance(done, CursorResult)
    key = done.inserted_primary_key
    assert key is not None
    return int(key[0])


def change(session: Session, statement: Update, given: Mapping[str, object]) -> int:
    """Changes rows; how many those were."""
    done = session.execute(statement, dict(given))
    assert isinstance(done, CursorResult)
    return done.rowcount


def changed_beside(session: Session, row: type[Base], keys: Iterable[object]) -> None:
    """Rows of these keys were changed by Core: mapped objects of them that the session holds
    are read again when they are next looked at."""
    held = session.identity_map
    if not held:
        return
    mapper = row.__mapper__
    for key in keys:
        found = held.get(mapper.identity_key_from_primary_key((key,)))
        if found is not None:
            session.expire(found)
