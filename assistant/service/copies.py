"""Copies of the database, one a day, of which some are kept."""

import logging
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path

from assistant.service.audit import TrailAct, note
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import Work

log = logging.getLogger(__name__)

BEGUN, MADE, WANTED = "copy begun", "copy made", "copy wanted"  # pulses
TOO_OLD = timedelta(hours=50)  # two days, and some time to make it
A_DAY = timedelta(hours=20)  # a copy may begin a little earlier than that of yesterday
AN_HOUR = timedelta(hours=1)
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
        wanted = work.running.pulse(WANTED)
        asked = wanted is not None and (begun is None or begun < wanted)
        if not asked and made is not None and now - made < A_DAY:
            return False
        if not asked and begun is not None and timedelta(0) <= now - begun < AN_HOUR:
            return False
        work.running.beat(BEGUN, now)
        return True


@dataclass(frozen=True)
class CopyState:
    """How the copies stand, all None where none was ever made or asked for."""

    made_at: datetime | None
    begun_at: datetime | None
    wanted_at: datetime | None

    @property
    def waits(self) -> bool:
        """Whether one that a person asked for is still to come."""
        latest = max(filter(None, (self.made_at, self.begun_at)), default=None)
        return self.wanted_at is not None and (latest is None or latest < self.wanted_at)


def copy_state(work: Work) -> CopyState:
    """When the last copy was made, begun and asked for."""
    return CopyState(*(work.running.pulse(each) for each in (MADE, BEGUN, WANTED)))


def ask_for_copy(house: House, sight: Sight, now: datetime) -> bool | None:
    """Asks the worker for a copy at its next look, within a minute; False where copies were
    never made, since no folder is set for them. None for anybody but a lead."""
    if not sight.officer.is_lead:
        return None
    with house.store.work() as work:
        if copy_state(work).begun_at is None:
            return False
        work.running.beat(WANTED, now)
        note(work, sight.officer.id, TrailAct.COPY_ASKED, now)
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
