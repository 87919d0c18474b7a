"""Limits on guessing: tries at a door are counted in the database, which all processes share.

A try is counted before it is looked at, so that many at once are still counted; a right one is
forgotten again. While somebody is locked out nothing is looked at and nothing counted, so the
lock ends by itself.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from assistant.store import Work

TRIES_KEPT = timedelta(days=1)


@dataclass(frozen=True)
class Limit:
    """So many wrong tries at a door in a time; then it is shut until the oldest is that old."""

    door: str
    most: int
    within: timedelta


# Design choices, no source: enough for slips of the finger on small keys, far too few to
# guess. An office may share one address, so that one may fail more often.
PHONE = Limit("page", 5, timedelta(minutes=15))
ADDRESS = Limit("page address", 20, timedelta(minutes=15))
TEXT_CODE = Limit("text", 5, timedelta(hours=24))  # whoever is not a forger has a way round it
KNOWN_BROWSER = Limit("known browser", 5, timedelta(minutes=15))
ONE_TIME = Limit("one-time code", 5, timedelta(minutes=15))
ASKED_CODE = Limit("code asked for", 10, timedelta(hours=1))
SECOND_FACTOR = Limit("second factor", 5, timedelta(minutes=15))

Tried = tuple[Limit, str]
"""A limit and whom it counts: a phone or an address."""


def locked_until(work: Work, tried: Iterable[Tried], now: datetime) -> datetime | None:
    """Until when any of these is locked out; None where none is.

    On PostgreSQL others who try for the same wait until this transaction ends.
    """
    found = []
    for limit, who in tried:
        work.lock(f"{limit.door} {who}")
        tries = work.accounts.tries_since(limit.door, who, now - limit.within)
        if len(tries) >= limit.most:
            found.append(tries[limit.most - 1] + limit.within)
    return max(found, default=None)


def count(work: Work, tried: Iterable[Tried], now: datetime) -> None:
    """Counts one try for each."""
    for limit, who in tried:
        work.accounts.add_try(limit.door, who, now)
    work.accounts.forget_tries_before(now - TRIES_KEPT)


def forget(work: Work, tried: Tried, at: datetime | None = None) -> None:
    """Forgets all tries of somebody, or only that of one moment."""
    limit, who = tried
    work.accounts.forget_tries(limit.door, who, at)
