"""Databases for tests: a SQLite file of their own, and a real PostgreSQL server.

NURSERY_TEST_POSTGRES_URL names a server to use; tests make schemas there
and leave nothing behind. Without it a private server is started from the installed programs, as
another user where the tests run as root, since the server refuses root. Where neither is to be
had those tests are skipped with the reason; NURSERY_REQUIRE_POSTGRES=1 makes that a failure.
"""

import gc
import os
import pwd
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, settings
from sqlalchemy import Connection, Engine, create_engine, make_url, text

from assistant.store import Store
from assistant.store.engine import forget_power_cuts
from assistant.store.tables import Base
from assistant.wiring.dangers import open_dangers
from assistant.wiring.tasks import open_tasks
from tests.shared import share

gc.disable()  # until all tests are collected: what is made until then stays
forget_power_cuts()
share()
# The same examples on every build, so that a red one is about the change; at a desk new ones.
open_dangers()
open_tasks()  # as every start of the program does
# Nothing fails for how long it took: the machine may have other work.
settings.register_profile("desk", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("build", settings.get_profile("desk"), derandomize=True)
settings.load_profile("build" if os.environ.get("CI") else "desk")


def pytest_collection_finish() -> None:
    """What was collected is not looked through for garbage any more; what tests make is, and
    seldom: that is a twentieth of the suite's time."""
    gc.freeze()
    gc.set_threshold(20_000, 20, 50)
    gc.enable()


class NoServerError(Exception):
    """No PostgreSQL server is to be had; the text says why."""


class PrivateServer:
    """A PostgreSQL server in a temporary folder, reached by a socket in it only.

    Args:
        durable: whether commits wait for the disk
    """

    def __init__(self, *, durable: bool = False) -> None:
        self._fsync = "on" if durable else "off"
        self._programs = _programs()
        self._user = _other_user() if os.geteuid() == 0 else None
        self._folder = Path(tempfile.mkdtemp(prefix="nursery-pg-"))
        if self._user:
            shutil.chown(self._folder, self._user)
        self.url = f"postgresql+psycopg://nursery@/postgres?host={self._folder}"

    def start(self) -> None:
        """Makes the cluster and returns when the server answers."""
        self._run("initdb", "-U", "nursery", "-A", "trust", "-E", "UTF8", "--locale=C", "-N")
        self.begin()

    def crash(self) -> None:
        """Ends the server as a kill does: nothing is written any more, all are cut off."""
        self._run("pg_ctl", "-m", "immediate", "stop")

    def begin(self) -> None:
        """Starts the server again; returns when it answers."""
        options = f"-k {self._folder} -c listen_addresses= -c fsync={self._fsync}"
        options += " -c autovacuum=off"
        log = self._folder / "log"
        self._run("pg_ctl", "-w", "-t", "300", "-l", str(log), "-o", options, "start")

    def stop(self) -> None:
        """Ends the server, if it runs, and removes its folder."""
        try:
            self._run("pg_ctl", "-m", "immediate", "stop")
        except NoServerError:
            pass
        shutil.rmtree(self._folder, ignore_errors=True)

    def _run(self, program: str, *arguments: str) -> None:
        command = [str(self._programs / program), "-D", str(self._folder / "data"), *arguments]
        if self._user:
            command = ["runuser", "-u", self._user, "--", *command]
        said = self._folder / "said"  # not a pipe: the server would hold it open for ever
        with said.open("w") as out:
            done = subprocess.run(
                command, cwd=self._folder, stdin=subprocess.DEVNULL, stdout=out, stderr=out
            )
        if done.returncode:
            raise NoServerError(f"{program} failed: {said.read_text()[-500:]}")


def _programs() -> Path:
    """The folder of initdb and pg_ctl, the newest version where there are several."""
    found = [path.parent for path in Path("/usr/lib/postgresql").glob("*/bin/pg_ctl")]
    on_path = shutil.which("pg_ctl")
    if found:
        return max(found, key=lambda path: int(path.parent.name))
    if on_path is None:
        raise NoServerError(
            "initdb and pg_ctl are not installed (Debian: apt install postgresql)"
        )
    return Path(on_path).parent


def _other_user() -> str:
    known = {entry.pw_name for entry in pwd.getpwall()}
    for user in ("postgres", "nobody"):
        if user in known and shutil.which("runuser"):
            return user
    raise NoServerError("the server refuses root, and no other user is there to run it as")


@pytest.fixture(scope="session")
def postgres_server() -> Iterator[str]:
    """The URL of a PostgreSQL server that tests may make schemas in."""
    given = os.environ.get("NURSERY_TEST_POSTGRES_URL")
    if given:
        yield given
        return
    try:
        server = PrivateServer()
    except NoServerError as error:
        _do_without(error)
    try:
        server.start()
        yield server.url
    except NoServerError as error:
        _do_without(error)
    finally:
        server.stop()


def _do_without(reason: NoServerError) -> None:
    if os.environ.get("NURSERY_REQUIRE_POSTGRES") == "1":
        pytest.fail(f"NURSERY_REQUIRE_POSTGRES=1, but {reason}", pytrace=False)
    pytest.skip(f"no PostgreSQL server: {reason}")


@contextmanager
def schema(server: str) -> Iterator[str]:
    """The URL of a new schema on a server, removed afterwards."""
    name = f"test_{uuid4().hex}"
    address = make_url(server).set(drivername="postgresql+psycopg")
    engine = create_engine(address, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f"CREATE SCHEMA {name}"))
    own = address.update_query_dict({"options": f"-csearch_path={name}"})
    yield own.render_as_string(hide_password=False)
    with engine.connect() as connection:
        connection.execute(text(f"DROP SCHEMA {name} CASCADE"))
    engine.dispose()


def _migrated(url: str) -> str:
    store = Store(url)
    store.migrate()
    store.close()
    return url


@pytest.fixture
def postgres_url(postgres_server: str) -> Iterator[str]:
    """An empty schema of its own on a PostgreSQL server."""
    with schema(postgres_server) as url:
        yield url


@pytest.fixture
def sqlite_url(tmp_path: Path) -> str:
    """A SQLite file that is not there yet."""
    return f"sqlite:///{tmp_path / 'nursery.db'}"


@pytest.fixture(scope="session")
def _postgres_tables(postgres_server: str) -> Iterator[str]:
    """A schema with the tables made once for all tests, which is much the slowest part."""
    with schema(postgres_server) as url:
        yield _migrated(url)


@pytest.fixture(scope="session")
def _sqlite_tables(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A file with the tables made, to be copied."""
    path = tmp_path_factory.mktemp("tables") / "nursery.db"
    _migrated(f"sqlite:///{path}")
    return path


# Every row of every table away, numbers begin again: most tables are empty, so that this takes
# a twentieth of what TRUNCATE takes, which makes the files of all tables anew.
_TABLES = ", ".join(f"'{table.name}'" for table in reversed(Base.metadata.sorted_tables))
_EMPTY = f"""
DO $$ DECLARE one text; BEGIN
  FOREACH one IN ARRAY ARRAY[{_TABLES}] LOOP
    EXECUTE 'DELETE FROM ' || quote_ident(one);
  END LOOP;
  PERFORM setval(quote_ident(sequencename)::regclass, start_value, false)
    FROM pg_sequences WHERE schemaname = current_schema() AND last_value IS NOT NULL;
END $$"""


def empty(connection: Connection) -> None:
    """Takes all rows out of the tables of a PostgreSQL schema."""
    connection.exec_driver_sql(_EMPTY)


@pytest.fixture(scope="session")
def _emptying(_postgres_tables: str) -> Iterator[Engine]:
    """The connection that takes the rows away."""
    engine = create_engine(_postgres_tables)
    yield engine
    engine.dispose()


@pytest.fixture
def _clean_postgres(_postgres_tables: str, _emptying: Engine) -> Iterator[str]:
    yield _postgres_tables
    with _emptying.begin() as connection:
        empty(connection)


@pytest.fixture
def _copied_sqlite(_sqlite_tables: Path, sqlite_url: str, tmp_path: Path) -> str:
    shutil.copy(_sqlite_tables, tmp_path)
    return sqlite_url


def _each(sqlite: str, postgresql: str) -> Any:
    """A fixture that gives what each of two others gives, in turn."""

    @pytest.fixture(
        params=[pytest.param(sqlite, id="sqlite"), pytest.param(postgresql, id="postgresql")]
    )
    def each(request: pytest.FixtureRequest) -> str:
        url: str = request.getfixturevalue(request.param)
        return url

    return each


# A database with no tables yet, and one with all tables and no rows, once of each kind.
empty_url = _each("sqlite_url", "postgres_url")
database_url = _each("_copied_sqlite", "_clean_postgres")


@pytest.fixture
def store(database_url: str) -> Iterator[Store]:
    """A store without rows, once on each kind of database."""
    opened = Store(database_url)
    yield opened
    opened.close()
