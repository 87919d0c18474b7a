"""Makes the tables of a new database in one go, as the models say them and without Alembic.

Gone step by step from the first release that is ten times the work, and every test and every
new deployment would pay for it. `tests/unit/store/test_schema.py` holds both ways to one end.
"""

from sqlalchemy import (
    Column,
    Connection,
    Engine,
    MetaData,
    String,
    Table,
    func,
    insert,
    inspect,
    select,
)

from assistant.store.memo import VILLAGES
from assistant.store.tables import Base
from assistant.store.tables_running import CounterRow

VERSION_TABLE = "alembic_version"
MIGRATION_LOCK = 0x6E757273  # any number that no other program locks in this database
_VERSION = Table(  # as Alembic would make it
    VERSION_TABLE,
    MetaData(naming_convention={"pk": "%(table_name)s_pkc"}),
    Column("version_num", String(32), primary_key=True),
)


def make_tables(engine: Engine, revision: str) -> None:
    """All tables, noted as those of this revision, in one transaction. Several processes may
    start at once: those who come later find the tables made and leave them."""
    with engine.begin() as connection:
        lock_tables(connection)
        if not inspect(connection).has_table(VERSION_TABLE):
            _make(connection, revision)


def lock_tables(connection: Connection) -> None:
    """Makes other processes wait that change tables; on SQLite the write lock does."""
    if connection.dialect.name == "postgresql":
        connection.execute(select(func.pg_advisory_xact_lock(MIGRATION_LOCK)))


def _make(connection: Connection, revision: str) -> None:
    Base.metadata.create_all(connection, checkfirst=False)
    connection.execute(insert(CounterRow), {"name": VILLAGES, "number": 0})
    _VERSION.create(connection)
    connection.execute(insert(_VERSION), {"version_num": revision})
