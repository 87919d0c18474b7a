"""The worker's look at the clock with nothing due, in full season with five thousand nurseries.

Floor: one bare SELECT. What a morning takes is in `morning`.
"""

from collections.abc import Iterator
from datetime import datetime

from assistant.service.tick import tick
from assistant.store import Store
from tests.benchmarks.crowd import NOON, Crowd, house_at
from tests.benchmarks.databases import Bare, Kind
from tests.benchmarks.harness import Result, Side, Thunk, compare
from tests.benchmarks.size import sized

IN_SEASON = tuple(range(-5, 20))
TIMES = sized(20, small=2)  # one tick is too short to time
DUE = "SELECT id, nursery_id, task, day FROM reminder WHERE state = 'planned' AND due_at <= ?"


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """A moment with nothing due."""
    for kind in kinds:
        with kind.fresh() as url:
            Crowd(IN_SEASON, villages=20, told_today=True).settle(url)
            yield _idle(f"tick: nothing due, in full season, {kind.name}", url, NOON, runs)


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
