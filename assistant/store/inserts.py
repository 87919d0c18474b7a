"""Inserting what is not there yet, or in place of what is: the one place where the two
databases are told apart."""

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Table
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.orm import InstrumentedAttribute, Session
from sqlalchemy.sql.dml import ReturningInsert

from assistant.store.core import table_of
from assistant.store.tables import Base

Insert = sqlite.Insert | postgresql.Insert


def insert_missing(
    session: Session,
    table: type[Base],
    rows: Sequence[Mapping[str, object]],
    key: Sequence[InstrumentedAttribute[object]],
) -> int:
    """Inserts the rows whose unique key is not taken, and says how many those were."""
    if not rows:
        return 0
    names = tuple(column.key for column in key)
    statement = _missing(session.get_bind().dialect.name, table, names)
    given = [dict(row) for row in rows]
    return len(session.execute(statement, given if len(given) > 1 else given[0]).all())


def put(session: Session, table: type[Base], row: Mapping[str, object]) -> None:
    """Keeps a row, in place of the one with the same primary key."""
    session.execute(_put(session.get_bind().dialect.name, table), dict(row))


def add_up(session: Session, table: type[Base], row: Mapping[str, object]) -> None:
    """Adds the numbers of a row to those of the one with the same primary key."""
    session.execute(_add_up(session.get_bind().dialect.name, table), dict(row))


# To build such a statement takes longer than to run it.
@cache
def _missing(dialect: str, row: type[Base], key: tuple[str, ...]) -> ReturningInsert[Any]:
    table = table_of(row)
    columns = [table.c[name] for name in key]
    insert = _insert(dialect, table)
    return insert.on_conflict_do_nothing(index_elements=columns).returning(columns[0])


@cache
def _put(dialect: str, row: type[Base]) -> Insert:
    table = table_of(row)
    insert = _insert(dialect, table)
    key = [column.name for column in table.primary_key]
    changed = {name: insert.excluded[name] for name in table.c.keys() if name not in key}
    return insert.on_conflict_do_update(index_elements=key, set_=changed)


@cache
def _add_up(dialect: str, row: type[Base]) -> Insert:
    table = table_of(row)
    insert = _insert(dialect, table)
    key = [column.name for column in table.primary_key]
    numbers = [name for name in table.c.keys() if name not in key]
    sums = {name: table.c[name] + insert.excluded[name] for name in numbers}
    return insert.on_conflict_do_update(index_elements=key, set_=sums)


def _insert(dialect: str, table: Table) -> Insert:
    return sqlite.insert(table) if dialect == "sqlite" else postgresql.insert(table)
