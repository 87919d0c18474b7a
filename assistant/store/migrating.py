"""Changes the tables of a database with Alembic. Only who changes them opens this module: most
starts only look (`schema.py`), and Alembic is a tenth of an idle process."""

from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock

from alembic import command
from alembic.config import Config
from sqlalchemy import Connection, Engine

from assistant.store.errors import BadRowError
from assistant.store.making import lock_tables

_ONE_AT_A_TIME = Lock()  # Alembic's `op` is one per process, not one per thread


def migrate(engine: Engine, revision: str = "head") -> None:
    """Runs the migrations that were not run yet, all in one transaction.

    Several processes may start at once: on PostgreSQL an advisory lock makes the others wait,
    on SQLite the write lock does.
    """
    with _ONE_AT_A_TIME, engine.connect() as connection, _tables_may_be_made_anew(connection):
        lock_tables(connection)
        command.upgrade(_config(connection), revision)


def downgrade(engine: Engine, revision: str) -> None:
    """Takes the tables back to an earlier state."""
    with _ONE_AT_A_TIME, engine.connect() as connection, _tables_may_be_made_anew(connection):
        command.downgrade(_config(connection), revision)


@contextmanager
def _tables_may_be_made_anew(connection: Connection) -> Iterator[None]:
    """One transaction. SQLite alters a table by making a new one and dropping the old, which
    rows of other tables still name: it must not look at that meanwhile, only at the end. It can
    be told so between transactions only.
    """
    if connection.dialect.name != "sqlite":
        with connection.begin():
            yield
        return
    plain = connection.connection.cursor()  # asking the connection itself begins a transaction
    plain.execute("PRAGMA foreign_keys=OFF")
    try:
        with connection.begin():
            yield
            astray = connection.exec_driver_sql("PRAGMA foreign_key_check").first()
            if astray is not None:
                raise BadRowError(
                    f"expected every row to name rows that are there, got {astray}: the tables "
                    "are as they were before; restore a backup or correct that row"
                )
    finally:
        plain.execute("PRAGMA foreign_keys=ON")
        plain.close()


def _config(connection: Connection) -> Config:
    config = Config()
    config.set_main_option("script_location", "assistant.store:migrations")
    config.attributes["connection"] = connection
    return config
