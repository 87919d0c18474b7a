"""After a copy of the database was put back: nothing leaves, and who stopped stays stopped."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from assistant.service.house import House

WHY = "a copy of the database was put back; look through it, then: nursery texts go"


def phones_on_roll(house: House) -> tuple[str, ...]:
    """The numbers that get texts, or got them."""
    with house.store.look() as work:
        return work.phones.on_roll()


def begin_again(house: House, stopped: Iterable[tuple[str, datetime]], now: datetime) -> int:
    """Holds all texts, and stops those of the phones that said STOP since the copy was made;
    how many those are.

    Args:
        stopped: phones whose last word was STOP, and when they said it
    """
    count = 0
    with house.store.work() as work:
        work.running.hold(WHY, now)
        for phone, at in stopped:
            farmer = work.people.on_roll(phone)
            if farmer is None or farmer.stopped_at is not None:
                continue
            work.outbox.withdraw(now, phone=phone)
            work.people.save_farmer(replace(farmer, stopped_at=at, paused_at=None))
            count += 1
    return count
