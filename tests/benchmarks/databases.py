"""The databases that the benchmarks of the store run on, and the bare driver of each."""

import tempfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from os import environ
from pathlib import Path
from typing import Any, Self

from sqlalchemy import Table, insert, make_url, select

from assistant.store import Store
from assistant.store.engine import open_engine
from assistant.store.tables import Base
from tests.benchmarks.size import SMALL
from tests.conftest import NoServerError, PrivateServer, schema

Row = Sequence[Any]
Columns = dict[str, Any]
AT_ONCE = 10_000  # rows of one INSERT while a database is filled


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


def copied(
    url: str, tables: Mapping[Table, Callable[[Columns, int], Columns]], copies: Iterable[int]
) -> None:
    """Adds changed copies of all rows of some tables, in one transaction."""
    engine = open_engine(url)
    numbers = list(copies)
    with engine.begin() as connection:
        for table, change in tables.items():
            found = [dict(row) for row in connection.execute(select(table)).mappings()]
            rows = [change(row, number) for number in numbers for row in found]
            for start in range(0, len(rows), AT_ONCE):
                connection.execute(insert(table), rows[start : start + AT_ONCE])
        if connection.dialect.name == "postgresql":  # as its own daemon would, in a while
            connection.exec_driver_sql("ANALYZE")
    engine.dispose()
