"""The loop that the clock drives. Only here the clock is the wall's, frozen."""

import logging
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from threading import Event
from typing import Any

import pytest
from freezegun import freeze_time

from assistant import worker as working
from assistant.channel import Fate, Handover, Outgoing
from assistant.service import dispatch as dispatching
from assistant.service.house import House
from assistant.service.time_guard import TimeGuard
from assistant.store import Store
from assistant.store.values import TextState
from assistant.worker import Worker, wall_clock
from tests.valley import AMINA, BARAKA, Valley, at, house_of, settle


class Listening:
    """A gateway that tells when it was offered a text."""

    def __init__(self) -> None:
        self.offered: list[str] = []
        self.heard = Event()

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Takes all."""
        self.offered.append(outgoing.text)
        self.heard.set()
        return Handover(Fate.ACCEPTED)

    def time(self) -> None:
        """It tells none."""


@pytest.fixture
def valley(_copied_sqlite: str) -> Iterator[Valley]:
    """Amina's question for her field waits in the outbox."""
    store = Store(_copied_sqlite)
    valley = Valley(house_of(store), at("1 Jun 08:00"))
    settle(valley)
    valley.post(AMINA, "hello")
    yield valley
    store.close()


@pytest.fixture
def gateway() -> Listening:
    return Listening()


def worker_of(valley: Valley, gateway: Listening, pause_s: float = 60.0) -> Worker:
    """A worker on the valley's clock that would pause for a minute."""
    return Worker(
        valley.house,
        gateway,
        pause_s=pause_s,
        batch=10,
        lease_s=60.0,
        clock=lambda: valley.now,
    )


@freeze_time("2026-06-01 05:00:00")
def test_the_wall_clock_is_aware_and_in_utc() -> None:
    """As everything inside is."""
    now = wall_clock()
    assert now == datetime(2026, 6, 1, 5, tzinfo=UTC)
    assert now.utcoffset() == timedelta(0)


def test_a_round_sends_all_that_waits(valley: Valley, gateway: Listening) -> None:
    """Also more than one batch holds."""
    for number in range(25):
        valley.post(f"+447700900{200 + number}", "hello")
    worker_of(valley, gateway).round()
    assert len(gateway.offered) == 26


def test_what_a_slow_operator_cannot_take_within_the_lease_goes_back(valley: Valley) -> None:
    """Another worker would take it for lost and offer it a second time."""

    class Slow(Listening):
        def send(self, outgoing: Outgoing, now: datetime) -> Handover:
            """Answers after a minute."""
            valley.now += timedelta(seconds=60)
            return super().send(outgoing, now)

    valley.post(BARAKA, "hello")
    slow = Slow()
    worker = worker_of(valley, slow)
    assert worker._dispatch() == 1
    with valley.house.store.look() as work:
        states = [work.outbox.of_phone(phone)[-1].state for phone in (AMINA, BARAKA)]
    assert states == [TextState.ACCEPTED, TextState.WAITING]
    assert worker._dispatch() == 1


def test_the_loop_sends_at_once_when_it_is_woken(valley: Valley, gateway: Listening) -> None:
    """It does not wait for its next look at the clock, a minute on."""
    found = worker_of(valley, gateway)
    found.start()
    try:
        assert gateway.heard.wait(60)
        gateway.heard.clear()
        valley.post(AMINA, "1")
        found.wake()
        assert gateway.heard.wait(60)
    finally:
        found.stop()
    assert len(gateway.offered) == 2


def test_a_round_that_fails_is_logged_and_the_next_one_sends(
    valley: Valley,
    gateway: Listening,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    """The database was away for a moment."""
    calls = [0]

    def dispatch(*given: Any, **more: Any) -> int:
        calls[0] += 1
        if calls[0] == 1:
            raise RuntimeError("the database is away")
        return dispatching.dispatch(*given, **more)

    monkeypatch.setattr(working, "dispatch", dispatch)
    found = worker_of(valley, gateway, pause_s=0.001)
    with caplog.at_level(logging.ERROR):
        found.start()
        try:
            assert gateway.heard.wait(60)
        finally:
            found.stop()
    assert calls[0] > 1
    assert "the database is away" in caplog.text


def test_a_worker_that_was_never_started_can_be_stopped(
    valley: Valley, gateway: Listening
) -> None:
    """And stopped twice."""
    found = worker_of(valley, gateway)
    found.stop()
    found.stop()
    assert gateway.offered == []


def test_texts_leave_while_the_follow_ups_fail(
    valley: Valley, gateway: Listening, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever the clock brings, an answer is sent."""

    def ticking(*given: object) -> object:
        raise RuntimeError("a fault of ours")

    monkeypatch.setattr(working, "ticking", ticking)
    found = worker_of(valley, gateway)
    found.start()
    try:
        assert gateway.heard.wait(60)
    finally:
        found.stop()


def test_a_clock_that_is_not_believed_brings_nothing_and_texts_leave(
    valley: Valley, gateway: Listening, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It jumped by ninety days, and the operator does not agree."""
    house, true = valley.house, valley.now
    looked: list[datetime] = []

    def ticking(house: House, now: datetime, _: object) -> Iterator[int]:
        looked.append(now)
        yield 1

    monkeypatch.setattr(working, "ticking", ticking)
    guard = TimeGuard(house, lambda: 0.0, lambda: true)
    found = Worker(
        house,
        gateway,
        pause_s=60.0,
        batch=9,
        lease_s=60.0,
        clock=lambda: valley.now,
        guard=guard,
    )
    found._follow_clock()
    valley.now += timedelta(days=90)
    found._follow_clock()
    assert looked == [true]


def test_the_operators_pause_is_the_lines(valley: Valley) -> None:
    """It asked for a minute: no other text is offered until then, and none has lost a try."""

    class Busy(Listening):
        def send(self, outgoing: Outgoing, now: datetime) -> Handover:
            """Too many."""
            super().send(outgoing, now)
            return Handover(Fate.TRY_LATER, "429 slower", rest=timedelta(minutes=1))

    valley.post(BARAKA, "hello")
    busy, free = Busy(), Listening()
    worker_of(valley, busy).send()
    worker_of(valley, busy).send()
    assert len(busy.offered) == 1
    valley.now += timedelta(seconds=59)
    worker_of(valley, free).send()
    assert free.offered == []
    valley.now += timedelta(seconds=2)
    worker_of(valley, free).send()
    assert len(free.offered) >= 1
