"""Nurseries whose rows cannot be read: set aside by themselves, so that nobody else waits for
them, and shown to who can mend them.

A row is unreadable where the file of its practice is gone, or where a release takes narrower
values than the one that wrote it. Its farmer gets no texts about it and is answered otherwise.
What is due for it rests, so that it costs the clock nothing, until it can be read again.
"""

import logging
from collections.abc import Iterator
from datetime import datetime

from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import SetAside, Work

log = logging.getLogger(__name__)

AT_ONCE = 500  # rows in one transaction


def keep_aside(work: Work, now: datetime) -> None:
    """Keeps what this transaction could not read. Each nursery is logged when it is new."""
    found = work.unreadable
    if found and work.running.set_aside(found, now):
        for why in found.values():
            log.error("set aside: %s", why)


def look_over(house: House, now: datetime) -> Iterator[None]:
    """Reads every open nursery once, a part at each step, so that one that cannot be read is
    known before its day, and one that was mended gets its texts again."""
    after = 0
    while True:
        with house.store.work() as work:
            seen = work.running.look_over(after, AT_ONCE)
            work.running.take_up(set(seen) - set(work.unreadable))
            keep_aside(work, now)
        if not seen:
            return
        after = seen[-1]
        yield


def look_again(house: House, after: int = 0) -> int:
    """Reads some of what is set aside once more: what was mended by hand, or is of a release
    that is here by now, gets its texts again, and what was closed is shown no more.

    Args:
        after: the id with which the look before ended

    Returns:
        The id with which this one ended; 0 where the next begins anew.
    """
    with house.store.look() as look:
        if look.running.count_aside() == 0:
            return 0
    with house.store.work() as work:
        seen = work.running.look_at_aside(after, AT_ONCE)
        back = set(seen) - set(work.unreadable)
        work.running.take_up(back)
    if back:
        log.info("%d nurseries that were set aside can be read again, or are over", len(back))
    return seen[-1] if len(seen) == AT_ONCE else 0


def aside_for(house: House, sight: Sight) -> tuple[SetAside, ...]:
    """The nurseries set aside in the villages of an officer; a lead sees all."""
    with house.store.look() as work:
        return work.running.aside(sight.scope())
