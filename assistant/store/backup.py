"""A copy of the database while it is in use, and putting one back."""

import os
import sqlite3
import subprocess
from collections.abc import Sequence
from contextlib import closing
from pathlib import Path

from sqlalchemy import URL, Engine, make_url

from assistant.store.errors import StoreError

OURS_ONLY = 0o600  # names, numbers and words of people


def copy_out(engine: Engine, target: Path) -> None:
    """Copies a database into a new file that only its owner may read, whole and consistent: by
    SQLite's own backup, or by pg_dump in its custom format.

    Raises:
        StoreError: a file that is there already, or a pg_dump that is missing or fails.
    """
    if target.exists():
        raise StoreError(f"expected a new file, got {target}, which is there: name another")
    os.close(os.open(target, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OURS_ONLY))
    try:
        if engine.dialect.name == "sqlite":
            _copy_sqlite(engine, target)
        else:
            _run(engine.url, ["pg_dump", "--format=custom", "--no-owner", f"--file={target}"])
    except BaseException:
        target.unlink()
        raise


def put_back(url: str, copy: Path) -> None:
    """Puts a copy in the place of the database, whose processes have been stopped.

    Raises:
        StoreError: no copy there, none of this kind of database, or pg_restore fails.
    """
    parsed = make_url(url)
    if not copy.is_file():
        raise StoreError(f"expected a copy made by nursery backup, got {copy}: no such file")
    if parsed.get_backend_name() == "sqlite":
        _put_back_sqlite(Path(parsed.database or ""), copy)
        return
    options = [
        "--clean",
        "--if-exists",
        "--no-owner",
        "--single-transaction",
        "--exit-on-error",
    ]
    _run(parsed, ["pg_restore", *options, f"--dbname={parsed.database}", str(copy)])


def _copy_sqlite(engine: Engine, target: Path) -> None:
    with engine.connect() as connection, closing(sqlite3.connect(target)) as copy:
        source = connection.connection.driver_connection
        if not isinstance(source, sqlite3.Connection):
            raise StoreError("expected SQLite's own driver: back it up by other means")
        source.backup(copy)


def _put_back_sqlite(database: Path, copy: Path) -> None:
    """Copies into a file beside it first, so that a full disk leaves the old database whole."""
    fresh = database.with_name(database.name + ".fresh")
    fresh.unlink(missing_ok=True)
    os.close(os.open(fresh, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OURS_ONLY))
    try:
        with closing(sqlite3.connect(copy)) as source, closing(sqlite3.connect(fresh)) as to:
            source.backup(to)
            (sound,) = to.execute("PRAGMA integrity_check").fetchone()
    except sqlite3.DatabaseError as fault:
        fresh.unlink()
        raise StoreError(
            f"expected a copy made by nursery backup, got {copy}: {fault}"
        ) from fault
    if sound != "ok":
        fresh.unlink()
        raise StoreError(f"expected a sound copy, got {copy}: {sound}")
    # What the old one still holds in its log would be written into the new one.
    for log in ("-wal", "-shm"):
        database.with_name(database.name + log).unlink(missing_ok=True)
    fresh.replace(database)


def _run(url: URL, command: Sequence[str]) -> None:
    """A program of PostgreSQL's against a database; the password does not stand among its
    words, where other users of the machine see it."""
    given = {
        "PGHOST": url.host or url.query.get("host"),
        "PGPORT": str(url.port) if url.port else None,
        "PGUSER": url.username,
        "PGPASSWORD": url.password,
        "PGDATABASE": url.database,
    }
    environment = os.environ | {name: str(each) for name, each in given.items() if each}
    try:
        done = subprocess.run(command, env=environment, capture_output=True, text=True)
    except FileNotFoundError as fault:
        raise StoreError(
            f"expected {command[0]} on this machine: install PostgreSQL's client programs"
        ) from fault
    if done.returncode:
        raise StoreError(f"{command[0]} failed: {done.stderr.strip().splitlines()[-1:]}")
