"""What a look with nothing due costs as the tables grow, and with statistics that are stale.

A full season of nurseries with the texts that they had; the clock's look (`tick`) and the
sender's (`dispatch`) at noon, when all is said. Each beside the same look at the smallest
tables: the issue is whether it grows. Stale: the server's statistics were made while the tables
were empty. SQLite has none of its own.
"""

from collections.abc import Callable, Iterator
from datetime import timedelta
from statistics import median
from time import perf_counter, process_time
from typing import Any

from assistant.service.dispatch import dispatch
from assistant.service.tick import tick
from assistant.store import Store
from assistant.store.engine import open_engine
from tests.benchmarks.crowd import NOON, Crowd, house_at
from tests.benchmarks.databases import Kind, kinds
from tests.benchmarks.dispatch import Accepts
from tests.benchmarks.harness import table
from tests.benchmarks.size import SMALL, sized
from tests.benchmarks.tick import IN_SEASON

# Farmers; of each there are some 40 reminders: 5 thousand, 100 thousand, 2 million.
SIZES = (50, 100) if SMALL else (125, 2_500, 50_000)
TIMES, RUNS = sized(50, small=2), sized(7, small=1)
LEASE = timedelta(seconds=20)
HEAD = ("a look with nothing due", "reminders", "texts", "took", "beside the smallest")

Looks = dict[str, Callable[[], object]]


def run() -> str:
    """The table, on each kind of database."""
    rows: list[tuple[str, ...]] = []
    with kinds(wanted=True) as (found, said):
        for kind in found:
            rows += _grown(kind)
    return f"{table(rows, HEAD)}\n{said}"


def _grown(kind: Kind) -> Iterator[tuple[str, ...]]:
    least: dict[str, float] = {}
    for farmers in SIZES:
        with kind.fresh() as url:
            _analyse(url, kind)
            Crowd(IN_SEASON, villages=5, told_today=True, farmers=farmers).settle(url)
            counts = [f"{count:,}" for count in _counts(url)]
            for statistics in ("stale", "fresh") if kind.server else ("none",):
                if statistics == "fresh":
                    _analyse(url, kind)
                seconds = perf_counter if kind.server else process_time
                for name, took in _took(url, seconds).items():
                    what = f"{name}, {kind.name}, statistics {statistics}"
                    first = least.setdefault(what, took)
                    ratio = f"{took / first:.2f}"
                    yield (what, *counts, f"{took * 1e3:.2f} ms", ratio)


def _took(url: str, seconds: Callable[[], float]) -> dict[str, float]:
    """What one look of each sort takes [s], the median of some rounds of many; of SQLite, which
    works in our process, its time there, which a loaded machine changes little."""
    store = Store(url)
    house = house_at(store)
    gateway: Any = Accepts()
    looks: Looks = {
        "tick": lambda: tick(house, NOON),
        "dispatch": lambda: dispatch(house, gateway, NOON, limit=500, lease=LEASE),
    }
    tick(house, NOON)
    found = {
        name: median(_round(look, seconds) for _ in range(RUNS)) for name, look in looks.items()
    }
    store.close()
    return found


def _round(look: Callable[[], object], seconds: Callable[[], float]) -> float:
    begun = seconds()
    for _ in range(TIMES):
        look()
    return (seconds() - begun) / TIMES


def _counts(url: str) -> list[int]:
    engine = open_engine(url)
    with engine.connect() as connection:
        found = [
            int(connection.exec_driver_sql(f"SELECT count(*) FROM {name}").scalar_one())
            for name in ("reminder", "outbox")
        ]
    engine.dispose()
    return found


def _analyse(url: str, kind: Kind) -> None:
    if not kind.server:
        return
    engine = open_engine(url)
    with engine.begin() as connection:
        connection.exec_driver_sql("ANALYZE")
    engine.dispose()
