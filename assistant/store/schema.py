"""Brings a database to the tables of this release."""

from threading import Lock

from alembic import command
from alembic.config import Config
from sqlalchemy import Connection, Engine, func, select

_MIGRATION_LOCK = 0x6E757273  # any number that no other program locks in this database
_ONE_AT_A_TIME = Lock()  # Alembic's `op` is one per process, not one per thread


def migrate(engine: Engine) -> None:
    """Runs the migrations that were not run yet, all in one transaction.

    Several processes may start at once: on PostgreSQL an advisory lock makes the others wait,
    on SQLite the write lock does.
    """
    with _ONE_AT_A_TIME, engine.begin() as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(select(func.pg_advisory_xact_lock(_MIGRATION_LOCK)))
        command.upgrade(_config(connection), "head")


def _config(connection: Connection) -> Config:
    config = Config()
    config.set_main_option("script_location", "assistant.store:migrations")
    config.attributes["connection"] = connection
    return config
