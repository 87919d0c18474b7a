"""A database as release 0.1.0 left it: a valley in mid-season.

`release_0_1_0/` was written by that release: its tables on each kind of database, and the rows
of the demo's valley after its last line.
"""

import json
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from sqlalchemy import JSON, Boolean, Connection, Date, DateTime, Engine, MetaData, Table

from assistant.store.engine import open_engine

FOLDER = Path(__file__).parent / "release_0_1_0"
# As a driver wants them that is given no types of ours.
_READ: Mapping[type, Callable[[Any], object]] = {
    Boolean: bool,
    Date: date.fromisoformat,
    DateTime: lambda said: datetime.fromisoformat(said).replace(tzinfo=UTC),
    JSON: json.loads,
}


@contextmanager
def of_first_release(empty_url: str) -> Iterator[Engine]:
    """The database at this address, made anew as one of 0.1.0."""
    engine = open_engine(empty_url)
    with engine.begin() as connection:
        _clear(connection)
        made = (FOLDER / f"{engine.dialect.name}.sql").read_text("utf-8")
        for statement in made.split(";\n"):
            if statement.strip():
                connection.exec_driver_sql(statement)
        _fill(connection)
    yield engine
    engine.dispose()


def _clear(connection: Connection) -> None:
    there = MetaData()
    there.reflect(connection)
    there.drop_all(connection)


def _fill(connection: Connection) -> None:
    there = MetaData()
    there.reflect(connection)
    rows: dict[str, list[dict[str, object]]] = {}
    for line in (FOLDER / "rows.jsonl").read_text("utf-8").splitlines():
        name, row = json.loads(line)
        rows.setdefault(name, []).append(_typed(there.tables[name], row))
    for table in there.sorted_tables:
        for row in rows.get(table.name, ()):
            connection.execute(table.insert(), row)
        if rows.get(table.name):
            _count_on(connection, table)


def _typed(table: Table, row: Mapping[str, Any]) -> dict[str, object]:
    return {name: _as(table.c[name].type, value) for name, value in row.items()}


def _as(kind: object, value: Any) -> object:
    for known, read in _READ.items():
        if isinstance(kind, known):
            return read(value)
    return value


def _count_on(connection: Connection, table: Table) -> None:
    """PostgreSQL numbers rows by sequences, which rows that bring their numbers do not move."""
    if connection.dialect.name == "postgresql" and "id" in table.c:
        last = f"(SELECT max(id) FROM {table.name})"
        connection.exec_driver_sql(
            f"SELECT setval(pg_get_serial_sequence('{table.name}', 'id'), {last})"
        )
