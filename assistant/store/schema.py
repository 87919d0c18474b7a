"""Brings a database to the tables of this release."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from threading import Lock

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, func, select

from assistant.store.errors import BadRowError, StoreError

_MIGRATION_LOCK = 0x6E757273  # any number that no other program locks in this database
_ONE_AT_A_TIME = Lock()  # Alembic's `op` is one per process, not one per thread


def migrate(engine: Engine, revision: str = "head") -> None:
    """Runs the migrations that were not run yet, all in one transaction.

    Several processes may start at once: on PostgreSQL an advisory lock makes the others wait,
    on SQLite the write lock does.
    """
    with _ONE_AT_A_TIME, engine.connect() as connection, _tables_may_be_made_anew(connection):
        if connection.dialect.name == "postgresql":
            connection.execute(select(func.pg_advisory_xact_lock(_MIGRATION_LOCK)))
        command.upgrade(_config(connection), revision)


@dataclass(frozen=True)
class Tables:
    """Which tables a database has and which this release works with, each by the name of its
    last change; `there` is None for a new database, `known` whether this release knows it."""

    there: str | None
    wanted: str
    known: bool

    @property
    def fit(self) -> bool:
        """Whether this release can work with them as they are."""
        return self.there == self.wanted

    @property
    def advice(self) -> str:
        """What to do."""
        if self.fit:
            return "They fit."
        if self.there is None:
            return "The database is new: nursery start or nursery migrate makes its tables."
        if self.known:
            return (
                f"The database has the tables of {self.there}, this release works with "
                f"{self.wanted}: make a copy with nursery backup FILE, then run nursery migrate"
            )
        return (
            f"The database has the tables of {self.there}, which a later release made: start "
            f"that release, or run its nursery downgrade {self.wanted}"
        )


def tables(engine: Engine) -> Tables:
    """Looks at the tables and changes nothing."""
    with engine.connect() as connection:
        there = MigrationContext.configure(connection).get_current_revision()
        script = ScriptDirectory.from_config(_config(connection))
    known = {each.revision for each in script.walk_revisions()}
    wanted = script.get_current_head() or ""
    return Tables(there, wanted, there is None or there in known)


def downgrade(engine: Engine, revision: str) -> None:
    """Takes the tables back to an earlier state.

    Raises:
        StoreError: no such state, or a later one than the database has.
    """
    found = tables(engine)
    if found.there is None or not found.known or revision not in _before(engine, found.there):
        raise StoreError(
            f"expected a state before {found.there}, such as v0001, got {revision!r}: see "
            "nursery status"
        )
    with _ONE_AT_A_TIME, engine.connect() as connection, _tables_may_be_made_anew(connection):
        command.downgrade(_config(connection), revision)


def _before(engine: Engine, revision: str) -> set[str]:
    """The states before one. Their numbers need not be in the order of the chain."""
    with engine.connect() as connection:
        script = ScriptDirectory.from_config(_config(connection))
    chain = [each.revision for each in script.iterate_revisions(revision, "base")]
    return set(chain[1:])


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
