"""One writes at a time in a SQLite file: who has much to write lets others write between."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event, Thread

import pytest
from sqlalchemy import make_url

from assistant.store import DatabaseAwayError, Store, engine
from assistant.wiring.practices import open_practices


@pytest.fixture
def opened(_copied_sqlite: str) -> Iterator[Store]:
    found = Store(_copied_sqlite, open_practices(None))
    yield found
    found.close()


@contextmanager
def held(store: Store) -> Iterator[Event]:
    """Somebody else writes until the event is set."""
    let_go, has = Event(), Event()
    path = make_url(str(store._engine.url)).database
    assert path is not None

    def write() -> None:
        other = sqlite3.connect(path, isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        has.set()
        let_go.wait(60)
        other.execute("ROLLBACK")
        other.close()

    writer = Thread(target=write)
    writer.start()
    has.wait(60)
    try:
        yield let_go
    finally:
        let_go.set()
        writer.join()


def test_it_waits_while_another_writes(opened: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    """Until nobody does."""
    monkeypatch.setattr(engine, "_waits_for_disk", "FULL")
    monkeypatch.setattr(engine, "LONGEST_WAY_S", 60.0)
    looks: list[bool] = []
    free = engine._is_free

    def looked(driver: sqlite3.Connection) -> bool:
        looks.append(free(driver))
        if len(looks) == 3:
            let_go.set()
        return looks[-1]

    monkeypatch.setattr(engine, "_is_free", looked)
    with held(opened) as let_go:
        opened.give_way()
    assert looks[:3] == [False] * 3
    assert looks[-engine.CALM_LOOKS :] == [True] * engine.CALM_LOOKS


def test_it_waits_for_nobody_for_ever(opened: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    """The morning goes on though others always write; and the connection is as it was."""
    monkeypatch.setattr(engine, "_waits_for_disk", "FULL")
    with held(opened):
        opened.give_way()
    with opened.work() as work:
        assert work.running.count_aside() == 0


def test_a_lock_that_is_never_free_is_a_database_that_is_away(
    opened: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """So that the operator brings the text again."""
    monkeypatch.setattr(engine, "BUSY_TIMEOUT_S", 0.05)
    with held(opened) as let_go:
        with pytest.raises(DatabaseAwayError), opened.work() as work:
            work.running.count_aside()
        monkeypatch.setattr(engine, "BUSY_TIMEOUT_S", 60.0)
        Thread(target=let_go.set).start()
        with opened.work() as work:
            assert work.running.count_aside() == 0
