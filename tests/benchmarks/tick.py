"""The worker's look at the clock, with five thousand nurseries.

Floors: for a morning the driver alone finds what is due, then writes the same texts and moves
the same reminders, a transaction a phone; for a moment with nothing due one bare SELECT.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime

from assistant.service.tick import tick
from assistant.store import Store
from tests.benchmarks.crowd import FARMERS, MORNING, NOON, Crowd, house_at, undo_today
from tests.benchmarks.databases import Bare, Kind, Row
from tests.benchmarks.harness import Result, Side, Thunk, compare

# A tenth is on day 5; nothing is due for the others, whose seed is still in the sack.
DAY_FIVE = (5, -8, -9, -10, -11, -12, -13, -14, -16, -17)
IN_SEASON = tuple(range(-5, 20))
TIMES = 20  # one tick is too short to time
DUE = "SELECT id, nursery_id, task, day FROM reminder WHERE state = 'planned' AND due_at <= ?"


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """A morning with a tenth of the nurseries on day 5, then a moment with nothing due."""
    for kind in kinds:
        with kind.fresh() as url:
            Crowd(DAY_FIVE).settle(url)
            yield _morning(f"tick: morning of day 5 for a tenth, {kind.name}", url, runs)
        with kind.fresh() as url:
            Crowd(IN_SEASON, villages=20, told_today=True).settle(url)
            yield _idle(f"tick: nothing due, in full season, {kind.name}", url, NOON, runs)


def _morning(what: str, url: str, runs: int) -> Result:
    store = Store(url)
    house = house_at(store)
    with Bare(url) as bare:
        ours = Side(what, lambda: tick(house, MORNING), lambda: undo_today(url))
        undo_today(url)
        tick(house, MORNING)
        sent = bare.rows("SELECT * FROM outbox WHERE created_at = ?", (bare.moment(MORNING),))
        rows = [tuple(map(bare.json, row)) for row in sent]
        floor = Side(
            "the driver alone, same rows",
            lambda: _bare_morning(bare, rows),
            lambda: undo_today(url),
        )
        found = compare(what, FARMERS // len(DAY_FIVE), "phones", ours, floor, runs=runs)
        assert len(rows) == found.count, len(rows)
    store.close()
    return found


def _bare_morning(bare: Bare, texts: Sequence[Row]) -> None:
    due = bare.rows(DUE, (bare.moment(MORNING),))
    by_nursery: dict[object, list[object]] = {}
    for reminder_id, nursery_id, *_ in due:
        by_nursery.setdefault(nursery_id, []).append(reminder_id)
    put = f"INSERT INTO outbox VALUES ({', '.join('?' * len(texts[0]))})"
    move = bare.sql("UPDATE reminder SET state = 'sent', asked = 1 WHERE id = ?")
    for text, ids in zip(texts, by_nursery.values(), strict=True):
        with bare.work():
            bare.many(put, [text])
            for reminder_id in ids:
                bare.execute(move, (reminder_id,))


def _idle(what: str, url: str, now: datetime, runs: int) -> Result:
    store = Store(url)
    house = house_at(store)
    tick(house, now)
    with Bare(url) as bare:
        at = (bare.moment(now),)
        floor = Side("a bare SELECT of what is due", lambda: _times(lambda: bare.rows(DUE, at)))
        ours = Side(what, lambda: _times(lambda: tick(house, now)))
        found = compare(what, TIMES, "ticks", ours, floor, runs=runs)
    store.close()
    return found


def _times(do: Thunk) -> None:
    for _ in range(TIMES):
        do()
