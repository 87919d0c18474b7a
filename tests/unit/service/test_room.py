"""A disk that is full, or nearly, shows before a text is lost for it."""

from collections import namedtuple
from collections.abc import Callable
from datetime import timedelta

import pytest
from sqlalchemy import event

from assistant.service import pulse as pulses
from assistant.service.pulse import RoomTried, ServiceFault, has_room, pulse
from assistant.store import NoRoomError
from tests.valley import AMINA, Valley

Usage = namedtuple("Usage", "total used free")


@pytest.fixture
def fill(valley: Valley) -> Callable[[bool], None]:
    """Lets the database grow no further, or grow again: SQLite then says what it says of a
    disk without room (SQLITE_FULL)."""
    engine = valley.house.store._engine
    most = [0]

    @event.listens_for(engine, "begin")
    def bound(connection: object) -> None:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()  # type: ignore[attr-defined]
        room = pages if most[0] else 1_000_000
        connection.exec_driver_sql(f"PRAGMA max_page_count={room}")  # type: ignore[attr-defined]

    def filled(full: bool) -> None:
        most[0] = int(full)

    return filled


def write_much(valley: Valley) -> None:
    for number in range(200):
        valley.post(AMINA, f"hello {number} " + "x" * 100)


def test_a_write_that_fails_for_want_of_room_shows_until_one_goes(
    valley: Valley, fill: Callable[[bool], None]
) -> None:
    """The try is a small one, made no more often than a sign of life."""
    tried = RoomTried(valley.house)
    tried(valley.now)
    assert has_room(valley.house)
    fill(True)
    with pytest.raises(NoRoomError):
        write_much(valley)
    assert not has_room(valley.house)
    assert pulse(valley.house, valley.now).faults[0] is ServiceFault.ROOM
    fill(False)
    tried(valley.now + timedelta(seconds=5))
    assert not has_room(valley.house)
    tried(valley.now + timedelta(seconds=11))
    assert has_room(valley.house)


def test_a_disk_that_is_all_but_full_shows_while_all_is_still_kept(
    valley: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Of the disk that the database lies on."""
    asked: list[object] = []

    def usage(folder: object) -> Usage:
        asked.append(folder)
        return Usage(10**12, 10**12 - free[0], free[0])

    free = [pulses.LEAST_FREE]
    monkeypatch.setattr(pulses, "disk_usage", usage)
    assert has_room(valley.house)
    free[0] -= 1
    assert not has_room(valley.house)
    assert asked == [valley.house.store.folder] * 2
    assert ServiceFault.ROOM in pulse(valley.house, valley.now).faults
    valley.post(AMINA, "hello")


def test_a_try_that_fails_is_no_fault_of_its_own(
    valley: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Who asks whether all is well is told that it is not."""

    def full(*given: object) -> None:
        valley.house.store.lacks_room = True
        raise NoRoomError("database or disk is full")

    monkeypatch.setattr("assistant.store.queries.running.Running.beat", full)
    RoomTried(valley.house)(valley.now)
    assert not has_room(valley.house)
