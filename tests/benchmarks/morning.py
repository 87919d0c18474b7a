"""The morning: two thousand phones, each with a bed on day 5 and one text due.

The floors are the bare driver with the same rows and the same durability: it reads what is due,
writes the same texts and moves the same reminders, a transaction for three hundred phones; and
once more with a transaction a phone, which is what a morning cost that was not batched. What
must be worked out and worded is not in the floor.

With several workers, each a process of its own on the same morning, the floor is that of one.
"""

from collections.abc import Iterator, Sequence
from functools import partial
from multiprocessing import get_context
from multiprocessing.synchronize import Barrier
from statistics import median
from time import perf_counter

from assistant.service.tick import tick
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, Crowd, house_at, undo_today
from tests.benchmarks.databases import Bare, Kind, Row
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized

PHONES = sized(2_000, small=40)
AT_ONCE = 300  # phones of one transaction of the floor
WORKERS = (2, 3)
WAITS_S = 600  # for a worker that is ready, or at its end
DUE = "SELECT id, nursery_id, task, day FROM reminder WHERE state = 'planned' AND due_at <= ?"
MOVE = "UPDATE reminder SET state = 'sent', asked = 1, message_id = ? WHERE id = ?"
MOVE_ALL = (
    "UPDATE reminder SET state = 'sent', asked = 1, message_id = told.by "
    "FROM unnest(?::text[], ?::bigint[]) AS told (by, id) WHERE reminder.id = told.id"
)


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """One worker on each database, then several on the one that lets them work together."""
    for kind in kinds:
        with kind.fresh() as url:
            Crowd((5,), farmers=PHONES).settle(url)
            yield from _alone(kind.name, url, runs)
            if kind.server:
                for workers in WORKERS:
                    yield _together(kind.name, url, workers, runs)


def _alone(name: str, url: str, runs: int) -> Iterator[Result]:
    store = Store(url)
    house = house_at(store)

    def undo() -> None:
        undo_today(url)

    with Bare(url) as bare:
        undo()
        tick(house, MORNING)
        texts, asked = _written(bare)
        ours = Side("ours", lambda: tick(house, MORNING), undo)
        for at_once in (AT_ONCE, 1):
            floor = f"the driver alone, {at_once} a transaction"
            side = Side(floor, partial(_bare, bare, texts, asked, at_once), undo)
            what = f"morning: a phone, {name}"
            yield compare(what, PHONES, "phones", ours, side, runs=runs)
    store.close()


def _written(bare: Bare) -> tuple[list[Row], dict[object, list[object]]]:
    """The texts of a morning as they are kept, and what each asked, by its id."""
    at = (bare.moment(MORNING),)
    sent = bare.rows("SELECT * FROM outbox WHERE created_at = ? ORDER BY id", at)
    told = bare.rows(
        "SELECT reminder.id, reminder.message_id FROM reminder JOIN outbox "
        "ON outbox.message_id = reminder.message_id WHERE created_at = ?",
        at,
    )
    asked: dict[object, list[object]] = {row[1]: [] for row in sent}
    for reminder_id, message_id in told:
        asked[message_id].append(reminder_id)
    assert len(sent) == PHONES, len(sent)
    return [tuple(map(bare.json, row)) for row in sent], asked


def _bare(
    bare: Bare, texts: Sequence[Row], asked: dict[object, list[object]], at_once: int
) -> None:
    put = f"INSERT INTO outbox VALUES ({', '.join('?' * len(texts[0]))})"
    bare.rows(DUE, (bare.moment(MORNING),))
    for start in range(0, len(texts), at_once):
        some = texts[start : start + at_once]
        with bare.work():
            bare.many(put, some)
            moved = [(text[1], id) for text in some for id in asked[text[1]]]
            if bare.is_sqlite:
                bare.many(MOVE, moved)
            else:
                bare.execute(
                    bare.sql(MOVE_ALL), [list(each) for each in zip(*moved, strict=True)]
                )


def _together(name: str, url: str, workers: int, runs: int) -> Result:
    """Several processes that begin at the same moment; the last one's end counts."""
    took = []
    for _ in range(min(runs, 3)):
        undo_today(url)
        took.append(_race(url, workers))
    what = f"morning: a phone, {workers} workers, {name}"
    return Result(what, PHONES, "phones", median(took))


def _race(url: str, workers: int) -> float:
    """Each worker is a fork of this process: what it read at its start need not be read again,
    and it opens the database for itself."""
    apart = get_context("fork")
    ready, ended = (apart.Barrier(workers + 1) for _ in range(2))
    started = [
        apart.Process(target=_work, args=(url, ready, ended), daemon=True)
        for _ in range(workers)
    ]
    for process in started:
        process.start()
    ready.wait(WAITS_S)
    begun = perf_counter()
    ended.wait(WAITS_S)
    took = perf_counter() - begun
    for process in started:
        process.join()
    return took


def _work(url: str, ready: Barrier, ended: Barrier) -> None:
    store = Store(url)
    house = house_at(store)
    ready.wait(WAITS_S)
    tick(house, MORNING)
    ended.wait(WAITS_S)
    store.close()
