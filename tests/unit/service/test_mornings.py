"""The morning in batches writes what a morning phone by phone writes, and is shared."""

import logging
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import replace
from datetime import timedelta
from threading import Barrier
from typing import Any

import pytest
from sqlalchemy import Engine, event, text

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.reminders.plan import Hours, planned
from assistant.reminders.values import State
from assistant.service import mornings, tick
from assistant.service.house import House
from assistant.store import Store, Work
from assistant.store.engine import open_engine
from assistant.store.tables import Base
from tests.benchmarks.crowd import (
    MORNING,
    NOON,
    TODAY,
    ZONE,
    Crowd,
    a_nursery,
    house_at,
    phone,
)
from tests.conftest import empty

A_TENTH_ON_DAY_FIVE = (5, -8, -9, -10, -11, -12, -13, -14, -16, -17)
WHOLE_SEASON = tuple(range(-6, 24))
Written = tuple[list[tuple[object, ...]], list[tuple[object, ...]]]


def settle(url: str, days: Sequence[int]) -> None:
    """A crowd, and who is no plain case: paused, stopped, with two beds, with weak seed, with
    seed of which nobody says that it was sown, with what was missed, without a village."""
    Crowd(days, villages=3, farmers=len(days)).settle(url)
    store = Store(url)
    with store.work() as work:
        for number, given in enumerate(({"paused_at": MORNING}, {"stopped_at": MORNING}), 200):
            _add(work, number, [5], **given)
        _add(work, 202, [5, 5])
        _add(work, 203, [5, 9])
        _add(work, 204, [0, 12])
        held = a_nursery(0, TODAY)
        weak = replace(held.inputs, germination=0.3)
        _add(work, 205, [], replace(held, inputs=weak, sown=False))
        for number, day in ((206, 2), (207, 4)):
            unsown = replace(a_nursery(0, TODAY - timedelta(days=day)), sown=False)
            _add(work, number, [], unsown)
        _add(work, 208, [5], village_id=None)
        work.warnings.add(3, 1, MORNING, MORNING + timedelta(hours=9), MORNING)
        _add(work, 210, [6, -4], village_id=3)
        assumed = replace(a_nursery(0, TODAY - timedelta(days=1)), sow_assumed=True)
        _add(work, 209, [5], assumed)
    store.close()


def _add(work: Work, number: int, days: Sequence[int], *more: Nursery, **given: object) -> None:
    """A farmer with nurseries on these days, and further ones; three days of texts are due."""
    village = given.pop("village_id", 1)
    farmer = Farmer(0, phone(number), "sw", village, MORNING, None)  # type: ignore[arg-type]
    kept = work.people.save_farmer(replace(farmer, **given))  # type: ignore[arg-type]
    beds = [a_nursery(kept.id, TODAY - timedelta(days=day)) for day in days]
    for place, bed in enumerate((*beds, *more)):
        named = replace(bed, farmer_id=kept.id, label="ABC"[place])
        saved = work.nurseries.save(named, MORNING)
        since = TODAY - timedelta(days=5)
        work.reminders.plan(planned(saved, ZONE, Hours(), since))


def written(url: str) -> Written:
    """The texts of this morning and where all reminders stand, but for ids of texts."""
    engine = open_engine(url)
    with engine.connect() as connection:
        texts = connection.execute(
            text(
                "SELECT phone, text, kind, CAST(focus AS TEXT), nursery_id, due_at, not_after, "
                "urgent, state, encoding, segments, created_at, village_id, private, lane, "
                "attempts, detail FROM outbox WHERE created_at >= :at ORDER BY phone, text"
            ),
            {"at": MORNING.replace(tzinfo=None) if "sqlite" in url else MORNING},
        ).all()
        reminders = connection.execute(
            text(
                "SELECT reminder.nursery_id, task, day, reminder.due_at, reminder.not_after, "
                "reminder.state, asked, outbox.phone, answer FROM reminder LEFT JOIN outbox "
                "ON outbox.message_id = reminder.message_id "
                "ORDER BY reminder.nursery_id, task, day"
            )
        ).all()
    engine.dispose()
    return [tuple(row) for row in texts], [tuple(row) for row in reminders]


@pytest.fixture
def house(store: Store) -> House:
    """The use cases on a database with tables and no rows."""
    return house_at(store)


def forget(url: str) -> None:
    """Empties all tables; rows are numbered from one again."""
    engine = open_engine(url)
    with engine.begin() as connection:
        if engine.dialect.name == "postgresql":
            empty(connection)
        else:
            connection.execute(text("PRAGMA defer_foreign_keys = ON"))
            for name in Base.metadata.tables:
                connection.execute(text(f"DELETE FROM {name}"))
    engine.dispose()


def phone_by_phone(house: House) -> None:
    """The morning as it was before there were batches."""
    with house.store.work() as work:
        phones = work.reminders.phones_due(MORNING)
    for each in phones:
        with house.store.work() as work:
            tick._prompt(work, house, each, MORNING)


@pytest.mark.parametrize("days", [A_TENTH_ON_DAY_FIVE, WHOLE_SEASON])
def test_batches_write_what_phones_alone_wrote(
    house: House, database_url: str, days: Sequence[int], caplog: pytest.LogCaptureFixture
) -> None:
    """The same texts, the same states, also of those that are no plain case; in batches of
    seven, and in those of every morning."""
    settle(database_url, days)
    phone_by_phone(house)
    alone = written(database_url)
    assert {State.SENT, State.TOO_LATE, State.PLANNED} <= {row[5] for row in alone[1]}
    for at_once in (7, mornings.AT_ONCE):
        forget(database_url)
        settle(database_url, days)
        served = sum(tick._morning(house, MORNING, at_once))
        assert written(database_url) == alone, at_once
        assert "served alone" not in caplog.text, at_once
        assert served >= len(alone[0]) >= 6, at_once


def test_who_is_no_plain_case_falls_out_of_the_batch(house: House, database_url: str) -> None:
    """Rain, and a sowing that nobody confirmed; nobody else."""
    settle(database_url, A_TENTH_ON_DAY_FIVE)
    batches = list(mornings.batches(house, MORNING))
    assert {phone for batch in batches for phone in batch.alone} == {phone(207), phone(210)}
    assert len([row for batch in batches for row in batch.texts]) >= 6


def test_a_batch_that_cannot_be_written_is_served_phone_by_phone(
    house: House,
    database_url: str,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    """The fault is logged, and everybody has their text."""
    settle(database_url, A_TENTH_ON_DAY_FIVE)
    phone_by_phone(house)
    alone = written(database_url)
    forget(database_url)
    settle(database_url, A_TENTH_ON_DAY_FIVE)

    def fail(*given: object) -> None:
        raise RuntimeError("a fault of ours")

    monkeypatch.setattr(mornings.Batch, "write", fail)
    with caplog.at_level(logging.ERROR):
        sum(tick._morning(house, MORNING, mornings.AT_ONCE))
    assert written(database_url) == alone
    assert "are served alone" in caplog.text


def test_two_workers_share_a_morning(_clean_postgres: str) -> None:
    """They begin together; each phone is served once, by one of them."""
    database_url, phones = _clean_postgres, 60
    Crowd((5,), farmers=phones).settle(database_url)
    stores = [Store(database_url), Store(database_url)]
    together = Barrier(len(stores))

    def serve(store: Store) -> int:
        together.wait(60)
        return sum(tick._morning(house_at(store), MORNING, 4))

    with ThreadPoolExecutor(len(stores)) as pool:
        served = list(pool.map(serve, stores))
    texts, _ = written(database_url)
    assert (sum(served), len({row[0] for row in texts})) == (phones, phones)
    assert len(texts) == phones
    for store in stores:
        store.close()


def test_a_phone_that_a_turn_holds_is_passed_over_without_waiting(
    _clean_postgres: str,
) -> None:
    """Its text comes at the next look."""
    Crowd((5,), farmers=3).settle(_clean_postgres)
    store = Store(_clean_postgres)
    house = house_at(store)
    with store.work() as turn:
        turn.lock(phone(2))
        assert sum(tick.ticking(house, MORNING)) == 2
    assert sum(tick.ticking(house, MORNING)) == 1
    store.close()


def test_a_morning_takes_a_constant_number_of_statements(
    house: House, database_url: str
) -> None:
    """Six a batch and one more to see that nobody is left (and on PostgreSQL the locks),
    whatever the number of phones."""
    took = {}
    for farmers in (10, 40):
        forget(database_url)
        Crowd((5,), farmers=farmers).settle(database_url)
        with asked() as statements:
            assert sum(tick._morning(house, MORNING, mornings.AT_ONCE)) == farmers
        took[farmers] = len(statements)
    locks = 1 if "postgresql" in database_url else 0
    assert took == {10: 7 + locks, 40: 7 + locks}


BIG = ("reminder", "nursery", "outbox", "incoming")  # the few farmers here are one page


def test_a_look_with_nothing_due_reads_no_table(house: House, database_url: str) -> None:
    """Every statement of it goes by an index, with some thousand reminders of whom some have
    stopped, and half the season over."""
    Crowd(tuple(range(-5, 20)), villages=5, told_today=True, farmers=250).settle(database_url)
    some = [phone(number) for number in range(1, 250, 10)]
    for each in some:
        with house.store.work() as work:
            farmer = work.people.farmer(each)
            assert farmer is not None
            work.people.save_farmer(replace(farmer, stopped_at=MORNING))
    tick.tick(house, NOON)  # what is due now, and once an hour, is done
    found = plans(house, database_url)
    assert [plan for plan in found if reads_whole(plan)] == []
    assert len(found) <= 8


def plans(house: House, url: str) -> list[str]:
    """How the database goes about each statement of one look."""
    with asked() as statements:
        assert sum(tick.ticking(house, NOON)) == 0
    word = "EXPLAIN" if "postgresql" in url else "EXPLAIN QUERY PLAN"
    engine = open_engine(url)
    with engine.connect() as connection:
        cursor = connection.connection.cursor()
        found = []
        for statement, given in statements:
            cursor.execute(f"{word} {statement}", given)
            lines = (" ".join(map(str, row)) for row in cursor.fetchall())
            found.append("\n".join((statement, *lines)))
    engine.dispose()
    return found


def reads_whole(plan: str) -> bool:
    """Whether a plan goes through all of a table that grows."""
    return any(
        line.rstrip().endswith(f"SCAN {table}") or f"Seq Scan on {table} " in line
        for line in plan.splitlines()
        for table in BIG
    )


def test_a_farmer_who_stopped_is_seen_once_and_told_again_after_start(
    house: House, database_url: str
) -> None:
    """What rests costs no look; START wakes it."""
    Crowd((5,), farmers=2).settle(database_url)
    with house.store.work() as work:
        farmer = work.people.farmer(phone(1))
        assert farmer is not None
        work.people.save_farmer(replace(farmer, stopped_at=MORNING))
    assert sum(tick.ticking(house, MORNING)) == 1
    with house.store.work() as work:
        assert not work.mornings.is_due(MORNING)
        work.people.save_farmer(replace(farmer, stopped_at=None))
        assert work.mornings.is_due(MORNING)
    assert sum(tick.ticking(house, MORNING)) == 1
    assert [row[0] for row in written(database_url)[0]] == [phone(1), phone(2)]


@contextmanager
def asked() -> Iterator[list[tuple[str, Any]]]:
    """The statements that any engine is asked meanwhile, with their values, but for BEGIN."""
    found: list[tuple[str, Any]] = []

    def note(_connection: object, _cursor: object, statement: str, given: Any, *_: Any) -> None:
        if not statement.startswith(("BEGIN", "PRAGMA")):
            found.append((statement, given))

    event.listen(Engine, "before_cursor_execute", note)
    try:
        yield found
    finally:
        event.remove(Engine, "before_cursor_execute", note)
