"""Copies of the database, one a day, of which some are kept."""

import logging
import re
from collections.abc import Sequence
from datetime import date, datetime, timedelta
from pathlib import Path

from assistant.service.days import local_date
from assistant.service.house import House

log = logging.getLogger(__name__)

BEGUN, MADE = "copy begun", "copy made"  # pulses
TOO_OLD = timedelta(hours=50)  # two days, and some time to make it
A_DAY = timedelta(hours=20)  # a copy may begin a little earlier than that of yesterday
_NAME = re.compile(r"nursery-(\d{4}-\d{2}-\d{2})\.copy")


def copy_of_today(house: House, folder: Path, kept: int, now: datetime) -> Path | None:
    """Makes today's copy, unless some process has it in hand; the file. Copies of earlier days
    go but for the latest.

    Args:
        kept: how many copies stay

    Raises:
        StoreError, OSError: no copy was made; the next try is an hour later.
    """
    if not _is_mine(house, now):
        return None
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    target = folder / f"nursery-{local_date(now, house.zone)}.copy"
    fresh = target.with_suffix(".fresh")
    fresh.unlink(missing_ok=True)  # of a process that was killed
    house.store.backup(fresh)
    fresh.replace(target)
    for old in sorted(copies(folder))[:-kept]:
        (folder / f"nursery-{old}.copy").unlink()
    with house.store.work() as work:
        work.running.beat(MADE, now)
    log.info("the database was copied into %s", target)
    return target


def _is_mine(house: House, now: datetime) -> bool:
    """Takes today's copy in hand: not where there is one, or somebody began an hour ago."""
    with house.store.work() as work:
        work.lock(BEGUN)
        made, begun = work.running.pulse(MADE), work.running.pulse(BEGUN)
        if made is not None and now - made < A_DAY:
            return False
        if begun is not None and timedelta(0) <= now - begun < timedelta(hours=1):
            return False
        work.running.beat(BEGUN, now)
        return True


def copies(folder: Path) -> Sequence[date]:
    """The days of which there are copies."""
    found = (_NAME.fullmatch(path.name) for path in folder.iterdir())
    return [date.fromisoformat(each[1]) for each in found if each]


def copy_is_late(house: House, now: datetime) -> bool:
    """Whether copies were made once, and none of late."""
    with house.store.look() as work:
        made, begun = work.running.pulse(MADE), work.running.pulse(BEGUN)
    latest = made or begun
    return latest is not None and now - latest > TOO_OLD
