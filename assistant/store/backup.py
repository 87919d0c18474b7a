"""A copy of the database while it is in use."""

import sqlite3
from pathlib import Path

from sqlalchemy import Engine

from assistant.store.errors import StoreError


def copy_sqlite(engine: Engine, target: Path) -> None:
    """Copies a SQLite database into a new file, whole and consistent, by SQLite's own backup.

    Raises:
        StoreError: another kind of database, or a file that is there already.
    """
    if engine.dialect.name != "sqlite":
        raise StoreError("expected SQLite, got PostgreSQL: back it up with pg_dump")
    if target.exists():
        raise StoreError(f"expected a new file, got {target}, which is there: name another")
    with engine.connect() as connection, sqlite3.connect(target) as copy:
        source = connection.connection.driver_connection
        if not isinstance(source, sqlite3.Connection):
            raise StoreError("expected SQLite's own driver: back it up by other means")
        source.backup(copy)
    copy.close()
