"""The databases that the benchmarks of the store run on, and the bare driver of each."""

import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from os import environ
from pathlib import Path
from typing import Any, Self

from sqlalchemy import Connection, Table, event, make_url

from assistant.store import Store
from assistant.store.engine import open_engine
from assistant.store.tables import Base
from tests.benchmarks.size import SMALL
from tests.conftest import NoServerError, PrivateServer, schema

Row = Sequence[Any]


@dataclass(frozen=True)
class Kind:
    """A kind of database: its name in the table, and a server's address where it has one."""

    name: str
    server: str | None = None

    @contextmanager
    def fresh(self) -> Iterator[str]:
        """The URL of a database of its own with all tables and no rows."""
        with ExitStack() as held:
            if self.server:
                url = held.enter_context(schema(self.server))
            else:
                folder = held.enter_context(tempfile.TemporaryDirectory(prefix="benchmark-"))
                url = f"sqlite:///{Path(folder) / 'nursery.sqlite3'}"
            _make_tables(url)
            yield url


def _make_tables(url: str) -> None:
    """As a start makes them; where nothing is measured at once, and not by sixty migrations."""
    if SMALL:
        engine = open_engine(url)
        Base.metadata.create_all(engine)
        engine.dispose()
        return
    store = Store(url)
    store.migrate()
    store.close()


SQLITE = Kind("SQLite")


@contextmanager
def kinds(*, wanted: bool) -> Iterator[tuple[tuple[Kind, ...], str]]:
    """All kinds that are to be had, and a word on PostgreSQL; none where none is wanted.

    NURSERY_TEST_POSTGRES_URL names a server; without it a private one is started, which waits
    for the disk as a real one does; not where it is only tried whether they run.
    """
    if not wanted:
        yield (), ""
        return
    given = environ.get("NURSERY_TEST_POSTGRES_URL")
    if given:
        yield (SQLITE, Kind("PostgreSQL", given)), "PostgreSQL: the server that was named"
        return
    try:
        server = PrivateServer(durable=not SMALL)
    except NoServerError as reason:
        yield (SQLITE,), f"PostgreSQL: left out, {reason}"
        return
    try:
        server.start()
        yield (
            (SQLITE, Kind("PostgreSQL", server.url)),
            f"PostgreSQL: a private server, fsync {'off' if SMALL else 'on'}",
        )
    finally:
        server.stop()


class Bare:
    """The driver alone, set up as the store sets it up: the floors are written with it."""

    def __init__(self, url: str) -> None:
        self._engine = open_engine(url)
        self._held = self._engine.raw_connection()
        connection: Any = self._held.driver_connection
        self.is_sqlite = make_url(url).get_backend_name() == "sqlite"
        if not self.is_sqlite:
            connection.autocommit = True
        self._cursor = connection.cursor()
        self.execute = self._cursor.execute

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *error: object) -> None:
        self._cursor.close()
        self._held.close()
        self._engine.dispose()

    @contextmanager
    def work(self) -> Iterator[Self]:
        """One transaction that means to write."""
        self._cursor.execute("BEGIN IMMEDIATE" if self.is_sqlite else "BEGIN")
        yield self
        self._cursor.execute("COMMIT")

    def sql(self, statement: str) -> str:
        """A statement with ? for each value, as this driver wants it."""
        return statement if self.is_sqlite else statement.replace("?", "%s")

    def rows(self, statement: str, values: Row = ()) -> list[Row]:
        """What a SELECT (or RETURNING) gives."""
        self._cursor.execute(self.sql(statement), values)
        found: list[Row] = self._cursor.fetchall()
        return found

    def many(self, statement: str, rows: Iterable[Row]) -> None:
        """One statement for many rows."""
        self._cursor.executemany(self.sql(statement), list(rows))

    def moment(self, at: Any) -> Any:
        """An aware time as it is kept."""
        return at.strftime("%Y-%m-%d %H:%M:%S.%f") if self.is_sqlite else at

    def literal(self, at: Any) -> str:
        """An aware time as it is written in a statement."""
        return f"'{self.moment(at)}'"

    def json(self, value: Any) -> Any:
        """A value read from a JSON column, as it can be written again."""
        if self.is_sqlite or not isinstance(value, dict | list):
            return value
        from psycopg.types.json import Json  # only where PostgreSQL is

        return Json(value)


@contextmanager
def filling(url: str, tables: Iterable[Table]) -> Iterator[Connection]:
    """A transaction that fills tables: rows refer to nothing that is looked up, and the indexes
    are made when all rows are there."""
    engine = open_engine(url)
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _fill_in_haste)
    indexes = [index for table in tables for index in table.indexes]
    with engine.begin() as connection:
        is_server = connection.dialect.name == "postgresql"
        if is_server and connection.exec_driver_sql("SHOW is_superuser").scalar() == "on":
            connection.exec_driver_sql("SET LOCAL session_replication_role = replica")
        for index in indexes:
            index.drop(connection)
        yield connection
        for index in indexes:
            index.create(connection)
        if is_server:  # as its own daemon would, in a while
            connection.exec_driver_sql("ANALYZE")
    engine.dispose()


def _fill_in_haste(connection: Any, _record: object) -> None:
    """What is filled is made anew after a power cut."""
    for pragma in ("foreign_keys=OFF", "synchronous=OFF", "cache_size=-200000"):
        connection.execute(f"PRAGMA {pragma}").close()


def copied(url: str, tables: Mapping[Table, Mapping[str, str]], copies: range) -> None:
    """Adds copies of all rows of some tables, one for each number of `copies`: the columns that
    change as SQL, where `n` is the number. An id that is not among them is the database's."""
    if not copies:
        return
    with filling(url, tables) as connection:
        for table, changes in tables.items():
            names = [column.name for column in table.columns]
            kept = [name for name in names if name != "id" or "id" in changes]
            values = ", ".join(changes.get(name, f'"{name}"') for name in kept)
            into = ", ".join(f'"{name}"' for name in kept)
            connection.exec_driver_sql(
                f"INSERT INTO {table.name} ({into}) {numbers('n', copies)} "
                f"SELECT {values} FROM numbers CROSS JOIN {table.name}"
            )


def numbers(name: str, values: range) -> str:
    """The beginning of a SELECT that finds a range of numbers in the table `numbers`."""
    return (
        f"WITH RECURSIVE numbers({name}) AS (SELECT {values[0]} UNION ALL "
        f"SELECT {name} + {values.step} FROM numbers WHERE {name} < {values[-1]})"
    )
