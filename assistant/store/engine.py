"""Opens the database named by a URL, set up the same way every time."""

import sqlite3
import time
from contextlib import suppress
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError, OperationalError

from assistant.store.errors import DatabaseUrlError

# Longer than any transaction of ours, shorter than people wait for an answer on a screen.
BUSY_TIMEOUT_S = 10.0
# SQLite itself looks every tenth of a second whether it may write, after it waited for a while;
# who writes batch after batch would then be first each time.
LOOK_EVERY_S = 0.002
CALM_LOOKS = 4  # one after the other that find nobody writing
LONGEST_WAY_S = 0.5

# What people typed does not belong in a log, where error texts end.
_OPTIONS: dict[str, Any] = {"hide_parameters": True}

READING: dict[str, Any] = {"postgresql_readonly": True}  # a transaction that only reads

_TRIES = 20  # more than the processes that ever start together

_EXAMPLES = "sqlite:////var/lib/nursery/nursery.db or postgresql://user@host/database"


def open_engine(url: str) -> Engine:
    """An engine for a SQLite file or a PostgreSQL server. Connects to nothing yet.

    Raises:
        DatabaseUrlError: another kind of database, or an address that cannot be read.
    """
    try:
        parsed = make_url(url)
    except ArgumentError as error:
        raise DatabaseUrlError(
            f"expected a database URL, got one that cannot be read: give e.g. {_EXAMPLES}"
        ) from error
    kind = parsed.get_backend_name()
    if kind == "sqlite":
        return _sqlite(parsed)
    if kind in ("postgresql", "postgres"):
        return _postgresql(parsed)
    raise DatabaseUrlError(
        f"expected SQLite or PostgreSQL, got {kind!r}: give e.g. {_EXAMPLES}"
    )


def _sqlite(url: URL) -> Engine:
    if url.database in (None, "", ":memory:"):
        raise DatabaseUrlError(
            "expected a SQLite file, got a database in memory, which every thread would see "
            f"differently: give e.g. {_EXAMPLES}"
        )
    engine = create_engine(url, connect_args={"timeout": BUSY_TIMEOUT_S}, **_OPTIONS)
    event.listen(engine, "connect", _set_up_sqlite)
    event.listen(engine, "begin", _begin_to_write)
    return engine


_waits_for_disk = "FULL"


def forget_power_cuts() -> None:
    """From now on this process does not wait for the disk: for tests and played seasons, whose
    databases are thrown away."""
    global _waits_for_disk
    _waits_for_disk = "OFF"


def _set_up_sqlite(connection: sqlite3.Connection, _record: object) -> None:
    """WAL makes a commit one short write, and lets a backup read meanwhile. FULL waits until
    that write is on the disk: what the operator was told is kept must outlive a power cut."""
    connection.isolation_level = None  # the driver's own BEGIN comes too late: see below
    for pragma in (f"synchronous={_waits_for_disk}", "foreign_keys=ON"):
        connection.execute(f"PRAGMA {pragma}").close()
    _write_ahead(connection)


def _write_ahead(connection: sqlite3.Connection) -> None:
    """Turns WAL on, which stays on in the file.

    The first switch is refused without waiting while another process is doing the same; taking
    the write lock does wait, and then the other is done.
    """
    for _ in range(_TRIES):
        with suppress(sqlite3.OperationalError):
            connection.execute("PRAGMA journal_mode=WAL").close()
            return
        connection.execute("BEGIN IMMEDIATE").close()
        connection.rollback()
    connection.execute("PRAGMA journal_mode=WAL").close()


def _begin_to_write(connection: Connection) -> None:
    """Takes the write lock at once. A transaction that reads first and then writes would be
    refused without waiting when another wrote in between. One that only reads takes none."""
    reading = connection.get_execution_options().get("postgresql_readonly", False)
    if reading != connection.info.get("reading", False):
        connection.exec_driver_sql(f"PRAGMA query_only={'ON' if reading else 'OFF'}")
        connection.info["reading"] = reading
    if reading:
        connection.exec_driver_sql("BEGIN")
    else:
        _take_lock(connection)


def _take_lock(connection: Connection) -> None:
    """Begins once nobody else writes. Looking again is done by the driver alone: a fault that
    goes through all layers costs more than the transaction."""
    driver: Any = connection.connection.driver_connection
    driver.execute("PRAGMA busy_timeout=0").close()
    try:
        connection.exec_driver_sql("BEGIN IMMEDIATE")
    except OperationalError as fault:
        is_busy = getattr(fault.orig, "sqlite_errorname", "").startswith("SQLITE_BUSY")
        if not is_busy or not _begins_later(driver):
            raise
    finally:
        driver.execute(f"PRAGMA busy_timeout={int(BUSY_TIMEOUT_S * 1000)}").close()


def _begins_later(driver: sqlite3.Connection) -> bool:
    until = time.monotonic() + BUSY_TIMEOUT_S
    while time.monotonic() < until:
        time.sleep(LOOK_EVERY_S)
        with suppress(sqlite3.OperationalError):
            driver.execute("BEGIN IMMEDIATE").close()
            return True
    return False


def give_way(engine: Engine) -> None:
    """Lets others write who wait for the one lock of a SQLite file, until it stays free: for
    who goes on at once after a long transaction, and can wait better than they."""
    if engine.dialect.name != "sqlite" or _waits_for_disk == "OFF":
        return
    until, calm = time.monotonic() + LONGEST_WAY_S, 0
    held = engine.raw_connection()
    driver: Any = held.driver_connection
    driver.execute("PRAGMA busy_timeout=0").close()
    try:
        while calm < CALM_LOOKS and time.monotonic() < until:
            time.sleep(LOOK_EVERY_S)
            calm = calm + 1 if _is_free(driver) else 0
    finally:
        driver.execute(f"PRAGMA busy_timeout={int(BUSY_TIMEOUT_S * 1000)}").close()
        held.close()


def _is_free(driver: sqlite3.Connection) -> bool:
    try:
        driver.execute("BEGIN IMMEDIATE").close()
    except sqlite3.OperationalError:
        return False
    driver.rollback()
    return True


def _postgresql(url: URL) -> Engine:
    server = url.set(drivername="postgresql+psycopg")
    try:
        return create_engine(server, pool_pre_ping=True, **_OPTIONS)
    except ModuleNotFoundError as error:
        raise DatabaseUrlError(
            "PostgreSQL needs the driver psycopg: pip install 'nursery[postgresql]'"
        ) from error
