"""The morning: two thousand phones, each with a bed on day 5 and one text due.

The floors are the bare driver with the same rows and the same durability: it reads what is due,
writes the same texts and moves the same reminders, a transaction for three hundred phones; and
once more with a transaction a phone, which is what a morning cost that was not batched. What
must be worked out and worded is not in the floor.

With several workers, each a process of its own on the same morning, the floor is that of one.
"""

import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
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
WORKERS = (2,)
DUE = "SELECT id, nursery_id, task, day FROM reminder WHERE state = 'planned' AND due_at <= ?"
MOVE = "UPDATE reminder SET state = 'sent', asked = 1, message_id = ? WHERE id = ?"
MOVE_ALL = (
    "UPDATE reminder SET state = 'sent', asked = 1, message_id = told.by "
    "FROM unnest(?::text[], ?::bigint[]) AS told (by, id) WHERE reminder.id = told.id"
)
WORKER = """
import sys
from assistant.service.tick import tick
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, house_at
house = house_at(Store(sys.argv[1]))
print("ready", flush=True)
input()
tick(house, MORNING)
print("done", flush=True)
"""


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
            side = Side(floor, lambda at=at_once: _bare(bare, texts, asked, at), undo)
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
    command = [sys.executable, "-c", WORKER, url]
    pipe, root = subprocess.PIPE, Path(__file__).parents[2]
    started = [
        subprocess.Popen(command, stdin=pipe, stdout=pipe, text=True, cwd=root)
        for _ in range(workers)
    ]
    for process in started:  # importing takes longer than what is timed here
        assert process.stdout and process.stdout.readline() == "ready\n"
    begun = perf_counter()
    for process in started:
        assert process.stdin
        process.stdin.write("go\n")
        process.stdin.flush()
    for process in started:
        assert process.stdout and process.stdout.readline() == "done\n"
    took = perf_counter() - begun
    for process in started:
        process.communicate()
    return took
