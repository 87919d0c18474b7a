"""`python -m tests.soak --phones N --days D --seed S`; 1 where anything is wrong."""

import argparse
import logging
import sys
import tempfile
import time
from pathlib import Path

import tests.soak as about
from assistant.store import Store
from tests.benchmarks.harness import table
from tests.soak.count import wrong
from tests.soak.service import Soak, resident_mib

HEAD = ("day", "took", "our CPU", "texts on phones", "written", "stopped", "memory")


def main() -> int:
    """Plays the days, prints each, and what is wrong."""
    parser = argparse.ArgumentParser(prog="python -m tests.soak", description=about.__doc__)
    parser.add_argument("--phones", type=int, default=3_000, help="in eights")
    parser.add_argument("--days", type=int, default=14)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    logging.disable(logging.WARNING)
    with tempfile.TemporaryDirectory(prefix="soak-") as folder:
        url = f"sqlite:///{Path(folder) / 'nursery.sqlite3'}"
        store = Store(url)
        store.migrate()
        store.close()
        soak = Soak(url, given.phones, given.seed)
        rows = [_day(soak, quiet=day >= given.days) for day in range(given.days + 1)]
        found = list(wrong(soak))
    print(table(rows, HEAD))
    print(", ".join(f"{count} x {name}" for name, count in sorted(soak.faults.items())))
    print(f"handed in twice under one id: {soak.line.repeats}")
    print(f"wrong: {len(found)}", *found[:30], sep="\n    ")
    return 1 if found else 0


def _day(soak: Soak, *, quiet: bool) -> tuple[str, ...]:
    begun, cpu = time.perf_counter(), time.process_time()
    soak.day(quiet=quiet)
    return (
        f"{soak.now:%d %b}",
        f"{time.perf_counter() - begun:.0f} s",
        f"{time.process_time() - cpu:.0f} s",
        f"{sum(map(len, soak.line.shown.values())):,}",
        f"{len(soak.people.wrote):,}",
        f"{len(soak.people.stopped):,}",
        f"{resident_mib():.0f} MiB",
    )


if __name__ == "__main__":
    sys.exit(main())
